import { type Job, positionAt, type Step } from '@loomproof/netlist';
import { stepWords } from '@loomproof/sheets';

/**
 * A step as a person would say it, with its number as written and where it is written.
 *
 * @param job - the variant
 * @param number - the number of the step in the written list
 * @returns such as `step 12 (kit.yaml:82): insert beacon return@K10 end into K10:6`, or `step 12` when it is not there
 */
export function stepText(job: Job, number: number): string {
  const step = job.steps.find((one) => one.number === number);
  return step === undefined
    ? `step ${number}`
    : `step ${number}${placeOf(step)}: ${stepWords(job, step.action)}`;
}

function placeOf({ span }: Step): string {
  return span === null ? '' : ` (${span.source.name}:${positionAt(span.source, span.start).line})`;
}
