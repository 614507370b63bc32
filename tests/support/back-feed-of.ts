import type { Finding, VariantVerdict } from '@loomproof/verify';
import { type StudKit, studKit } from './stud-kit.ts';
import { verdictOf } from './verdict-of.ts';

/** What is said of back-feed: the word, and every finding in one line with its state and volts, sorted. */
export interface BackFeedSaid {
  readonly verdict: string | undefined;
  readonly found: readonly string[];
}

/**
 * Judges a kit of devices on studs.
 * @throws Error when anything but obligations 9 and 10 is found, since the kit is then not the one that the test means.
 */
export function backFeedOf(kit: StudKit): BackFeedSaid {
  const verdict = verdictOf(studKit(kit));
  const rest = verdict.findings.filter((one) => one.obligation < 9);
  if (rest.length > 0) throw new Error(rest.map((one) => one.message).join('\n'));
  return {
    verdict: verdict.obligations.find(({ obligation }) => obligation === 10)?.verdict,
    found: linesOf(verdict),
  };
}

function linesOf(verdict: VariantVerdict): readonly string[] {
  return verdict.findings
    .filter((one) => one.obligation === 10)
    .map(lineOf)
    .sort();
}

function lineOf(finding: Finding): string {
  const { witness } = finding;
  if (witness.is === 'power') {
    const open = witness.open === null ? '' : ` open ${witness.open.name ?? witness.open.from}`;
    const volts = witness.volts === null ? 'volts not known' : `${Number(witness.volts.toPrecision(4))} V`;
    return `${finding.kind} ${witness.load} ${volts} on [${witness.state.on.join(' ')}]${open}`;
  }
  if (witness.is === 'tie')
    return `${finding.kind} ${witness.between.join('=')} on [${witness.state.on.join(' ')}]`;
  return `${finding.kind} ${finding.points.join('; ')}`;
}
