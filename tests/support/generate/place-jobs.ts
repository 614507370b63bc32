import type { StepRow } from '../oracle/kit-document.ts';
import { connectorOf, labelOf } from './kit-draft.ts';
import type { Job } from './wire-jobs.ts';
import { newTarget, stepsCovering, stepsIntoCavity, stepsJoining, stepsSealing } from './wire-jobs.ts';

/** A terminal moves from its cavity to an empty one. */
export const moveTerminal: Job = (draft) => {
  const { random } = draft;
  const from = draft.filledCavity();
  draft.stockWire(from, draft.somewhere());
  const row = draft.rowOf(from);
  let to = random.chance(0.5) ? draft.emptyCavity(connectorOf(from)) : draft.emptyCavity();
  // A terminal that has no seal behind it cannot go into a sealed connector.
  if (row.sealed !== 'yes' && draft.rowOf(to).sealed === 'yes') to = draft.emptyCavity(connectorOf(from));
  const [wire = ''] = [...draft.stock.wires.keys()].slice(-1);
  draft.open(from);
  const steps: StepRow[] = [{ do: 'withdraw', cavity: from }];
  if (row.sealed === 'yes') steps.push({ do: 'fit plug', cavity: from, with: draft.part('plug') });
  steps.push(...stepsIntoCavity(draft, `${wire}@${from}`, to, true));
  draft.addJob(...steps);
  if (random.chance(0.8)) draft.wanted.moves.push({ from, to });
};

/** Two terminals change places. */
export const exchangeTerminals: Job = (draft) => {
  const connector = draft.newConnector(draft.random.pick(['module', 'consumer', 'harness'] as const));
  const [a, b] = [draft.filledCavity(connector), draft.filledCavity(connector)];
  const [one, other] = [draft.stockWire(a, draft.somewhere()), draft.stockWire(b, draft.somewhere())];
  draft.open(a);
  draft.addJob(
    { do: 'withdraw', cavity: a },
    { do: 'withdraw', cavity: b },
    { do: 'insert', end: `${one}@${a}`, cavity: b },
    { do: 'insert', end: `${other}@${b}`, cavity: a },
  );
  if (draft.random.chance(0.7)) draft.wanted.moves.push({ from: a, to: b }, { from: b, to: a });
};

/** A kit wire is added at a stud. */
export const addAtStud: Job = (draft) => {
  const { random } = draft;
  const wire = draft.kitWire('A', 'ring', random.chance(0.5) ? { 'to terminal': draft.part('ring') } : {});
  const cavity = draft.emptyCavity();
  const end = `${wire}@ring`;
  const steps: StepRow[] = [];
  if (draft.bag.wires.get(wire)?.['to terminal'] === undefined) {
    steps.push({ do: 'strip', end }, { do: 'fit terminal', ends: [end], with: draft.part('ring') });
  }
  steps.push({ do: 'attach', end, stud: random.pick([...(draft.stock.studs?.keys() ?? [])]) });
  draft.addJob(...random.shuffled([steps, stepsIntoCavity(draft, `${wire}@A`, cavity, false)]).flat());
};

/** A return moves from one stud to another. */
export const moveReturn: Job = (draft) => {
  const { random } = draft;
  const studs = [...(draft.stock.studs?.keys() ?? [])];
  const [from, to] = random.shuffled(studs) as [string, string];
  const wire = draft.stockWire(draft.filledCavity(), from);
  if (random.chance(0.7)) draft.stockWire(draft.filledCavity(), from);
  const end = `${wire}@${from}`;
  draft.addJob({ do: 'detach', end }, { do: 'attach', end, stud: to });
};

/** Two wires are crimped into one terminal. */
export const doubleCrimp: Job = (draft) => {
  const cavity = draft.emptyCavity();
  const row = draft.rowOf(cavity);
  const [one, other] = [newTarget(draft), newTarget(draft)];
  draft.open(cavity);
  const steps: StepRow[] = [one, other].flatMap(({ end }): StepRow[] => [
    { do: 'strip', end },
    ...(row.sealed === 'yes' ? stepsSealing(draft, end) : []),
  ]);
  steps.push({ do: 'fit terminal', ends: [one.end, other.end], with: draft.part('double terminal') });
  if (row.blanked?.includes(labelOf(cavity)) === true) steps.push({ do: 'remove plug', cavity });
  draft.addJob(...steps, { do: 'insert', end: one.end, cavity }, ...one.steps, ...other.steps);
};

/** A terminal with two stock wires comes out, and both go together to another cavity. */
export const moveDoubleCrimp: Job = (draft) => {
  const from = draft.filledCavity();
  const one = draft.stockWire(from, draft.somewhere());
  draft.stockWire(from, draft.somewhere());
  const to = draft.emptyCavity(connectorOf(from));
  draft.open(from);
  draft.addJob(
    { do: 'withdraw', cavity: from },
    ...(draft.rowOf(from).sealed === 'yes'
      ? [{ do: 'fit plug' as const, cavity: from, with: draft.part('plug') }]
      : []),
    ...stepsIntoCavity(draft, `${one}@${from}`, to, true),
  );
  draft.wanted.moves.push({ from, to });
};

