import type { Job, Rework } from '@loomproof/netlist';
import { Names } from '../prove/names.ts';
import { terminated } from '../readings/resistance-range.ts';
import { cavityNeighbours } from './cavity-neighbours.ts';
import type { HarnessFault, Likelihood, ListedFault } from './fault.ts';
import type { Touched } from './touched.ts';

/**
 * What can be broken in the finished harness: each join of it that does not conduct, each two neighbouring cavities
 * bridged, each part open, bridged or turned, each bus with a terminator too many, each free end bare and against a
 * neighbour, the chassis or a feed.
 *
 * @param rework - the finished work
 * @param touched - only joins of these wires and cavities beside these places; everything where null
 */
export function listHarnessFaults(rework: Rework, touched: Touched | null): readonly ListedFault[] {
  const { job, graph } = rework;
  const names = new Names(job);
  const list: ListedFault[] = [];
  const add = (
    fault: HarnessFault,
    about: string,
    words: string,
    likelihood: Likelihood,
    reason: string,
    origin: ListedFault['origin'],
    shownBy: string,
    inPart?: NonNullable<ListedFault['inPart']>,
  ): void => {
    const one = { id: `${fault.is}: ${about}`, fault, words, likelihood, reason, origin, shownBy };
    list.push(inPart === undefined ? one : { ...one, inPart });
  };
  const badJoin = 'a weak crimp, a joint that holds by a few strands, or a dirty contact';
  const leak = 'moisture, dirt or a burnt place';
  const byNode = new Map(job.ends.map((end) => [end.node, end.wire]));
  for (let edge = 0; edge < graph.edgeCount; edge += 1) {
    if (!graph.aliveAt(edge, rework.ordinal)) continue;
    const kind = graph.kindOf(edge);
    if (kind === 'jumper') continue;
    const [from, to] = [graph.fromOf(edge), graph.toOf(edge)];
    if (kind === 'mate') {
      if (touched !== null && !touched.places.has(from) && !touched.places.has(to)) continue;
      const pair = `${names.place(from)} and ${names.place(to)}`;
      add(
        { is: 'does not conduct', join: [from, to] },
        pair,
        `the contacts of ${pair} do not meet`,
        'sometimes',
        'a terminal not home is pushed back when the halves are plugged, and a test pin spreads a contact',
        'installation error',
        'pull each terminal, and drag a pin of the right size through the contact',
        { words: `the contacts of ${pair} meet badly`, reason: badJoin },
      );
      continue;
    }
    const what = graph.whatOf(edge);
    const wires =
      kind === 'conductor' ? [what] : kind === 'seat' ? wiresIn(rework, what) : [byNode.get(from) ?? -1];
    if (touched !== null && !wires.some((wire) => touched.wires.has(wire))) continue;
    const made = graph.birthOf(edge) > 0;
    const kit = wires.some((wire) => job.wires[wire]?.origin === 'kit');
    const between = `${names.node(from)} and ${names.node(to)}`;
    const words =
      kind === 'conductor'
        ? `the wire ${job.wires[what]?.name ?? ''} does not conduct between ${between}`
        : `the ${kind === 'seat' ? 'contact' : kind} between ${between} does not conduct`;
    add(
      { is: 'does not conduct', join: [from, to] },
      between,
      words,
      made && kind !== 'conductor' ? 'often' : kit && kind !== 'conductor' ? 'sometimes' : 'seldom',
      made && kind !== 'conductor'
        ? 'a joint made by hand in this work'
        : kind === 'conductor'
          ? 'wires seldom break within'
          : kit
            ? 'a crimp made with the kit'
            : 'a joint of the machine that nobody touched',
      made && kind !== 'conductor' ? 'installation error' : kit ? 'build error' : 'damage',
      'pull at the joint and measure the volts lost under load',
      {
        words: words.replace('does not conduct', 'conducts badly'),
        reason: kind === 'conductor' ? 'a wire of which strands are broken' : badJoin,
      },
    );
  }
  for (const [place] of job.places.entries()) {
    if (job.connectors[job.places[place]?.connector ?? -1]?.device !== false) continue;
    for (const other of cavityNeighbours(job, place)) {
      if (other < place) continue;
      if (touched !== null && !touched.places.has(place) && !touched.places.has(other)) continue;
      add(
        { is: 'bridged', places: [place, other] },
        `${names.place(place)} and ${names.place(other)}`,
        `${names.place(place)} and ${names.place(other)} are bridged`,
        'sometimes',
        'neighbours, so a stray strand reaches',
        'installation error',
        'look into both cavities for a stray strand',
        {
          words: `something between ${names.place(place)} and ${names.place(other)} conducts a little`,
          reason: leak,
        },
      );
    }
  }
  for (const [element, one] of job.elements.entries()) {
    const isNear = [one.from, one.to].some((pin) => {
      const facing = rework.facing[pin] ?? -1;
      return touched?.places.has(pin) === true || (facing >= 0 && touched?.places.has(facing) === true);
    });
    const ofKit = job.connectors[one.connector]?.origin === 'kit';
    const ends = terminatesOne(job, element, touched);
    if (touched !== null && !isNear && !ofKit && !ends) continue;
    if (one.kind === 'switch' || one.kind === 'drive' || one.kind === 'bridge') continue;
    const what = `${ends ? 'terminator' : one.kind} ${one.name}`;
    const origin = ofKit ? 'build error' : 'damage';
    add(
      { is: 'part open', element },
      what,
      `the ${what} does not conduct, or is not there`,
      'seldom',
      'parts are seldom faulty when they are fitted',
      origin,
      `see that the ${what} is there, and that it works`,
      one.kind === 'fuse'
        ? { words: `the ${what} conducts badly`, reason: 'its contacts are dirty or spread' }
        : { words: `the ${what} has more ohms than it should`, reason: 'another part, or one that is worn' },
    );
    if (one.kind === 'fuse') continue;
    add(
      { is: 'part bridged', element },
      what,
      `the pins of the ${what} are bridged`,
      'seldom',
      'a stray strand or a bent pin joins them',
      'installation error',
      `look at the pins of the ${what} for a stray strand`,
      {
        words: `the ${what} has fewer ohms than it should, or something lies beside it`,
        reason: `another part, or ${leak}`,
      },
    );
    if (one.kind !== 'diode') continue;
    add(
      { is: 'diode reversed', element },
      what,
      `the ${what} is fitted the wrong way round`,
      'often',
      'its mark is read from the wrong side',
      ofKit ? 'build error' : 'installation error',
      `look at the mark of the ${what}, and read it in both directions`,
    );
  }
  for (const [circuit, { name, is, wires }] of job.special.entries()) {
    if (is !== 'bus pair' || wires.length < 2 || terminated(job, circuit).ohm === null) continue;
    if (touched !== null && !wires.some((wire) => touched.wires.has(wire))) continue;
    add(
      { is: 'terminator too many', circuit },
      name,
      `there is a terminator too many on ${name}`,
      'sometimes',
      'a module that is added often brings a terminator of its own',
      'build error',
      `read between the two wires of ${name} with the power off`,
    );
  }
  for (const [end] of job.ends.entries()) {
    if (!rework.isFree(end)) continue;
    for (const place of reachOfBareEnd(rework, end))
      add(
        { is: 'bare end touches', end, place },
        `${names.end(end)} against ${names.place(place)}`,
        `${names.end(end)} lies bare and touches ${names.place(place)}`,
        'sometimes',
        'a cover left off or slipped off',
        'installation error',
        'look at the end: it is covered, and the cover holds',
        {
          words: `something between ${names.end(end)} and ${names.place(place)} conducts a little`,
          reason: `a cover that leaks, with ${leak}`,
        },
      );
  }
  return list;
}

