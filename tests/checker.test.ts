import { type KitFile, readKit, type Step } from '@loomproof/netlist';
import { type KitVerdict, proveKit } from '@loomproof/verify';
import { describe, expect, it } from 'vitest';
import { breakKit, readBrokenCase } from './support/broken-case.ts';
import { checkVerdict, type Walked } from './support/checker/check-verdict.ts';
import { type Json, tamperings } from './support/checker/tamper.ts';
import type { KitJson } from './support/checker/verdict-json.ts';
import { foldersIn, readFixture, tablesBeside } from './support/fixture-folder.ts';
import { kitNames, kitPath } from './support/kit-fixtures.ts';
import { kitOf } from './support/kit-text.ts';
import { recordHarness } from './support/record-harness.ts';
import { twoSystemsKit } from './support/two-systems-kit.ts';
import { printedVerdict, walkEvidence } from './support/walk-evidence.ts';

/** Every kit of the fixtures by name, those with one mistake in them as well. */
const kits: readonly (readonly [string, KitFile])[] = [
  ...kitNames.map((name) => [name, read(kitPath(name), readFixture(kitPath(name)).text)] as const),
  ...foldersIn('broken').map((name) => {
    const one = readBrokenCase(name);
    return [`broken/${name}`, read(one.kit, breakKit(readFixture(one.kit).text, one))] as const;
  }),
];

const plainKits = kits.filter(([name]) => !name.startsWith('broken/'));
const brokenKits = kits.filter(([name]) => name.startsWith('broken/'));

function read(path: string, text: string): KitFile {
  const reading = readKit({ name: path, text }, tablesBeside(path));
  if (reading.value === null) throw new Error(`${path} cannot be used`);
  return reading.value;
}

/** The same kit with its steps changed in every variant. */
function withSteps(kit: KitFile, change: (steps: readonly Step[]) => readonly Step[]): KitFile {
  const variants = kit.variants.map((one) => ({ ...one, job: { ...one.job, steps: change(one.job.steps) } }));
  return { ...kit, variants };
}

/** The kit without one of its steps, for each step in turn. */
function withStepLeftOut(kit: KitFile): readonly (readonly [string, KitFile])[] {
  return Array.from({ length: longestWork(kit) }, (_, left) => [
    `without step ${left + 1}`,
    withSteps(kit, (steps) => steps.filter((_step, index) => index !== left)),
  ]);
}

/** The kit with two neighbouring steps the other way round, for each two in turn. */
function withStepsExchanged(kit: KitFile): readonly (readonly [string, KitFile])[] {
  return Array.from({ length: longestWork(kit) - 1 }, (_, first) => [
    `with step ${first + 1} later`,
    withSteps(kit, (steps) => [
      ...steps.slice(0, first),
      ...steps.slice(first, first + 2).reverse(),
      ...steps.slice(first + 2),
    ]),
  ]);
}

function longestWork(kit: KitFile): number {
  return Math.max(0, ...kit.variants.map((one) => one.job.steps.length));
}

describe('every proof and every witness can be walked without the program', () => {
  const walked: Walked = new Map();

  it.each(kits)('%s as written', (_, kit) => {
    expect(walkEvidence(proveKit(kit), walked)).toEqual([]);
  });

  it.each(plainKits)('%s with any one step left out', (_, kit) => {
    for (const [name, one] of withStepLeftOut(kit))
      expect(walkEvidence(proveKit(one), walked), name).toEqual([]);
  });

  it.each(plainKits)('%s with any two neighbouring steps exchanged', (_, kit) => {
    for (const [name, one] of withStepsExchanged(kit))
      expect(walkEvidence(proveKit(one), walked), name).toEqual([]);
  });

  // The tests of one file run in order, so everything was walked by now.
  it('evidence of every kind was there to be walked', () => {
    const kinds = [
      'circuit',
      'proof hop',
      'stub',
      'bare witness',
      'refusal witness',
      'nets witness',
      'wrong join',
      'open net',
      'count witness',
      'stub witness',
    ];
    expect(kinds.filter((kind) => (walked.get(kind) ?? 0) < 10)).toEqual([]);
  });
});

describe('a falsified proof or witness is found out', () => {
  it.each(plainKits)('%s as written', (_, kit) => {
    const { missed, tried } = tamper(proveKit(kit), /./);
    expect(missed).toEqual([]);
    expect(tried).toBeGreaterThan(100);
  });

  it.each(brokenKits)('%s', (_, kit) => {
    expect(tamper(proveKit(kit), /\.(witness|stubs)\./).missed).toEqual([]);
  });
});

describe('losses of two supplies with one return', () => {
  it('are worked out anew, so that a falsified one is found out', () => {
    const kit = kitOf(twoSystemsKit({ drop: '0.1 %' }));
    const verdict = proveKit(kit);
    expect(verdict.variants[0]?.findings.map(({ kind }) => kind)).toEqual([
      'drop-too-large',
      'drop-too-large',
    ]);
    expect(walkEvidence(verdict)).toEqual([]);
    const { missed, tried } = tamper(verdict, /\.witness\.value/);
    expect(missed).toEqual([]);
    expect(tried).toBe(2);
  });
});

/** Falsifies everything that the checker answers for, one thing at a time, and gives what it did not find out. */
function tamper(
  verdict: KitVerdict,
  wanted: RegExp,
): { readonly missed: readonly string[]; readonly tried: number } {
  const records = verdict.variants.map((one) => recordHarness(one.judgement.rework));
  const missed: string[] = [];
  const printed = printedVerdict(verdict) as unknown as Json;
  const falsified = tamperings(
    printed,
    (path) => wanted.test(path) && (isWalked(path) || isWorkedOut(verdict, path)),
  );
  for (const { at, value } of falsified)
    if (checkVerdict(value as unknown as KitJson, records).length === 0) missed.push(at);
  return { missed, tried: falsified.length };
}

/** Volts, amperes and the state of those findings that the checker works out anew. */
function isWorkedOut(verdict: KitVerdict, path: string): boolean {
  const [, variant, finding, what = ''] =
    /^variants\.(\d+)\.findings\.(\d+)\.witness\.(value|volts|state\.on)/.exec(path) ?? [];
  const one = verdict.variants[Number(variant)]?.findings[Number(finding)];
  if (one === undefined) return false;
  if (what === 'value')
    return (
      /^(drop-too-large|(conductor|fuse)-overloaded|drive-(over|under)loaded)$/.test(one.kind) ||
      (one.kind === 'conductor-unprotected' && one.points.length > 1)
    );
  return one.witness.is === 'power' && one.witness.volts !== null;
}

/** Everything of the printed verdict that the checker answers for. */
function isWalked(path: string): boolean {
  return (
    /^variants\.\d+\.circuits\.\d+\.(proof|places|verdict)/.test(path) ||
    /^variants\.\d+\.stubs\.\d+\.(end|wire|state|at|covered|left out)/.test(path) ||
    /\.witness\.(opens|joins)\.\d+\.(?!circuit|left out)/.test(path) ||
    // A way to a source may begin at any metal that the step works on, so it may be the shorter by its first hop.
    /\.witness\.(reach(?!\.path\.0\.left)|reason|inBag|used|path)/.test(path) ||
    /^variants\.\d+\.(verdict|obligations\.\d+\.(obligation|verdict|left out))/.test(path) ||
    /^(verdict|judged)/.test(path)
  );
}
