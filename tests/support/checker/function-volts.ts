import { denseStates } from '../oracle/dense-network.ts';
import type { CopperView } from './copper-walk.ts';
import type { HarnessRecord } from './harness-record.ts';

/** A state of a harness: which copper, which fuses are out, what is switched on, and which devices are there. */
export type FunctionState = {
  readonly view: CopperView;
  readonly fusesOut: ReadonlySet<string>;
  readonly on: ReadonlySet<string>;
  /** Whether what the kit brings is there. */
  readonly withKit: boolean;
  /** Coils that are on when the state begins; none where nothing is said. */
  readonly coilsOn?: ReadonlySet<string>;
};

/** Volts below this are what a conducting diode leaves. */
export const noVolt = 1e-3;
const diodeOhm = 1e-6;
const mostDiodes = 8;

/**
 * The volts across every load, found by joining all that is closed to pieces of metal and solving each group of loads and
 * diodes between the pieces that something holds with the plain solver. Relays are put on one after the other until
 * nothing changes.
 * @returns null for a load that depends on what is not said, or on more than the plain solver can try; nothing at all
 * where metal joins two voltages, or where relays go on and off for ever.
 */
export function functionVolts(
  record: HarnessRecord,
  state: FunctionState,
): ReadonlyMap<string, number | null> | null {
  const coils = record.elements.filter((one) => one.kind === 'coil');
  let coilsOn = new Set<string>(state.coilsOn);
  for (let turn = 0; turn < coils.length + 2; turn += 1) {
    const volts = voltsWith(record, state, coilsOn);
    if (volts === null) return null;
    if (coils.some(({ name }) => volts.get(name) === null)) return null;
    const now = new Set(
      coils.flatMap(({ name, unlitVolts }) =>
        (volts.get(name) ?? 0) > Math.max(noVolt, unlitVolts) ? [name] : [],
      ),
    );
    if (now.size === coilsOn.size && [...now].every((name) => coilsOn.has(name))) return volts;
    coilsOn = now;
  }
  return null;
}

function voltsWith(
  record: HarnessRecord,
  state: FunctionState,
  coilsOn: ReadonlySet<string>,
): ReadonlyMap<string, number | null> | null {
  const { view, fusesOut, on, withKit } = state;
  const parent = new Map<string, string>();
  const find = (point: string): string => {
    let at = point;
    for (let up = parent.get(at); up !== undefined; up = parent.get(at)) at = up;
    return at;
  };
  const unite = (a: string, b: string): void => {
    const [one, other] = [find(a), find(b)];
    if (one !== other) parent.set(one, other);
  };
  for (const { from, to } of view.joins) unite(from, to);
  const metal = record.places.filter(({ chassis }) => chassis);
  for (const { address } of metal) unite(address, metal[0]?.address ?? address);
  const elements = record.elements.filter(({ kit }) => withKit || !kit);
  for (const { kind, name, from, to, workedBy, restClosed } of elements) {
    const closed =
      kind === 'bridge' ||
      (kind === 'fuse' && !fusesOut.has(name)) ||
      (kind === 'drive' && on.has(name)) ||
      (kind === 'switch' && (workedBy === null ? on.has(name) : coilsOn.has(workedBy) !== restClosed));
    if (closed) unite(from, to);
  }
  const held = new Map<string, number>();
  let torn = false;
  const hold = (address: string, volt: number): void => {
    const piece = find(address);
    if (held.has(piece) && held.get(piece) !== volt) torn = true;
    held.set(piece, volt);
  };
  for (const address of record.returns) hold(address, 0);
  for (const { places, volts } of record.feeds) for (const address of places) hold(address, volts ?? 0);
  const fed = new Set(record.feeds.flatMap(({ places }) => places));
  const volts = record.feeds[0]?.volts ?? 0;
  for (const { address, source, kit } of record.places) {
    if (fed.has(address) || (kit && !withKit)) continue;
    const isOn = source === 'always' || ((source === 'driven' || source === 'switched') && on.has(address));
    if (isOn) hold(address, volts);
  }
  if (torn) return null;
  const bridging = elements.filter(({ kind }) => kind === 'load' || kind === 'coil' || kind === 'diode');
  const found = new Map<string, number | null>();
  const done = new Set<string>();
  for (const start of bridging) {
    if (done.has(start.name)) continue;
    const group = [start];
    done.add(start.name);
    for (let at = 0; at < group.length; at += 1)
      for (const point of [group[at]?.from ?? '', group[at]?.to ?? '']) {
        if (held.has(find(point))) continue;
        for (const one of bridging)
          if (!done.has(one.name) && [one.from, one.to].some((end) => find(end) === find(point))) {
            done.add(one.name);
            group.push(one);
          }
      }
    for (const [name, volt] of solveGroup(group, find, held)) found.set(name, volt);
  }
  return found;
}

function solveGroup(
  group: HarnessRecord['elements'],
  find: (point: string) => string,
  held: ReadonlyMap<string, number>,
): ReadonlyMap<string, number | null> {
  const numbers = new Map<string, number>();
  const at = (point: string): number => {
    const piece = find(point);
    const known = numbers.get(piece);
    if (known !== undefined) return known;
    numbers.set(piece, numbers.size + 1);
    return numbers.size;
  };
  const loads = group.filter(({ kind }) => kind !== 'diode');
  const all = (volt: (from: number, to: number) => number | null): ReadonlyMap<string, number | null> =>
    new Map(loads.map(({ name, from, to }) => [name, volt(at(from), at(to))]));
  const network = group.map(({ kind, from, to, ohm, watts, volts }) =>
    kind === 'diode'
      ? { kind: 'diode' as const, from: at(from), to: at(to), forwardVolt: 0, onOhm: diodeOhm }
      : {
          kind: 'resistor' as const,
          from: at(from),
          to: at(to),
          ohm: ohm ?? (watts !== null && volts !== null ? (volts * volts) / watts : Number.NaN),
        },
  );
  const poles = [...numbers].flatMap(([piece, to]) => {
    const volt = held.get(piece);
    return volt === undefined ? [] : [{ kind: 'voltage-source' as const, from: 0, to, volt, ohm: 0 }];
  });
  if (new Set(poles.map(({ volt }) => volt)).size < 2) return all(() => 0);
  const [only] = loads;
  if (group.length === 1 && only !== undefined) {
    const [a, b] = [held.get(find(only.from)) ?? 0, held.get(find(only.to)) ?? 0];
    return new Map([[only.name, Math.abs(a - b)]]);
  }
  const unsaid = network.some((one) => one.kind === 'resistor' && !(one.ohm > 0));
  if (unsaid || network.filter(({ kind }) => kind === 'diode').length > mostDiodes) return all(() => null);
  const [state] = denseStates(
    { nodeCount: numbers.size + 1, reference: 0, elements: [...poles, ...network] },
    1e-4,
  );
  return all((from, to) =>
    state === undefined ? null : Math.abs((state.volts[from] ?? 0) - (state.volts[to] ?? 0)),
  );
}
