import { type Job, type KitFile, locate, type PlainKit, resolveKit, type Step } from '@loomproof/netlist';
import { proveKit } from '@loomproof/verify';
import { judgeKit } from '../oracle/judge-kit.ts';
import type { KitDocument, SourceText, StepRow, WantedRows } from '../oracle/kit-document.ts';
import { obligationsInWords } from './engine-verdict.ts';
import { RunCounts } from './run-counts.ts';

/** Which world an intent is tried in: with a source that is on, and with a conductor in the bag, or without. */
type WorldKind = { readonly live: boolean; readonly kitWire: boolean };

/**
 * Three connectors of two cavities, one of them plugged into a device, four conductors and a splice that is there. The
 * bag holds splices, a tap, covers and now and then a conductor.
 */
function worldOf({ live, kitWire }: WorldKind): Omit<KitDocument, 'work' | 'wanted'> {
  const harmless = new Map<string, SourceText>([
    ['1', 'never'],
    ['2', 'never'],
  ]);
  const wires = [
    ['a', 'K:1', 'S'],
    ['b', 'L:1', 'S'],
    ['c', 'K:2', 'L:2'],
    ['d', 'M:1', 'S'],
  ] as const;
  return {
    kit: 'small world',
    revision: '1',
    parts: new Map([
      ['T', { is: 'terminal', size: '0.3..1 mm2' }],
      ['SP', { is: 'splice', size: '0.3..1 mm2', tube: 'built in', zone: 'wet' }],
      ['TAP', { is: 'tap', run: '0.3..1 mm2', branch: '0.3..1 mm2', zone: 'wet' }],
      ['CAP', { is: 'cover', size: '0.3..1 mm2', zone: 'wet' }],
    ]),
    stock: {
      zone: 'dry',
      ...(live ? { supplies: new Map([['battery', { at: ['D:1'] }]]) } : {}),
      connectors: new Map([
        ['K', { cavities: ['1', '2'], into: 'D', accepts: ['T'] }],
        ['D', { cavities: ['1', '2'], device: 'yes', source: harmless }],
        ['L', { cavities: ['1', '2'], accepts: ['T'], source: harmless }],
        ['M', { cavities: ['1', '2'], accepts: ['T'], source: harmless }],
      ]),
      splices: new Map([['S', {}]]),
      wires: new Map(
        wires.map(([name, from, to]) => [
          name,
          { from, to, size: '0.5 mm2', length: '1000 mm', 'from terminal': 'T' },
        ]),
      ),
    },
    bag: {
      zone: 'dry',
      wires: new Map(
        kitWire ? [['n', { from: 'A', to: 'B', size: '0.5 mm2', length: '500 mm', 'to terminal': 'T' }]] : [],
      ),
    },
  };
}

