import { judgeKit } from '../oracle/judge-kit.ts';
import type { ConnectorRow, KitDocument, StepRow, WireRow } from '../oracle/kit-document.ts';
import { obligationOfKind } from '../oracle/problem.ts';
import { connectorOf, labelOf, partRowOf } from './kit-draft.ts';
import type { Mistake, Mistaken } from './mistake.ts';
import {
  leaveOut,
  otherPart,
  someStep,
  withPartCount,
  withStep,
  withStepMoved,
  withStepsAdded,
} from './mistake.ts';
import type { RandomChoice } from './random-choice.ts';
import { namesAreThere, namesUsedBy } from './step-names.ts';

function connectorRow(kit: KitDocument, name: string): ConnectorRow | undefined {
  return kit.stock.connectors?.get(name) ?? kit.bag?.connectors?.get(name);
}

function otherCavity(kit: KitDocument, address: string, random: RandomChoice): string | null {
  const connector = connectorOf(address);
  const others = (connectorRow(kit, connector)?.cavities ?? []).filter((label) => label !== labelOf(address));
  return others.length === 0 ? null : `${connector}:${random.pick(others)}`;
}

const wrongCavity: Mistake = (kit, random) => {
  const found = someStep(kit, random, ['insert', 'withdraw']);
  const cavity = found === null ? null : otherCavity(kit, found.step.cavity, random);
  return found === null || cavity === null ? null : withStep(kit, found.index, { ...found.step, cavity });
};

const exchangedInserts: Mistake = (kit, random) => {
  const inserts = random.shuffled(
    kit.work.flatMap((step, index) => (step.do === 'insert' ? [{ step, index }] : [])),
  );
  const [one, other] = inserts;
  if (one === undefined || other === undefined) return null;
  const work = kit.work
    .with(one.index, { ...one.step, cavity: other.step.cavity })
    .with(other.index, { ...other.step, cavity: one.step.cavity });
  return { kit: { ...kit, work }, steps: [one.index + 1, other.index + 1].sort((a, b) => a - b) };
};

const exchangedJoins: Mistake = (kit, random) => {
  const joins = random.shuffled(
    kit.work.flatMap((step, index) => (step.do === 'join' ? [{ step, index }] : [])),
  );
  const [one, other] = joins;
  if (one === undefined || other === undefined) return null;
  const [a, b] = [random.pick(one.step.ends), random.pick(other.step.ends)];
  const exchange = (ends: string[]): string[] => ends.map((end) => (end === a ? b : end === b ? a : end));
  const work = kit.work
    .with(one.index, { ...one.step, ends: exchange(one.step.ends) })
    .with(other.index, { ...other.step, ends: exchange(other.step.ends) });
  const changed = { ...kit, work };
  return namesAreThere(changed)
    ? { kit: changed, steps: [one.index + 1, other.index + 1].sort((x, y) => x - y) }
    : null;
};

/** Stock wires that no step speaks of. */
function untouchedWires(kit: KitDocument): [string, WireRow][] {
  const used = new Set(kit.work.flatMap(namesUsedBy));
  return [...(kit.stock.wires ?? [])].filter(([name]) => !used.has(name));
}

const wrongWireCut: Mistake = (kit, random) => {
  const cuts = kit.work.flatMap((step, index) =>
    step.do === 'cut' && kit.stock.wires?.has(step.wire) === true ? [{ step, index }] : [],
  );
  const wires = untouchedWires(kit);
  if (cuts.length === 0 || wires.length === 0) return null;
  const { step, index } = random.pick(cuts);
  const [wire, row] = random.pick(wires);
  const meant = kit.stock.wires?.get(step.wire);
  if (meant === undefined) return null;
  // Later steps speak of the pieces by the ends that they really have.
  const rename = (text: string): string => {
    const [piece, label] = [text.slice(0, text.lastIndexOf('@')), text.slice(text.lastIndexOf('@') + 1)];
    if (!step.leaves.includes(piece)) return text;
    return `${piece}@${label === meant.from ? row.from : label === meant.to ? row.to : label}`;
  };
  const distance = step.at.split(' mm')[0] ?? '100';
  const measuredFrom = step.at.endsWith(` from ${meant.from}`) ? row.from : row.to;
  const work = kit.work.map((one, at): StepRow => {
    if (at === index) return { ...step, wire, at: `${distance} mm from ${measuredFrom}` };
    if (at < index) return one;
    if (one.do === 'join' || one.do === 'fit terminal') return { ...one, ends: one.ends.map(rename) };
    if ('end' in one && one.end.includes('@')) return { ...one, end: rename(one.end) };
    if (one.do === 'tap')
      return {
        ...one,
        branch: rename(one.branch),
        ...(step.leaves.includes(one.run) ? { at: one.at.replace(meant.from, row.from) } : {}),
      };
    return one;
  });
  const changed = { ...kit, work };
  return namesAreThere(changed) && !work.slice(0, index).some((one) => namesUsedBy(one).includes(wire))
    ? { kit: changed, steps: [index + 1] }
    : null;
};

