import { denseStates } from '../oracle/dense-network.ts';
import type { CopperView } from './copper-walk.ts';
import type { HarnessRecord } from './harness-record.ts';
import type { FindingJson, WitnessJson } from './verdict-json.ts';
import type { Moment } from './work-replay.ts';

/*
 * The resistances that a kit may ask for, as far as the fixtures use them. IEC 60228, class 5, plain copper, ohm a
 * kilometre at 20 degrees; the formula is annealed copper, 1/58 ohm mm2/m (International Annealed Copper Standard). Warm
 * copper resists as 234.5 degrees and its own over 254.5 (AC 43.13-1B CHG 1, p. 11-22).
 */
const class5 = new Map([
  [0.5, 39],
  [0.75, 26],
  [1, 19.5],
  [1.5, 13.3],
  [2.5, 7.98],
  [4, 4.95],
  [6, 3.3],
  [10, 1.91],
  [16, 1.21],
  [25, 0.78],
]);
/** Larger systems take the plain solver too long. */
const mostUnknowns = 500;

/** A limit that is told to be broken has to be; a loss is worked out again with the plain solver. */
export function checkLimit(
  finding: FindingJson,
  witness: Extract<WitnessJson, { is: 'limit' }>,
  record: HarnessRecord,
  view: CopperView,
  end: Moment,
): readonly string[] {
  const { quantity, value, limit } = witness;
  const broken = finding.kind === 'drive-underloaded' ? value < limit : value > limit;
  const problems = broken ? [] : [`${quantity} of ${value} keeps ${limit}`];
  if (finding.kind !== 'drop-too-large') return [...problems, ...checkRating(finding, witness, record)];
  const off = new Set((quantity.split(' with ')[1] ?? '').split(', ').map((one) => one.replace(/ off$/, '')));
  const lost = lossOf(finding.points[0] ?? '', off, record, view, end);
  if (lost !== null && !(Math.abs(lost - value) <= 1e-6 * Math.max(1, lost)))
    problems.push(`${finding.points[0]} loses ${lost} V and not ${value} V`);
  return problems;
}

/** A fuse that is told to be too large has the rating that is told. */
function checkRating(
  finding: FindingJson,
  { quantity, value }: Extract<WitnessJson, { is: 'limit' }>,
  record: HarnessRecord,
): readonly string[] {
  const name = /^fuse (.*)$/.exec(quantity)?.[1];
  if (finding.kind !== 'conductor-unprotected' || name === undefined) return [];
  const ratings = [
    ...record.elements.filter((one) => one.name === name).map((one) => one.ratingAmps),
    ...record.steps
      .filter((one) => one.fuse === name)
      .flatMap(({ takes }) => takes.map((part) => record.fuseRatings.get(part))),
  ];
  return ratings.includes(value) ? [] : [`${name} is no fuse of ${value} A`];
}

