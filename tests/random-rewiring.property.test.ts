import { locate, type PlainKit, Rework, resolveKit, tableOfRework } from '@loomproof/netlist';
import { diffHarness } from '@loomproof/verify';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyRewiring, checkRewirings, type RewiringRecipe } from './support/generate/check-rewiring.ts';
import { engineVerdict, obligationsInWords } from './support/generate/engine-verdict.ts';
import { inOneOrder, mirroredDifference } from './support/generate/mirrored-difference.ts';
import { makeMistake } from './support/generate/mistakes.ts';
import { randomChoice } from './support/generate/random-choice.ts';
import { randomKit } from './support/generate/random-kit.ts';
import { renamedKit, reorderedKit, splitSpliceKit } from './support/generate/rewritten-kit.ts';
import type { KitDocument } from './support/oracle/kit-document.ts';

/** About a minute and a half where nothing else runs; the long run does ten times as many. */
const runs = 20_000;
const lawRuns = 500;

/** The verdict on a kit in one line, or that it cannot be read. */
function saidOf(kit: KitDocument): string {
  const engine = engineVerdict(kit);
  return engine.is === 'unreadable'
    ? engine.is
    : `${engine.variant.verdict}: ${obligationsInWords(engine.variant)}`;
}

function mistakenKit(recipe: RewiringRecipe): KitDocument {
  return makeMistake(randomKit(recipe), recipe.mistake, randomChoice(recipe.seed)).kit;
}

describe('random rewirings', () => {
  it('a right one is proved, and of one with a mistake everything that is said is as the oracle says', {
    timeout: 1_200_000,
  }, () => {
    const started = performance.now();
    const check = checkRewirings(runs);
    const seconds = Math.round((performance.now() - started) / 1000);
    console.log([`${runs} random rewirings in ${seconds} s`, ...check.lines()].join('\n'));
    expect(check.tooRare(100)).toEqual([]);
    expect(check.shareProved).toBeGreaterThan(0.97);
    expect(check.shareBlamed).toBeGreaterThan(0.995);
  });

  it('other names change no verdict', { timeout: 300_000 }, () => {
    fc.assert(
      fc.property(anyRewiring, (recipe) => {
        const kit = mistakenKit(recipe);
        expect(saidOf(renamedKit(kit, randomChoice(recipe.seed)))).toBe(saidOf(kit));
      }),
      { numRuns: lawRuns },
    );
  });

  it('another order of what has no order changes no verdict', { timeout: 300_000 }, () => {
    fc.assert(
      fc.property(anyRewiring, (recipe) => {
        const kit = mistakenKit(recipe);
        expect(saidOf(reorderedKit(kit, randomChoice(recipe.seed)))).toBe(saidOf(kit));
      }),
      { numRuns: lawRuns },
    );
  });

  it('a splice made of two changes no verdict', { timeout: 300_000 }, () => {
    let split = 0;
    fc.assert(
      fc.property(anyRewiring, (recipe) => {
        const kit = mistakenKit(recipe);
        const twin = splitSpliceKit(kit, randomChoice(recipe.seed));
        if (twin === null) return;
        split += 1;
        expect(saidOf(twin)).toBe(saidOf(kit));
      }),
      { numRuns: lawRuns },
    );
    expect(split).toBeGreaterThan(lawRuns / 10);
  });

  it('a comparison of two harnesses is the mirror of the comparison the other way round', {
    timeout: 300_000,
  }, () => {
    let different = 0;
    fc.assert(
      fc.property(anyRewiring, (recipe) => {
        const job = resolveKit(locate(mistakenKit(recipe) as PlainKit), () => null).value?.variants[0]?.job;
        if (job === undefined) return;
        const rework = new Rework(job);
        const before = tableOfRework(rework);
        for (const step of job.steps) rework.apply(step);
        const after = tableOfRework(rework);
        const there = diffHarness(before, after);
        if (!there.equal) different += 1;
        expect(inOneOrder(diffHarness(after, before))).toBe(inOneOrder(mirroredDifference(there)));
      }),
      { numRuns: lawRuns },
    );
    expect(different).toBeGreaterThan(lawRuns / 2);
  });
});