const wrongWireTapped: Mistake = (kit, random) => {
  const found = someStep(kit, random, ['tap']);
  const wires = untouchedWires(kit);
  if (found === null || wires.length === 0) return null;
  const [run, row] = random.pick(wires);
  const distance = found.step.at.split(' mm')[0] ?? '100';
  return withStep(kit, found.index, { ...found.step, run, at: `${distance} mm from ${row.from}` });
};

const wrongStud: Mistake = (kit, random) => {
  const found = someStep(kit, random, ['attach']);
  const studs = [...(kit.stock.studs?.keys() ?? [])].filter((name) => name !== found?.step.stud);
  return found === null || studs.length === 0
    ? null
    : withStep(kit, found.index, { ...found.step, stud: random.pick(studs) });
};

const wrongOrder: Mistake = (kit, random) => {
  if (kit.work.length < 2) return null;
  const from = 1 + random.below(kit.work.length - 1);
  return withStepMoved(kit, from, random.chance(0.5) ? from - 1 : random.below(from));
};

const reconnectedTooEarly: Mistake = (kit, random) => {
  const found = someStep(kit, random, ['reconnect']);
  if (found === null) return null;
  const off = kit.work.findIndex((step) => step.do === 'disconnect' && step.supply === found.step.supply);
  return withStepMoved(kit, found.index, off + 1 + random.below(found.index - off));
};

const swappedStub: Mistake = (kit, random) => {
  const stubs = kit.wanted.stubs ?? [];
  if (stubs.length === 0) return null;
  const index = random.below(stubs.length);
  const changed = stubs.map((row, at) =>
    at === index ? { ...row, is: row.is === 'live' ? ('dead' as const) : ('live' as const) } : row,
  );
  return { kit: { ...kit, wanted: { ...kit.wanted, stubs: changed } }, steps: [] };
};

const undeclaredStub: Mistake = (kit, random) => {
  const stubs = kit.wanted.stubs ?? [];
  if (stubs.length === 0) return null;
  const index = random.below(stubs.length);
  return { kit: { ...kit, wanted: { ...kit.wanted, stubs: stubs.toSpliced(index, 1) } }, steps: [] };
};

const stubThatIsNone: Mistake = (kit, random) => {
  const wires = untouchedWires(kit);
  if (wires.length === 0) return null;
  const [of, row] = random.pick(wires);
  if (!row.from.includes(':')) return null;
  const stubs = [
    ...(kit.wanted.stubs ?? []),
    { of, at: row.from, is: random.pick(['live', 'dead'] as const) },
  ];
  return { kit: { ...kit, wanted: { ...kit.wanted, stubs } }, steps: [] };
};

/** An own conductor of somebody else is cut and spliced back, with a splice of the kit. */
const unnamedWireCut: Mistake = (kit, random) => {
  const wires = untouchedWires(kit);
  if (wires.length === 0) return null;
  const [wire, row] = random.pick(wires);
  const first = kit.work.findIndex(
    (step) => step.do === 'cut' || step.do === 'withdraw' || step.do === 'insert',
  );
  if (first < 0) return null;
  const name = 'splice for the unnamed';
  const steps: StepRow[] = [
    { do: 'cut', wire, at: `250 mm from ${row.from}`, leaves: ['unnamed near', 'unnamed far'] },
    { do: 'strip', end: 'unnamed near@cut' },
    { do: 'strip', end: 'unnamed far@cut' },
    {
      do: 'join',
      ends: ['unnamed near@cut', 'unnamed far@cut'],
      with: name,
      as: 'unnamed joint',
      zone: 'dry',
    },
    { do: 'seal', joint: 'unnamed joint' },
  ];
  const { kit: changed, steps: numbers } = withStepsAdded(kit, first, steps);
  return {
    kit: withPartCount(
      { ...changed, parts: new Map([...(kit.parts ?? []), [name, partRowOf('splice')]]) },
      name,
      1,
    ),
    steps: numbers,
  };
};

