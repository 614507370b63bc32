import { type Asked, expectedText, fitsExpected, isOhmRange } from '@loomproof/verify';
import type { CheckState } from '../src/checks/group-state.ts';
import type { JudgedReading } from '../src/checks/judge-reading.ts';
import type { TakenReading } from '../src/checks/work-record.ts';

/** A sign for a state that is told apart without colour. */
export function stateSign(state: CheckState): string {
  if (state === 'as designed') return '●';
  return state === 'not read' ? '○' : '▲';
}

/** A reading in words: what was written, what it says, and whether that is as designed. */
export function readingWords(
  { reading, leadZero, time }: TakenReading,
  judged: JudgedReading,
  due: Asked | null,
): string {
  const zero = leadZero === '' ? '' : `, leads ${leadZero} taken off`;
  const at = new Date(time);
  const clock = [at.getHours(), at.getMinutes()].map((one) => String(one).padStart(2, '0')).join(':');
  return `${reading}${zero}, at ${clock}: ${sayings(judged, due)}`;
}

function sayings(judged: JudgedReading, due: Asked | null): string {
  if (judged.is === 'unreadable') return 'cannot be used';
  if (judged.is !== 'read') return 'the check stays open';
  if (due !== null && isOhmRange(due)) {
    const { outcome, ohm } = judged;
    const isRight = fitsExpected(due, { outcome, ...(ohm === null ? {} : { ohm }) });
    return `${isRight ? 'as designed' : 'not as designed'}, ${expectedText(due)} is due`;
  }
  if (judged.outcome === 'between')
    return 'between the limits, neither whole nor open. Look for a load, a damp joint, a poor contact; it is not rounded';
  if (due === null) return judged.outcome;
  return judged.outcome === due ? `${judged.outcome}, as designed` : `${judged.outcome}, not as designed`;
}
