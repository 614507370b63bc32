import type { KitVerdict } from '@loomproof/verify';
import { checkVerdict, type Walked } from './checker/check-verdict.ts';
import type { KitJson } from './checker/verdict-json.ts';
import { recordHarness } from './record-harness.ts';

/** The verdict as it is printed: what is no data is not in it. */
export function printedVerdict(verdict: KitVerdict): KitJson {
  const variants = verdict.variants.map(({ judgement: _, circuits, ...rest }) => ({
    ...rest,
    circuits: circuits.map(({ proof, ...circuit }) => ({ ...circuit, proof: proof?.hops() ?? null })),
  }));
  return JSON.parse(JSON.stringify({ ...verdict, variants })) as KitJson;
}

/** Walks every proof and every witness of a verdict, and says what of it does not hold. */
export function walkEvidence(verdict: KitVerdict, walked?: Walked): readonly string[] {
  const records = verdict.variants.map((one) => recordHarness(one.judgement.rework));
  return checkVerdict(printedVerdict(verdict), records, walked);
}
