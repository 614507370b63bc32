import { readKit } from '@loomproof/netlist';
import { proveKit } from '@loomproof/verify';
import { describe, expect, it } from 'vitest';
import { itemsUnder } from '../packages/netlist/src/kit/located.ts';
import { readDocument } from '../packages/netlist/src/kit/read-document.ts';
import { readFixture, tablesBeside } from './support/fixture-folder.ts';
import { kitNames, kitPath } from './support/kit-fixtures.ts';

/** The lines of a kit file that hold a rework step; the fixtures write one step a line. */
function stepLines(lines: readonly string[]): readonly number[] {
  return lines.flatMap((line, index) => (line.startsWith('  - { do: ') ? [index] : []));
}

/** What the steps left out one by one lead to: `proved`, `input`, or the most findings that a variant gives. */
function outcomesOf(name: string): readonly { readonly step: string; readonly outcome: string | number }[] {
  const path = kitPath(name);
  const { text } = readFixture(path);
  const lines = text.split('\n');
  return stepLines(lines).map((dropped, index) => {
    const rest = lines.filter((_, at) => at !== dropped).join('\n');
    const step = `${index + 1}: ${/do: ([a-z -]+?)(?=,| })/.exec(lines[dropped] ?? '')?.[1] ?? ''}`;
    const read = readKit({ name: path, text: rest }, tablesBeside(path));
    if (read.value === null) return { step, outcome: 'input' };
    const verdict = proveKit(read.value);
    if (verdict.verdict === 'proved') return { step, outcome: 'proved' };
    return { step, outcome: Math.max(...verdict.variants.map((one) => one.findings.length)) };
  });
}

describe('a kit with one step left out', () => {
  it.each(kitNames)('%s: each step stands on a line of its own, so each is left out once', (name) => {
    const source = readFixture(kitPath(name));
    const steps = itemsUnder(readDocument(source).value, 'work').length;
    expect(stepLines(source.text.split('\n'))).toHaveLength(steps);
  });

  it.each(kitNames)('%s: each left-out step but a measurement is noticed', (name) => {
    const unnoticed = outcomesOf(name).filter(
      ({ step, outcome }) => outcome === 'proved' && !step.endsWith('prove dead'),
    );
    expect(unnoticed).toEqual([]);
  });

  it.each(kitNames)(
    '%s: one left-out step gives one finding, or two where two later steps run aground',
    (name) => {
      const flooded = outcomesOf(name).filter(({ outcome }) => typeof outcome === 'number' && outcome > 2);
      expect(flooded).toEqual([]);
    },
  );
});
