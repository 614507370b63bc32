import { type Job, rootIn, type Span, type UnionFind } from '@loomproof/netlist';
import type { Names } from './names.ts';

/** A net that the designer states, under all the names it was given. */
export interface StatedNet {
  readonly names: readonly string[];
  /** In order. No place is on two stated nets. */
  readonly places: Int32Array;
  /** Whether nothing but a move states it: then none of its places but the two of the move were spoken of. */
  readonly byMove: boolean;
}

/** What is said of a statement that contradicts another one. */
export type Complain = (message: string, span: Span | null, help?: string | null) => void;

interface Statement {
  readonly names: string[];
  readonly span: Span | null;
  /** As they were found; a place may stand there more than once. */
  readonly places: number[];
}

/** Several additions to one net are one statement. */
interface AdditionStatement extends Statement {
  readonly take: Set<number>;
}

/**
 * The nets that circuits and additions state, each with the places that are mated to its own, and which of them claims each
 * place: its index, or -1. Statements that claim the same places are one; others that share a place are complained of.
 * @param mated - the place that is mated to a place in the finished machine, or -1.
 * @param sets - the nets that additions add to.
 */
export function statedNets(
  job: Job,
  mated: (place: number) => number,
  sets: UnionFind,
  complain: Complain,
  names: Names,
): { readonly nets: readonly StatedNet[]; readonly claims: Int32Array } {
  const withMate = (place: number): readonly number[] => {
    const other = mated(place);
    return other < 0 ? [place] : [place, other];
  };
  const statements: readonly Statement[] = [
    ...job.wanted.circuits.map(({ name, span, places }) => ({
      names: [name],
      span,
      places: places.flatMap(withMate),
    })),
    ...additionStatements(job, withMate, sets, complain, names),
  ];
  const claims = new Claims(job.places.length);
  for (const [index, { places }] of statements.entries())
    for (const place of places) claims.claim(index, place);
  const dropped = new Set<number>();
  for (const { later, earlier, shared, areSame } of claims.overlaps()) {
    dropped.add(later);
    const [one, other] = [statements[later], statements[earlier]];
    if (one === undefined || other === undefined) continue;
    if (areSame) other.names.push(...one.names);
    else
      complain(
        `\`${one.names[0] ?? ''}\` and \`${other.names[0] ?? ''}\` both claim \`${names.place(shared)}\`, for different nets`,
        one.span,
        'one place is on one net: state them as one circuit',
      );
  }
  return claims.nets(
    statements.flatMap((one, index) => (dropped.has(index) ? [] : [{ names: one.names, index }])),
  );
}

/** The net of an addition is what was there, with what the kit mates to it, and what is added, without what is taken. */
function additionStatements(
  job: Job,
  withMate: (place: number) => readonly number[],
  sets: UnionFind,
  complain: Complain,
  names: Names,
): readonly Statement[] {
  const { additions } = job.wanted;
  const byRoot = new Map<number, AdditionStatement>();
  for (const { name, to, take, span } of additions) {
    const root = sets.find(to);
    const one: AdditionStatement = byRoot.get(root) ?? { names: [], span, places: [], take: new Set() };
    byRoot.set(root, one);
    one.names.push(name);
    for (const place of take.flatMap(withMate)) one.take.add(place);
    if (take.includes(to)) complain(`\`${names.place(to)}\` is both the net and taken from it`, span);
  }
  if (byRoot.size === 0) return [];
  const give = ({ places, take }: AdditionStatement, place: number): void => {
    for (const one of withMate(place)) if (!take.has(one)) places.push(one);
  };
  for (const { to, add } of additions) {
    const one = byRoot.get(sets.find(to));
    if (one !== undefined) for (const place of add) give(one, place);
  }
  const asked = new Uint8Array(job.nodeCount);
  for (const root of byRoot.keys()) asked[root] = 1;
  for (let place = 0; place < job.places.length; place += 1) {
    const root = rootIn(sets.parent, place);
    const one = asked[root] === 1 ? byRoot.get(root) : undefined;
    if (one !== undefined) give(one, place);
  }
  return [...byRoot.values()];
}

/**
 * Which statement claims each place: of several, the first. Statements claim in their order, so that those which turn out to
 * be an earlier one are never the first at any place.
 */
class Claims {
  readonly #claims: Int32Array;
  /** How many places each statement claims. */
  readonly #counts: number[] = [];
  /** The places that a statement shares with an earlier one, in the order in which they were found. */
  readonly #shared = new Map<number, Map<number, Set<number>>>();

  constructor(placeCount: number) {
    this.#claims = new Int32Array(placeCount).fill(-1);
  }

  claim(index: number, place: number): void {
    const first = this.#claims[place] as number;
    if (first === index) return;
    if (first < 0) this.#claims[place] = index;
    else {
      const sharedWith = this.#shared.get(index) ?? new Map<number, Set<number>>();
      const shared = sharedWith.get(first) ?? new Set<number>();
      this.#shared.set(index, sharedWith);
      sharedWith.set(first, shared);
      if (shared.has(place)) return;
      shared.add(place);
    }
    this.#counts[index] = (this.#counts[index] ?? 0) + 1;
  }

  /** Statements that claim a place which an earlier one claims too, in their order; whether both claim the same places. */
  overlaps(): readonly {
    readonly later: number;
    readonly earlier: number;
    readonly shared: number;
    readonly areSame: boolean;
  }[] {
    return [...this.#shared].flatMap(([later, sharedWith]) =>
      [...sharedWith].map(([earlier, shared]) => ({
        later,
        earlier,
        shared: [...shared][0] ?? -1,
        areSame: [later, earlier].every((one) => this.#counts[one] === shared.size),
      })),
    );
  }

  /** The statements that are left as nets, each with the places that it claims before others. */
  nets(left: readonly { readonly names: readonly string[]; readonly index: number }[]): {
    readonly nets: readonly StatedNet[];
    readonly claims: Int32Array;
  } {
    const netOf = new Int32Array(this.#counts.length + left.length).fill(-1);
    const places = left.map(({ index }, net) => {
      netOf[index] = net;
      return new Int32Array(this.#counts[index] ?? 0);
    });
    const found = left.map(() => 0);
    for (let place = 0; place < this.#claims.length; place += 1) {
      const index = this.#claims[place] as number;
      if (index < 0) continue;
      const net = netOf[index] as number;
      this.#claims[place] = net;
      if (net < 0) continue;
      const at = found[net] as number;
      (places[net] as Int32Array)[at] = place;
      found[net] = at + 1;
    }
    return {
      nets: left.map(({ names }, net) => ({
        names,
        places: (places[net] as Int32Array).subarray(0, found[net]),
        byMove: false,
      })),
      claims: this.#claims,
    };
  }
}
