import { checkRows } from '@loomproof/sheets';
import type { Checklist } from '@loomproof/verify';

/** The checklist of one variant for programs. */
export function checksJson(variant: string, checklist: Checklist): unknown {
  const { table, short, full, pairs, baseline, separations } = checklist;
  const faults = table.list.faults;
  const words = (index: number): string => faults[index]?.words ?? '';
  return {
    variant,
    stage: table.stage.is,
    bands: table.bands,
    faults: faults.map(({ id, words: text, likelihood, reason, origin, shownBy }) => ({
      id,
      words: text,
      likelihood,
      reason,
      origin,
      shownBy,
    })),
    noticedAtOnce: table.list.noticed,
    short: {
      checks: checkRows(checklist, 'short'),
      bound: short.bound,
      needAReadingEach: short.apart.map(words),
      detected: short.detected.length,
      notDetectable: short.hidden.map(words),
    },
    full: {
      checks: checkRows(checklist, 'full'),
      nets: full.nets,
      points: full.points,
      continuity: full.continuity,
      pairwise: full.pairwise,
      oneAgainstTheRest: full.oneAgainstTheRest,
      manyProbes: full.manyProbes,
    },
    twoFaults: {
      pairs: pairs.pairs,
      tried: pairs.tried,
      shown: pairs.shown,
      shownElsewhere: pairs.shownElsewhere,
      alike: pairs.alike.map(([a, b]) => [words(a), words(b)]),
    },
    baseline: baseline.checks.map(({ a, b, expected }) => ({
      from: baseline.points[a] ?? '',
      to: baseline.points[b] ?? '',
      expected,
    })),
    separations: [...separations].map(([other, reading]) => ({ other, reading })),
    visual: checklist.unreadable.map(({ words, shownBy }) => ({ words, shownBy })),
  };
}
