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
}

/** Several additions to one net are one statement. */
interface AdditionStatement extends Statement {
  /** Where it stands among all statements. */
  readonly index: number;
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
  const { circuits, additions } = job.wanted;
  const statements: Statement[] = circuits.map(({ name, span }) => ({ names: [name], span }));
  const claims = new Claims(job.places.length);
  const claimWithMate = (index: number, place: number): void => {
    claims.claim(index, place);
    const other = mated(place);
    if (other >= 0) claims.claim(index, other);
  };
  for (const [index, { places }] of circuits.entries())
    for (const place of places) claimWithMate(index, place);
  const byRoot = new Map<number, AdditionStatement>();
  for (const { name, to, take, span } of additions) {
    const root = sets.find(to);
    let one = byRoot.get(root);
    if (one === undefined) {
      one = { names: [], span, index: statements.length, take: new Set() };
      byRoot.set(root, one);
      statements.push(one);
    }
    one.names.push(name);
    for (const place of take) {
      one.take.add(place);
      const other = mated(place);
      if (other >= 0) one.take.add(other);
    }
    if (take.includes(to)) complain(`\`${names.place(to)}\` is both the net and taken from it`, span);
  }
  for (const { to, add } of additions) {
    const one = byRoot.get(sets.find(to));
    for (const place of one === undefined ? [] : add)
      for (const added of [place, mated(place)])
        if (added >= 0 && !one?.take.has(added)) claims.claim(one?.index ?? -1, added);
  }
  claimWhatWasThere(job, byRoot, mated, sets, claims);
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
  return claims.nets(statements.flatMap((one, index) => (dropped.has(index) ? [] : [{ ...one, index }])));
}

/** What an addition adds to has its places, and has what the kit mates to them along. */
function claimWhatWasThere(
  job: Job,
  byRoot: ReadonlyMap<number, AdditionStatement>,
  mated: (place: number) => number,
  sets: UnionFind,
  claims: Claims,
): void {
  if (byRoot.size === 0) return;
  const asked = new Uint8Array(job.nodeCount);
  for (const root of byRoot.keys()) asked[root] = 1;
  for (let place = 0; place < job.places.length; place += 1) {
    const root = rootIn(sets.parent, place);
    if (asked[root] !== 1) continue;
    const { index, take } = byRoot.get(root) as AdditionStatement;
    if (!take.has(place)) claims.claim(index, place);
    const other = mated(place);
    if (other >= 0 && !take.has(other)) claims.claim(index, other);
  }
}

/** Which statement claims each place; of several that do, the first of them, while the others are kept beside it. */
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
    const claimed = this.#claims[place] as number;
    if (claimed === index) return;
    if (claimed < 0) {
      this.#claims[place] = index;
      this.#count(index);
      return;
    }
    const [earlier, later] = claimed < index ? [claimed, index] : [index, claimed];
    const sharedBy = this.#shared.get(later) ?? new Map<number, Set<number>>();
    const shared = sharedBy.get(earlier) ?? new Set<number>();
    this.#shared.set(later, sharedBy);
    sharedBy.set(earlier, shared);
    if (shared.has(place)) return;
    shared.add(place);
    this.#claims[place] = earlier;
    this.#count(index);
  }

  #count(index: number): void {
    this.#counts[index] = (this.#counts[index] ?? 0) + 1;
  }

  /** Statements that claim a place which an earlier one claims too, in their order; whether both claim the same places. */
  overlaps(): readonly {
    readonly later: number;
    readonly earlier: number;
    readonly shared: number;
    readonly areSame: boolean;
  }[] {
    return [...this.#shared]
      .sort(([a], [b]) => a - b)
      .flatMap(([later, sharedBy]) =>
        [...sharedBy]
          .sort(([a], [b]) => a - b)
          .map(([earlier, shared]) => ({
            later,
            earlier,
            shared: [...shared][0] ?? -1,
            areSame: [later, earlier].every((one) => this.#counts[one] === shared.size),
          })),
      );
  }

  /** The statements that are left as nets, each with the places that it claims before others. */
  nets(left: readonly (Statement & { readonly index: number })[]): {
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
