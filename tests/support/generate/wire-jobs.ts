import type { StepRow } from '../oracle/kit-document.ts';
import type { KitDraft } from './kit-draft.ts';
import { labelOf } from './kit-draft.ts';

/** One thing that a kit does: it grows the harness as it needs, and adds its steps and what it knows of the intent. */
export type Job = (draft: KitDraft) => void;

/** Makes a free end of a kit wire ready and puts it into an empty cavity. */
export function stepsIntoCavity(
  draft: KitDraft,
  end: string,
  cavity: string,
  terminalIsOn: boolean,
): StepRow[] {
  const row = draft.rowOf(cavity);
  draft.open(cavity);
  const blanked = row.blanked?.includes(labelOf(cavity)) === true;
  const steps: StepRow[] = [];
  if (!terminalIsOn) {
    const sealed = row.sealed === 'yes';
    const together = sealed && draft.random.chance(0.5);
    const sealing = sealed && !together ? stepsSealing(draft, end) : [];
    steps.push(...draft.random.shuffled([[{ do: 'strip', end } as const], sealing]).flat());
    steps.push({
      do: 'fit terminal',
      ends: [end],
      with: draft.part('terminal'),
      ...(together ? { seal: draft.part('seal') } : {}),
    });
  }
  if (blanked) steps.push({ do: 'remove plug', cavity });
  steps.push({ do: 'insert', end, cavity });
  return steps;
}

/** Slides a wire seal on an end, now and then after the wrong one came off again. */
export function stepsSealing(draft: KitDraft, end: string): StepRow[] {
  const fitted: StepRow = { do: 'fit seal', end, with: draft.part('seal') };
  if (draft.random.chance(0.7)) return [fitted];
  return [{ do: 'fit seal', end, with: draft.part('thick seal') }, { do: 'remove seal', end }, fitted];
}

/** Strips ends, joins them, and seals the joint the way its part asks for. */
export function stepsJoining(draft: KitDraft, ends: readonly string[]): StepRow[] {
  const { random } = draft;
  const kind =
    ends.length > 2
      ? random.pick(['splice', 'plain splice'] as const)
      : random.pick(['splice', 'two-way splice', 'plain splice'] as const);
  const joint = draft.name('SP');
  const steps: StepRow[] = [];
  if (kind === 'plain splice')
    steps.push({ do: 'slide tube', end: random.pick(ends), with: draft.part('tube') });
  for (const end of random.shuffled(ends)) steps.push({ do: 'strip', end });
  steps.push({
    do: 'join',
    ends: random.shuffled(ends),
    with: draft.part(kind),
    as: joint,
    zone: random.pick(['dry', 'wet'] as const),
  });
  steps.push({ do: 'seal', joint });
  return steps;
}

/** Covers a free end and, now and then, ties it back. */
export function stepsCovering(draft: KitDraft, end: string): StepRow[] {
  const steps: StepRow[] = [{ do: 'cover', end, with: draft.part('cap') }];
  if (draft.random.chance(0.4)) {
    steps.push({ do: 'tie back', end, ...(draft.random.chance(0.7) ? { with: draft.part('tie') } : {}) });
  }
  return steps;
}

/** Cuts a wire at a distance from its first end; the first piece named is the one that end is on. */
export function cutting(
  draft: KitDraft,
  wire: string,
  from: string,
  mm: number,
): { step: StepRow; near: string; far: string } {
  const [near, far] = [draft.name('near'), draft.name('far')];
  return { step: { do: 'cut', wire, at: `${mm} mm from ${from}`, leaves: [near, far] }, near, far };
}

const cutLabel = (draft: KitDraft, other: string): string => (draft.random.chance(0.7) ? 'cut' : other);

/** A wire is cut, and both pieces stay as covered stubs. */
export const retireByCut: Job = (draft) => {
  const { wire, from } = draft.newStockWire();
  const { step, near, far } = cutting(draft, wire, from, 80 + draft.random.below(500));
  const [nearEnd, farEnd] = [`${near}@${cutLabel(draft, far)}`, `${far}@${cutLabel(draft, near)}`];
  draft.addJob(step, ...draft.random.shuffled([nearEnd, farEnd]).flatMap((end) => stepsCovering(draft, end)));
  draft.wanted.retired.push({ wire });
};