/** Every step that is tried: wire c may be cut, wire a tapped; names are those before the cut, or after it. */
const everyStep: readonly StepRow[] = [
  { do: 'disconnect', supply: 'battery' },
  { do: 'unplug', connector: 'K' },
  { do: 'withdraw', cavity: 'K:1' },
  { do: 'withdraw', cavity: 'K:2' },
  { do: 'withdraw', cavity: 'L:1' },
  { do: 'withdraw', cavity: 'L:2' },
  { do: 'withdraw', cavity: 'M:1' },
  { do: 'insert', end: 'a@K:1', cavity: 'K:2' },
  { do: 'insert', end: 'a@K:1', cavity: 'M:2' },
  { do: 'insert', end: 'b@L:1', cavity: 'L:2' },
  { do: 'insert', end: 'b@L:1', cavity: 'M:1' },
  { do: 'insert', end: 'b@L:1', cavity: 'M:2' },
  { do: 'insert', end: 'd@M:1', cavity: 'M:2' },
  { do: 'insert', end: 'd@M:1', cavity: 'L:1' },
  { do: 'cut', wire: 'c', at: '300 mm from K:2', leaves: ['near', 'far'] },
  { do: 'insert', end: 'near@K:2', cavity: 'K:1' },
  { do: 'insert', end: 'far@L:2', cavity: 'L:1' },
  { do: 'insert', end: 'far@L:2', cavity: 'M:2' },
  { do: 'strip', end: 'near@cut' },
  { do: 'strip', end: 'far@cut' },
  { do: 'strip', end: 'n@A' },
  { do: 'cover', end: 'near@cut', with: 'CAP' },
  { do: 'cover', end: 'far@cut', with: 'CAP' },
  { do: 'cover', end: 'a@K:1', with: 'CAP' },
  { do: 'cover', end: 'b@L:1', with: 'CAP' },
  { do: 'cover', end: 'd@M:1', with: 'CAP' },
  { do: 'cover', end: 'n@A', with: 'CAP' },
  { do: 'join', ends: ['near@cut', 'far@cut'], with: 'SP', as: 'J', zone: 'dry' },
  { do: 'join', ends: ['far@cut', 'n@A'], with: 'SP', as: 'J2', zone: 'dry' },
  { do: 'seal', joint: 'J' },
  { do: 'seal', joint: 'J2' },
  { do: 'tap', run: 'a', at: '200 mm from K:1', branch: 'n@A', with: 'TAP', as: 'TP' },
  { do: 'insert', end: 'n@B', cavity: 'M:2' },
  { do: 'insert', end: 'n@B', cavity: 'K:2' },
  { do: 'remove tap', tap: 'TP' },
  { do: 'cover', end: 'TP', with: 'CAP' },
  { do: 'plug', connector: 'K' },
  { do: 'remove off-cut', wire: 'far' },
  { do: 'reconnect', supply: 'battery' },
];

/** What may be wanted, and in which world. */
const intents: readonly { readonly name: string; readonly world: WorldKind; readonly wanted: WantedRows }[] =
  [
    {
      name: 'all as it was',
      world: { live: false, kitWire: false },
      wanted: {
        circuits: new Map([
          ['a', ['K:1', 'L:1', 'M:1']],
          ['c', ['K:2', 'L:2']],
        ]),
      },
    },
    {
      name: 'c retired',
      world: { live: false, kitWire: false },
      wanted: {
        retired: [{ wire: 'c' }],
        stubs: [
          { of: 'c', at: 'K:2', is: 'dead' },
          { of: 'c', at: 'L:2', is: 'dead' },
        ],
      },
    },
    {
      name: 'c retired, with a source on',
      world: { live: true, kitWire: false },
      wanted: {
        retired: [{ wire: 'c' }],
        stubs: [
          { of: 'c', at: 'K:2', is: 'dead' },
          { of: 'c', at: 'L:2', is: 'dead' },
        ],
      },
    },
    {
      name: 'd moved to M:2',
      world: { live: false, kitWire: false },
      wanted: { moves: [{ from: 'M:1', to: 'M:2' }] },
    },
    {
      name: 'd moved to M:2, with a source on',
      world: { live: true, kitWire: false },
      wanted: { moves: [{ from: 'M:1', to: 'M:2' }] },
    },
    {
      name: 'a branch to M:2',
      world: { live: false, kitWire: true },
      wanted: { additions: new Map([['n', { to: 'K:1', add: ['M:2'] }]]) },
    },
    {
      name: 'a branch to M:2, with a source on',
      world: { live: true, kitWire: true },
      wanted: { additions: new Map([['n', { to: 'K:1', add: ['M:2'] }]]) },
    },
  ];

/** Whether a step can be spoken of in a world at all. */
function belongsTo({ live, kitWire }: WorldKind, step: StepRow): boolean {
  const ofKitWire = JSON.stringify(step).includes('n@') || JSON.stringify(step).match(/"(TP|J2)"/) !== null;
  const ofSupply = step.do === 'disconnect' || step.do === 'reconnect';
  return (kitWire || !ofKitWire) && (live || !ofSupply);
}

