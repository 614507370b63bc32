import { visibleText } from '@loomproof/netlist';
import type { DiagnosisReport, ExplanationWords, RankedCandidate } from '@loomproof/verify';
import { countText } from '../output/count-text.ts';

/** How many of the explanations of a group are told before the rest is counted. */
const mostShown = 12;

/** A diagnosis for people; ends with a line end. */
export function diagnosisText(
  kit: string,
  report: DiagnosisReport,
  ranked: readonly RankedCandidate[],
  labelled: string | null,
): string {
  const lines: string[] = [`${kit}, revision ${report.revision}, ${report.variant}: ${report.result}`];
  if (ranked.length > 1) {
    lines.push('Which one is it? By the readings, best first:');
    for (const { candidate, against, unknown, explainedBy } of ranked)
      lines.push(
        `  revision ${candidate.revision}, ${candidate.variant}: ${countText(against, 'reading')} against it, ${countText(unknown, 'unknown point')}, ${countText(explainedBy, 'single fault')} would explain all`,
      );
  }
  if (labelled !== null) lines.push(labelled);
  lines.push(`Class: ${report.classes.join(', ')}${report.classes.length > 1 ? ' (not settled)' : ''}`);
  for (const [index, group] of report.groups.entries()) {
    lines.push(
      `${index === 0 ? 'Explained by' : 'Or by'} one of these, not yet told apart, most likely first:`,
    );
    for (const one of group.slice(0, mostShown)) lines.push(`  - ${explanation(one)}`);
    if (group.length > mostShown) lines.push(`  and ${group.length - mostShown} more (see --json)`);
  }
  if (report.next !== null)
    lines.push(
      `Next reading: ${report.next.from} - ${report.next.to} (whole by ${report.next.whole} of what is left, not by ${report.next.other})`,
    );
  for (const one of report.suspects)
    lines.push(
      `Or one reading is wrong, ${one.reading}; the others then fit: ${one.explains.slice(0, 3).map(explanation).join('; or ')}${one.explains.length > 3 ? `; or ${one.explains.length - 3} more` : ''}`,
    );
  if (report.conflict.length > 0)
    lines.push('These readings together exclude every single fault of the model:');
  for (const one of report.conflict) lines.push(`  - ${one}`);
  for (const one of report.contradictory)
    lines.push(`Contradictory, set aside (a joint that moves, or a probe that slipped): ${one}`);
  for (const one of report.between) lines.push(`Between the limits, look into it: ${one}`);
  for (const one of report.unanswered) lines.push(`Not read: ${one}`);
  for (const one of report.unreachable) lines.push(`Cannot be read in this stage: ${one}`);
  for (const { reading, name, near } of report.additions)
    lines.push(
      `As-found addition, or a wrong name: ${name} at ${reading}${near === null ? '' : `; did you mean ${near}?`}`,
    );
  lines.push(`Not checked by these readings: ${countText(report.notChecked.length, 'fault')}`);
  if (!report.allPairsTried)
    lines.push('More pairs of faults may explain the readings: the search was cut short.');
  return `${lines.map((line) => visibleText(line)).join('\n')}\n`;
}

function explanation({ faults }: ExplanationWords): string {
  if (faults.length === 0) return 'nothing is wrong: as designed';
  return faults.map((one) => `${one.words} (${one.likelihood}: ${one.reason}; ${one.origin})`).join(', and ');
}