const bagCount: Mistake = (kit, random) => {
  const parts = [...(kit.bag?.parts?.keys() ?? [])];
  return parts.length === 0
    ? null
    : { kit: withPartCount(kit, random.pick(parts), random.pick([1, -1])), steps: [] };
};

const zoneNotSaid: Mistake = (kit, random) => {
  const found = kit.work.flatMap((step, index) =>
    step.do === 'cut' || step.do === 'tap' || step.do === 'join' ? [{ step, index }] : [],
  );
  if (found.length === 0) return null;
  const { step, index } = random.pick(found);
  const { zone: _, ...bare } = step;
  const changed = kit.work.with(index, bare as StepRow);
  const parts = new Map(
    [...(kit.parts ?? [])].map(([name, row]) => [
      name,
      row.zone === 'wet' ? { ...row, zone: 'dry' as const } : row,
    ]),
  );
  const { zone: __, ...stock } = kit.stock;
  return { kit: { ...kit, parts, stock, work: changed }, steps: [index + 1] };
};

const wetZone: Mistake = (kit, random) => {
  const found = kit.work.flatMap((step, index) =>
    step.do === 'cut' || step.do === 'tap' || step.do === 'join' ? [{ step, index }] : [],
  );
  if (found.length === 0) return null;
  const { step, index } = random.pick(found);
  const parts = new Map(
    [...(kit.parts ?? [])].map(([name, row]) => [
      name,
      row.zone === 'wet' ? { ...row, zone: 'dry' as const } : row,
    ]),
  );
  return {
    kit: { ...kit, parts, work: kit.work.with(index, { ...step, zone: random.pick(['wet', 'dry']) }) },
    steps: [index + 1],
  };
};

const rangeNotSaid: Mistake = (kit, random) => {
  const used = new Set(
    kit.work.flatMap((step) => ('with' in step && step.with !== undefined ? [step.with] : [])),
  );
  const names = [...used].filter((name) => kit.parts?.get(name)?.size !== undefined);
  if (names.length === 0) return null;
  const name = random.pick(names);
  const { size: _, ...row } = kit.parts?.get(name) ?? { is: 'plug' as const };
  return { kit: { ...kit, parts: new Map([...(kit.parts ?? []), [name, row]]) }, steps: [] };
};

const sizeNotSaid: Mistake = (kit, random) => {
  const wires = [...(kit.bag?.wires ?? [])];
  if (wires.length === 0) return null;
  const [name, { size: _, ...row }] = random.pick(wires);
  return {
    kit: { ...kit, bag: { ...kit.bag, wires: new Map([...(kit.bag?.wires ?? []), [name, row]]) } },
    steps: [],
  };
};

const thinnerWire: Mistake = (kit, random) => {
  const wires = [...(kit.bag?.wires ?? [])];
  if (wires.length === 0) return null;
  const [name, row] = random.pick(wires);
  const size = random.pick(['0.2 mm2', '4 mm2']);
  return {
    kit: {
      ...kit,
      bag: { ...kit.bag, wires: new Map([...(kit.bag?.wires ?? []), [name, { ...row, size }]]) },
    },
    steps: [],
  };
};

const apartThoughOne: Mistake = (kit, random) => {
  const nets = [...(kit.wanted.circuits?.values() ?? [])].filter((places) => places.length > 1);
  if (nets.length === 0) return null;
  const found = someStep(kit, random, ['insert', 'attach']);
  if (found === null) return null;
  const wrong = found.step.do === 'insert' ? wrongCavity(kit, random) : wrongStud(kit, random);
  if (wrong === null) return null;
  const target = found.step.do === 'insert' ? found.step.cavity : found.step.stud;
  const places = [...(kit.stock.studs?.keys() ?? [])];
  const apart = [...(kit.wanted.apart ?? []), [target, random.pick(places)]];
  return target === apart[apart.length - 1]?.[1]
    ? null
    : { kit: { ...wrong.kit, wanted: { ...kit.wanted, apart } }, steps: wrong.steps };
};

const withoutDistinct: Mistake = (kit, random) => {
  const names = [...(kit.stock.boundaries?.keys() ?? [])];
  if (names.length < 2) return null;
  const boundaries = new Map(
    names.map((name) => [
      name,
      { source: 'never' as const, ...(random.chance(0.3) ? { distinct: 'yes' as const } : {}) },
    ]),
  );
  const apart = [...(kit.wanted.apart ?? []), random.shuffled(names).slice(0, 2)];
  return {
    kit: { ...kit, stock: { ...kit.stock, boundaries }, wanted: { ...kit.wanted, apart } },
    steps: [],
  };
};

