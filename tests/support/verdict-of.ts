import { positionAt } from '@loomproof/netlist';
import { type Finding, type KitVerdict, proveKit, type VariantVerdict } from '@loomproof/verify';
import { kitOf, type Tables } from './kit-text.ts';
import { walkEvidence } from './walk-evidence.ts';

/** The verdict on a kit that a test writes down as YAML. */
export function kitVerdictOf(text: string, tables?: Tables): KitVerdict {
  return proveKit(kitOf(text, tables));
}

/** The verdict on its first variant; throws when what is wanted contradicts itself. */
export function verdictOf(text: string, tables?: Tables): VariantVerdict {
  const kit = kitVerdictOf(text, tables);
  const [first] = kit.variants;
  if (first === undefined) throw new Error(kit.diagnostics.map((one) => one.message).join('\n'));
  return first;
}

/** A finding in one line: `kind@step point, point`, with what follows from it behind `<-`. */
export function lineOf(finding: Finding): string {
  const own = (one: { kind: string; step: number | null; points: readonly string[] }): string =>
    `${one.kind}@${one.step ?? '-'} ${one.points.join(', ')}`;
  return [own(finding), ...finding.consequences.map(own)].join(' <- ');
}

/** All findings of the first variant, one line each. */
export function linesOf(text: string, tables?: Tables): readonly string[] {
  return verdictOf(text, tables).findings.map(lineOf);
}

/** The input errors that intent gives, as `line:column message`. */
export function intentErrorsOf(text: string): readonly string[] {
  const kit = kitVerdictOf(text);
  if (kit.diagnostics.length > 0 && kit.verdict !== null)
    throw new Error('judged in spite of an input error');
  return kit.diagnostics.map((one) => {
    const at = one.span === null ? null : positionAt(one.span.source, one.span.start);
    return `${at === null ? '-' : `${at.line}:${at.column}`} ${one.message}`;
  });
}

/** What is said of a kit: the word, every finding as `kind@step`, and the stubs that stay. */
export interface Judged {
  readonly verdict: string;
  readonly findings: readonly string[];
  readonly stubs: readonly string[];
}

/**
 * Judges the first variant of a kit that a test writes down, and walks every proof and witness on the way.
 * @throws Error when a proof or a witness does not hold.
 */
export function judged(text: string, tables?: Tables): Judged {
  const kit = kitVerdictOf(text, tables);
  const untrue = walkEvidence(kit);
  if (untrue.length > 0) throw new Error(untrue.join('\n'));
  const [first] = kit.variants;
  if (first === undefined) throw new Error(kit.diagnostics.map((one) => one.message).join('\n'));
  return {
    verdict: first.verdict,
    findings: first.findings.map((one) => `${one.kind}@${one.step ?? '-'}`),
    stubs: first.stubs.map((stub) => `${stub.end} ${stub.state}${stub.declared ? '' : ' undeclared'}`),
  };
}

/**
 * A text with one part of it changed.
 * @throws Error unless the part is there exactly once, since the test would then be about something else.
 */
export function changed(text: string, part: string, into: string): string {
  const pieces = text.split(part);
  if (pieces.length !== 2) throw new Error(`\`${part}\` is there ${pieces.length - 1} times`);
  return pieces.join(into);
}

/** The first finding of a kind, or an error that lists what there is. */
export function findingOf(text: string, kind: string, tables?: Tables): Finding {
  const { findings } = verdictOf(text, tables);
  const found = findings.find((one) => one.kind === kind);
  if (found === undefined) throw new Error(`no ${kind} in ${findings.map(lineOf).join('; ')}`);
  return found;
}