/** A stock pair stays unplugged. */
export const leaveUnplugged: Job = (draft) => {
  const connector = draft.newConnector(draft.random.pick(['consumer', 'harness'] as const));
  const cavity = draft.filledCavity(connector);
  draft.stockWire(cavity, draft.somewhere());
  const half = draft.halfOf(connector) ?? '';
  if (draft.stock.connectors.get(half)?.device === undefined)
    draft.stockWire(`${half}:${labelOf(cavity)}`, draft.somewhere());
  draft.freeze(connector);
  draft.leaveUnplugged(connector);
  draft.wanted['left unplugged'].push(draft.random.chance(0.7) ? connector : half);
};

/** An adapter goes between a connector and its device; one of its lines is led elsewhere. */
export const interposeAdapter: Job = (draft) => {
  const { random } = draft;
  const connector = draft.newConnector(random.pick(['module', 'consumer'] as const));
  const row = draft.stock.connectors.get(connector);
  if (row === undefined) return;
  delete row.sealed;
  const count = 2 + random.below(2);
  for (let made = 0; made < count; made += 1)
    draft.stockWire(draft.filledCavity(connector), draft.somewhere());
  draft.freeze(connector);
  const [near, far] = [draft.name('NEAR'), draft.name('FAR')];
  for (const half of [near, far]) {
    const harmless = row.cavities.map((label) => [label, 'never'] as const);
    draft.bag.connectors.set(half, { cavities: [...row.cavities], source: new Map(harmless) });
  }
  const steps: StepRow[] = [
    ...(row.latch === 'closed' ? [{ do: 'open latch' as const, connector }] : []),
    { do: 'unplug', connector },
    { do: 'interpose', at: connector, near, far },
    ...(row.latch === 'closed' ? [{ do: 'close latch' as const, connector }] : []),
  ];
  for (const [index, label] of row.cavities.entries()) {
    if (index > 0 || random.chance(0.5)) draft.kitWire(`${near}:${label}`, `${far}:${label}`);
    else {
      const target = newTarget(draft);
      const wire = draft.kitWire(`${random.pick([near, far])}:${label}`, 'C');
      draft.addJob(...stepsJoining(draft, [`${wire}@C`, target.end]), ...target.steps);
    }
  }
  draft.addJob(...steps);
  draft.wanted.interposed.push({ at: connector, near, far });
};

/** A fuse holder of the kit gets its fuse, or another one. */
export const fitFuse: Job = (draft) => {
  const { random } = draft;
  const fuse = draft.name('F');
  const fitted = random.chance(0.4);
  const connector = draft.kitDevice(
    ['1', '2'],
    [{ is: 'fuse', from: '1', to: '2', name: fuse, ...(fitted ? {} : { fitted: 'no' }) }],
  );
  const wires = ['1', '2'].map((label) => draft.kitWire('A', `${connector}:${label}`));
  const cavities = wires.map(() => draft.emptyCavity());
  draft.addJob(
    ...wires.flatMap((wire, index) => stepsIntoCavity(draft, `${wire}@A`, cavities[index] ?? '', false)),
  );
  draft.addJob(...(fitted ? [{ do: 'remove fuse' as const, fuse }] : []), {
    do: 'fit fuse',
    fuse,
    with: draft.part('fuse'),
  });
};

/** A test jumper is fitted and removed. */
export const jumperThereAndGone: Job = (draft) => {
  const { random } = draft;
  const [bare, wired] = [draft.emptyCavity(), draft.filledCavity()];
  draft.stockWire(wired, draft.somewhere());
  // At a stud it touches a net that other jobs work on.
  const first = random.chance(0.4) ? random.pick([...(draft.stock.studs?.keys() ?? [])]) : bare;
  const between = random.shuffled([first, wired]) as [string, string];
  const jumper = draft.name('J');
  draft.addJob(
    {
      do: 'fit jumper',
      between,
      as: jumper,
      serves: 'the test',
      ...(random.chance(0.6) ? { with: draft.part('jumper') } : {}),
    },
    { do: 'remove jumper', jumper },
  );
};

/** A terminal comes out of a cavity, is cut off, and its wire gets a new terminal in another cavity. */
export const renewTerminal: Job = (draft) => {
  const { random } = draft;
  const from = draft.filledCavity();
  const wire = draft.stockWire(from, draft.somewhere());
  const to = draft.emptyCavity();
  draft.open(from);
  const [stump, rest] = [draft.name('stump'), draft.name('rest')];
  const sealed = draft.rowOf(from).sealed === 'yes';
  draft.addJob(
    { do: 'withdraw', cavity: from },
    ...(sealed ? [{ do: 'fit plug' as const, cavity: from, with: draft.part('plug') }] : []),
    { do: 'cut', wire, at: `30 mm from ${from}`, leaves: [stump, rest] },
    { do: 'remove off-cut', wire: stump },
    ...stepsIntoCavity(draft, `${rest}@${random.chance(0.5) ? 'cut' : stump}`, to, false),
  );
};

/** A stub that is there anyway gets its end covered: a wire withdrawn at one end and left hanging. */
export const hangWire: Job = (draft) => {
  const from = draft.filledCavity();
  const wire = draft.stockWire(from, draft.somewhere());
  draft.open(from);
  draft.addJob(
    { do: 'withdraw', cavity: from },
    ...stepsCovering(draft, `${wire}@${from}`),
    ...(draft.rowOf(from).sealed === 'yes'
      ? [{ do: 'fit plug' as const, cavity: from, with: draft.part('plug') }]
      : []),
  );
  if (draft.random.chance(0.5)) draft.wanted.retired.push({ wire });
  draft.wanted.retired.push({ cavity: from });
};