function lossOf(
  load: string,
  off: ReadonlySet<string>,
  record: HarnessRecord,
  view: CopperView,
  end: Moment,
): number | null {
  const [feed, ...more] = record.feeds;
  if (feed === undefined || feed.volts === null || more.length > 0) return null;
  const numbers = new Map<string, number>();
  const at = (point: string): number => {
    const known = numbers.get(point);
    if (known !== undefined) return known;
    numbers.set(point, numbers.size + 1);
    return numbers.size;
  };
  type Branch = {
    kind: 'resistor' | 'joint' | 'diode' | 'voltage-source' | 'current-source';
    from: number;
    to: number;
    ohm?: number;
    volt?: number;
    ampere?: number;
    forwardVolt?: number;
    onOhm?: number;
  };
  const branches: Branch[] = [];
  const resist = (from: string, to: string, ohm: number | null): boolean => {
    if (ohm === null || Number.isNaN(ohm)) return false;
    branches.push(
      ohm > 0
        ? { kind: 'resistor', from: at(from), to: at(to), ohm }
        : { kind: 'joint', from: at(from), to: at(to) },
    );
    return true;
  };
  const joint = (kind: string): number | null => record.jointOhm.get(kind) ?? null;
  const studs = new Set(record.places.filter(({ kind }) => kind === 'stud').map(({ address }) => address));
  let known = true;
  for (const { by, from, to, name, lengthMm } of view.joins) {
    const ohm =
      by === 'conductor'
        ? wireOhm(record, name ?? '', lengthMm)
        : by === 'crimp'
          ? joint('crimp')
          : by === 'mate'
            ? joint('contact')
            : by === 'joint'
              ? joint('splice')
              : by === 'seat' && (studs.has(from) || studs.has(to))
                ? joint('stud')
                : 0;
    known = resist(from, to, ohm) && known;
  }
  const loads: { name: string; from: number; to: number; ampere: number; ohm: number }[] = [];
  for (const one of record.elements) {
    const { kind, name, from, to, workedBy, restClosed } = one;
    if (kind === 'load' || kind === 'coil') {
      const ampere = designAmpere(one, feed.volts);
      if (off.has(name)) continue;
      if (ampere === null) known = false;
      else loads.push({ name, from: at(from), to: at(to), ampere, ohm: ohmOf(one) });
    } else if (kind === 'diode') {
      const onOhm = one.ohm ?? 0.01;
      branches.push({ kind, from: at(from), to: at(to), forwardVolt: one.dropVolts ?? 0, onOhm });
    } else {
      const open = workedBy === null ? off.has(name) : off.has(workedBy) !== restClosed;
      if (open || (kind === 'fuse' && end.fusesOut.has(name))) continue;
      known = resist(from, to, one.ohm ?? joint('contact')) && known;
    }
  }
  const fed = new Set(feed.places);
  for (const { address, chassis, source } of record.places) {
    const isReturn = chassis || record.returns.includes(address);
    const isSource = fed.has(address) || source === 'always' || source === 'driven' || source === 'switched';
    if (off.has(address) || !(isReturn || isSource) || !numbers.has(address)) continue;
    branches.push({
      kind: 'voltage-source',
      from: 0,
      to: at(address),
      volt: isReturn ? 0 : feed.volts,
      ohm: 0,
    });
  }
  if (!known || numbers.size + branches.length + loads.length > mostUnknowns) return null;
  const solve = (taking: readonly Branch[]): readonly number[] | null => {
    const elements = [...branches, ...taking];
    const network = { nodeCount: numbers.size + 1, reference: 0, elements };
    return denseStates(network, 1e-6)[0]?.volts ?? null;
  };
  const trial = solve(loads.map(({ from, to, ohm }) => ({ kind: 'resistor', from, to, ohm })));
  if (trial === null) return null;
  const taking = loads.flatMap(({ from, to, ampere, ohm }): Branch[] => {
    const current = ((trial[from] ?? 0) - (trial[to] ?? 0)) / ohm;
    return Math.abs(current) <= 1e-9
      ? []
      : [{ kind: 'current-source', from, to, ampere: Math.sign(current) * ampere }];
  });
  const volts = solve(taking);
  const own = loads.find(({ name }) => name === load);
  if (volts === null || own === undefined) return null;
  return feed.volts - Math.abs((volts[own.from] ?? 0) - (volts[own.to] ?? 0));
}

function ohmOf({ ohm, watts, volts }: HarnessRecord['elements'][number]): number {
  return ohm ?? (watts !== null && volts !== null ? (volts * volts) / watts : 20);
}

function designAmpere(
  { ohm, watts, volts }: HarnessRecord['elements'][number],
  nominal: number,
): number | null {
  if (watts !== null) return watts / (volts ?? nominal);
  return ohm === null ? null : nominal / ohm;
}

function wireOhm(record: HarnessRecord, name: string, lengthMm: number | null): number | null {
  const wire = record.wires.get(name);
  if (wire === undefined || wire.mm2 === null || wire.temperatureC === null || lengthMm === null) return null;
  if (wire.material !== 'copper') return null;
  const warm = (234.5 + wire.temperatureC) / 254.5;
  const metres = lengthMm / 1000;
  if (wire.strands === 'formula') return (metres * warm) / 58 / wire.mm2;
  const perKilometre = wire.strands === 'iec60228-class5' ? class5.get(wire.mm2) : undefined;
  return perKilometre === undefined ? null : (perKilometre / 1000) * metres * warm;
}
