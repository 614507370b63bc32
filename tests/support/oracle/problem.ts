/** The obligation that each kind of problem breaks. */
export const obligationOfKind: ReadonlyMap<string, number> = new Map(
  (
    [
      [1, ['circuit-open']],
      [2, ['wrong-connection', 'apart-joined', 'apart-unknown']],
      [3, ['net-split', 'touched-unnamed', 'mate-changed', 'kit-wire-idle']],
      [4, ['stub-undeclared', 'stub-not-dead', 'stub-not-live', 'stub-missing', 'stub-unknown']],
      [5, ['bare-end-live', 'bare-end', 'wound-open', 'cover-unfit', 'joint-unsealed', 'zone-unknown']],
      [
        6,
        [
          'open-cavity',
          'seal-missing',
          'terminal-unfit',
          'size-out-of-range',
          'seal-out-of-range',
          'range-unknown',
          'too-many-ends',
          'too-many-wires',
          'too-many-rings',
          'in-flex-zone',
          'second-splice',
        ],
      ],
      [
        7,
        [
          'step-refused',
          'work-on-live',
          'worked-while-plugged',
          'plugged-with-lock-open',
          'not-placed',
          'left-unplugged',
          'still-plugged',
          'lock-left-open',
          'supply-left-off',
          'part-unused',
          'part-missing',
          'jumper-left',
          'deviation-unmatched',
        ],
      ],
    ] as const
  ).flatMap(([obligation, kinds]) => kinds.map((kind) => [kind, obligation] as const)),
);

/** Kinds of problem that leave an obligation open for want of data. */
export const undecidedKinds: ReadonlySet<string> = new Set([
  'apart-unknown',
  'stub-unknown',
  'zone-unknown',
  'range-unknown',
]);

/** Something wrong, with the number of the step that did it, or null, and what it is about. */
export type Problem = { readonly kind: string; readonly step: number | null; readonly about: string };
