import { denseStates } from '../oracle/dense-network.ts';
import type { CopperView } from './copper-walk.ts';
import type { ElementRecord, HarnessRecord } from './harness-record.ts';
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

/** A limit that is told to be broken has to be; losses and currents are worked out again with the plain solver. */
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
  if (!solvedKinds.has(finding.kind)) return [...problems, ...checkRating(finding, witness, record)];
  const off = new Set((quantity.split(' with ')[1] ?? '').split(', ').map((one) => one.replace(/ off$/, '')));
  const flow = flowOf(off, record, view, end);
  const name = finding.points[0] ?? '';
  const own = finding.kind === 'drop-too-large' ? flow?.loss(name) : flow?.ampere(name);
  if (own !== undefined && own !== null && !(Math.abs(own - value) <= 1e-6 * Math.max(1, own)))
    problems.push(`${quantity} of ${name} is ${own} and not ${value}`);
  return problems;
}

/** Kinds of findings whose value is worked out anew. */
const solvedKinds: ReadonlySet<string> = new Set([
  'drop-too-large',
  'conductor-overloaded',
  'fuse-overloaded',
  'drive-overloaded',
  'drive-underloaded',
]);

/** A fuse that is told to be too large, or several together, have the rating that is told. */
function checkRating(
  finding: FindingJson,
  { quantity, value }: Extract<WitnessJson, { is: 'limit' }>,
  record: HarnessRecord,
): readonly string[] {
  const one = /^fuse (.*)$/.exec(quantity)?.[1];
  const names = one === undefined ? /^fuses (.*) together$/.exec(quantity)?.[1]?.split(' and ') : [one];
  if (finding.kind !== 'conductor-unprotected' || names === undefined) return [];
  let sums: readonly number[] = [0];
  for (const name of names) {
    const ratings = [
      ...record.elements.filter((element) => element.name === name).map(({ ratingAmps }) => ratingAmps),
      ...record.steps
        .filter(({ fuse }) => fuse === name)
        .flatMap(({ takes }) => takes.map((part) => record.fuseRatings.get(part))),
    ];
    sums = sums.flatMap((sum) => ratings.map((rating) => sum + (rating ?? Number.NaN)));
  }
  return sums.includes(value) ? [] : [`${names.join(' and ')} let no ${value} A through`];
}

/** What flows in one state: what a load loses, and what an element carries; null where that is not clear. */
type StateFlow = {
  readonly loss: (load: string) => number | null;
  readonly ampere: (element: string) => number | null;
};

