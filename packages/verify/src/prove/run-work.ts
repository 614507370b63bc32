import {
  appendTo,
  type RefusalReason,
  type Rework,
  type Step,
  type StepAction,
  type Touch,
} from '@loomproof/netlist';
import type { RawFinding } from './finding.ts';
import type { LiveReach } from './live-reach.ts';
import type { Names } from './names.ts';

/** What came of doing the steps one by one. */
export interface WorkRun {
  readonly findings: readonly RawFinding[];
  /** First step that touched each stock wire, terminal, place, connector or element, as `wire:3`. */
  readonly touched: ReadonlyMap<string, readonly number[]>;
}

/** Steps that lay metal open or work on it, and so ask for a dead conductor. */
const worksOnMetal: ReadonlySet<StepAction['kind']> = new Set([
  'cut',
  'strip',
  'join',
  'tap',
  'remove tap',
  'fit terminal',
  'withdraw',
  'insert',
  'attach',
  'detach',
  // Proving dead asks for nothing else.
  'prove dead',
]);

/** Does every step in order, and after each one looks for what must never be. */
export function runWork(rework: Rework, reach: LiveReach, names: Names): WorkRun {
  const findings: RawFinding[] = [];
  const touched = new Map<string, number[]>();
  const bareSeen = new Set<string>();
  const candidates = new BareCandidates(rework);
  for (const step of rework.job.steps) {
    const keys = keysOf(step.action, rework);
    const live = worksOnMetal.has(step.action.kind) ? liveBefore(step.action, rework, reach) : null;
    const outcome = rework.apply(step);
    const points = pointsOf(step.action, rework, names);
    if (outcome.refused !== null) {
      const about = outcome.refused === 'locked' ? withConnector(step.action, keys, rework) : keys;
      findings.push({
        kind: 'step-refused',
        step: step.number,
        points,
        witness: { is: 'refusal', reason: outcome.refused },
        culprits: [...takenBy(step, outcome.refused, rework), step.number],
        keys: about,
      });
      continue;
    }
    if (live !== null) {
      findings.push({
        kind: 'work-on-live',
        step: step.number,
        points,
        witness: { is: 'bare', end: points[0] ?? '', reach: live },
        culprits: [step.number],
        keys: [...keys, 'live work'],
      });
    }
    for (const breach of outcome.breaches) {
      const kind = breachKinds[breach];
      findings.push({
        kind,
        step: step.number,
        points,
        witness: { is: 'state', what: breach, expected: 'not so', found: 'so' },
        culprits: [step.number],
        keys:
          breach === 'not placed' ? [...keys, ...placedKeys(keys)] : withConnector(step.action, keys, rework),
      });
    }
    for (const touch of outcome.touches) {
      appendTo(touched, `${touch.what}:${touch.index}`, step.number);
    }
    candidates.note(step.action, outcome.touches);
    if (!anySupplyOn(rework)) continue;
    for (const bare of candidates.bareNow(bareSeen)) {
      if (bareSeen.has(bare.name)) continue;
      const source = reach.from(bare.node, 'now', rework.conductsNow);
      if (source === null) continue;
      bareSeen.add(bare.name);
      findings.push({
        kind: 'bare-end-live',
        step: step.number,
        points: [bare.name],
        witness: { is: 'bare', end: bare.name, reach: source },
        culprits: [step.number],
        keys: [`node:${bare.node}`, bare.key],
      });
    }
  }
  return { findings, touched };
}

/** The steps that may have put a cavity into the state for which a later one is refused. */
const stateBefore: ReadonlyMap<RefusalReason, ReadonlySet<StepAction['kind']>> = new Map<
  RefusalReason,
  ReadonlySet<StepAction['kind']>
>([
  ['occupied', new Set(['insert', 'fit plug'])],
  ['plug in cavity', new Set(['insert', 'fit plug'])],
  ['nothing there', new Set(['withdraw', 'remove plug'])],
]);

/** The earlier step that filled the cavity which should be empty now, or emptied the one that should be full. */
function takenBy(step: Step, reason: RefusalReason, rework: Rework): readonly number[] {
  const { action } = step;
  const made = stateBefore.get(reason);
  if (made === undefined || !('place' in action)) return [];
  const earlier = rework.job.steps.filter(
    (one) =>
      one.number < step.number &&
      made.has(one.action.kind) &&
      'place' in one.action &&
      one.action.place === action.place,
  );
  return earlier.slice(-1).map((one) => one.number);
}

/** Work in a plugged or locked connector is about the connector and its other half, whatever the cavity. */
function withConnector(action: StepAction, keys: readonly string[], rework: Rework): readonly string[] {
  if (!('place' in action)) return keys;
  const connector = rework.job.places[action.place]?.connector ?? -1;
  return [...keys, `connector:${connector}`, `connector:${rework.counterpart[connector] ?? -1}`];
}

function placedKeys(keys: readonly string[]): readonly string[] {
  return keys
    .filter((key) => key.startsWith('connector:'))
    .map((key) => key.replace('connector:', 'placed:'));
}