const unmatchedDeviation: Mistake = (kit, random) => {
  const allows = random.pick(['size-out-of-range', 'part-unused', 'work-on-live', 'second-splice']);
  const deviations = [{ allows, by: 'the workshop', why: 'no better part' }];
  return { kit: { ...kit, wanted: { ...kit.wanted, deviations } }, steps: [] };
};

const flexZone: Mistake = (kit, random) => {
  const found = someStep(kit, random, ['tap', 'cut']);
  if (found === null) return null;
  const name = found.step.do === 'tap' ? found.step.run : found.step.wire;
  const row = kit.stock.wires?.get(name);
  if (row === undefined) return null;
  const wires = new Map([...(kit.stock.wires ?? []), [name, { ...row, flex: 'yes' as const }]]);
  return { kit: { ...kit, stock: { ...kit.stock, wires } }, steps: [] };
};

const unplugAtTheEnd: Mistake = (kit, random) => {
  const found = someStep(kit, random, ['plug']);
  if (found === null) return null;
  const at = kit.work.length - random.below(2);
  return withStepsAdded(kit, at, [{ do: 'unplug', connector: found.step.connector }]);
};

const unfitTerminal: Mistake = (kit, random) => {
  const found = someStep(kit, random, ['insert']);
  const name = found === null ? '' : connectorOf(found.step.cavity);
  const row = kit.stock.connectors?.get(name);
  if (row?.accepts === undefined || found === null) return null;
  const other = 'part of another maker';
  const parts = new Map([...(kit.parts ?? []), [other, partRowOf('terminal')]]);
  const connectors = new Map([...(kit.stock.connectors ?? []), [name, { ...row, accepts: [other] }]]);
  return { kit: { ...kit, parts, stock: { ...kit.stock, connectors } }, steps: [] };
};

const sourceNotSaid: Mistake = (kit, random) => {
  const devices = [...(kit.stock.connectors ?? [])].filter(
    ([, row]) => row.device === 'yes' && row.source !== undefined,
  );
  if (devices.length === 0) return null;
  const [name, { source: _, ...row }] = random.pick(devices);
  const connectors = new Map([...(kit.stock.connectors ?? []), [name, row]]);
  return { kit: { ...kit, stock: { ...kit.stock, connectors } }, steps: [] };
};

const circuitDropped: Mistake = (kit, random) => {
  const names = [...(kit.wanted.circuits?.keys() ?? [])];
  if (names.length < 2) return null;
  const circuits = new Map(kit.wanted.circuits);
  circuits.delete(random.pick(names));
  return { kit: { ...kit, wanted: { ...kit.wanted, circuits } }, steps: [] };
};

const moreEnds: Mistake = (kit, random) => {
  const found = someStep(kit, random, ['join', 'fit terminal']);
  if (found === null) return null;
  const part = kit.parts?.get(found.step.with);
  if (part === undefined) return null;
  const narrow = found.step.do === 'join' ? { ...part, ends: '1' } : part;
  if (found.step.ends.length < 2) return null;
  const parts = new Map([
    ...(kit.parts ?? []),
    [found.step.with, found.step.do === 'join' ? narrow : { ...part, wires: '1' }],
  ]);
  return { kit: { ...kit, parts }, steps: [found.index + 1] };
};

const fewerRings: Mistake = (kit, random) => {
  const found = someStep(kit, random, ['attach']);
  const row = kit.stock.studs?.get(found?.step.stud ?? '');
  if (found === null || row === undefined) return null;
  const studs = new Map([...(kit.stock.studs ?? []), [found.step.stud, { ...row, holds: '1' }]]);
  return { kit: { ...kit, stock: { ...kit.stock, studs } }, steps: [found.index + 1] };
};

/** Breaches of a rule that a designer may allow for a reason. */
const allowable: readonly Mistake[] = [
  otherPart('join', ['splice'], ['thick splice']),
  otherPart('tap', ['tap'], ['thick tap']),
  otherPart('fit terminal', ['terminal'], ['thick terminal']),
  otherPart('cover', ['cover'], ['thick cap']),
  leaveOut('fit plug'),
  leaveOut('fit seal'),
  leaveOut('place'),
  leaveOut('reconnect'),
  leaveOut('close lock', 'close latch'),
  bagCount,
  flexZone,
  fewerRings,
  moreEnds,
  unfitTerminal,
  rangeNotSaid,
];

/** Kinds of breach whose place a deviation can say. */
const placeable: ReadonlySet<string> = new Set([
  'open-cavity',
  'part-unused',
  'part-missing',
  'terminal-unfit',
  'size-out-of-range',
]);

