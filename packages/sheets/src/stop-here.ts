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
  const holes = job.places
    .filter(
      (one, place) =>
        job.connectors[one.connector]?.sealed === true &&
        one.origin === 'stock' &&
        !one.blocked &&
        rework.plug.at(place) === null &&
        (rework.seated[place] ?? -1) < 0,
    )
    .map(({ address }) => address);
  const joints = job.joints
    .filter((one, index) => {
      const part = job.parts.get(one.part ?? '');
      const needsTube = part?.is === 'splice' && part.tube !== 'none';
      const state = rework.jointState[index];
      return state === 'wound' || (one.before === 'absent' && state === 'crimped' && needsTube);
    })
    .map(({ name }) => name);
  const jumpers = job.joints
    .filter((one, index) => one.kind === 'jumper' && rework.jointState[index] === 'crimped')
    .map(({ name }) => name);
  return [
    ...(off.length > 0 ? [`Keep off, and hang a note on it: ${listWords(off)}.`] : []),
    ...(on.length > 0 ? [`Still on: ${listWords(on)}.`] : []),
    ...(bare.length > 0 ? [`Cap before you leave: ${listWords(bare)}.`] : []),
    ...(apart.length > 0 ? [`Unplugged; cover the faces against dirt and wet: ${listWords(apart)}.`] : []),
    ...(open.length > 0 ? [`Secondary lock open; a terminal may come out: ${listWords(open)}.`] : []),
    ...(holes.length > 0
      ? [`Close with a plug before you leave, or cover the face: ${listWords(holes)}.`]
      : []),
    ...(joints.length > 0 ? [`Not sealed yet; wrap it against wet: ${listWords(joints)}.`] : []),
    ...(jumpers.length > 0 ? [`Jumper in place; note it on the machine: ${listWords(jumpers)}.`] : []),
  ];
}

/** A kit wire that nothing has fitted yet lies in the bag and needs no cap. */
function isInBag(rework: Rework, end: number, wire: number): boolean {
  const there = rework.job.wires[wire];
  return there?.origin === 'kit' && (rework.lastStepOnEnd.get(end) ?? 0) === 0;
}
