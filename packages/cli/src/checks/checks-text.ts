import { type KitFile, shortDigest, visibleText } from '@loomproof/netlist';
import { checkRows, readingCautions, stageWords } from '@loomproof/sheets';
import type { Checklist, Separation, Stage } from '@loomproof/verify';
import { countText } from '../output/count-text.ts';
import type { Paint } from '../output/paint.ts';

/** The checklist of one variant for people; ends with a line end. */
export function checksText(
  kit: KitFile,
  variant: string,
  checklist: Checklist,
  how: {
    readonly list: 'short' | 'full';
    readonly digest: string;
    readonly paint: Paint;
    readonly notProved: boolean;
  },
): string {
  const { table, short, full, pairs } = checklist;
  const { job } = table.world;
  const faults = table.list.faults;
  const plugged = (stage: Stage): string => stageWords(stage, (index) => job.connectors[index]?.name ?? '');
  const lines: string[] = [
    `${how.paint('Checks', 'bold')}  ${kit.kit}, revision ${kit.revision}, ${variant}; digest ${shortDigest(how.digest)}`,
    ...(how.notProved ? ['THIS KIT IS NOT PROVED: see `loomproof prove`.'] : []),
    `Plugged: ${plugged(table.stage)}.`,
    ...readingCautions.map((one) => `  ! ${one}`),
    '',
  ];
  const { baseline } = checklist;
  lines.push(`Before the first cut (${countText(baseline.checks.length, 'reading')}):`);
  if (baseline.stage.is !== table.stage.is) lines.push(`  Plugged for these: ${plugged(baseline.stage)}.`);
  for (const [other, separation] of checklist.separations)
    lines.push(`  Which variant? ${separationWords(variant, other, separation)}`);
  for (const { a, b, expected } of baseline.checks)
    lines.push(`      ${baseline.points[a] ?? ''} - ${baseline.points[b] ?? ''}: ${expected}`);
  lines.push('', `${how.list === 'short' ? 'Short list' : 'Full list'} after the work:`);
  if (table.designed.bothWays)
    lines.push(
      '  (red, which the meter makes positive, on the first point of each: a diode reads one way only)',
    );
  for (const row of checkRows(checklist, how.list)) {
    lines.push(`  ${String(row.number).padStart(3)}  ${row.from} - ${row.to}: ${row.expected}`);
    if (row.unplugFirst.length > 0)
      lines.push(
        `         unplug first: ${row.unplugFirst.join(', ')}; else a load beside it reads low as well`,
      );
    if (row.proof !== '') lines.push(`         ${row.proof}`);
  }
  const proof =
    short.checks.length === short.bound
      ? `no list with fewer readings shows them all, ${short.apart.length === short.bound ? `since ${short.bound} of the faults need a reading each (see --json)` : 'by a search of all choices that came to its end'}`
      : `at least ${short.bound} readings are needed, so at most ${short.checks.length - short.bound} too many`;
  lines.push(
    '',
    `Short list: ${countText(short.checks.length, 'reading')} show ${short.detected.length} of ${countText(faults.length, 'single fault')}; ${proof}.`,
    `Full list: ${countText(full.checks.length, 'reading')} (${full.continuity} along the nets, ${full.pairwise} pairs of ${full.nets} nets; ${full.oneAgainstTheRest} when each net is read against all later ones tied together; ${full.manyProbes} tests on equipment with many probes).`,
    ...(full.unsure.length === 0
      ? []
      : [
          `  not asked: ${countText(full.unsure.length, 'pair')} of nets whose reading nobody can know beforehand.`,
        ]),
    `Two faults at once: the short list shows ${pairs.shown} of ${pairs.tried}${pairs.tried < pairs.pairs ? ` sampled of ${pairs.pairs}` : ''}; another reading shows ${pairs.shownElsewhere}; ${pairs.alike.length} read as if nothing were wrong.`,
    ...hidingPairs(checklist),
    `Noticed while working, since the parts refuse it: ${countText(table.list.noticed, 'mistake')}.`,
    '',
    'No reading of this stage shows:',
    ...short.hidden.map(
      (index) => `  - ${faults[index]?.words ?? ''}. Instead: ${faults[index]?.shownBy ?? ''}.`,
    ),
    ...checklist.unreadable.map((one) => `  - ${one.words}. Instead: ${one.shownBy}.`),
  );
  return `${lines.map((line) => visibleText(line)).join('\n')}\n`;
}

/** How many pairs that hide each other are told by name. */
const mostPairsShown = 8;

/** Pairs of which each fault alone would show, and both together do not: only a search for two faults finds them. */
function hidingPairs({ table, short, pairs }: Checklist): readonly string[] {
  const shown = new Set(short.detected);
  const hiding = pairs.alike.filter(([a, b]) => shown.has(a) && shown.has(b));
  const words = (index: number): string => table.list.faults[index]?.words ?? '';
  return [
    ...(hiding.length === 0 ? [] : ['Of these, two that would each show and together hide each other:']),
    ...hiding.slice(0, mostPairsShown).map(([a, b]) => `  - ${words(a)}; and ${words(b)}`),
    ...(hiding.length > mostPairsShown ? [`  and ${hiding.length - mostPairsShown} more (see --json)`] : []),
  ];
}

function separationWords(variant: string, other: string, one: Separation | null): string {
  if (one === null) return `no reading tells ${variant} from ${other}: only their labels do.`;
  return `${one.a} - ${one.b}, ${one.moment}: ${one.first} in ${variant}, ${one.second} in ${other}.`;
}
