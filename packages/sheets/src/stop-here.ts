import type { Rework } from '@loomproof/netlist';
import { listWords } from './list-words.ts';

/** What must be kept in mind when work stops before the next step: read from the harness as it is at that moment. */
export function stopHere(rework: Rework): readonly string[] {
  const { job } = rework;
  const off = job.supplies.filter((_, index) => rework.supplyOn[index] === false).map(({ name }) => name);
  const on = job.supplies.filter((_, index) => rework.supplyOn[index] === true).map(({ name }) => name);
  const bare = job.ends
    .filter((end, index) => rework.isBare(index) && !isInBag(rework, index, end.wire))
    .map(({ name }) => name);
  const apart = job.connectors
    .filter((one, index) => rework.plugged[index] === false && one.plugged && !one.device)
    .map(({ name }) => name);
  const open = job.connectors
    .filter((one, index) => one.lock === 'closed' && rework.lock[index] === 'open')
    .map(({ name }) => name);
  const jumpers = job.joints
    .filter((one, index) => one.kind === 'jumper' && rework.jointState[index] === 'crimped')
    .map(({ name }) => name);
  return [
    ...(off.length > 0 ? [`Keep off, and hang a note on it: ${listWords(off)}.`] : []),
    ...(on.length > 0 && off.length === 0 ? [`Still on: ${listWords(on)}.`] : []),
    ...(bare.length > 0 ? [`Cap before you leave: ${listWords(bare)}.`] : []),
    ...(apart.length > 0 ? [`Unplugged; cover the faces against dirt and wet: ${listWords(apart)}.`] : []),
    ...(open.length > 0 ? [`Secondary lock open; a terminal may come out: ${listWords(open)}.`] : []),
    ...(jumpers.length > 0 ? [`Jumper in place; note it on the machine: ${listWords(jumpers)}.`] : []),
  ];
}

/** A kit wire that nothing has fitted yet lies in the bag and needs no cap. */
function isInBag(rework: Rework, end: number, wire: number): boolean {
  const there = rework.job.wires[wire];
  return there?.origin === 'kit' && (rework.lastStepOnEnd[end] ?? 0) === 0;
}