/** A wire is cut twice, the piece between is thrown away, and the rest stays as stubs. */
export const retireWithOffCut: Job = (draft) => {
  const { wire, from } = draft.newStockWire();
  const first = cutting(draft, wire, from, 100);
  const second = cutting(draft, first.far, first.near, 300);
  const piece = second.near;
  const steps: StepRow[] = [
    first.step,
    second.step,
    { do: 'cover', end: `${first.near}@${first.far}`, with: draft.part('cap') },
    { do: 'cover', end: `${second.far}@${cutLabel(draft, second.near)}`, with: draft.part('cap') },
    { do: 'remove off-cut', wire: piece },
  ];
  draft.addJob(...steps);
  draft.wanted.retired.push({ wire });
};

/** A wire comes out at its cavity end and is cut off short at the other, where a stub stays; or comes out whole. */
export const retireByWithdrawing: Job = (draft) => {
  const { random } = draft;
  const from = draft.filledCavity();
  const whole = random.chance(0.5);
  const to = whole ? draft.filledCavity() : draft.somewhere();
  const wire = draft.stockWire(from, to);
  const steps: StepRow[] = [{ do: 'withdraw', cavity: from }];
  draft.open(from);
  draft.wanted.retired.push({ wire }, { cavity: from });
  const plugging = (cavity: string): StepRow[] =>
    draft.rowOf(cavity).sealed === 'yes' ? [{ do: 'fit plug', cavity, with: draft.part('plug') }] : [];
  steps.push(...plugging(from));
  if (whole) {
    draft.open(to);
    draft.wanted.retired.push({ cavity: to });
    steps.push({ do: 'withdraw', cavity: to }, ...plugging(to), { do: 'remove off-cut', wire });
  } else if (random.chance(0.5)) {
    steps.push(...stepsCovering(draft, `${wire}@${from}`));
  } else {
    const { step, near, far } = cutting(draft, wire, from, 700);
    steps.push(
      step,
      { do: 'remove off-cut', wire: near },
      ...stepsCovering(draft, `${far}@${cutLabel(draft, near)}`),
    );
  }
  draft.addJob(...steps);
};

/** A wire is cut and its near piece led on by a kit wire to somewhere else; the far piece stays as a stub. */
export const moveThroughSplice: Job = (draft) => {
  const { random } = draft;
  const { wire, from } = draft.newStockWire();
  const { step, near, far } = cutting(draft, wire, from, 200);
  const kept = random.chance(0.5)
    ? { end: `${near}@cut`, stub: `${far}@cut` }
    : { end: `${far}@cut`, stub: `${near}@cut` };
  const target = newTarget(draft);
  draft.addJob(
    step,
    ...random.shuffled([stepsJoining(draft, [kept.end, target.end]), stepsCovering(draft, kept.stub)]).flat(),
    ...target.steps,
  );
};

/** A new wire between two new places. */
export const newWire: Job = (draft) => {
  const { random } = draft;
  const first = draft.emptyCavity();
  const second = random.chance(0.5) ? draft.emptyCavity() : null;
  if (second === null) {
    const target = newTarget(draft);
    draft.addJob(...stepsIntoCavity(draft, target.end, first, false), ...target.steps);
    return;
  }
  const terminalIsOn = random.chance(0.5);
  const wire = draft.kitWire('A', 'B', terminalIsOn ? withTerminals(draft) : {});
  draft.addJob(
    ...stepsIntoCavity(draft, `${wire}@A`, first, terminalIsOn),
    ...stepsIntoCavity(draft, `${wire}@B`, second, terminalIsOn),
    ...(random.chance(0.4)
      ? [{ do: 'fasten' as const, wire, ...(random.chance(0.7) ? { with: draft.part('tie') } : {}) }]
      : []),
  );
};

