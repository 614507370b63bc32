import type { PathHop, SourceReach, VariantVerdict } from '@loomproof/verify';
import { groupsOf, point } from '../oracle/copper.ts';
import { type Judgement, walkThrough } from '../oracle/judge-kit.ts';
import type { KitDocument } from '../oracle/kit-document.ts';
import { followed, shortestWay, type Ways, waysOf } from '../oracle/way.ts';

/** How many paths were walked. */
export type WalkedPaths = { joins: number; reaches: number; proofs: number };

/**
 * Walks every path that a verdict shows in the harness that the oracle built, and measures whether a shorter one is there.
 * @returns a sentence for each path that is not there, leads elsewhere or is not shortest.
 */
export function untrueEvidence(
  kit: KitDocument,
  oracle: Judgement,
  variant: VariantVerdict,
  walked: WalkedPaths,
): readonly string[] {
  const untrue: string[] = [];
  const atTheEnd = waysOf(oracle.after, oracle.isPlugged, new Set(oracle.after.facts.supplies.keys()));
  const wrongJoin = (between: readonly string[], path: readonly PathHop[]): void => {
    walked.joins += 1;
    const [from = '', to = ''] = between;
    const goal = point.place(to);
    const where = `${from} to ${to}`;
    if (!followed(path, atTheEnd.copper).has(goal) || path[0]?.from !== from)
      untrue.push(`no such path: ${where}`);
    if (shortestWay(from, new Set([goal]), atTheEnd.copper) !== path.length)
      untrue.push(`not shortest: ${where}`);
  };
  const reach = (end: string, found: SourceReach | null, ways: Ways, here: readonly string[]): void => {
    if (found === null) return;
    walked.reaches += 1;
    const { copper, beyondCopper, certainSources, possibleSources } = ways;
    const sources = found.certain ? certainSources : possibleSources;
    const where = `${end} to ${found.source}`;
    // Where the place worked at is a source itself, there is nothing to follow.
    const start = found.path[0]?.from ?? here.find((one) => one === found.source) ?? end;
    const arrived =
      found.path.length === 0 ? new Set([point.place(start)]) : followed(found.path, copper, beyondCopper);
    if (!arrived.has(point.place(found.source)) || !sources.has(point.place(found.source)))
      untrue.push(`no such reach: ${where}`);
    if (shortestWay(start, sources, copper, beyondCopper) !== found.path.length)
      untrue.push(`not shortest: ${where}`);
  };
  for (const { kind, witness, step, points } of variant.findings) {
    if (witness.is === 'nets') for (const join of witness.joins) wrongJoin(join.between, join.path);
    if (witness.is === 'path')
      wrongJoin([witness.path[0]?.from ?? '', witness.path[witness.path.length - 1]?.to ?? ''], witness.path);
    if (witness.is === 'stub') reach(witness.end, witness.reach, atTheEnd, points);
    if (witness.is === 'bare' && witness.reach !== null && step !== null) {
      // Whether work is done under current is seen before the step, what lies bare after it.
      const { after } = walkThrough({
        ...kit,
        work: kit.work.slice(0, kind === 'work-on-live' ? step - 1 : step),
      });
      reach(
        witness.end,
        witness.reach,
        waysOf(after, (name) => after.plugged.has(name), after.on),
        points,
      );
    }
  }
  for (const { name, places, proof } of variant.circuits) {
    if (proof === null) continue;
    walked.proofs += 1;
    const hops = proof.hops();
    const missing = hops.filter((hop) => followed([hop], atTheEnd.copper).size === 0);
    if (missing.length > 0) untrue.push(`proof of ${name} goes where nothing is`);
    const shown = groupsOf(
      places,
      hops.map((hop) => [hop.from, hop.to] as const),
    );
    if (shown.length > 1) untrue.push(`proof of ${name} does not join its places`);
  }
  return untrue;
}
