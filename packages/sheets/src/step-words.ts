import type { Job, StepAction } from '@loomproof/netlist';
import { listWords } from './list-words.ts';

/**
 * What a step does, as a person would say it, such as `insert beacon return@K10 end into K10:6`.
 *
 * @param job - the variant
 * @param action - an action of one of its steps
 */
export function stepWords(job: Job, action: StepAction): string {
  const end = (index: number): string => job.ends[index]?.name ?? '?';
  const place = (index: number): string => job.places[index]?.address ?? '?';
  const connector = (index: number): string => job.connectors[index]?.name ?? '?';
  const piece = (index: number): string => job.pieces[index]?.name ?? '?';
  const joint = (index: number): string => job.joints[index]?.name ?? '?';
  const element = (index: number): string => job.elements[index]?.name ?? '?';
  const using = (part: string | null | undefined): string => (part == null ? '' : ` with ${part}`);
  const jointPart = (index: number): string => using(job.joints[index]?.part);
  switch (action.kind) {
    case 'disconnect':
    case 'reconnect':
      return `${action.kind} ${job.supplies[action.supply]?.name ?? '?'}`;
    case 'prove dead':
      return `prove ${place(action.place)} dead`;
    case 'unplug':
    case 'plug':
      return `${action.kind} ${connector(action.connector)}`;
    case 'open lock':
    case 'close lock':
      return `${action.kind.slice(0, -5)} the secondary lock of ${connector(action.connector)}`;
    case 'open latch':
    case 'close latch':
      return `${action.kind.slice(0, -6)} the position latch of ${connector(action.connector)}`;
    case 'cut':
      return `cut ${piece(action.piece)}, which leaves ${listWords(action.leaves.map(piece))}`;
    case 'strip':
      return `strip ${end(action.end)}`;
    case 'slide tube':
      return `slide ${action.part} over ${end(action.end)}`;
    case 'join':
      return `join ${listWords(action.ends.map(end))}${jointPart(action.joint)} as ${joint(action.joint)}`;
    case 'seal':
      return `seal ${joint(action.joint)}`;
    case 'tap':
      return `tap ${piece(action.piece)} for ${end(action.branch)}${jointPart(action.joint)} as ${joint(action.joint)}`;
    case 'remove tap':
      return `remove the tap ${joint(action.joint)}`;
    case 'fit terminal':
      return `fit terminal ${job.terminals[action.terminal]?.part ?? '?'}${action.seal === null ? '' : ` and seal ${action.seal}`} to ${listWords(action.ends.map(end))}`;
    case 'withdraw':
      return `withdraw the terminal from ${place(action.place)}`;
    case 'insert':
      return `insert ${end(action.end)} into ${place(action.place)}`;
    case 'attach':
      return `attach ${end(action.end)} to ${place(action.place)}`;
    case 'detach':
      return `detach ${end(action.end)}`;
    case 'cover':
      return `cover ${action.joint >= 0 ? joint(action.joint) : end(action.end)} with ${action.part}`;
    case 'tie back':
      return `tie back ${end(action.end)}${using(action.part)}`;
    case 'fasten':
      return `fasten ${piece(action.piece)}${using(action.part)}`;
    case 'fit plug':
      return `fit plug ${action.part} in ${place(action.place)}`;
    case 'remove plug':
      return `remove the plug from ${place(action.place)}`;
    case 'fit seal':
      return `fit seal ${action.part} on ${end(action.end)}`;
    case 'remove seal':
      return `remove the seal from ${end(action.end)}`;
    case 'fit fuse':
      return `fit ${action.part} in ${element(action.element)}`;
    case 'remove fuse':
      return `remove the fuse from ${element(action.element)}`;
    case 'place':
      return `put ${connector(action.connector)} in its place`;
    case 'interpose':
      return `put the adapter in between: ${connector(action.near)} onto ${connector(action.connector)}, ${connector(action.far)} onto its other half`;
    case 'fit jumper':
      return `fit jumper ${joint(action.joint)} from ${place(action.places[0])} to ${place(action.places[1])}`;
    case 'remove jumper':
      return `remove jumper ${joint(action.joint)}`;
    case 'remove off-cut':
      return `remove the off-cut ${piece(action.piece)}`;
    default: {
      const unknown: never = action;
      return unknown;
    }
  }
}
