import type { KitDocument } from '../oracle/kit-document.ts';

/** Counts of what occurred in a run of many random kits, under headings. */
export class RunCounts {
  readonly #counts = new Map<string, Map<string, number>>();

  /** Counts one occurrence. */
  add(heading: string, name: string): void {
    const under = this.#counts.get(heading) ?? new Map<string, number>();
    this.#counts.set(heading, under);
    under.set(name, (under.get(name) ?? 0) + 1);
  }

  /** How often something occurred. */
  of(heading: string, name: string): number {
    return this.#counts.get(heading)?.get(name) ?? 0;
  }

  /** The names among these that occurred less often than `least`, with their counts. */
  rarerThan(least: number, heading: string, names: Iterable<string>): readonly string[] {
    return [...names]
      .filter((name) => this.of(heading, name) < least)
      .map((name) => `${name}: ${this.of(heading, name)}`);
  }

  /** Everything counted, one line a heading, names in alphabetical order. */
  lines(): readonly string[] {
    return [...this.#counts].map(([heading, under]) => {
      const all = [...under].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
      return `${heading}: ${all.map(([name, count]) => `${name} ${count}`).join(', ')}`;
    });
  }
}

/** The forms of intent that a kit can state. */
export const intentForms = [
  'circuit',
  'addition that adds',
  'addition that takes',
  'move',
  'retired wire',
  'retired cavity',
  'live stub',
  'dead stub',
  'apart',
  'left unplugged',
  'interposed',
  'deviation',
] as const;

/** The forms of intent that a kit states, each once. */
export function formsOfIntent(kit: KitDocument): ReadonlySet<string> {
  const { circuits, additions, moves, retired, stubs, apart, interposed, deviations } = kit.wanted;
  const stated: Record<(typeof intentForms)[number], boolean> = {
    circuit: (circuits?.size ?? 0) > 0,
    'addition that adds': [...(additions?.values() ?? [])].some((row) => (row.add ?? []).length > 0),
    'addition that takes': [...(additions?.values() ?? [])].some((row) => (row.take ?? []).length > 0),
    move: (moves ?? []).length > 0,
    'retired wire': (retired ?? []).some((row) => 'wire' in row),
    'retired cavity': (retired ?? []).some((row) => 'cavity' in row),
    'live stub': (stubs ?? []).some((row) => row.is === 'live'),
    'dead stub': (stubs ?? []).some((row) => row.is === 'dead'),
    apart: (apart ?? []).length > 0,
    'left unplugged': (kit.wanted['left unplugged'] ?? []).length > 0,
    interposed: (interposed ?? []).length > 0,
    deviation: (deviations ?? []).length > 0,
  };
  return new Set(intentForms.filter((form) => stated[form]));
}

/** Every kind of rework step. */
export const stepKinds = [
  'disconnect',
  'reconnect',
  'prove dead',
  'unplug',
  'plug',
  'open lock',
  'close lock',
  'open latch',
  'close latch',
  'cut',
  'strip',
  'slide tube',
  'join',
  'seal',
  'tap',
  'remove tap',
  'fit terminal',
  'withdraw',
  'insert',
  'attach',
  'detach',
  'cover',
  'tie back',
  'fasten',
  'fit plug',
  'remove plug',
  'fit seal',
  'remove seal',
  'fit fuse',
  'remove fuse',
  'place',
  'interpose',
  'fit jumper',
  'remove jumper',
  'remove off-cut',
] as const satisfies readonly KitDocument['work'][number]['do'][];