/** Whether a part ends a bus whose wires are touched. */
function terminatesOne({ special }: Job, element: number, touched: Touched | null): boolean {
  return special.some(
    ({ is, terminators, wires }) =>
      is === 'bus pair' &&
      terminators.includes(element) &&
      (touched === null || wires.some((wire) => touched.wires.has(wire))),
  );
}

function wiresIn(rework: Rework, terminal: number): readonly number[] {
  return rework.endsOf(terminal).map((end) => rework.job.ends[end]?.wire ?? -1);
}

/** What a bare end may lie against: metal of the chassis, a feed, and the wires beside its own in their connector. */
function reachOfBareEnd(rework: Rework, end: number): readonly number[] {
  const { job } = rework;
  const found = new Set<number>();
  const chassis = job.places.findIndex((place) => place.chassis);
  if (chassis >= 0) found.add(chassis);
  for (const { places } of job.supplies) if (places[0] !== undefined) found.add(places[0]);
  for (const other of job.wires[job.ends[end]?.wire ?? -1]?.ends ?? []) {
    const place = rework.terminalPlace[rework.endTerminal[other] ?? -1] ?? -1;
    if (place < 0) continue;
    for (const one of cavityNeighbours(job, place)) if (rework.hasContact(one)) found.add(one);
  }
  return [...found].sort((a, b) => a - b);
}
