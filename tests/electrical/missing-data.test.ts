import { readKit } from '@loomproof/netlist';
import { proveKit, type VariantVerdict } from '@loomproof/verify';
import { describe, expect, it } from 'vitest';
import type { Located } from '../../packages/netlist/src/kit/located.ts';
import { readDocument } from '../../packages/netlist/src/kit/read-document.ts';
import { breakKit, readBrokenCase } from '../support/broken-case.ts';
import { foldersIn, readFixture, tablesBeside } from '../support/fixture-folder.ts';
import { kitNames, kitPath } from '../support/kit-fixtures.ts';

/**
 * What a kit file says of how its harness carries current, by key. A narrower limit on the load of a fuse, the least and most of
 * an output and `critical` are left out: they are claims of their own, so nothing is left to be judged where they are not said.
 */
const electricalKeys: ReadonlySet<string> = new Set([
  ...['volts', 'return', 'power', 'drop', 'cold', 'resistance', 'rating', 'unlit below', 'powered'],
  ...['size', 'length', 'material', 'strands', 'temperature', 'insulation rating', 'capacity'],
  ...[
    'limits',
    'own limits',
    'critical drop',
    'lead to protector',
    'joints',
    'crimp',
    'contact',
    'splice',
    'stud',
  ],
  ...['stub limit', 'length limit', 'terminators', 'source', 'distinct', 'electrical'],
]);

/** Whoever is asked for by name where one of these is not said, in a kit whose verdict hangs on it. */
const askedByName: ReadonlySet<string> = new Set([
  'volts of a supply',
  'rating',
  'capacity',
  'stub limit',
  'length limit',
  'terminators',
]);

interface Datum {
  readonly path: string;
  readonly key: string;
  /** The wire, supply, element or circuit of which it is said. */
  readonly owner: string;
  readonly start: number;
  readonly end: number;
}

/** Every electrical datum of a kit text, but for what the steps say. */
function dataOf(text: string): readonly Datum[] {
  const { value } = readDocument({ name: 'kit.yaml', text });
  const found: Datum[] = [];
  const look = (node: Located, path: readonly string[]): void => {
    if (node.kind === 'list')
      for (const [at, item] of node.items.entries()) look(item, [...path, String(at)]);
    if (node.kind !== 'map') return;
    const name = node.entries.get('name')?.value;
    const owner = (name?.kind === 'text' ? name.text : path[path.length - 1]) ?? '';
    for (const { key, keySpan, value: own } of node.entries.values()) {
      const here = [...path, key];
      const isDatum = electricalKeys.has(key) || path[path.length - 1] === 'powered';
      if (isDatum && keySpan !== null && own.span !== null)
        found.push({ path: here.join(' / '), key, owner, start: keySpan.start, end: own.span.end });
      look(own, here);
    }
  };
  if (value !== null) look(value, []);
  return found.filter(({ path }) => !/^(work|variants|parts \/ [^/]+ \/ (size|drop))/.test(path));
}

/** The text without a datum, with the comma or the line that it leaves. */
function without(text: string, { start, end }: Datum): string {
  const comma = /^[ \t]*,[ \t]*/.exec(text.slice(end))?.[0];
  if (comma !== undefined) return text.slice(0, start) + text.slice(end + comma.length);
  const before = /(,[ \t]*|\n[ \t]*)$/.exec(text.slice(0, start))?.[0] ?? '';
  return text.slice(0, start - before.length) + text.slice(end);
}

interface Said {
  readonly verdicts: ReadonlyMap<number, string | null>;
  readonly missing: readonly string[];
}

/** What obligations 9 and 10 say in each variant; null where the text cannot be used. */
function judge(text: string, path: string): readonly Said[] | null {
  const { value } = readKit({ name: path, text }, tablesBeside(path));
  const kit = value === null ? null : proveKit(value);
  return kit === null || kit.verdict === null ? null : kit.variants.map(saidOf);
}

function saidOf({ obligations, findings }: VariantVerdict): Said {
  const all = findings.flatMap((one) => [one, ...one.consequences]);
  const unknown = all.filter(({ kind }) => kind === 'electrical-unknown' || kind === 'back-feed-unknown');
  return {
    verdicts: new Map(obligations.map(({ obligation, verdict }) => [obligation, verdict])),
    missing: unknown.flatMap(({ points }) => points),
  };
}

/** The kits that say something electrical, and those of the broken cases made of them. */
const electricalKits = kitNames
  .map(kitPath)
  .filter((path) => /\n {2}limits: |\belectrical:/.test(readFixture(path).text))
  .map((path) => [path, path, readFixture(path).text] as const);
const brokenKits = foldersIn('broken')
  .map(readBrokenCase)
  .filter(({ kit }) => electricalKits.some(([path]) => path === kit))
  .map((one) => [`broken/${one.name}`, one.kit, breakKit(readFixture(one.kit).text, one)] as const);

describe('leaving one electrical datum out', () => {
  it.each(brokenKits)(
    'never makes something proved that was not: %s',
    (_, path, text) => {
      const base = judge(text, path) ?? [];
      if (base.every(({ verdicts }) => [9, 10].every((one) => verdicts.get(one) === 'proved'))) return;
      const proved: string[] = [];
      let judged = 0;
      for (const datum of dataOf(text)) {
        const now = judge(without(text, datum), path);
        for (const [at, { verdicts }] of base.entries())
          for (const obligation of [9, 10]) {
            const is = now?.[at]?.verdicts.get(obligation);
            if (is === undefined || is === null) continue;
            judged += 1;
            if (is === 'proved' && verdicts.get(obligation) !== 'proved')
              proved.push(`${obligation} without ${datum.path}`);
          }
      }
      expect(proved).toEqual([]);
      expect(judged).toBeGreaterThan(20);
    },
    60_000,
  );

  it.each(electricalKits)(
    'names whom it is missing of: %s',
    (_, path, text) => {
      const unnamed: string[] = [];
      let named = 0;
      for (const datum of dataOf(text)) {
        const isVolts = datum.key === 'volts' && datum.path.includes('supplies');
        if (!askedByName.has(isVolts ? 'volts of a supply' : datum.key)) continue;
        for (const { verdicts, missing } of judge(without(text, datum), path) ?? []) {
          const open = [9, 10].filter((obligation) => verdicts.get(obligation) === 'undecided');
          if (open.length === 0) continue;
          // The rating of a fuse part is asked for by the holder that it is fitted in.
          const isNamed = missing.some((one) => one.includes(datum.owner) || datum.path.startsWith('parts'));
          if (isNamed) named += 1;
          else unnamed.push(`${datum.path}: ${missing.join('; ')}`);
        }
      }
      expect(unnamed).toEqual([]);
      expect(named).toBeGreaterThan(0);
    },
    60_000,
  );
});
