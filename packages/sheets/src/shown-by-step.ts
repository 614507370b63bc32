import type { Job, Step } from '@loomproof/netlist';
import type { VariantVerdict } from '@loomproof/verify';
import { stepWords } from './step-words.ts';

/** What is no longer shown when a step was not done as written: the circuits that stand on it, or the step itself. */
export function shownByStep(job: Job, step: Step, verdict: VariantVerdict): string {
  const circuits = verdict.circuits.filter(
    ({ proof }) => proof?.hops().some(({ made }) => made === step.number) === true,
  );
  if (circuits.length > 0) return circuits.map(({ name }) => `circuit ${name}`).join(', ');
  return stepWords(job, step.action);
}
