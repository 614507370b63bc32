import { makeChecklist, readReadings } from '@loomproof/verify';
import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { checksCsv } from './checks-csv.ts';

/** One wire of the kit between two studs; the name of one is what a spreadsheet takes for a formula. */
const job = jobOf(`
kit: one wire
revision: A
stock:
  studs: { '-S1': { source: never }, S2: { source: never } }
  connectors:
    SPARE: { cavities: 1..2 }
  wires:
    link: { from: '-S1', to: S2 }
work:
  - { do: fasten, wire: link }
wanted:
  circuits: { link: ['-S1', S2] }
`);
const checklist = makeChecklist(job, { stage: { is: 'in place', pulled: new Set([0]) } });

it('writes each check as a row that a spreadsheet takes for no formula and `diagnose` reads', () => {
  const text = checksCsv(checklist, 'full');
  const [head, first] = text.split('\r\n');
  expect(head).toBe(
    'number,from,to,expected,reading,lead zero,instrument,range,person,time,plugged,stage,whole limit,open limit,unplug first,proof,where from,where to',
  );
  expect(first).toBe(`1,'-S1,S2,"whole, at most 1 ohm",,,,,,,,in place without SPARE,1 ohm,1 Mohm,,,,`);
  const { value } = readReadings({ name: 'list', text });
  expect(value).toMatchObject([
    {
      from: '-S1',
      to: 'S2',
      value: { is: 'not done' },
      stage: { stage: 'in place', unplugged: ['SPARE'] },
      limits: { wholeLimit: '1 ohm', openLimit: '1 Mohm' },
    },
  ]);
});
