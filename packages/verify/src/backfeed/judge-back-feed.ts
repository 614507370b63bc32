import {
  type Conducts,
  compareText,
  type Job,
  type PoweredWhen,
  type Rework,
  UnionFind,
} from '@loomproof/netlist';
import { asFoundView } from '../prove/assembled-view.ts';
import type { PathHop, RawFinding } from '../prove/finding.ts';
import type { Names } from '../prove/names.ts';
import { changedBranches } from './changed-branches.ts';
import {
  type FunctionBranch,
  type FunctionNetwork,
  functionNetwork,
  unknownSources,
  type WholeNetwork,
} from './function-network.ts';
import { openReturns } from './open-returns.ts';
import { type PartState, PartStates } from './part-states.ts';
import { partsWith } from './parts-with.ts';
import { copper, powerPath, tiePath } from './power-path.ts';
import { type StateVariable, stateVariables } from './state-variables.ts';
import { withoutJoin } from './without-join.ts';

/** How much is looked at; states beyond are not, and then it is said. */
export interface BackFeedBudget {
  /** Switches and drives of one part of which every state is tried. */
  readonly variables: number;
  /** The same with every single open return. */
  readonly variablesWithOpens: number;
}

const wholeBudget: BackFeedBudget = { variables: 20, variablesWithOpens: 12 };

/** Findings on back-feed, and how far it was looked. */
export interface BackFeedJudgement {
  readonly findings: readonly RawFinding[];
  /** In words: how many states of how many parts, and how many open returns. */
  readonly coverage: string;
}

interface Search {
  readonly rework: Rework;
  readonly job: Job;
  readonly names: Names;
  readonly view: Conducts;
  /** The view of the harness as found. */
  readonly found: Conducts;
  readonly variables: readonly StateVariable[];
  readonly before: WholeNetwork;
  readonly after: WholeNetwork;
  readonly wereTied: (a: string, b: string) => boolean;
  readonly numberOf: ReadonlyMap<string, number>;
  readonly findings: RawFinding[];
  readonly missing: Set<string>;
  readonly said: Set<string>;
  states: number;
}

/**
 * Judges back-feed (obligation 10) over all states of the switches and drives in the part that the work affected: no
 * load has power that intent does not power in that state, none is dark that intent powers, no source is tied to
 * another, and no single open return lights anything. A load of which intent says nothing does as before the work.
 */
export function judgeBackFeed(
  rework: Rework,
  view: Conducts,
  names: Names,
  budget: BackFeedBudget = wholeBudget,
): BackFeedJudgement {
  const { job } = rework;
  const variables = stateVariables(job);
  const found = asFoundView(rework);
  const before = functionNetwork(rework, variables, rework.labels(0, found), 0);
  const after = functionNetwork(rework, variables, rework.labels(rework.ordinal, view), rework.ordinal);
  if (before.kind === 'missing' || after.kind === 'missing') {
    const missing =
      after.kind === 'missing' ? after.missing : before.kind === 'missing' ? before.missing : [];
    return { findings: [unknownFinding(missing)], coverage: 'nothing was looked at' };
  }
  const search: Search = {
    rework,
    job,
    names,
    view,
    found,
    variables,
    before: before.network,
    after: after.network,
    wereTied: tiedBefore(job, before.network),
    numberOf: new Map(variables.map(({ name }, index) => [name, index])),
    findings: [],
    missing: new Set(),
    said: new Set(),
    states: 0,
  };
  findDirectTies(search);
  findUnknownOnHeld(search);
  // Of whatever load something is said, that is judged, though the work be nowhere near.
  const said = [...job.wanted.powered.keys()].flatMap((element) => after.network.branchOf(element) ?? []);
  const changed = changedBranches(rework, before.network, after.network);
  const parts = partsWith(after.network, [...changed, ...said]);
  for (const part of parts) lookAt(search, after.network, part, -1, budget.variables);
  const affected = new Set(
    parts.flatMap((part) => part.map((index) => after.network.branches[index]?.element ?? -1)),
  );
  let opens = 0;
  for (const ground of after.network.returns)
    for (const { edge, elements } of openReturns(rework, after.network, view, ground, (one) =>
      affected.has(one),
    )) {
      const open = withoutJoin(rework, view, after.network, rework.ordinal, edge);
      if (open === after.network) continue;
      const cutOff = [...elements].flatMap((element) => open.branchOf(element) ?? []);
      opens += 1;
      for (const part of partsWith(open, cutOff)) lookAt(search, open, part, edge, budget.variablesWithOpens);
    }
  if (search.missing.size > 0) search.findings.push(unknownFinding([...search.missing]));
  return {
    findings: search.findings,
    coverage: `${search.states} states of ${parts.length} parts, ${opens} open returns`,
  };
}

