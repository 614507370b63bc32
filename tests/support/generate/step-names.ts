import type { KitDocument, StepRow } from '../oracle/kit-document.ts';

/** Names of pieces and joints that a step brings into being. */
export function namesMadeBy(step: StepRow): string[] {
  if (step.do === 'cut') return [...step.leaves];
  if (step.do === 'join' || step.do === 'tap' || step.do === 'fit jumper') return [step.as];
  return [];
}

/** Names of wires, pieces and joints that a step speaks of. */
export function namesUsedBy(step: StepRow): string[] {
  const pieceOf = (end: string): string => end.slice(0, end.lastIndexOf('@'));
  switch (step.do) {
    case 'cut':
    case 'fasten':
    case 'remove off-cut':
      return [step.wire];
    case 'strip':
    case 'remove seal':
    case 'detach':
    case 'slide tube':
    case 'fit seal':
    case 'tie back':
    case 'insert':
    case 'attach':
      return [pieceOf(step.end)];
    case 'cover':
      return [step.end.includes('@') ? pieceOf(step.end) : step.end];
    case 'join':
    case 'fit terminal':
      return step.ends.map(pieceOf);
    case 'seal':
      return [step.joint];
    case 'tap':
      return [step.run, pieceOf(step.branch)];
    case 'remove tap':
      return [step.tap];
    case 'remove jumper':
      return [step.jumper];
    default:
      return [];
  }
}

/** Whether every name that a step speaks of is there at that moment, so that the kit can be read at all. */
export function namesAreThere(kit: KitDocument): boolean {
  const there = new Set([
    ...(kit.stock.wires?.keys() ?? []),
    ...(kit.bag?.wires?.keys() ?? []),
    ...(kit.stock.splices?.keys() ?? []),
  ]);
  for (const step of kit.work) {
    if (namesUsedBy(step).some((name) => !there.has(name))) return false;
    if (step.do === 'cut') there.delete(step.wire);
    for (const name of namesMadeBy(step)) there.add(name);
  }
  return true;
}

/** The steps without one of them, and without all that speak of what it would have made. */
export function withoutStep(work: readonly StepRow[], index: number): StepRow[] {
  const missing = new Set<string>();
  return work.filter((step, at) => {
    const left = at === index || namesUsedBy(step).some((name) => missing.has(name));
    if (left) for (const name of namesMadeBy(step)) missing.add(name);
    return !left;
  });
}
