import type { IsPlugged, Join } from './copper.ts';
import { groupsOf, pointOf } from './copper.ts';
import { isLoose } from './do-step.ts';
import { placesIn } from './expected-partition.ts';
import type { HarnessState } from './harness-state.ts';
import { endsOf } from './harness-state.ts';
import type { WantedRows } from './kit-document.ts';
import { livePoints } from './live-points.ts';
import type { Problem } from './problem.ts';

/** A conductor piece with a free end when the work is done. */
export type Stub = {
  readonly piece: string;
  readonly wire: string;
  /** The places that it is joined to. */
  readonly attached: ReadonlySet<string>;
  /** Whether a source reaches it; `maybe` where only an unknown source does. */
  readonly live: 'yes' | 'maybe' | 'no';
};

/** Every conductor piece with a free end. */
export function stubsOf(after: HarnessState, isPlugged: IsPlugged, copper: readonly Join[]): Stub[] {
  const everySupply = new Set(after.facts.supplies.keys());
  const certain = livePoints(
    after,
    isPlugged,
    everySupply,
    (source) => source !== 'never' && source !== 'unknown',
  );
  const possible = livePoints(after, isPlugged, everySupply);
  return [...after.pieces.values()].flatMap((piece): Stub[] => {
    const [start] = piece.stations;
    if (start === undefined || !endsOf(piece).some(isLoose)) return [];
    const [group = new Set<string>()] = groupsOf([pointOf(start.is)], copper);
    const [isLive, mayBeLive] = [certain, possible].map((points) =>
      [...group].some((one) => points.has(one)),
    );
    return [
      {
        piece: piece.name,
        wire: piece.wire,
        attached: placesIn(group, after.facts),
        live: isLive === true ? 'yes' : mayBeLive === true ? 'maybe' : 'no',
      },
    ];
  });
}

/** Judges the stubs against those that the intent declares. */
export function judgeStubs(stubs: readonly Stub[], wanted: WantedRows): Problem[] {
  const problems: Problem[] = [];
  // Stubs of one wire on one net are alike, and each declared one needs a piece of its own.
  const taken = new Set<Stub>();
  const declared = (wanted.stubs ?? []).map((row) => {
    const own = stubs.find((one) => !taken.has(one) && row.of === one.wire && one.attached.has(row.at));
    if (own !== undefined) taken.add(own);
    return { row, met: own !== undefined };
  });
  for (const { piece, wire, attached, live } of stubs) {
    const said = declared.filter(({ row }) => row.of === wire && attached.has(row.at));
    if (said.length === 0 && attached.size > 0)
      problems.push({ kind: 'stub-undeclared', step: null, about: piece });
    for (const one of said) {
      const { is } = one.row;
      if (is === 'dead' && live === 'yes') problems.push({ kind: 'stub-not-dead', step: null, about: piece });
      else if (is === 'live' && live === 'no')
        problems.push({ kind: 'stub-not-live', step: null, about: piece });
      else if (is === 'dead' && live === 'maybe')
        problems.push({ kind: 'stub-unknown', step: null, about: piece });
    }
  }
  for (const { row, met } of declared) {
    if (!met) problems.push({ kind: 'stub-missing', step: null, about: `${row.of} at ${row.at}` });
  }
  return problems;
}
