import { endsOf } from '../oracle/harness-state.ts';
import { type Judgement, judgeWalk, type Walk, walkThrough } from '../oracle/judge-kit.ts';
import { countParts } from '../oracle/judge-procedure.ts';
import type { KitDocument, WantedRows } from '../oracle/kit-document.ts';
import type { RandomChoice } from './random-choice.ts';

/**
 * States the intent of a kit from what the oracle finds after the work: circuits, additions, stubs, pairs kept apart.
 * Moves, retired wires and cavities, adapters and pairs left unplugged are stated by the jobs and kept. Parts in the bag
 * are counted to what the work takes.
 */
export function stateIntent(kit: KitDocument, random: RandomChoice): KitDocument {
  const statement = new Statement(kit, random);
  statement.netsThatDiffer();
  statement.whatIsLeftUnnamed();
  statement.somethingAtAll();
  statement.stubs();
  statement.pairsApart();
  return statement.withCountedBag();
}

class Statement {
  readonly #kit: KitDocument;
  readonly #random: RandomChoice;
  readonly #wanted: WantedRows & {
    circuits: Map<string, string[]>;
    additions: Map<string, { to: string; add?: string[]; take?: string[] }>;
  };
  readonly #walk: Walk;
  readonly #first: Judgement;
  readonly #spoken = new Set<string>();

  constructor(kit: KitDocument, random: RandomChoice) {
    this.#wanted = { ...kit.wanted, circuits: new Map(), additions: new Map() };
    this.#kit = { ...kit, wanted: this.#wanted };
    this.#random = random;
    this.#walk = walkThrough(this.#kit);
    this.#first = judgeWalk(this.#walk, this.#wanted);
  }

  #nextName(): string {
    const count = this.#wanted.circuits.size + this.#wanted.additions.size + 1;
    return count === 3 ? 'constructor' : count === 5 ? '__proto__' : `circuit ${count}`;
  }

  /** The facing cavity need not be written; it comes along. */
  #written(places: readonly string[]): string[] {
    const { facing, places: facts, connectors } = this.#first.before.facts;
    const { interposed } = this.#wanted;
    const apart = this.#wanted['left unplugged'] ?? [];
    const isParted = (name: string | null | undefined): boolean =>
      apart.includes(name ?? '') || interposed?.some((one) => one.at === name) === true;
    const kept: string[] = [];
    for (const place of this.#random.shuffled(places)) {
      const other = facing.get(place);
      const home = facts.get(place)?.connector ?? '';
      const comesAlong = other !== undefined && !isParted(home) && !isParted(connectors.get(home)?.other);
      if (comesAlong && kept.includes(other) && this.#random.chance(0.7)) continue;
      kept.push(place);
    }
    return kept;
  }

  /** States every net after the work that does not follow from what is stated already. */
  netsThatDiffer(): void {
    const { netsAfter, expected } = this.#first;
    for (const block of expected.blocks) {
      const parts = netsAfter.flatMap((net) => {
        const shared = [...block].filter((place) => net.has(place));
        return shared.length > 0 ? [{ net, shared }] : [];
      });
      if (parts.length < 2) continue;
      const main = this.#random.pick(parts);
      this.#add(main.net, this.#random.pick(main.shared));
    }
    for (const net of netsAfter) {
      const isThere = expected.blocks.some(
        (block) => block.size === net.size && [...net].every((place) => block.has(place)),
      );
      if (!isThere && net.size > 1 && ![...net].some((place) => this.#spoken.has(place))) this.#state(net);
    }
  }

  /** States a net as what a place of it was joined to before, with what comes to that and what goes. */
  #add(net: ReadonlySet<string>, to: string): void {
    const before = this.#first.expected.netBefore(to);
    const add = [...net].filter((place) => !before.has(place));
    const take = [...before].filter((place) => !net.has(place));
    if (add.length + take.length === 0) this.#wanted.circuits.set(this.#nextName(), this.#written([...net]));
    else {
      this.#wanted.additions.set(this.#nextName(), {
        to,
        ...(add.length > 0 ? { add: this.#written(add) } : {}),
        ...(take.length > 0 ? { take: this.#random.shuffled(take) } : {}),
      });
    }
    for (const place of net) this.#spoken.add(place);
  }

  #state(net: ReadonlySet<string>): void {
    const { netBefore } = this.#first.expected;
    const known = [...net].filter((place) => [...netBefore(place)].every((other) => net.has(other)));
    if (this.#random.chance(0.5) && known.length > 0) this.#add(net, this.#random.pick(known));
    else {
      this.#wanted.circuits.set(this.#nextName(), this.#written([...net]));
      for (const place of net) this.#spoken.add(place);
    }
  }

  /** A kit must want something; where nothing changes, one net is stated as it is. */
  somethingAtAll(): void {
    const { circuits, additions, moves, retired, interposed } = this.#wanted;
    const rows =
      circuits.size +
      additions.size +
      (moves?.length ?? 0) +
      (retired?.length ?? 0) +
      (interposed?.length ?? 0);
    const nets = this.#first.netsAfter.filter((net) => net.size > 1);
    if (rows === 0 && nets.length > 0) this.#state(this.#random.pick(nets));
  }

  /** States the nets of wires that the work touches, and of kit wires that would seem to serve nothing. */
  whatIsLeftUnnamed(): void {
    for (let round = 0; round < 12; round += 1) {
      const judged = judgeWalk(this.#walk, this.#wanted);
      const wires = judged.problems.flatMap((one) =>
        one.kind === 'touched-unnamed' || one.kind === 'kit-wire-idle' ? [one.about] : [],
      );
      const free = wires
        .flatMap((wire) => this.#netsOfWire(judged, wire))
        .find((net) => ![...net].some((place) => this.#spoken.has(place)));
      if (free === undefined) return;
      this.#state(free);
    }
  }

  #netsOfWire(judged: Judgement, wire: string): ReadonlySet<string>[] {
    const homes = [judged.before.facts.wires.get(wire)?.row].flatMap((row) =>
      row === undefined ? [] : [row.from, row.to],
    );
    const seats = judged.after.terminals
      .filter((terminal) => terminal.at !== null && terminal.ends.some((end) => end.wire === wire))
      .map((terminal) => terminal.at ?? '');
    const joints = [...judged.after.joints.values()].filter((joint) =>
      joint.ends.some((end) => end.wire === wire),
    );
    const beyond = judged.after.terminals
      .filter(
        (terminal) =>
          terminal.at !== null &&
          terminal.ends.some((end) =>
            joints.some((joint) => joint.ends.some((one) => one.wire === end.wire)),
          ),
      )
      .map((terminal) => terminal.at ?? '');
    return [...seats, ...homes, ...beyond].flatMap((place) =>
      judged.netsAfter.filter((net) => net.has(place)),
    );
  }

  /** Declares every stub that stays. */
  stubs(): void {
    const { stubs, after } = this.#first;
    const rows: WantedRows['stubs'] = [];
    for (const { piece, wire, attached, live } of stubs) {
      if (attached.size === 0) continue;
      const ends = endsOf(after.pieces.get(piece) ?? { name: piece, wire, stations: [] });
      const seats = ends.flatMap((end) =>
        end.held?.isTerminal === true && end.held.at !== null ? [end.held.at] : [],
      );
      const at = seats[0] ?? this.#random.pick([...attached]);
      const why = this.#random.chance(0.3) ? { why: 'it feeds nothing now' } : {};
      rows.push({ of: wire, at, is: live === 'no' ? 'dead' : 'live', ...why });
    }
    if (rows.length > 0) this.#wanted.stubs = rows;
  }

  /** Says of some places that they must never meet. */
  pairsApart(): void {
    const { netsAfter } = this.#first;
    const rows: string[][] = [];
    for (let round = this.#random.below(3); round > 0; round -= 1) {
      const [one, other] = this.#random.shuffled([...netsAfter]);
      if (one !== undefined && other !== undefined)
        rows.push([this.#random.pick([...one]), this.#random.pick([...other])]);
    }
    if (rows.length > 0) this.#wanted.apart = rows;
  }

  /** The kit with exactly the parts in the bag that its steps take. */
  withCountedBag(): KitDocument {
    const { after } = this.#walk;
    const parts = new Map<string, string>();
    for (const name of new Set(after.partsLog.flatMap((one) => (one.is === 'taken' ? [one.part] : [])))) {
      const most = after.partsLog.filter((one) => one.is === 'taken' && one.part === name).length;
      const least = countParts(after, name, 0).missing;
      parts.set(name, String(least + this.#random.below(most - least + 1)));
    }
    return { ...this.#kit, bag: { ...this.#kit.bag, parts } };
  }
}
