import { SeededRandom } from './seeded-random.ts';

/** A conductor of the model: ends are cavities by number (0 and up) or splices (-1 and down). */
export interface ModelWire {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  /** Whether its net is this one conductor between two cavities. */
  readonly alone: boolean;
}

/** A harness: connectors with 2..60 cavities, wires between cavities and splices. */
export interface HarnessModel {
  /** How many cavities each connector has; cavities are numbered through all of them. */
  readonly connectorSizes: readonly number[];
  /** The connector of each cavity. */
  readonly connectorOf: Int32Array;
  /** The first cavity of each connector. */
  readonly firstCavity: Int32Array;
  readonly wires: readonly ModelWire[];
  readonly spliceCount: number;
  /** Cavities that no wire uses. */
  readonly spares: readonly number[];
}

/**
 * A harness of a fixed number of conductors from a seed: 85 % of the nets are one wire, 5 % are two or three wires
 * chained through shared cavities, 10 % are a splice of 3..8 ends, each of which is another splice with probability
 * 0.1. Cavities are drawn at random and the wires are shuffled, which is the worst case for memory.
 * @param cavities - how many cavities there shall be in all; the least number that the wires need when left out.
 */
export function makeHarness(wireCount: number, seed: number, cavities = 0): HarnessModel {
  const random = new SeededRandom(seed);
  const drafts: { from: number; to: number; alone: boolean }[] = [];
  let used = 0;
  let spliceCount = 0;
  const cavity = (): number => {
    used += 1;
    return used - 1;
  };
  const room = (): boolean => drafts.length < wireCount;
  while (room()) {
    const kind = random.unit();
    if (kind < 0.85) drafts.push({ from: cavity(), to: cavity(), alone: true });
    else if (kind < 0.9) {
      let from = cavity();
      for (let left = random.between(2, 3); left > 0 && room(); left -= 1) {
        const to = cavity();
        drafts.push({ from, to, alone: false });
        from = to;
      }
    } else {
      spliceCount += 1;
      const open = [-spliceCount];
      for (let at = 0; at < open.length && room(); at += 1) {
        const ends = random.between(3, 8);
        // A splice that hangs on another one has one end taken by the wire that leads to it.
        for (let end = at === 0 ? 0 : 1; end < ends && room(); end += 1) {
          let to: number;
          if (random.unit() < 0.1) {
            spliceCount += 1;
            to = -spliceCount;
            open.push(to);
          } else to = cavity();
          drafts.push({ from: open[at] as number, to, alone: false });
        }
      }
    }
  }
  const total = Math.max(cavities, used);
  const connectorSizes: number[] = [];
  for (let left = total; left > 0; ) {
    const size = Math.min(left, random.between(2, 60));
    connectorSizes.push(size);
    left -= size;
  }
  const connectorOf = new Int32Array(total);
  const firstCavity = new Int32Array(connectorSizes.length);
  let next = 0;
  for (const [connector, size] of connectorSizes.entries()) {
    firstCavity[connector] = next;
    connectorOf.fill(connector, next, next + size);
    next += size;
  }
  const places = Array.from({ length: total }, (_, index) => index);
  random.shuffle(places);
  random.shuffle(drafts);
  const placed = (point: number): number => (point < 0 ? point : (places[point] as number));
  const wires = drafts.map(
    ({ from, to, alone }, index): ModelWire => ({
      name: `W${index + 1}`,
      from: placed(from),
      to: placed(to),
      alone,
    }),
  );
  return { connectorSizes, connectorOf, firstCavity, wires, spliceCount, spares: places.slice(used) };
}

/** The name of a point of the model, such as `X12:7` for a cavity or `S2` for a splice. */
export function pointName(model: HarnessModel, point: number): string {
  if (point < 0) return `S${-point}`;
  const connector = model.connectorOf[point] as number;
  return `X${connector + 1}:${point - (model.firstCavity[connector] as number) + 1}`;
}
