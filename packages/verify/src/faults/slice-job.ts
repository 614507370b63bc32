import type { Connector, Job, Rework, SpecialCircuit, StepAction, WiringGraph } from '@loomproof/netlist';
import { netLabels } from '@loomproof/netlist';
import { cavitiesMistaken } from './cavity-neighbours.ts';
import type { Touched } from './touched.ts';

/**
 * The places that mistakes in the work, damage near it and readings of it may have to do with: those touched and what
 * they face, the cavities beside them and those that may be taken for them, the same of wires that have a loose end, all
 * studs and the poles of supplies.
 */
export function placesNear(finished: Rework, touched: Touched): ReadonlySet<number> {
  const { job, facing } = finished;
  const near = new Set<number>();
  for (const place of [...touched.places, ...homesOf(job, looseWires(finished))]) {
    near.add(place);
    for (const one of [job.facing[place] ?? -1, facing[place] ?? -1]) near.add(one);
    for (const { hit } of cavitiesMistaken(job, place)) near.add(hit);
    const connector = job.places[place]?.connector ?? -1;
    for (const one of [place - 1, place + 1])
      if (connector >= 0 && job.places[one]?.connector === connector) near.add(one);
  }
  for (const { places, returnPlace } of job.supplies)
    for (const one of [...places, returnPlace]) near.add(one);
  for (const [place, { kind }] of job.places.entries()) if (kind === 'stud') near.add(place);
  near.delete(-1);
  return near;
}

/** Wires of which an end lies loose when the work is done: bare, it may touch something, whoever left it. */
function looseWires(finished: Rework): readonly number[] {
  return finished.freeEnds().map((end) => finished.job.ends[end]?.wire ?? -1);
}

function homesOf({ wires, ends }: Job, some: Iterable<number>): readonly number[] {
  return [...some].flatMap((wire) =>
    (wires[wire]?.ends ?? []).flatMap((end) => {
      const home = ends[end]?.home;
      return home?.kind === 'place' ? [home.place] : [];
    }),
  );
}

/**
 * The part of a large job that some of its places have to do with: their connectors, the wires in them, and what joins
 * them by copper at any time. Everything is numbered anew, in the same order. Mistakes in the work and damage near it are the
 * same in both jobs, and so are readings of copper between these places, whatever goes wrong. A connector of which nothing
 * is touched has only those of its cavities that are used. Of what is wanted only what says what is touched is left.
 *
 * @param finished - the job done
 * @param touched - what the work has to do with
 * @param near - see `placesNear`; more where readings at other places are to be the same too
 */
export function sliceJob(finished: Rework, touched: Touched, near: ReadonlySet<number>): Job {
  const { job } = finished;
  const wires = wiresOf(finished, touched, near);
  const elements = elementsOf(finished, touched);
  const places = new Set(near);
  for (const place of homesOf(job, wires)) places.add(place);
  for (const element of elements) {
    const { from = -1, to = -1 } = job.elements[element] ?? {};
    places.add(from).add(to);
  }
  // Whoever counts cavities, or takes one for its neighbour, needs all of them.
  const counted = [...touched.places, ...homesOf(job, looseWires(finished))];
  for (const connector of new Set(counted.map((place) => job.places[place]?.connector ?? -1))) {
    const { firstPlace, placeCount } = job.connectors[connector] ?? { firstPlace: 0, placeCount: 0 };
    for (let place = firstPlace; place < firstPlace + placeCount; place += 1) places.add(place);
  }
  return renumbered(finished, { wires, elements, places });
}

/**
 * Wires that are touched or end in a cavity of those near; and of the nets of those, as they are at any time, whatever
 * leads from one of them to another.
 */
function wiresOf(finished: Rework, touched: Touched, near: ReadonlySet<number>): ReadonlySet<number> {
  const { job, graph } = finished;
  const wires = new Set([...touched.wires, ...looseWires(finished)]);
  const own = nodesOf(job, wires);
  for (const [index, { ends }] of job.wires.entries())
    if (ends.some((end) => isHomeIn(job, end, near))) wires.add(index);
  // What makes a net one that is never probed has to be known too, where it is on one of theirs.
  const special = nodesOf(
    job,
    job.special.flatMap((one) => one.wires),
  );
  for (const wire of wiresBetween(graph, [...near, ...own], new Set(special))) wires.add(wire);
  return wires;
}

function nodesOf({ wires, ends }: Job, some: Iterable<number>): readonly number[] {
  return [...some].flatMap((wire) => (wires[wire]?.ends ?? []).map((end) => ends[end]?.node ?? -1));
}

function isHomeIn({ ends, places }: Job, end: number, near: ReadonlySet<number>): boolean {
  const home = ends[end]?.home;
  return home?.kind === 'place' && near.has(home.place) && places[home.place]?.kind === 'cavity';
}