/** Whether two sources were one piece of metal before the work, in every state. */
function tiedBefore(job: Job, before: WholeNetwork): (a: string, b: string) => boolean {
  const pieces = new UnionFind(job.places.length + 1);
  for (const { kind, variable, coil, output, from, to } of before.branches)
    if (kind === 'joint' && variable < 0 && coil < 0 && !output) pieces.union(from, to);
  const found = new Map<string, Set<number>>();
  for (const { name, node } of before.pins)
    found.set(name, (found.get(name) ?? new Set()).add(pieces.find(node)));
  return (a, b) => [...(found.get(a) ?? [])].some((piece) => found.get(b)?.has(piece) === true);
}

/** Sources that the work made one piece of copper, on which no element need hang. */
function findDirectTies({ rework, job, names, view, after, wereTied, said, findings }: Search): void {
  for (const one of after.pins)
    for (const other of after.pinsAt(one.node)) {
      if (other.rank <= one.rank || one.name === other.name || maybeTied(job, one.name, other.name)) continue;
      const pair = [one.name, other.name].sort(compareText);
      const key = tieKey(pair);
      if (said.has(key) || wereTied(one.name, other.name)) continue;
      said.add(key);
      findings.push({
        kind: 'sources-tied',
        step: null,
        points: pair,
        witness: {
          is: 'tie',
          between: [one.name, other.name],
          state: { on: [], off: [] },
          path: copper(rework, names, view, one.place, other.place, -1),
        },
        culprits: [],
        keys: [`node:${one.place}`, `node:${other.place}`],
      });
    }
}

/** What may be a source and came to hang on the pole of a supply by the work, where no part of loads is asked for it. */
function findUnknownOnHeld({ job, names, before, after, missing }: Search): void {
  const isUnknown = unknownSources(job);
  for (const [place] of job.places.entries()) {
    const node = after.nodeOf[place] ?? -1;
    if (after.held(node) === undefined || !isUnknown(place)) continue;
    const was = before.held(before.nodeOf[place] ?? -1);
    if (was === undefined || was !== after.held(node)) missing.add(unknownWords(job, names, place));
  }
}

function unknownWords(job: Job, names: Names, place: number): string {
  return job.places[place]?.source === 'unknown'
    ? `whether current can come out at ${names.place(place)}`
    : `whether ${names.place(place)} is one with another boundary beyond the model`;
}

function tieKey(pair: readonly string[]): string {
  return `tie ${pair.join('\n')}`;
}

function unknownFinding(missing: readonly string[]): RawFinding {
  const items = [...new Set(missing)].sort(compareText);
  return {
    kind: 'back-feed-unknown',
    step: null,
    points: items,
    witness: { is: 'missing', items },
    culprits: [],
    keys: [],
  };
}

