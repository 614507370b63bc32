import { fullTurn } from './canonical-face.ts';

/**
 * Reads a clock position such as `4`, `10:30` or `2:24`.
 * @returns minutes of the hour hand from 12, 0 to 719, or null when it is no clock position
 */
export function readClock(text: string): number | null {
  const match = /^(\d{1,2})(?::(\d\d))?$/.exec(text);
  if (match === null) return null;
  const hour = Number(match[1]);
  const minute = Number(match[2] ?? '0');
  if (hour < 1 || hour > 12 || minute > 59) return null;
  return (hour * 60 + minute) % fullTurn;
}

/** A clock position as {@link readClock} reads it: `4` or `10:30`. */
export function writeClock(minutes: number): string {
  const hour = Math.floor(minutes / 60);
  const minute = minutes % 60;
  const shown = hour === 0 ? '12' : String(hour);
  return minute === 0 ? shown : `${shown}:${String(minute).padStart(2, '0')}`;
}