/** A rule is broken, and deviations allow it; now and then they leave something out. */
const allowedBreach: Mistake = (kit, random) => {
  const made = random
    .shuffled(allowable)
    .map((mistake) => mistake(kit, random))
    .find((one) => one !== null);
  if (made === undefined || made === null) return null;
  const broken = judgeKit(made.kit).problems.filter(
    (one) => [6, 7].includes(obligationOfKind.get(one.kind) ?? 0) && one.kind !== 'step-refused',
  );
  if (broken.length === 0) return null;
  const kinds = [...new Set(broken.map((one) => one.kind))];
  const deviations = kinds
    .filter((_, index) => index === 0 || random.chance(0.8))
    .flatMap((allows) => {
      const places = [...new Set(broken.flatMap((one) => (one.kind === allows ? [one.about] : [])))];
      const said = { by: 'the head of service', why: 'no other part to be had' };
      // A deviation allows one thing; where there are several, each needs its own that says where.
      const needsPlace = broken.filter((one) => one.kind === allows).length > 1 || random.chance(0.3);
      const canBeSaid =
        placeable.has(allows) && places.every((at) => allows !== 'size-out-of-range' || at.includes('@'));
      return canBeSaid && needsPlace ? places.map((at) => ({ allows, at, ...said })) : [{ allows, ...said }];
    });
  return { kit: { ...made.kit, wanted: { ...kit.wanted, deviations } }, steps: made.steps };
};

/** Every mistake by name. */
export const mistakes = {
  stepLeftOut: leaveOut(),
  coverLeftOut: leaveOut('cover'),
  sealLeftOut: leaveOut('seal'),
  joinLeftOut: leaveOut('join'),
  cutLeftOut: leaveOut('cut'),
  lockLeftOpen: leaveOut('close lock', 'close latch'),
  plugLeftOut: leaveOut('plug'),
  unplugLeftOut: leaveOut('unplug'),
  lockNotOpened: leaveOut('open lock', 'open latch'),
  supplyLeftOff: leaveOut('reconnect'),
  supplyLeftOn: leaveOut('disconnect'),
  plugNotFitted: leaveOut('fit plug', 'remove plug'),
  wireSealLeftOut: leaveOut('fit seal', 'remove seal'),
  jumperLeft: leaveOut('remove jumper'),
  notPlaced: leaveOut('place'),
  woundLeftOpen: leaveOut('remove tap'),
  offCutLeft: leaveOut('remove off-cut'),
  insertLeftOut: leaveOut('insert', 'attach'),
  fuseLeftOut: leaveOut('fit fuse'),
  wrongCavity,
  exchangedInserts,
  exchangedJoins,
  wrongWireCut,
  wrongWireTapped,
  wrongStud,
  wrongOrder,
  reconnectedTooEarly,
  swappedStub,
  undeclaredStub,
  stubThatIsNone,
  unnamedWireCut,
  bagCount,
  zoneNotSaid,
  wetZone,
  rangeNotSaid,
  sizeNotSaid,
  thinnerWire,
  apartThoughOne,
  withoutDistinct,
  unmatchedDeviation,
  allowedBreach,
  flexZone,
  unplugAtTheEnd,
  unfitTerminal,
  sourceNotSaid,
  circuitDropped,
  moreEnds,
  fewerRings,
  otherSplice: otherPart(
    'join',
    ['splice'],
    ['thick splice', 'dry splice', 'plain splice', 'two-way splice'],
  ),
  otherTap: otherPart('tap', ['tap'], ['thick tap', 'dry tap']),
  otherTerminal: otherPart(
    'fit terminal',
    ['terminal'],
    ['thick terminal', 'unsized terminal', 'ring', 'terminal'],
  ),
  otherCap: otherPart('cover', ['cover'], ['thick cap', 'dry cap', 'tape']),
  otherSeal: otherPart('fit seal', ['seal'], ['thick seal']),
} as const satisfies Record<string, Mistake>;

/** The name of a mistake. */
export type MistakeName = keyof typeof mistakes;

/** Makes the mistake of that name; where the kit has no room for it, the first other one for which it has. */
export function makeMistake(
  kit: KitDocument,
  name: MistakeName,
  random: RandomChoice,
): Mistaken & { readonly name: MistakeName } {
  const names = [name, ...random.shuffled(Object.keys(mistakes) as MistakeName[])];
  for (const one of names) {
    const made = mistakes[one](kit, random);
    if (made !== null) return { ...made, name: one };
  }
  throw new RangeError('makeMistake: a kit in which nothing can go wrong');
}