function lookAt(
  search: Search,
  network: FunctionNetwork,
  part: readonly number[],
  open: number,
  most: number,
): void {
  const { job, names } = search;
  const branches = branchesOf(network, part);
  const loads = branches.flatMap(({ kind }, index) => (kind === 'load' ? [index] : []));
  const nodes = new Set(branches.flatMap(({ from, to }) => [from, to]));
  const grounds = new Set<number>();
  let allSourcesKnown = true;
  for (const node of nodes) {
    const [ground, unknown, unclear] = [
      network.returnOf(node),
      network.unknownAt(node),
      network.unclearAt(node),
    ];
    if (ground !== undefined) grounds.add(ground);
    if (unknown !== undefined && network.held(node) === undefined) {
      search.missing.add(unknownWords(job, names, unknown));
      allSourcesKnown = false;
    }
    if (unclear !== undefined) {
      search.missing.add(`which supply is behind ${names.place(unclear)}`);
      allSourcesKnown = false;
    }
  }
  if (grounds.size > 1) {
    // Volts against one return say nothing about the other.
    const poleOf = (ground: number): number =>
      network.pinsAt(ground).find(({ name }) => name === 'return')?.place ?? ground;
    const returns = [...grounds].map((ground) => names.place(poleOf(ground))).sort(compareText);
    search.missing.add(
      `what joins the returns ${returns.join(' and ')}, between which ${partName(job, branches)} lies`,
    );
    return;
  }
  // Between equal volts no current flows; with all returns whole a load may be dark for that.
  if (open >= 0 && new Set([...nodes].flatMap((node) => network.held(node) ?? [])).size < 2) return;
  const after = new PartStates(job, network, branches);
  const old = beforePart(search, branches, open);
  // A load that is on anyway and only dimmed by the open return is not lit by it.
  const whole = open < 0 ? old : beforePart(search, branches, -1);
  const relevant = relevantVariables(search, branches, [old, whole], loads);
  const ask = loads.flatMap((load): Ask[] => {
    const element = branches[load]?.element ?? -1;
    const said = job.wanted.powered.get(element);
    if (said !== undefined)
      return [{ load, element, ways: said.map((way) => numbered(way, search.numberOf)) }];
    if (old?.branchOf.has(element) === true) return [{ load, element, ways: null }];
    search.missing.add(`in which states ${job.elements[element]?.name ?? 'a load'} is meant to be powered`);
    return [];
  });
  const on = new Uint8Array(search.variables.length);
  const worst = new Map<string, Worst>();
  const count = relevant.length;
  const looked = Math.min(count, most);
  const states = 2 ** looked;
  if (looked < count) {
    const share = `${states} of ${2 ** count} states${open < 0 ? '' : ' with a return open'}`;
    search.missing.add(`more than ${share} of the part with ${nameOf(search, relevant[0] ?? 0)}`);
  }
  const starts = otherStarts(after.holding);
  let whenWhole: PartStates | null = null;
  const isShort = (state: Uint8Array): boolean => {
    whenWhole ??= partOf(job, search.after, search.after, branches);
    return whenWhole?.at(state).torn === true;
  };
  for (let state = 0; state < states; state += 1) {
    let ones = 0;
    for (let bit = 0; bit < looked; bit += 1) {
      const value = (state >>> bit) & 1;
      on[relevant[bit] as number] = value;
      ones += value;
    }
    const now = after.at(on);
    const was = old === null ? null : old.at(on);
    const wasWhole = open < 0 || whole === null ? was : whole.at(on);
    for (const item of [...now.missing, ...(was?.missing ?? [])]) search.missing.add(item);
    if (!now.settled) search.missing.add(`whether the relays settle with ${stateText(search, on, relevant)}`);
    const keep = (key: string, finding: (now: PartState) => RawFinding): void => {
      if ((worst.get(key)?.count ?? Number.POSITIVE_INFINITY) > ones)
        worst.set(key, { count: ones, on: on.slice(), finding });
    };
    if (open < 0) {
      const tie = (a: number, b: number, key: (pair: readonly string[]) => string): void => {
        const [one, other] = [after.pins[a], after.pins[b]];
        if (one === undefined || other === undefined) return;
        const pair = [one.name, other.name].sort(compareText);
        if ((worst.get(key(pair))?.count ?? Number.POSITIVE_INFINITY) <= ones) return;
        if (search.wereTied(one.name, other.name)) return;
        if (old !== null && was !== null && isTied(old, was, one.name, other.name)) return;
        if (maybeTied(job, one.name, other.name)) {
          if (now.torn) search.missing.add(`what volts there are where ${pair.join(' and ')} are joined`);
          return;
        }
        keep(key(pair), () => ({
          kind: 'sources-tied',
          step: null,
          points: pair,
          witness: {
            is: 'tie',
            between: [one.name, other.name],
            state: stateOf(search, on, relevant),
            path: tiePath(search.rework, names, search.view, after, one, other, on),
          },
          culprits: [],
          keys: partKeys(job, branches),
        }));
      };
      for (const [a, b] of now.ties) tie(a, b, tieKey);
      for (const [a, b] of now.fed) tie(a, b, (pair) => `fed ${pair.join('\n')}`);
    }
    const wrong = new Set<number>();
    // What a short leaves of the volts cannot be told; it is wrong itself, or it was possible before the work.
    for (const { load, element, ways } of now.torn ? [] : ask) {
      if (ways === null && was?.torn === true) continue;
      if (now.unsure[load] === 1 || isUnsure(old, was, element) || isUnsure(whole, wasWhole, element))
        continue;
      const powered = now.powered[load] === 1;
      const meant =
        ways === null
          ? did(old, was, element) || did(whole, wasWhole, element)
          : ways.some((way) => holds(way, on));
      if (powered === meant || (open >= 0 && !powered)) continue;
      // That a load stays dark is only true where no source is left that nobody described.
      if (!powered && !allSourcesKnown) continue;
      wrong.add(powered ? load : ~load);
      const key = `${powered ? 'lit' : 'dark'} ${element}`;
      if ((worst.get(key)?.count ?? Number.POSITIVE_INFINITY) <= ones) continue;
      // Nor is it told what an open return does in a state that is a short while it is whole.
      if (open >= 0 && isShort(on)) continue;
      const name = job.elements[element]?.name ?? '';
      keep(key, ({ volts }) => ({
        kind: powered ? 'load-powered' : 'load-unpowered',
        step: null,
        points: [name],
        witness: {
          is: 'power',
          load: name,
          volts: volts[load] ?? null,
          state: stateOf(search, on, relevant),
          open: open < 0 ? null : openHop(search, open),
          path: powered ? powerPath(search.rework, names, search.view, after, load, on, open) : [],
        },
        culprits: [],
        keys: partKeys(job, branches),
      }));
    }
    search.states += 1;
    for (const coilsOn of now.settled ? starts : []) {
      const held = after.at(on, coilsOn);
      if (!held.settled || held.torn) continue;
      const stands = after.holding.filter((coil) => after.coilIsOn(coil));
      const [wasHeld, wasWholeHeld] = [old?.at(on, coilsOn) ?? null, whole?.at(on, coilsOn) ?? null];
      const differs = ask.some(({ load, element, ways }) => {
        const powered = held.powered[load] === 1;
        const meant =
          ways === null
            ? did(old, wasHeld, element) || did(whole, wasWholeHeld, element)
            : ways.some((way) => holds(way, on));
        if (powered === meant || (!powered && (open >= 0 || !allSourcesKnown))) return false;
        return !wrong.has(powered ? load : ~load);
      });
      // Whether it comes to that depends on what was on before, of which no intent tells.
      if (differs)
        search.missing.add(
          `how ${stands.map((coil) => job.elements[coil]?.name ?? '').join(' and ')} stands with ${stateText(search, on, relevant)}: its contacts may hold it`,
        );
    }
  }
  for (const [key, { on: state, finding }] of worst) {
    // What is wrong with all returns whole is not told again for each that may open.
    if (search.said.has(key)) continue;
    // What lights by it tells more than that an output is fed from outside.
    if (key.startsWith('fed ') && [...worst.keys()].some((other) => !other.startsWith('fed '))) continue;
    search.said.add(key);
    // The way through the metal is only looked for in the states that are told.
    on.set(state);
    search.findings.push(finding(after.at(on)));
  }
}

