import { makeChecklist, type Stage } from '@loomproof/verify';
import { expect, it } from 'vitest';
import { kitOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { checksText } from './checks-text.ts';

const kit = kitOf(tapKit());
const [job] = kit.variants.map((one) => one.job);

function textOf(notProved: boolean, stage: Stage = { is: 'unplugged' }): string {
  if (job === undefined) throw new Error('no job');
  const checklist = makeChecklist(job, { stage });
  const how = { list: 'short', digest: 'ab12', paint: (text: string) => text, notProved } as const;
  return checksText(kit, 'only', checklist, how);
}

it('tells the readings, how far they go, and what none shows', () => {
  const text = textOf(false);
  expect(text).toContain(
    'Before the first cut (2 readings):\n      X:1 - Y:1: whole\n      X:1 - X:2: open\n',
  );
  expect(text).toContain('    1  X:1 - X:4: whole, at most 1 ohm\n');
  expect(text).toContain(
    'Short list: 5 readings show 17 of 18 single faults; no list with fewer readings shows them all',
  );
  expect(text).toContain('Two faults at once: the short list shows 153 of 153');
  expect(text).toContain('  - step 1 (strip) was left out. Instead: ');
  expect(text).not.toContain('NOT PROVED');
});

it('says across the top that a kit is not proved', () => {
  expect(textOf(true).split('\n')[1]).toBe('THIS KIT IS NOT PROVED: see `loomproof prove`.');
});

it('says what is plugged for the readings as found, where it is not the same', () => {
  expect(textOf(false)).not.toContain('Plugged for these');
  expect(textOf(false, { is: 'in place', pulled: new Set() })).toContain(
    'Before the first cut (2 readings):\n  Plugged for these: on the machine: every source off, every connector on a wire that is read unplugged, at both ends of the wire.\n      X:1 - Y:1: whole\n',
  );
});