function flowOf(
  off: ReadonlySet<string>,
  record: HarnessRecord,
  view: CopperView,
  end: Moment,
): StateFlow | null {
  const feedVolts = new Set(record.feeds.map(({ volts }) => volts));
  const [first = null] = feedVolts;
  if (first === null || feedVolts.has(null)) return null;
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
  /** The branches of a wire, which may be in pieces, or of an element. */
  const branchesOf = new Map<string, number[]>();
  const remember = (name: string): void => {
    branchesOf.set(name, [...(branchesOf.get(name) ?? []), branches.length]);
  };
  /** Nodes that metal joins while no load counts, for the supply that a load hangs on. */
  const metal: (readonly [number, number])[] = [];
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
    if (by === 'conductor') remember(name ?? '');
    known = resist(from, to, ohm) && known;
    metal.push([at(from), at(to)]);
  }
  type Load = { name: string; from: number; to: number; one: ElementRecord };
  const loads: Load[] = [];
  for (const one of record.elements) {
    const { kind, name, from, to, workedBy, restClosed } = one;
    if (kind === 'load' || kind === 'coil') {
      if (!off.has(name)) loads.push({ name, from: at(from), to: at(to), one });
    } else if (kind === 'diode') {
      const onOhm = one.ohm ?? 0.01;
      branches.push({ kind, from: at(from), to: at(to), forwardVolt: one.dropVolts ?? 0, onOhm });
      metal.push([at(from), at(to)]);
    } else {
      const open = workedBy === null ? off.has(name) : off.has(workedBy) !== restClosed;
      if (open || (kind === 'fuse' && end.fusesOut.has(name))) continue;
      remember(name);
      known = resist(from, to, one.ohm ?? joint('contact')) && known;
      metal.push([at(from), at(to)]);
    }
  }
  const held = new Map<number, number>();
  for (const { address, chassis, source } of record.places) {
    const isReturn = chassis || record.returns.includes(address);
    const feed = record.feeds.find(({ places }) => places.includes(address));
    const isSource = source === 'always' || source === 'driven' || source === 'switched';
    if (off.has(address) || !numbers.has(address)) continue;
    if (!isReturn && feed === undefined && !isSource) continue;
    // Which of several supplies is behind a source pin is not told.
    if (!isReturn && feed === undefined && feedVolts.size > 1) return null;
    const volt = isReturn ? 0 : (feed?.volts ?? first);
    held.set(at(address), volt);
    branches.push({ kind: 'voltage-source', from: 0, to: at(address), volt, ohm: 0 });
  }
  if (!known || numbers.size + branches.length + loads.length > mostUnknowns) return null;
  const solve = (taking: readonly Branch[]): ReturnType<typeof denseStates>[number] | null => {
    const elements = [...branches, ...taking];
    return denseStates({ nodeCount: numbers.size + 1, reference: 0, elements }, 1e-6)[0] ?? null;
  };
  const trial = solve(loads.map(({ from, to, one }) => ({ kind: 'resistor', from, to, ohm: ohmOf(one) })));
  if (trial === null) return null;
  const taking: Branch[] = [];
  const nominal = new Map<string, number>();
  for (const { name, from, to, one } of loads) {
    const across = (trial.volts[from] ?? 0) - (trial.volts[to] ?? 0);
    if (Math.abs(across / ohmOf(one)) <= 1e-9) continue;
    const volts = polesOn(across > 0 ? from : to, metal, held);
    const [volt] = volts;
    const ampere = volt === undefined ? null : designAmpere(one, volt);
    // A load on metal that meets several voltages has no voltage of its own.
    if (volt === undefined || volts.size > 1 || ampere === null) return null;
    nominal.set(name, volt);
    taking.push({ kind: 'current-source', from, to, ampere: Math.sign(across) * ampere });
  }
  const state = solve(taking);
  if (state === null) return null;
  return {
    loss: (load) => {
      const own = loads.find(({ name }) => name === load);
      const volt = nominal.get(load);
      if (own === undefined || volt === undefined) return null;
      return volt - Math.abs((state.volts[own.from] ?? 0) - (state.volts[own.to] ?? 0));
    },
    ampere: (element) => {
      const own = branchesOf.get(element) ?? [];
      return own.length === 0 ? null : Math.max(...own.map((branch) => Math.abs(state.amperes[branch] ?? 0)));
    },
  };
}

/** The volts above zero that poles hold on the metal around a node, which ends at any pole. */
function polesOn(
  start: number,
  metal: readonly (readonly [number, number])[],
  held: ReadonlyMap<number, number>,
): ReadonlySet<number> {
  const reached = new Set([start]);
  for (let changed = true; changed; ) {
    changed = false;
    for (const [a, b] of metal)
      for (const [one, other] of [
        [a, b],
        [b, a],
      ] as const) {
        if (!reached.has(one) || reached.has(other) || held.has(one)) continue;
        reached.add(other);
        changed = true;
      }
  }
  return new Set([...reached].flatMap((node) => held.get(node) ?? []).filter((volt) => volt > 0));
}

function ohmOf({ ohm, watts, volts }: ElementRecord): number {
  return ohm ?? (watts !== null && volts !== null ? (volts * volts) / watts : 20);
}

function designAmpere({ ohm, watts, volts }: ElementRecord, nominal: number): number | null {
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