/** So many coils that may hold themselves are tried in every way in which they can stand when a state begins. */
const mostHolding = 4;

/** The ways in which the coils that may hold themselves can stand when a state begins, but at rest. */
function otherStarts(holding: readonly number[]): readonly (readonly number[])[] {
  if (holding.length > mostHolding) return [holding, ...holding.map((coil) => [coil])];
  return Array.from({ length: 2 ** holding.length - 1 }, (_, ways) =>
    holding.filter((_coil, bit) => (((ways + 1) >> bit) & 1) === 1),
  );
}

/** A wrong state with the fewest things on, and what is told of it once the part is in it again. */
interface Worst {
  readonly count: number;
  readonly on: Uint8Array;
  readonly finding: (now: PartState) => RawFinding;
}

interface Ask {
  readonly load: number;
  readonly element: number;
  /** By number of the variable; null where the load does as before the work. */
  readonly ways: readonly { readonly on: readonly number[]; readonly off: readonly number[] }[] | null;
}

function numbered(
  way: PoweredWhen,
  numberOf: ReadonlyMap<string, number>,
): { readonly on: readonly number[]; readonly off: readonly number[] } {
  const number = (name: string): number => numberOf.get(name) ?? -1;
  return { on: way.on.map(number), off: way.off.map(number) };
}