/**
 * Wires on ways from some nodes to one another or to some that are asked for as well, through everything that ever joined
 * any: what leads to none of them is stripped.
 */
function wiresBetween(
  graph: WiringGraph,
  between: readonly number[],
  also: ReadonlySet<number>,
): ReadonlySet<number> {
  const held = new Set([...between, ...also]);
  const degree = new Int32Array(graph.nodeCount);
  const { edgeCount } = graph;
  const isThere = Uint8Array.from({ length: edgeCount }, (_, edge) =>
    graph.kindOf(edge) === 'mate' ? 0 : 1,
  );
  for (let edge = 0; edge < edgeCount; edge += 1)
    for (const node of [graph.fromOf(edge), graph.toOf(edge)])
      degree[node] = (degree[node] as number) + (isThere[edge] as number);
  const leaves: number[] = [];
  for (let node = 0; node < graph.nodeCount; node += 1)
    if (degree[node] === 1 && !held.has(node)) leaves.push(node);
  for (let leaf = leaves.pop(); leaf !== undefined; leaf = leaves.pop())
    for (let half = graph.firstHalf(leaf); half >= 0; half = graph.nextHalf(half)) {
      if (isThere[half >> 1] !== 1) continue;
      isThere[half >> 1] = 0;
      const other = graph.otherEnd(half);
      degree[other] = (degree[other] as number) - 1;
      if (degree[other] === 1 && !held.has(other)) leaves.push(other);
    }
  const wires = new Set<number>();
  const reached = new Set(between);
  for (const node of reached)
    for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
      if (isThere[half >> 1] !== 1) continue;
      reached.add(graph.otherEnd(half));
      if (graph.kindOf(half >> 1) === 'conductor') wires.add(graph.whatOf(half >> 1));
    }
  return wires;
}

/** Parts that may be broken where something is touched, those that a step fits, and the coils that work them. */
function elementsOf({ job, facing }: Rework, { places, wires }: Touched): ReadonlySet<number> {
  const kept = new Set<number>();
  for (const [index, { connector, from, to }] of job.elements.entries()) {
    const isNear = [from, to].some((pin) => places.has(pin) || places.has(facing[pin] ?? -1));
    if (isNear || job.connectors[connector]?.origin === 'kit') kept.add(index);
  }
  for (const { action } of job.steps) if ('element' in action) kept.add(action.element);
  for (const { terminators, wires: own } of job.special)
    if (own.some((wire) => wires.has(wire))) for (const one of terminators) kept.add(one);
  for (const one of kept) {
    const coil = job.elements[one]?.workedBy ?? -1;
    if (coil >= 0) kept.add(coil);
  }
  return kept;
}

/** What is kept of a job, by its old numbers. */
interface Kept {
  readonly wires: ReadonlySet<number>;
  readonly elements: ReadonlySet<number>;
  readonly places: ReadonlySet<number>;
}

type Numbers = ReadonlyMap<number, number>;