const breachKinds = {
  'worked while plugged': 'worked-while-plugged',
  'plugged with lock open': 'plugged-with-lock-open',
  'not placed': 'not-placed',
  'too many ends': 'too-many-ends',
  'too many wires': 'too-many-wires',
  'too many rings': 'too-many-rings',
  'in flex zone': 'in-flex-zone',
} as const;

/** A kit that lists no supply at all has said nothing of them, so something may always be on. */
function anySupplyOn(rework: Rework): boolean {
  return rework.supplyOn.length === 0 || rework.supplyOn.some(Boolean);
}

function liveBefore(action: StepAction, rework: Rework, reach: LiveReach): ReturnType<LiveReach['from']> {
  if (!anySupplyOn(rework)) return null;
  for (const node of metalOf(action, rework)) {
    const source = reach.from(node, 'now', rework.conductsNow);
    if (source !== null) return source;
  }
  return null;
}

/** The nodes whose metal a step works on, as they are before it. */
function metalOf(action: StepAction, rework: Rework): readonly number[] {
  const { job } = rework;
  const endNode = (end: number): number[] => (rework.endThere[end] === 1 ? [job.ends[end]?.node ?? 0] : []);
  const pieceNodes = (piece: number): number[] =>
    rework.pieceThere[piece] === 1 ? (job.pieces[piece]?.ends ?? []).flatMap(endNode) : [];
  switch (action.kind) {
    case 'cut':
      return pieceNodes(action.piece);
    case 'tap':
      return [...pieceNodes(action.piece), ...endNode(action.branch)];
    case 'remove tap':
      return [job.joints[action.joint]?.node ?? 0];
    case 'join':
    case 'fit terminal':
      return action.ends.flatMap(endNode);
    case 'strip':
    case 'detach':
      return endNode(action.end);
    case 'attach':
    case 'insert':
      return [...endNode(action.end), action.place];
    case 'withdraw':
    case 'prove dead':
      return [action.place];
    default:
      return [];
  }
}

/** What a step is about, for finding out what follows from a refusal. */
export function keysOf(action: StepAction, rework: Rework): readonly string[] {
  const { job } = rework;
  const end = (index: number): string[] => {
    const node = job.ends[index]?.node;
    return node === undefined ? [] : [`node:${node}`, `end:${index}`];
  };
  const piece = (index: number): string[] => [
    `piece:${index}`,
    ...(job.pieces[index]?.ends ?? []).flatMap(end),
  ];
  const joint = (index: number): string[] => [`node:${job.joints[index]?.node ?? -1}`, `joint:${index}`];
  // Whatever sits in a cavity has to do with it.
  const seatedAt = (place: number): string[] => rework.endsOf(rework.seated[place] ?? -1).flatMap(end);
  const part = (name: string | null): string[] => (name === null ? [] : [`part:${name}`]);
  switch (action.kind) {
    case 'disconnect':
    case 'reconnect':
      return [`supply:${action.supply}`];
    case 'prove dead':
      return [];
    case 'unplug':
    case 'plug':
    case 'open lock':
    case 'close lock':
    case 'open latch':
    case 'close latch':
      return [
        `connector:${action.connector}`,
        `connector:${job.connectors[action.connector]?.counterpart ?? -1}`,
      ];
    case 'place':
      return [`connector:${action.connector}`, `placed:${action.connector}`];
    case 'interpose':
      return [
        action.connector,
        action.near,
        action.far,
        job.connectors[action.connector]?.counterpart ?? -1,
      ].map((one) => `connector:${one}`);
    case 'cut':
      return [
        ...piece(action.piece),
        ...action.leaves.flatMap(piece),
        `wire:${job.pieces[action.piece]?.wire ?? -1}`,
      ];
    case 'strip':
    case 'detach':
    case 'remove seal':
      return end(action.end);
    case 'slide tube':
    case 'fit seal':
    case 'tie back':
      return [...end(action.end), ...part(action.part)];
    case 'cover':
      return [...(action.joint >= 0 ? joint(action.joint) : end(action.end)), ...part(action.part)];
    case 'join':
      return [
        ...action.ends.flatMap(end),
        ...joint(action.joint),
        ...part(job.joints[action.joint]?.part ?? null),
      ];
    case 'seal':
    case 'remove tap':
      return [...joint(action.joint), ...rework.endsIn(action.joint).flatMap(end)];
    case 'remove jumper':
      return joint(action.joint);
    case 'tap':
      return [
        `piece:${action.piece}`,
        ...end(action.branch),
        ...joint(action.joint),
        ...part(job.joints[action.joint]?.part ?? null),
      ];
    case 'fit terminal':
      return [
        ...action.ends.flatMap(end),
        ...part(job.terminals[action.terminal]?.part ?? null),
        ...part(action.seal),
        `node:${job.terminals[action.terminal]?.node ?? -1}`,
      ];
    case 'withdraw':
      return [`node:${action.place}`, `place:${action.place}`, ...seatedAt(action.place)];
    case 'remove plug':
      return [`node:${action.place}`, `place:${action.place}`];
    case 'fit plug':
      return [
        `node:${action.place}`,
        `place:${action.place}`,
        ...seatedAt(action.place),
        ...part(action.part),
      ];
    case 'insert':
    case 'attach':
      return [`node:${action.place}`, `place:${action.place}`, ...seatedAt(action.place), ...end(action.end)];
    case 'fasten':
      return [`piece:${action.piece}`, ...part(action.part)];
    case 'fit fuse':
      return [`element:${action.element}`, ...part(action.part)];
    case 'remove fuse':
      return [`element:${action.element}`];
    case 'fit jumper':
      return [...joint(action.joint), ...part(action.part)];
    case 'remove off-cut':
      // A joint that is still on it is what holds it.
      return [
        ...piece(action.piece),
        ...rework.jointsOn(action.piece).flatMap(joint),
        ...(job.pieces[action.piece]?.ends ?? []).flatMap((one) => joint(rework.endJoint[one] ?? -1)),
      ];
    default:
      return [];
  }
}