function holds(
  way: { readonly on: readonly number[]; readonly off: readonly number[] },
  on: Uint8Array,
): boolean {
  return way.on.every((one) => on[one] === 1) && way.off.every((one) => on[one] !== 1);
}

/** What the same elements were part of before the work, with the same return open; null where none was there. */
function beforePart(search: Search, branches: readonly FunctionBranch[], open: number): PartStates | null {
  const { rework, found, before, job } = search;
  return partOf(job, before, open < 0 ? before : withoutJoin(rework, found, before, 0, open), branches);
}

/** What the same elements are part of in a network, which may be a whole one with a join open; null where none is there. */
function partOf(
  job: Job,
  whole: WholeNetwork,
  network: FunctionNetwork,
  branches: readonly FunctionBranch[],
): PartStates | null {
  const seeds = branches.flatMap(
    ({ element, place }) =>
      (element >= 0
        ? network.branchOf(element)
        : whole.atPlace(place).find((index) => network.branch(index)?.place === place)) ?? [],
  );
  const parts = partsWith(network, seeds).flat();
  return parts.length === 0 ? null : new PartStates(job, network, branchesOf(network, parts));
}

function branchesOf(network: FunctionNetwork, part: readonly number[]): readonly FunctionBranch[] {
  return part.flatMap((index) => network.branch(index) ?? []);
}

/** A part by the first of its elements. */
function partName(job: Job, branches: readonly FunctionBranch[]): string {
  const first = branches.find(({ element }) => element >= 0);
  return job.elements[first?.element ?? -1]?.name ?? 'a part';
}

function isUnsure(part: PartStates | null, state: PartState | null, element: number): boolean {
  return state?.unsure[part?.branchOf.get(element) ?? -1] === 1;
}

/** Whether a load had power in the state that a part was last asked about. */
function did(part: PartStates | null, state: PartState | null, element: number): boolean {
  return state?.powered[part?.branchOf.get(element) ?? -1] === 1;
}

function relevantVariables(
  search: Search,
  branches: readonly FunctionBranch[],
  earlier: readonly (PartStates | null)[],
  loads: readonly number[],
): readonly number[] {
  const relevant = new Set<number>();
  for (const { variable } of [...branches, ...earlier.flatMap((part) => part?.branches ?? [])])
    if (variable >= 0) relevant.add(variable);
  for (const load of loads)
    for (const way of search.job.wanted.powered.get(branches[load]?.element ?? -1) ?? []) {
      const { on, off } = numbered(way, search.numberOf);
      for (const one of [...on, ...off]) if (one >= 0) relevant.add(one);
    }
  return [...relevant].sort((a, b) => a - b);
}

function isTied(part: PartStates, { ties, fed }: PartState, a: string, b: string): boolean {
  return [...ties, ...fed].some(([one, other]) => {
    const names = [part.pins[one]?.name, part.pins[other]?.name];
    return names.includes(a) && names.includes(b);
  });
}

function maybeTied(job: Job, a: string, b: string): boolean {
  return job.wanted.mayTie.some((names) => names.has(a) && names.has(b));
}

/** The places at which its elements hang, as other findings name them. */
function partKeys(job: Job, branches: readonly FunctionBranch[]): readonly string[] {
  const places = branches.flatMap(({ element }) => {
    const one = job.elements[element];
    return one === undefined ? [] : [one.from, one.to];
  });
  return [...new Set(places)].sort((a, b) => a - b).map((place) => `node:${place}`);
}

function nameOf(search: Search, variable: number): string {
  return search.variables[variable]?.name ?? '';
}

function stateOf(
  search: Search,
  on: Uint8Array,
  relevant: readonly number[],
): { readonly on: readonly string[]; readonly off: readonly string[] } {
  const names = (value: number): readonly string[] =>
    relevant.filter((one) => (on[one] as number) === value).map((one) => nameOf(search, one));
  return { on: names(1), off: names(0) };
}

function stateText(search: Search, on: Uint8Array, relevant: readonly number[]): string {
  const { on: names } = stateOf(search, on, relevant);
  return names.length === 0 ? 'everything off' : `${names.join(', ')} on`;
}

function openHop(search: Search, edge: number): PathHop {
  const { graph } = search.rework;
  return search.names.hop(search.rework, edge, graph.fromOf(edge), graph.toOf(edge));
}
