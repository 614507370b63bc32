import { describe, expect, it } from 'vitest';
import { jobOf } from '../support/kit-text.ts';
import { judged, linesOf } from '../support/verdict-of.ts';

/*
 * TIA-568 colours of T568A and T568B: user guide appendix "Cabling guidelines",
 * https://manualsdump.com/en/manuals/kingston_technology-kns1600/139941/16 , and FAQ
 * https://tek-tips.com/forums/575/faqs/1106 ; the standard itself was not seen.
 */
const colours: readonly { readonly pin: string; readonly a: string; readonly b: string }[] = [
  { pin: '1', a: 'white/green', b: 'white/orange' },
  { pin: '2', a: 'green', b: 'orange' },
  { pin: '3', a: 'white/orange', b: 'white/green' },
  { pin: '4', a: 'blue', b: 'blue' },
  { pin: '5', a: 'white/blue', b: 'white/blue' },
  { pin: '6', a: 'orange', b: 'green' },
  { pin: '7', a: 'white/brown', b: 'white/brown' },
  { pin: '8', a: 'brown', b: 'brown' },
];

/*
 * Links of the crossover for 10 and 100 Mbit/s, pin of end 1 to pin of end 2: FAQ
 * https://tek-tips.com/forums/575/faqs/1106 .
 */
const crossover: readonly (readonly [string, string])[] = [
  ['1', '3'],
  ['2', '6'],
  ['3', '1'],
  ['4', '4'],
  ['5', '5'],
  ['6', '2'],
  ['7', '7'],
  ['8', '8'],
];

/*
 * Links of the crossover for gigabit, all four pairs: MDI and MDI-X tables
 * https://www.easymanua.ls/planet/gt-1205a/manual?p=21 and
 * https://www.manualshelf.com/manual/smc-networks/smc-ez-smcgs24c-smart/24-port-smart-switch-user-guide/page-99.html .
 */
const gigabit: readonly (readonly [string, string])[] = [
  ['1', '3'],
  ['2', '6'],
  ['3', '1'],
  ['4', '7'],
  ['5', '8'],
  ['6', '2'],
  ['7', '4'],
  ['8', '5'],
];

/** A straight T568A cable, whose terminals at end 2 are moved as `done` says, so that it gives the links wanted. */
function cable(
  wanted: readonly (readonly [string, string])[],
  done: readonly (readonly [string, string])[] = wanted,
): string {
  const moved = done.filter(([from, to]) => from !== to);
  const wires = colours.map(
    ({ pin, a }) => `    wire ${pin}: { from: P1:${pin}, to: P2:${pin}, size: AWG 24, colour: ${a} }`,
  );
  const out = moved.map(([from]) => `  - { do: withdraw, cavity: P2:${from} }`);
  const back = moved.map(
    ([from, to]) => `  - { do: insert, end: wire ${from}@P2:${from}, cavity: P2:${to} }`,
  );
  const circuits = wanted.map(([from, to]) => `    link ${from}: [P1:${from}, P2:${to}]`);
  return `
kit: crossover from a straight cable
revision: A
stock:
  zone: dry
  connectors:
    P1: { cavities: 1..8, source: { 1..8: never } }
    P2: { cavities: 1..8, source: { 1..8: never } }
  wires:
${wires.join('\n')}
work:
${[...out, ...back].join('\n')}
wanted:
  circuits:
${circuits.join('\n')}
  moves:
${wanted
  .filter(([from, to]) => from !== to)
  .map(([from, to]) => `    - { from: P2:${from}, to: P2:${to} }`)
  .join('\n')}
  after table: after.csv
`;
}

/** The cable as drawn after the work: a wire keeps its colour, so end 2 is coloured as its standard says. */
function drawn(
  links: readonly (readonly [string, string])[],
  colourAt: (pin: string) => string,
): ReadonlyMap<string, string> {
  const rows = links.map(([from, to]) => `wire ${from},P1:${from},P2:${to},${colourAt(to)}`);
  return new Map([['after.csv', `wire,from,to,colour\n${rows.join('\n')}\n`]]);
}

const t568b = (pin: string): string => colours.find((one) => one.pin === pin)?.b ?? '';

describe('a straight T568A cable reworked to the crossover', () => {
  it('is proved, and end 2 is then coloured as T568B', () => {
    expect(judged(cable(crossover), drawn(crossover, t568b))).toEqual({
      verdict: 'proved',
      findings: [],
      stubs: [],
    });
  });

  it('is its own inverse: done twice it is the straight cable again', () => {
    const twice = crossover.map(([from, to]) => [from, new Map(crossover).get(to) ?? ''] as const);
    expect(twice.every(([from, to]) => from === to)).toBe(true);
  });

  it('is coloured otherwise at end 2 where T568A is drawn there', () => {
    const t568a = (pin: string): string => colours.find((one) => one.pin === pin)?.a ?? '';
    const findings = linesOf(cable(crossover), drawn(crossover, t568a));
    expect(findings).toEqual([
      'drawing-differs@- wire 1',
      'drawing-differs@- wire 2',
      'drawing-differs@- wire 3',
      'drawing-differs@- wire 6',
    ]);
  });

  it('is refuted where only one pair was crossed', () => {
    const half = crossover.map(
      ([from, to]) => (from === '2' || from === '6' ? [from, from] : [from, to]) as [string, string],
    );
    expect(judged(cable(crossover, half), drawn(crossover, t568b))).toMatchObject({
      verdict: 'refuted',
      findings: ['wrong-connection@-'],
    });
  });

  it('is refuted where the two wires of a pair are exchanged besides', () => {
    const turned = crossover.map(([from, to]) => [from, to === '3' ? '6' : to === '6' ? '3' : to] as const);
    const { verdict, findings } = judged(cable(crossover, turned), drawn(crossover, t568b));
    expect({ verdict, findings }).toEqual({ verdict: 'refuted', findings: ['wrong-connection@5'] });
  });

  it('is refuted where all four pairs were crossed and two were wanted', () => {
    const { verdict, findings } = judged(cable(crossover, gigabit), drawn(crossover, t568b));
    expect(verdict).toBe('refuted');
    expect(findings.every((one) => one.startsWith('wrong-connection@'))).toBe(true);
  });
});

describe('the crossover for gigabit', () => {
  const plain = (text: string): string => text.replace('  after table: after.csv\n', '');

  it('is proved with all four pairs crossed, and refuted with two', () => {
    expect(judged(plain(cable(gigabit))).verdict).toBe('proved');
    expect(judged(plain(cable(gigabit, crossover))).verdict).toBe('refuted');
  });
});

describe('the colours of TIA-568', () => {
  it('are read as IEC 60757 codes, base colour first', () => {
    const job = jobOf(cable(crossover).replace('  after table: after.csv\n', ''));
    expect(job.wires.map((wire) => wire.colour?.codes.join('/'))).toEqual([
      'WH/GN',
      'GN',
      'WH/OG',
      'BU',
      'WH/BU',
      'OG',
      'WH/BN',
      'BN',
    ]);
  });
});