/** A kit wire that is led from a stock place or a kit device to a free end that the job may use. */
export function newTarget(draft: KitDraft): { end: string; steps: StepRow[] } {
  const { random } = draft;
  const kind = random.below(3);
  if (kind === 0) {
    const connector = draft.kitDevice(random.chance(0.5) ? ['1', '2'] : ['1']);
    return { end: `${draft.kitWire('A', `${connector}:1`)}@A`, steps: [] };
  }
  if (kind === 1) {
    const cavity = draft.emptyCavity();
    const terminalIsOn = random.chance(0.5);
    const wire = draft.kitWire('A', 'B', terminalIsOn ? withTerminals(draft, ['to']) : {});
    return { end: `${wire}@A`, steps: stepsIntoCavity(draft, `${wire}@B`, cavity, terminalIsOn) };
  }
  const wire = draft.kitWire('A', 'ring', random.chance(0.5) ? { 'to terminal': draft.part('ring') } : {});
  const stud = random.pick([...(draft.stock.studs?.keys() ?? [])]);
  const steps: StepRow[] =
    draft.bag.wires.get(wire)?.['to terminal'] === undefined
      ? [
          { do: 'strip', end: `${wire}@ring` },
          { do: 'fit terminal', ends: [`${wire}@ring`], with: draft.part('ring') },
        ]
      : [];
  return { end: `${wire}@A`, steps: [...steps, { do: 'attach', end: `${wire}@ring`, stud }] };
}

function withTerminals(
  draft: KitDraft,
  sides: readonly ('from' | 'to')[] = ['from', 'to'],
): Record<string, string> {
  const more: [string, string][] = sides.flatMap((side): [string, string][] => [
    [`${side} terminal`, draft.part('terminal')],
    [`${side} seal`, draft.part('seal')],
  ]);
  return Object.fromEntries(more);
}

/** A kit wire is tapped onto a stock wire. */
export const tapBridging: Job = (draft) => {
  const { random } = draft;
  const { wire, from } = draft.newStockWire();
  const target = newTarget(draft);
  const tap: StepRow = {
    do: 'tap',
    run: wire,
    at: `${100 + random.below(300)} mm from ${from}`,
    branch: target.end,
    with: draft.part('tap'),
    as: draft.name('TAP'),
  };
  draft.addJob(...random.shuffled([[tap], target.steps]).flat());
};

/** A tap is set, taken off again, its wound covered, and set elsewhere. */
export const tapTwice: Job = (draft) => {
  const { random } = draft;
  const { wire, from } = draft.newStockWire();
  const target = newTarget(draft);
  const [wrong, right] = [draft.name('TAP'), draft.name('TAP')];
  draft.addJob(
    {
      do: 'tap',
      run: wire,
      at: `100 mm from ${from}`,
      branch: target.end,
      with: draft.part('tap'),
      as: wrong,
    },
    { do: 'remove tap', tap: wrong },
    { do: 'cover', end: wrong, with: draft.part('cap') },
    {
      do: 'tap',
      run: wire,
      at: `${random.pick([50, 400])} mm from ${from}`,
      branch: target.end,
      with: draft.part('tap'),
      as: right,
    },
    ...target.steps,
  );
};

/** A piece of a wire is cut out and a kit wire spliced in its stead. */
export const repair: Job = (draft) => {
  const { wire, from } = draft.newStockWire();
  const first = cutting(draft, wire, from, 100);
  const second = cutting(draft, first.far, first.near, 300);
  const patch = draft.kitWire('A', 'B');
  draft.addJob(
    first.step,
    second.step,
    { do: 'remove off-cut', wire: second.near },
    ...stepsJoining(draft, [`${first.near}@cut`, `${patch}@A`]),
    ...stepsJoining(draft, [`${second.far}@cut`, `${patch}@B`]),
  );
};

/** A wire is cut and joined again together with a kit wire. */
export const branchAtSplice: Job = (draft) => {
  const { wire, from } = draft.newStockWire();
  const { step, near, far } = cutting(draft, wire, from, 400);
  const target = newTarget(draft);
  draft.addJob(step, ...stepsJoining(draft, [`${near}@cut`, `${far}@cut`, target.end]), ...target.steps);
};

/** The far part of one wire is crossed over to the near part of another, and the other way round. */
export const exchangeWires: Job = (draft) => {
  const [one, other] = [draft.newStockWire(), draft.newStockWire()];
  const [a, b] = [cutting(draft, one.wire, one.from, 300), cutting(draft, other.wire, other.from, 300)];
  draft.addJob(
    a.step,
    b.step,
    ...stepsJoining(draft, [`${a.near}@cut`, `${b.far}@cut`]),
    ...stepsJoining(draft, [`${b.near}@cut`, `${a.far}@cut`]),
  );
};
