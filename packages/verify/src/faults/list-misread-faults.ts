import { appendTo, type Job } from '@loomproof/netlist';
import { Names } from '../prove/names.ts';
import { cavityNeighbours, waysToMisread } from './cavity-neighbours.ts';
import type { ListedFault, WorkFault } from './fault.ts';

/** One way to misread a connector: which of its cavities are hit for which, places of the job. */
interface Way {
  readonly kind: string;
  readonly how: string;
  readonly hits: ReadonlyMap<number, number>;
}

const look = 'compare colour and size at each cavity with the drawing, at both ends';

/**
 * Whole connectors misread: held half turned, seen from the wrong side, counted from the other end or by the scheme of
 * the other half. Either in the work, or where the bag was built; and both connectors of one run of wires alike, which
 * a straight run hides from every meter. A way in which a cavity is not found is noticed and left out, and so is one
 * that concerns a single cavity of the work, which is a wrong cavity.
 */
export function listMisreadFaults(job: Job): readonly ListedFault[] {
  const names = new Names(job);
  const list: ListedFault[] = [];
  const worked = placesByConnector(job, workedPlaces(job));
  const built = placesByConnector(job, builtPlaces(job));
  const add = (
    is: 'connector misread' | 'both ends misread',
    connectors: readonly number[],
    { how, hits }: Pick<Way, 'how' | 'hits'>,
    where: Extract<WorkFault, { is: 'connector misread' }>['where'],
  ): void => {
    const called = connectors.map((one) => job.connectors[one]?.name ?? '').join(' and ');
    const when = where === 'bag' ? 'where the kit was built' : 'in the work';
    list.push({
      id: `${is}: ${called} ${where === 'bag' ? 'built' : 'worked on'} ${how}`,
      fault: { is, hits: [...hits], how, where },
      words: `${called} ${connectors.length === 1 ? 'was' : 'were both'} misread ${when}: ${how}`,
      likelihood: where === 'bag' ? 'seldom' : 'sometimes',
      reason:
        where === 'bag' ? 'kits are tested where they are made' : 'drawn from one side, seen from the other',
      origin: where === 'bag' ? 'build error' : 'installation error',
      shownBy: look,
    });
  };
  for (const [connector, places] of worked)
    if (places.length > 1)
      for (const way of waysToHit(job, connector, places)) add('connector misread', [connector], way, 'work');
  for (const [connector, places] of built)
    for (const way of waysToHit(job, connector, places)) add('connector misread', [connector], way, 'bag');
  for (const [a, b] of connectorsOfRuns(job)) {
    const all = [a, b].map((one) => [...new Set([...(worked.get(one) ?? []), ...(built.get(one) ?? [])])]);
    const others = waysToHit(job, b, all[1] ?? []);
    const where = [a, b].every((one) => !worked.has(one))
      ? 'bag'
      : [a, b].every((one) => !built.has(one))
        ? 'work'
        : 'both';
    for (const way of waysToHit(job, a, all[0] ?? [])) {
      const alike = others.find((one) => one.kind === way.kind);
      if (alike !== undefined)
        add(
          'both ends misread',
          [a, b],
          { how: way.how, hits: new Map([...way.hits, ...alike.hits]) },
          where,
        );
    }
  }
  for (const place of builtPlaces(job))
    for (const hit of emptyBeside(job, place))
      list.push({
        id: `built in a wrong cavity: ${names.place(place)} at ${names.place(hit)}`,
        fault: {
          is: 'built in a wrong cavity',
          hits: [[place, hit]],
          how: 'the cavity next to it',
          where: 'bag',
        },
        words: `the kit was built with the terminal of ${names.place(place)} in ${names.place(hit)}`,
        likelihood: 'seldom',
        reason: 'kits are tested where they are made',
        origin: 'build error',
        shownBy: look,
      });
  return list;
}

/** Cavities at which the work seats, pulls, plugs or unplugs something. */
function workedPlaces(job: Job): readonly number[] {
  return job.steps.flatMap(({ action }) =>
    action.kind === 'insert' ||
    action.kind === 'withdraw' ||
    action.kind === 'fit plug' ||
    action.kind === 'remove plug'
      ? [action.place]
      : [],
  );
}

/** Cavities in which the bag brings a terminal on a wire. */
function builtPlaces(job: Job): readonly number[] {
  return job.terminals.flatMap(({ place, ends }) =>
    place >= 0 && ends.length > 0 && job.places[place]?.origin === 'kit' ? [place] : [],
  );
}

function placesByConnector(job: Job, places: readonly number[]): ReadonlyMap<number, readonly number[]> {
  const found = new Map<number, number[]>();
  for (const place of new Set(places)) {
    const connector = job.places[place]?.connector ?? -1;
    if (connector >= 0) appendTo(found, connector, place);
  }
  return new Map([...found].sort(([a], [b]) => a - b));
}

/** The ways in which some cavities of a connector are taken for others, where nobody notices at once. */
function waysToHit(job: Job, connector: number, places: readonly number[]): readonly Way[] {
  return waysToMisread(job, connector)
    .map(({ kind, how, hitOf }) => ({
      kind,
      how,
      hits: new Map(places.map((place) => [place, hitOf(place)])),
    }))
    .filter(({ hits }) => {
      const all = [...hits];
      return (
        all.some(([meant, hit]) => meant !== hit) &&
        all.every(([, hit]) => hit >= 0 && job.places[hit]?.blocked !== true)
      );
    });
}

/** Pairs of connectors between which wires run whose both ends the work or the bag seats. */
function connectorsOfRuns(job: Job): readonly (readonly [number, number])[] {
  const seats = new Map<number, number>();
  for (const [end, { home }] of job.ends.entries())
    if (home.kind === 'place' && job.places[home.place]?.origin === 'kit') seats.set(end, home.place);
  for (const { action } of job.steps) if (action.kind === 'insert') seats.set(action.end, action.place);
  const found = new Map<string, readonly [number, number]>();
  for (const { ends } of job.wires) {
    const [a, b] = ends.map((end) => job.places[seats.get(end) ?? -1]?.connector ?? -1).sort((x, y) => x - y);
    if (a === undefined || b === undefined || a < 0 || a === b) continue;
    found.set(`${a} ${b}`, [a, b]);
  }
  return [...found.values()].sort((x, y) => x[0] - y[0] || x[1] - y[1]);
}

function emptyBeside(job: Job, place: number): readonly number[] {
  const taken = new Set(job.terminals.map((one) => one.place));
  return cavityNeighbours(job, place).filter((one) => !taken.has(one) && job.places[one]?.blocked !== true);
}
