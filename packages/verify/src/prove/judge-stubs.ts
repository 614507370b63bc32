import { type Conducts, type Rework, reachedFrom } from '@loomproof/netlist';
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
  const met = new Set<number>();
  for (const end of rework.freeEnds()) {
    const there = job.ends[end];
    if (there === undefined || isUnusedKitWire(rework, there.wire)) continue;
    // Only work or the bag leaves a free end; a stock wire that nothing touched has none.
    const places = reachedFrom(rework.graph, rework.ordinal, there.node, view).filter(
      (node) => node < job.places.length,
    );
    const source = reach.from(there.node, 'finished', view);
    const statement = job.wanted.stubs.findIndex(
      (one) => one.wire === there.wire && places.includes(one.place),
    );
    const at = places.map((place) => names.place(place)).slice(0, 12);
    const wire = job.wires[there.wire]?.name ?? '';
    stubs.push({
      wire,
      end: there.name,
      at,
      state: source === null ? 'dead' : source.certain ? 'live' : 'not known',
      declared: statement >= 0,
      covered: rework.endCover[end] ?? null,
    });
    const raw = (
      kind: 'stub-undeclared' | 'stub-not-dead' | 'stub-not-live' | 'stub-unknown',
      evidence: SourceReach | null,
    ): RawFinding => {
      const step = names.stepNumber(rework.freedAt[end] ?? 0);
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
    met.add(statement);
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