/** The step as it is written at a moment: the ends of wire c are those of its pieces once it is cut. */
function writtenAfter(step: StepRow, isCut: boolean): StepRow {
  if (isCut || step.do !== 'insert' || !/^(near|far)@/.test(step.end)) return step;
  return { ...step, end: `c@${step.end.split('@')[1] ?? ''}` };
}

/** Parts that steps ask for, so that the bag holds what they take. */
function bagFor(work: readonly StepRow[]): Map<string, string> {
  const counts = new Map<string, number>();
  for (const step of work) {
    const part = 'with' in step ? step.with : undefined;
    if (part !== undefined) counts.set(part, (counts.get(part) ?? 0) + 1);
  }
  return new Map([...counts].map(([part, count]) => [part, String(count)]));
}

/** The world with every step read once, so that each sequence need not be read from its text. */
function readWorld(kit: KitDocument): { file: KitFile; job: Job } {
  const file = resolveKit(locate(kit as PlainKit), () => null);
  const job = file.value?.variants[0]?.job;
  if (file.value === null || job === undefined)
    throw new Error(file.diagnostics.map((one) => one.message).join('\n'));
  return { file: file.value, job };
}

/**
 * Judges every sequence of up to `most` steps for every intent, by the program and by the oracle. Left out are only
 * sequences in which a step is said twice running, or makes a second time what has that name already.
 * @returns the cases on which they differ, at most ten, and how many there were.
 */
export function searchSmallWorld(most: number): {
  readonly cases: number;
  readonly counts: RunCounts;
  readonly differences: readonly string[];
} {
  const counts = new RunCounts();
  const differences: string[] = [];
  let cases = 0;
  for (const { name, world: kind, wanted } of intents) {
    const world = worldOf(kind);
    const steps = everyStep.filter((step) => belongsTo(kind, step));
    const cutAt = steps.findIndex((step) => step.do === 'cut');
    const { file, job } = readWorld({ ...world, work: steps, wanted });
    const [variant] = file.variants;
    if (variant === undefined) continue;
    let sequences: readonly (readonly number[])[] = [[]];
    for (let length = 1; length <= most; length += 1) {
      sequences = sequences.flatMap((sequence) =>
        steps.flatMap((_, index) => (isRepeat(sequence, index, steps) ? [] : [[...sequence, index]])),
      );
      for (const sequence of sequences) {
        cases += 1;
        const work = sequence.map((index, at) =>
          writtenAfter(steps[index] as StepRow, sequence.slice(0, at).includes(cutAt)),
        );
        const bag = bagFor(work);
        const oracle = judgeKit({ ...world, bag: { ...world.bag, parts: bag }, work, wanted });
        const done = sequence.map((index, at): Step => ({ ...(job.steps[index] as Step), number: at + 1 }));
        const numbers = new Map([...bag].map(([part, count]) => [part, Number(count)]));
        const verdict = proveKit({
          ...file,
          variants: [{ ...variant, job: { ...job, steps: done, bag: numbers } }],
        });
        const [judged] = verdict.variants;
        const theirs = [...oracle.byObligation].map(([one, word]) => `${one} ${word}`).join(', ');
        const own = judged === undefined ? 'nothing judged' : obligationsInWords(judged);
        counts.add(name, oracle.overall);
        for (const [one, word] of oracle.byObligation)
          if (word === 'refuted') counts.add('refuted obligations', String(one));
        if ((own !== theirs || judged?.verdict !== oracle.overall) && differences.length < 10)
          differences.push(`${name}: ${JSON.stringify(work)}: engine ${own}; oracle ${theirs}`);
      }
    }
  }
  return { cases, counts, differences };
}

/** Whether a step only says again what was just done: each names things that can be made once. */
function isRepeat(sequence: readonly number[], index: number, steps: readonly StepRow[]): boolean {
  return (
    sequence[sequence.length - 1] === index ||
    (sequence.includes(index) && makesName(steps[index] as StepRow))
  );
}

function makesName(step: StepRow): boolean {
  return step.do === 'cut' || step.do === 'join' || step.do === 'tap';
}