/** The names that a step is about, as a person would point at them. */
export function pointsOf(action: StepAction, rework: Rework, names: Names): readonly string[] {
  const { job } = rework;
  switch (action.kind) {
    case 'disconnect':
    case 'reconnect':
      return [job.supplies[action.supply]?.name ?? ''];
    case 'prove dead':
    case 'withdraw':
    case 'remove plug':
    case 'fit plug':
      return [names.place(action.place)];
    case 'unplug':
    case 'plug':
    case 'open lock':
    case 'close lock':
    case 'open latch':
    case 'close latch':
    case 'place':
    case 'interpose':
      return [job.connectors[action.connector]?.name ?? ''];
    case 'cut':
    case 'fasten':
    case 'remove off-cut':
      return [job.pieces[action.piece]?.name ?? ''];
    case 'tap':
      return [job.pieces[action.piece]?.name ?? '', names.end(action.branch)];
    case 'join':
    case 'fit terminal':
      return action.ends.map((end) => names.end(end));
    case 'insert':
    case 'attach':
      return [names.end(action.end), names.place(action.place)];
    case 'cover':
      return [action.joint >= 0 ? (job.joints[action.joint]?.name ?? '') : names.end(action.end)];
    case 'fit fuse':
    case 'remove fuse':
      return [job.elements[action.element]?.name ?? ''];
    case 'seal':
    case 'remove tap':
    case 'remove jumper':
    case 'fit jumper':
      return [job.joints[action.joint]?.name ?? ''];
    default:
      return 'end' in action ? [names.end(action.end)] : [];
  }
}

interface BarePoint {
  readonly name: string;
  readonly node: number;
  readonly key: string;
}

/** Ends and joints that may lie bare: loose kit ends, cut ends, and whatever a step has loosened or crimped. */
class BareCandidates {
  readonly #rework: Rework;
  readonly #ends = new Set<number>();
  readonly #joints = new Set<number>();

  constructor(rework: Rework) {
    this.#rework = rework;
    for (const end of rework.freeEnds()) this.#ends.add(end);
  }

  note(action: StepAction, touches: readonly Touch[]): void {
    if (action.kind === 'cut') for (const end of action.newEnds) this.#ends.add(end);
    if ('end' in action && action.end >= 0) this.#ends.add(action.end);
    if ('ends' in action) for (const end of action.ends) this.#ends.add(end);
    if (action.kind === 'tap') this.#ends.add(action.branch);
    if ('joint' in action && action.joint >= 0) this.#joints.add(action.joint);
    for (const touch of touches)
      if (touch.what === 'terminal') for (const end of this.#rework.endsOf(touch.index)) this.#ends.add(end);
  }

  /** What lies bare now, without what is in `seen` already. */
  bareNow(seen: ReadonlySet<string>): readonly BarePoint[] {
    const { job } = this.#rework;
    const points: BarePoint[] = [];
    for (const end of this.#ends) {
      if (this.#rework.isBare(end) && !seen.has(job.ends[end]?.name ?? ''))
        points.push({ name: job.ends[end]?.name ?? '', node: job.ends[end]?.node ?? 0, key: `end:${end}` });
    }
    for (const joint of this.#joints) {
      if (isJointBare(this.#rework, joint) && !seen.has(job.joints[joint]?.name ?? ''))
        points.push({
          name: job.joints[joint]?.name ?? '',
          node: job.joints[joint]?.node ?? 0,
          key: `joint:${joint}`,
        });
    }
    return points;
  }
}

/** A removed tap leaves a wound; a crimped splice is bare until its tube is shrunk, unless the barrel is insulated. */
export function isJointBare(rework: Rework, joint: number): boolean {
  const state = rework.jointState[joint];
  if (state === 'wound') return true;
  const part = rework.job.parts.get(rework.job.joints[joint]?.part ?? '');
  return state === 'crimped' && part?.is === 'splice' && part.tube !== 'none';
}
