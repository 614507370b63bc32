import { checkHop } from './check-path.ts';
import { type CopperView, distancesFrom } from './copper-walk.ts';
import type { HarnessRecord } from './harness-record.ts';
import type { HopJson, VariantJson } from './verdict-json.ts';

/** Walks the proof of every circuit: each hop is there, together they join all places, and no hop is for nothing. */
export function checkCircuits(
  variant: VariantJson,
  record: HarnessRecord,
  view: CopperView,
): readonly string[] {
  const places = new Set(record.places.map((place) => place.address));
  return variant.circuits.flatMap((circuit) => {
    const [first = ''] = circuit.places;
    const reached = distancesFrom(view, first);
    const whole = circuit.places.every((place) => reached.has(place));
    const problems: string[] = [];
    if (whole !== (circuit.proof !== null))
      problems.push(`its places are ${whole ? '' : 'not '}joined, its proof says otherwise`);
    const alone = [...reached.keys()].filter((point) => places.has(point)).length === circuit.places.length;
    if ((circuit.verdict === 'proved') !== (whole && alone))
      problems.push(
        `it is ${whole ? 'whole' : 'open'}${alone ? '' : ' and not alone'}, yet ${circuit.verdict}`,
      );
    if (circuit.proof !== null) problems.push(...checkTree(circuit.proof, circuit.places, view));
    return problems.map((problem) => `circuit ${circuit.name}: ${problem}`);
  });
}

function checkTree(
  proof: readonly HopJson[],
  places: readonly string[],
  view: CopperView,
): readonly string[] {
  const problems = proof.flatMap((hop) => checkHop(hop, view));
  const around = new Map<string, string[]>();
  for (const { from, to } of proof) {
    around.set(from, [...(around.get(from) ?? []), to]);
    around.set(to, [...(around.get(to) ?? []), from]);
  }
  const [first = ''] = places;
  const met = new Set([first]);
  const open = [first];
  for (let point = open.pop(); point !== undefined; point = open.pop()) {
    for (const other of around.get(point) ?? []) {
      if (met.has(other)) continue;
      met.add(other);
      open.push(other);
    }
  }
  for (const place of places) if (!met.has(place)) problems.push(`its proof does not lead to ${place}`);
  // A tree has one join fewer than points, and where it stops there is a place of the circuit.
  if (proof.length !== met.size - 1) problems.push('its proof is no tree');
  for (const [point, others] of around)
    if (others.length === 1 && !places.includes(point)) problems.push(`its proof strays to ${point}`);
  return problems;
}