function renumbered(finished: Rework, { wires, elements, places }: Kept): Job {
  const { job } = finished;
  const wireOf = numbersOf(job.wires, (_, index) => wires.has(index));
  const pieceOf = numbersOf(job.pieces, ({ wire }) => wires.has(wire));
  const endOf = numbersOf(job.ends, ({ wire }) => wires.has(wire));
  const placeOf = numbersOf(job.places, (_, place) => places.has(place));
  const fitted = new Set(
    job.steps.flatMap(({ action }) => (action.kind === 'fit terminal' ? [action.terminal] : [])),
  );
  const terminalOf = numbersOf(
    job.terminals,
    ({ ends, place }, index) =>
      fitted.has(index) || ends.some((end) => endOf.has(end)) || (ends.length === 0 && placeOf.has(place)),
  );
  const jointOf = numbersOf(job.joints, jointKept(job, endOf, wireOf));
  const elementOf = numbersOf(job.elements, (_, index) => elements.has(index));
  const connectorOf = numbersOf(job.connectors, connectorKept(job, places));
  const nodeOf = new Map(placeOf);
  const numberNodes = (list: readonly { readonly node: number }[], numbers: Numbers): void => {
    for (const old of numbers.keys()) nodeOf.set(list[old]?.node ?? -1, nodeOf.size);
  };
  numberNodes(job.ends, endOf);
  numberNodes(job.terminals, terminalOf);
  numberNodes(job.joints, jointOf);
  const to = (numbers: Numbers, old: number): number => numbers.get(old) ?? -1;
  const all = (numbers: Numbers, old: Iterable<number>): number[] =>
    [...old].flatMap((one) => numbers.get(one) ?? []);
  const both = (numbers: Numbers, [a, b]: readonly [number, number]) =>
    [to(numbers, a), to(numbers, b)] as const;
  const { wanted } = job;
  return {
    ...job,
    places: kept(job.places, placeOf).map((one) => ({ ...one, connector: to(connectorOf, one.connector) })),
    connectors: keptConnectors(job, connectorOf, placeOf),
    wires: kept(job.wires, wireOf).map((one) => ({ ...one, ends: both(endOf, one.ends) })),
    pieces: kept(job.pieces, pieceOf).map((one) => ({
      ...one,
      wire: to(wireOf, one.wire),
      ends: both(endOf, one.ends),
    })),
    ends: kept(job.ends, endOf).map((one) => ({
      ...one,
      node: to(nodeOf, one.node),
      wire: to(wireOf, one.wire),
      home: homeIn(one.home),
    })),
    terminals: kept(job.terminals, terminalOf).map((one) => ({
      ...one,
      node: to(nodeOf, one.node),
      ends: all(endOf, one.ends),
      place: to(placeOf, one.place),
    })),
    joints: kept(job.joints, jointOf).map((one) => ({ ...one, node: to(nodeOf, one.node) })),
    elements: kept(job.elements, elementOf).map((one) => ({
      ...one,
      from: to(placeOf, one.from),
      to: to(placeOf, one.to),
      connector: to(connectorOf, one.connector),
      workedBy: to(elementOf, one.workedBy),
    })),
    supplies: job.supplies.map((one) => ({
      ...one,
      places: all(placeOf, one.places),
      returnPlace: to(placeOf, one.returnPlace),
    })),
    special: [
      ...job.special.map((one) => ({
        ...one,
        wires: all(wireOf, one.wires),
        terminators: all(elementOf, one.terminators),
      })),
      ...neverProbed(finished, wireOf),
    ],
    positions: new Map(
      [...job.positions].flatMap(([node, one]) => (nodeOf.has(node) ? [[to(nodeOf, node), one]] : [])),
    ),
    tapsAsFound: new Map(
      [...job.tapsAsFound].flatMap(([wire, taps]) =>
        wireOf.has(wire) ? [[to(wireOf, wire), all(jointOf, taps)] as const] : [],
      ),
    ),
    nodeCount: nodeOf.size,
    facing: Int32Array.from(placeOf.keys(), (place) => to(placeOf, job.facing[place] ?? -1)),
    steps: job.steps.map((step) => ({ ...step, action: actionIn(step.action) })),
    wanted: {
      circuits: wanted.circuits.map((one) => ({ ...one, places: all(placeOf, one.places) })),
      additions: wanted.additions.map((one) => ({
        ...one,
        to: to(placeOf, one.to),
        add: all(placeOf, one.add),
        take: all(placeOf, one.take),
      })),
      moves: wanted.moves.map((one) => ({ ...one, from: to(placeOf, one.from), to: to(placeOf, one.to) })),
      retiredWires: new Set(all(wireOf, wanted.retiredWires)),
      retiredPlaces: new Set(all(placeOf, wanted.retiredPlaces)),
      stubs: wanted.stubs.map((one) => ({
        ...one,
        wire: to(wireOf, one.wire),
        place: to(placeOf, one.place),
      })),
      powered: new Map(),
      mayTie: [],
      apart: [],
      leftUnplugged: new Set(),
      interposed: [],
      deviations: [],
      changed: { wires: new Set(), places: new Set(), elements: new Set() },
      agree: null,
      drawn: null,
    },
  };

  function homeIn(home: Job['ends'][number]['home']): Job['ends'][number]['home'] {
    switch (home.kind) {
      case 'place':
        return { ...home, place: to(placeOf, home.place), terminal: to(terminalOf, home.terminal) };
      case 'joint':
        return { ...home, joint: to(jointOf, home.joint) };
      case 'free':
        return { ...home, terminal: to(terminalOf, home.terminal) };
      case 'cut':
        return home;
    }
  }

  function actionIn(action: StepAction): StepAction {
    switch (action.kind) {
      case 'cut':
        return {
          ...action,
          piece: to(pieceOf, action.piece),
          leaves: both(pieceOf, action.leaves),
          newEnds: both(endOf, action.newEnds),
        };
      case 'tap':
        return {
          ...action,
          piece: to(pieceOf, action.piece),
          branch: to(endOf, action.branch),
          joint: to(jointOf, action.joint),
        };
      case 'fasten':
      case 'remove off-cut':
        return { ...action, piece: to(pieceOf, action.piece) };
      case 'join':
        return { ...action, ends: all(endOf, action.ends), joint: to(jointOf, action.joint) };
      case 'fit terminal':
        return { ...action, ends: all(endOf, action.ends), terminal: to(terminalOf, action.terminal) };
      case 'cover':
        return { ...action, end: to(endOf, action.end), joint: to(jointOf, action.joint) };
      case 'insert':
      case 'attach':
        return { ...action, end: to(endOf, action.end), place: to(placeOf, action.place) };
      case 'strip':
      case 'slide tube':
      case 'detach':
      case 'remove seal':
      case 'tie back':
      case 'fit seal':
        return { ...action, end: to(endOf, action.end) };
      case 'prove dead':
      case 'withdraw':
      case 'fit plug':
      case 'remove plug':
        return { ...action, place: to(placeOf, action.place) };
      case 'unplug':
      case 'plug':
      case 'open lock':
      case 'close lock':
      case 'open latch':
      case 'close latch':
      case 'place':
        return { ...action, connector: to(connectorOf, action.connector) };
      case 'interpose':
        return {
          ...action,
          connector: to(connectorOf, action.connector),
          near: to(connectorOf, action.near),
          far: to(connectorOf, action.far),
        };
      case 'seal':
      case 'remove tap':
      case 'remove jumper':
        return { ...action, joint: to(jointOf, action.joint) };
      case 'fit jumper':
        return { ...action, joint: to(jointOf, action.joint), places: both(placeOf, action.places) };
      case 'fit fuse':
      case 'remove fuse':
        return { ...action, element: to(elementOf, action.element) };
      case 'disconnect':
      case 'reconnect':
        return action;
    }
  }
}

