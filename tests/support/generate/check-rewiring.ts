import fc from 'fast-check';
import { type Judgement, judgeKit } from '../oracle/judge-kit.ts';
import type { KitDocument } from '../oracle/kit-document.ts';
import { culpritsOf, engineVerdict, obligationsInWords } from './engine-verdict.ts';
import { type MistakeName, makeMistake, mistakes } from './mistakes.ts';
import { randomChoice } from './random-choice.ts';
import { type JobName, jobs, type KitRecipe, randomKit } from './random-kit.ts';
import { formsOfIntent, intentForms, RunCounts, stepKinds } from './run-counts.ts';
import { untrueEvidence, type WalkedPaths } from './untrue-evidence.ts';

/** A random kit and the mistake that is made in it. */
export type RewiringRecipe = KitRecipe & { readonly mistake: MistakeName };

/** Recipes of small kits; they shrink to fewer jobs. */
export const anyRewiring: fc.Arbitrary<RewiringRecipe> = fc.record({
  seed: fc.noShrink(fc.nat()),
  jobs: fc.array(fc.constantFrom(...(Object.keys(jobs) as JobName[])), { minLength: 1, maxLength: 3 }),
  mistake: fc.constantFrom(...(Object.keys(mistakes) as MistakeName[])),
});

/** The words of the oracle for obligations 1 to 7, in the line that {@link obligationsInWords} makes. */
function wordsOf(oracle: Judgement): string {
  return [...oracle.byObligation].map(([obligation, word]) => `${obligation} ${word}`).join(', ');
}

/** Judges random kits, right and with one mistake, by the program and by the oracle, and counts what occurred. */
export class RewiringCheck {
  readonly counts = new RunCounts();
  readonly walked: WalkedPaths = { joins: 0, reaches: 0, proofs: 0 };

  /** What is wrong with the program's answer for a recipe: no lines when it is right in everything. */
  complaintsAbout(recipe: RewiringRecipe): readonly string[] {
    const kit = randomKit(recipe);
    for (const form of formsOfIntent(kit)) this.counts.add('intent', form);
    for (const kind of new Set(kit.work.map((step) => step.do))) this.counts.add('steps', kind);
    const right = judgeKit(kit);
    // Now and then a job leads a kit wire in a circle, which is no right kit; then only the comparison counts.
    this.counts.add('kits as made', right.contradictions.length > 0 ? 'contradictory' : right.overall);
    const complaints = this.#compare(kit, right);
    if (complaints.length > 0) return complaints.map((one) => `as made: ${one}`);
    const mistaken = makeMistake(kit, recipe.mistake, randomChoice(recipe.seed));
    const wrong = judgeKit(mistaken.kit);
    this.counts.add('mistakes', mistaken.name);
    if ((mistaken.kit.wanted.deviations ?? []).length > 0)
      this.counts.add(
        'intent',
        mistaken.name === 'unmatchedDeviation' ? 'deviation that matches nothing' : 'deviation',
      );
    return this.#compare(mistaken.kit, wrong, mistaken.steps).map((one) => `${mistaken.name}: ${one}`);
  }

  #compare(
    kit: KitDocument,
    oracle: Judgement,
    wrongSteps: readonly number[] | null = null,
  ): readonly string[] {
    const engine = engineVerdict(kit);
    if (engine.is === 'unreadable') {
      if (wrongSteps !== null) this.counts.add('kits with a mistake', 'intent that contradicts itself');
      return oracle.contradictions.length > 0 ? [] : engine.complaints;
    }
    if (oracle.contradictions.length > 0)
      return [`judged, though intent contradicts itself: ${oracle.contradictions.join('; ')}`];
    const { variant } = engine;
    const complaints: string[] = [];
    if (variant.verdict !== oracle.overall)
      complaints.push(`${variant.verdict}, and the oracle says ${oracle.overall}`);
    const [own, theirs] = [obligationsInWords(variant), wordsOf(oracle)];
    if (own !== theirs) complaints.push(`engine ${own}; oracle ${theirs}`);
    complaints.push(...untrueEvidence(kit, oracle, variant, this.walked));
    if (wrongSteps === null) return complaints;
    this.counts.add('kits with a mistake', oracle.overall);
    for (const [obligation, word] of oracle.byObligation)
      this.counts.add(`${word} obligations`, String(obligation));
    if (oracle.leftTrace) {
      this.counts.add('kits with a mistake', 'left a trace');
      const blamed = culpritsOf(variant);
      if (wrongSteps.length > 0) {
        this.counts.add('kits with a mistake', 'left a trace by a wrong step');
        const found = wrongSteps.some((step) => blamed.has(step));
        this.counts.add('kits with a mistake', found ? 'wrong step blamed' : 'wrong step not blamed');
      }
    }
    return complaints;
  }

  /** What occurred less often than `least`, among everything that has to occur. */
  tooRare(least: number): readonly string[] {
    return [
      ...this.counts.rarerThan(least, 'intent', intentForms),
      ...this.counts.rarerThan(least, 'steps', stepKinds),
      ...this.counts.rarerThan(least, 'refuted obligations', ['1', '2', '3', '4', '5', '6', '7']),
      ...this.counts.rarerThan(least, 'kits as made', ['proved']),
      ...this.counts.rarerThan(least, 'kits with a mistake', [
        'refuted',
        'proved',
        'undecided',
        'left a trace by a wrong step',
      ]),
      ...this.counts.rarerThan(least / 50, 'mistakes', Object.keys(mistakes)),
    ];
  }

  /** How many of the wrong steps that left a trace are among those blamed, from 0 to 1. */
  get shareBlamed(): number {
    const blamed = this.counts.of('kits with a mistake', 'wrong step blamed');
    return blamed / (blamed + this.counts.of('kits with a mistake', 'wrong step not blamed'));
  }

  /** How many of the kits that should be right were proved, from 0 to 1. */
  get shareProved(): number {
    const proved = this.counts.of('kits as made', 'proved');
    return (
      proved /
      (proved +
        ['refuted', 'undecided', 'contradictory'].reduce(
          (sum, word) => sum + this.counts.of('kits as made', word),
          0,
        ))
    );
  }

  /** Everything counted, in lines to print. */
  lines(): readonly string[] {
    const { joins, reaches, proofs } = this.walked;
    return [
      ...this.counts.lines(),
      `paths walked: wrong joins ${joins}, sources reached ${reaches}, proofs ${proofs}`,
    ];
  }
}

/** Runs that many random kits; throws with the smallest recipe that fails, and gives back the counts. */
export function checkRewirings(runs: number, seed?: number): RewiringCheck {
  const check = new RewiringCheck();
  fc.assert(
    fc.property(anyRewiring, (recipe) => {
      const complaints = check.complaintsAbout(recipe);
      if (complaints.length > 0) throw new Error(complaints.join('\n'));
    }),
    { numRuns: runs, ...(seed === undefined ? {} : { seed }) },
  );
  return check;
}
