import type { KitDocument, StepRow } from '../oracle/kit-document.ts';
import type { PartKind } from './kit-draft.ts';
import { partRowOf } from './kit-draft.ts';
import type { RandomChoice } from './random-choice.ts';
import { namesAreThere, withoutStep } from './step-names.ts';

/** A kit with one mistake; `steps` are the numbers of the steps that are wrong, none where one was left out. */
export type Mistaken = { readonly kit: KitDocument; readonly steps: readonly number[] };

/** Makes one mistake in a kit, or gives null where the kit has no room for it. */
export type Mistake = (kit: KitDocument, random: RandomChoice) => Mistaken | null;

const withWork = (kit: KitDocument, work: StepRow[]): KitDocument => ({ ...kit, work });

/** The kit with one step written otherwise. */
export function withStep(kit: KitDocument, index: number, step: StepRow): Mistaken | null {
  const changed = withWork(kit, kit.work.with(index, step));
  return namesAreThere(changed) ? { kit: changed, steps: [index + 1] } : null;
}

/** One step of these kinds, with its index, or null where there is none. */
export function someStep<K extends StepRow['do']>(
  kit: KitDocument,
  random: RandomChoice,
  kinds: readonly K[],
): { index: number; step: StepRow & { do: K } } | null {
  const found = kit.work.flatMap((step, index) =>
    (kinds as readonly string[]).includes(step.do) ? [index] : [],
  );
  if (found.length === 0) return null;
  const index = random.pick(found);
  return { index, step: kit.work[index] as StepRow & { do: K } };
}

/** A mistake that leaves out a step of these kinds, or any step. */
export function leaveOut(...kinds: StepRow['do'][]): Mistake {
  return (kit, random) => {
    const all = kinds.length === 0 ? kit.work.map((step) => step.do) : kinds;
    const found = someStep(kit, random, all);
    if (found === null) return null;
    const work = withoutStep(kit.work, found.index);
    return work.length === 0 ? null : { kit: withWork(kit, work), steps: [] };
  };
}

/** A mistake that takes another kind of part; the bag holds what the steps take, so that the count is no second fault. */
export function otherPart(
  step: StepRow['do'],
  fits: readonly string[],
  others: readonly PartKind[],
): Mistake {
  return (kit, random) => {
    const found = kit.work.flatMap((one, index) => {
      const part = 'with' in one && one.do === step ? one.with : undefined;
      const row = kit.parts?.get(part ?? '');
      return part !== undefined && row !== undefined && fits.includes(row.is) ? [{ one, index, part }] : [];
    });
    if (found.length === 0) return null;
    const { one, index, part } = random.pick(found);
    const kind = random.pick(others);
    const name = `other ${kind}`;
    const counts = new Map(kit.bag?.parts ?? []);
    const left = Number(counts.get(part) ?? '0') - 1;
    if (left < 0) return null;
    counts.set(part, String(left));
    counts.set(name, '1');
    const changed: KitDocument = {
      ...kit,
      parts: new Map([...(kit.parts ?? []), [name, partRowOf(kind)]]),
      bag: { ...kit.bag, parts: counts },
      work: kit.work.with(index, { ...one, with: name } as StepRow),
    };
    return { kit: changed, steps: [index + 1] };
  };
}

/** The kit with a step moved to an earlier place; it comes too early, or those it overtook too late. */
export function withStepMoved(kit: KitDocument, from: number, to: number): Mistaken | null {
  const step = kit.work[from];
  if (step === undefined || to >= from) return null;
  const work = kit.work.toSpliced(from, 1).toSpliced(to, 0, step);
  const changed = withWork(kit, work);
  return namesAreThere(changed)
    ? { kit: changed, steps: Array.from({ length: from - to + 1 }, (_, index) => to + index + 1) }
    : null;
}

/** The kit with steps added at a place. */
export function withStepsAdded(kit: KitDocument, at: number, steps: readonly StepRow[]): Mistaken {
  return {
    kit: withWork(kit, kit.work.toSpliced(at, 0, ...steps)),
    steps: steps.map((_, index) => at + index + 1),
  };
}

/** A kit with changed counts in the bag. */
export function withPartCount(kit: KitDocument, part: string, change: number): KitDocument {
  const counts = new Map(kit.bag?.parts ?? []);
  counts.set(part, String(Math.max(0, Number(counts.get(part) ?? '0') + change)));
  return { ...kit, bag: { ...kit.bag, parts: counts } };
}
