import { expect, it } from 'vitest';
import { type StudDevice, studKit } from '../support/stud-kit.ts';
import { verdictOf } from '../support/verdict-of.ts';

it('20 switches in one part are judged exactly within 60 s', () => {
  const stock: StudDevice[] = [];
  const kit: StudDevice[] = [];
  const nets: string[] = [];
  for (let index = 0; index < 20; index += 1) {
    nets.push(`N${index}`);
    stock.push(['switch', `S${index}`, 'BAT', `N${index}`]);
    stock.push(['load', `L${index}`, `N${index}`, 'GND', `resistance: ${5 + index} ohm`]);
    if (index > 0) kit.push(['diode', `D${index}`, `N${index - 1}`, `N${index}`]);
  }
  const begin = performance.now();
  const verdict = verdictOf(studKit({ nets, stock, kit }));
  expect(performance.now() - begin).toBeLessThan(60_000);
  expect(verdict.obligations.find(({ obligation }) => obligation === 10)?.note).toBe(
    '1048576 states of 1 parts, 0 open returns',
  );
});
