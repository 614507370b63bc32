import { type Conducts, type Rework, reachedFrom, type WireEnd } from '@loomproof/netlist';
import type { RawFinding, SourceReach } from './finding.ts';
import { isUnusedKitWire } from './judge-frame.ts';
import type { LiveReach } from './live-reach.ts';
import type { Names } from './names.ts';

/** One piece with a free end in the finished state, declared or not: always listed. */
export interface StubReport {
  readonly wire: string;
  readonly end: string;
  /** Places that it hangs on. */
  readonly at: readonly string[];
  readonly state: 'dead' | 'live' | 'not known';
  readonly declared: boolean;
  readonly covered: string | null;
}

/** Obligation 4: every piece with a free end is judged; a live or attached stub stands only if intent says so. */
export function judgeStubs(
  rework: Rework,
  view: Conducts,
  reach: LiveReach,
  names: Names,
): { readonly stubs: readonly StubReport[]; readonly findings: readonly RawFinding[] } {
  const { job } = rework;
  const findings: RawFinding[] = [];
  const stubs: StubReport[] = [];
  // A stub as found is judged like one that the work leaves: it is there in the finished machine.
  const loose = rework.freeEnds().flatMap((end): LooseEnd[] => {
    const there = job.ends[end];
    if (there === undefined || isUnusedKitWire(rework, there.wire)) return [];
    const places = reachedFrom(rework.graph, rework.ordinal, there.node, view).filter(
      (node) => node < job.places.length,
    );
    return [{ end, there, piece: rework.endPiece[end] ?? -1, places }];
  });
  const statements = matchStatements(loose, rework, view);
  const met = new Set(statements.values());
  for (const { end, there, piece, places } of loose) {
    const source = reach.from(there.node, 'finished', view);
    const statement = statements.get(piece) ?? -1;
    const at = places.map((place) => names.place(place)).slice(0, 12);
    const wire = job.wires[there.wire]?.name ?? '';
    stubs.push({
      wire,
      end: there.name,
      at,
      state: source === null ? 'dead' : source.certain ? 'live' : 'not known',
      declared: statement >= 0,
      covered: rework.endCover.at(end),
    });
    const raw = (
      kind: 'stub-undeclared' | 'stub-not-dead' | 'stub-not-live' | 'stub-unknown',
      evidence: SourceReach | null,
    ): RawFinding => {
      const step = names.stepNumber(rework.freedAt.get(end) ?? 0);
      return {
        kind,
        step,
        points: [there.name],
        witness: { is: 'stub', wire, end: there.name, at, reach: evidence },
        culprits: step === null ? [] : [step],
        keys: [
          `node:${there.node}`,
          `end:${end}`,
          `wire:${there.wire}`,
          ...(kind === 'stub-undeclared' ? places.map((place) => `node:${place}`) : []),
        ],
      };
    };
    const stated = job.wanted.stubs[statement];
    if (stated === undefined) {
      if (places.length > 0 || source !== null) findings.push(raw('stub-undeclared', source));
      continue;
    }
    if (stated.live && source === null) findings.push(raw('stub-not-live', null));
    if (!stated.live && source !== null)
      findings.push(raw(source.certain ? 'stub-not-dead' : 'stub-unknown', source));
  }
  for (const [index, stated] of job.wanted.stubs.entries()) {
    if (met.has(index)) continue;
    const wire = job.wires[stated.wire]?.name ?? '';
    findings.push({
      kind: 'stub-missing',
      step: null,
      points: [wire, names.place(stated.place)],
      witness: { is: 'stub', wire, end: '', at: [names.place(stated.place)], reach: null },
      culprits: [],
      keys: [`node:${stated.place}`, `wire:${stated.wire}`],
    });
  }
  return { stubs, findings };
}

interface LooseEnd {
  readonly end: number;
  readonly there: WireEnd;
  readonly piece: number;
  /** The places that it is joined to. */
  readonly places: readonly number[];
}

/**
 * The statement that each piece with a loose end is held against, by piece. Two stubs of one wire may be joined by a way
 * round; then each statement takes the piece that sits at its place, and no piece stands for two stubs.
 */
function matchStatements(
  loose: readonly LooseEnd[],
  rework: Rework,
  view: Conducts,
): ReadonlyMap<number, number> {
  const { graph, job } = rework;
  const { stubs } = job.wanted;
  const matched = new Map<number, number>();
  const taken = new Set<number>();
  const match = (mayTake: (one: LooseEnd, statement: number) => boolean): void => {
    for (const one of loose) {
      if (matched.has(one.piece)) continue;
      const found = stubs.findIndex(
        (stub, index) =>
          stub.wire === one.there.wire && one.places.includes(stub.place) && mayTake(one, index),
      );
      if (found < 0) continue;
      matched.set(one.piece, found);
      taken.add(found);
    }
  };
  const hangsOn = ({ there }: LooseEnd, place: number): boolean => {
    const alone: Conducts = (edge) =>
      view(edge) &&
      (graph.kindOf(edge) === 'crimp' ||
        graph.kindOf(edge) === 'seat' ||
        (graph.kindOf(edge) === 'conductor' && graph.whatOf(edge) === there.wire));
    return reachedFrom(graph, rework.ordinal, there.node, alone).includes(place);
  };
  match((one, statement) => !taken.has(statement) && hangsOn(one, stubs[statement]?.place ?? -1));
  match((_one, statement) => !taken.has(statement));
  match(() => true);
  return matched;
}
