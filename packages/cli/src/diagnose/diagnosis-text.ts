import { visibleText } from '@loomproof/netlist';
import {
  answersInWords,
  explanationWords,
  fewAndPairs,
  mostExplanationsShown,
  mostPairsShown,
} from '@loomproof/sheets';
import type { DiagnosisReport, RankedCandidate } from '@loomproof/verify';
import { countText } from '../output/count-text.ts';

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
    const { few, pairs } = fewAndPairs(group, report.result);
    if (few.length > 0)
      lines.push(
        `${index === 0 ? 'Explained by' : 'Or by'} one of these, not yet told apart, most likely first:`,
      );
    for (const one of few.slice(0, mostExplanationsShown)) lines.push(`  - ${explanationWords(one)}`);
    if (few.length > mostExplanationsShown)
      lines.push(`  and ${few.length - mostExplanationsShown} more (see --json)`);
    if (pairs.length > 0) {
      lines.push(`  ${countText(pairs.length, 'pair')} of faults at once would read the same, such as:`);
      for (const one of pairs.slice(0, mostPairsShown)) lines.push(`  - ${explanationWords(one)}`);
    }
  }
  if (report.inPart.length > 0)
    lines.push('What is between the limits is explained by one of these, which are there only in part:');
  for (const one of report.inPart.slice(0, mostExplanationsShown)) lines.push(`  - ${explanationWords(one)}`);
  if (report.inPart.length > mostExplanationsShown)
    lines.push(`  and ${report.inPart.length - mostExplanationsShown} more (see --json)`);
  if (report.next !== null)
    lines.push(
      `Next reading: ${report.next.from} - ${report.next.to} (${answersInWords(report.next.answers)})`,
    );
  for (const one of report.suspects)
    lines.push(
      `Or one reading is wrong, ${one.reading}; the others then fit: ${one.explains.slice(0, 3).map(explanationWords).join('; or ')}${one.explains.length > 3 ? `; or ${one.explains.length - 3} more` : ''}`,
    );
  if (report.conflict.length > 0)
    lines.push(
      `These readings together exclude every single fault${report.allPairsTried ? ' and every pair of faults' : ''} of the model:`,
    );
  for (const one of report.conflict) lines.push(`  - ${one}`);
  for (const one of report.contradictory)
    lines.push(`Contradictory, set aside (a joint that moves, or a probe that slipped): ${one}`);
  for (const one of report.between) lines.push(`Between the limits, look into it: ${one}`);
  for (const one of report.unanswered) lines.push(`Not read: ${one}`);
  for (const one of report.unreachable)
    lines.push(`Not used, no probe gets there as things were plugged: ${one}`);
  for (const { reading, name, near } of report.additions)
    lines.push(
      `As-found addition, or a wrong name: ${name} at ${reading}${near === null ? '' : `; did you mean ${near}?`}`,
    );
  for (const one of report.powered)
    lines.push(`Read with power on, not used, since an ohmmeter shows nonsense then: ${one}`);
  for (const one of report.early)
    lines.push(
      `Taken before the work was done, not used, since what is wrong now may have come later: ${one}`,
    );
  if (report.added.length > 0)
    lines.push('As-found addition: with these joins added to the design all would fit:');
  for (const one of report.added) lines.push(`  - ${one}`);
  lines.push('What it may be:');
  for (const { class: one, explanations } of report.matters)
    lines.push(`  ${one}: ${explanations === 0 ? 'no' : matterWords(one, explanations)}`);
  lines.push(
    `  could not be checked: ${countText(report.notChecked.length, 'fault')} that these readings do not show${report.notChecked.length > 0 ? `, such as: ${report.notChecked.slice(0, mostPairsShown).join('; ')}` : ''}`,
  );
  if (!report.allPairsTried)
    lines.push('More pairs of faults may explain the readings: the search was cut short.');
  return `${lines.map((line) => visibleText(line)).join('\n')}\n`;
}

function matterWords(one: string, explanations: number): string {
  return one.endsWith('error') || one === 'damage'
    ? `possible, ${countText(explanations, 'explanation')}`
    : 'yes';
}
