import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { faultTable } from '../checks/fault-table.ts';
import { diagnose } from './diagnose.ts';
import { placeReadings } from './place-readings.ts';
import { readReadings } from './read-readings.ts';

// X:2 to the chassis is a wire that the work has nothing to do with; X:3 and Y:2 are empty.
const job = jobOf(tapKit());
const table = faultTable(job, { stage: { is: 'unplugged' } });

function explainedBy(rows: string): readonly string[] {
  const { value } = readReadings({ name: 'r', text: `from,to,reading\n${rows}` });
  const { groups } = diagnose(table, placeReadings(table, value ?? []).readings);
  return groups.flat().flatMap(({ faults }) => (faults.length === 1 ? [faults[0]?.words ?? ''] : []));
}

it('finds what is broken in a wire that nobody worked on, where a reading goes along it', () => {
  expect(explainedBy('X:2,G,OL\n').slice().sort()).toEqual([
    'the contact between terminal of beside@G and G does not conduct',
    'the contact between terminal of beside@X:2 and X:2 does not conduct',
    'the crimp between beside@G and terminal of beside@G does not conduct',
    'the crimp between beside@X:2 and terminal of beside@X:2 does not conduct',
    'the wire beside does not conduct between beside@X:2 and beside@G',
  ]);
});

it('finds two cavities that are bridged beside each other, of which none was worked on', () => {
  expect(explainedBy('X:2,X:3,0.1 ohm\n')).toEqual(['X:2 and X:3 are bridged']);
  expect(explainedBy('G,X:3,0.1 ohm\n')).toEqual(['X:2 and X:3 are bridged']);
});

it('finds a wire among them that conducts badly', () => {
  const { value } = readReadings({ name: 'r', text: 'from,to,reading\nX:2,G,40 ohm\n' });
  const { inPart } = diagnose(table, placeReadings(table, value ?? []).readings);
  expect(inPart.map(({ faults }) => faults[0]?.words)).toContain(
    'the wire beside conducts badly between beside@X:2 and beside@G',
  );
});

it('leaves the faults of the work alone where all reads as designed', () => {
  const found = diagnose(table, [{ a: 0, b: 1, outcome: 'open', line: 2 }]);
  expect(found.is).toBe('as designed');
  expect(explainedBy('X:1,X:4,0.1 ohm\nX:2,G,0.1 ohm\n').some((words) => words.includes('beside'))).toBe(
    false,
  );
});