/** Joints of the work, and those in which a wire that stays ends as found. */
function jointKept(job: Job, endOf: Numbers, wireOf: Numbers): (one: unknown, joint: number) => boolean {
  const joints = new Set<number>();
  for (const end of endOf.keys()) {
    const home = job.ends[end]?.home;
    if (home?.kind === 'joint') joints.add(home.joint);
  }
  for (const [wire, taps] of job.tapsAsFound) if (wireOf.has(wire)) for (const tap of taps) joints.add(tap);
  for (const { action } of job.steps) if ('joint' in action) joints.add(action.joint);
  return (_, joint) => joints.has(joint);
}

/** Connectors of places that stay and of steps, with their other halves. */
function connectorKept(
  { places, steps }: Job,
  stay: ReadonlySet<number>,
): (one: Connector, index: number) => boolean {
  const found = new Set([...stay].map((place) => places[place]?.connector ?? -1));
  for (const { action } of steps) {
    if ('connector' in action) found.add(action.connector);
    if (action.kind === 'interpose') found.add(action.near).add(action.far);
  }
  return ({ counterpart }, index) => found.has(index) || found.has(counterpart);
}

function keptConnectors(job: Job, connectorOf: Numbers, placeOf: Numbers): readonly Connector[] {
  const found = kept(job.connectors, connectorOf).map((one): Connector => {
    const own: number[] = [];
    for (let place = one.firstPlace; place < one.firstPlace + one.placeCount; place += 1)
      if (placeOf.has(place)) own.push(placeOf.get(place) ?? -1);
    return {
      ...one,
      firstPlace: own[0] ?? placeOf.size,
      placeCount: own.length,
      counterpart: connectorOf.get(one.counterpart) ?? -1,
    };
  });
  return found;
}

/** The wires that stay on nets that nobody may probe: what makes a net one of them may not stay. */
function neverProbed({ job, graph, ordinal }: Rework, wireOf: Numbers): readonly SpecialCircuit[] {
  const special = job.special.flatMap(({ released, wires }) => (released === null ? wires : []));
  if (special.length === 0) return [];
  const labels = netLabels(graph, ordinal, job.nodeCount);
  const labelsOf = (wire: number): readonly number[] =>
    (job.wires[wire]?.ends ?? []).map((end) => labels[job.ends[end]?.node ?? -1] ?? -1);
  const nets = new Set(special.flatMap(labelsOf));
  const wires = [...wireOf].flatMap(([old, wire]) =>
    labelsOf(old).some((net) => nets.has(net)) ? [wire] : [],
  );
  return [
    {
      name: 'never probed',
      is: 'restraint system',
      wires,
      released: null,
      stubLimitMm: null,
      lengthLimitMm: null,
      terminators: [],
    },
  ];
}

/** New numbers of those that stay, in order. */
function numbersOf<T>(list: readonly T[], stays: (one: T, index: number) => boolean): Numbers {
  const numbers = new Map<number, number>();
  for (const [index, one] of list.entries()) if (stays(one, index)) numbers.set(index, numbers.size);
  return numbers;
}

function kept<T>(list: readonly T[], numbers: Numbers): readonly T[] {
  return list.filter((_, index) => numbers.has(index));
}
