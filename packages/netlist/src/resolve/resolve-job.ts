import { flatHarness } from '../harness/flat-harness.ts';
import { harnessNames } from '../harness/harness-names.ts';
import type { DrawnRow, Job } from '../harness/job.ts';
import type { Located } from '../kit/located.ts';
import { entryOf, textsUnder, textUnder } from '../kit/located.ts';
import type { Reading } from '../kit/read-document.ts';
import { parseColour, parseSize } from '../value/index.ts';
import { Complaints } from './complaints.ts';
import { HarnessBuilder } from './harness-builder.ts';
import { readElectrical, readMayTie, readPowered, readSpecial } from './read-electrical.ts';
import { facingPlaces, readHarness } from './read-harness.ts';
import { readBag, readParts } from './read-parts.ts';
import { readSteps } from './read-steps.ts';
import { readWanted } from './read-wanted.ts';

/**
 * Resolves every name of one variant's document, whose form was checked before: the harness before, the steps in order,
 * and what is wanted.
 * @param document - the document after `chooseVariant` and `checkDocument`.
 * @param drawn - rows of the after table, or null when the kit names none.
 * @returns the job, or null with every complaint.
 */
export function resolveJob(document: Located, variant: string, drawn: Located | null): Reading<Job> {
  const complaints = new Complaints();
  const parts = readParts(document, complaints);
  const bag = readBag(document, parts, complaints);
  const builder = new HarnessBuilder(parts, complaints);
  readHarness(document, builder);
  const facing = facingPlaces(document, builder);
  const wiresByName = new Map(builder.wireByName);
  const electrical = readElectrical(document, builder);
  const special = readSpecial(document, wiresByName, builder);
  const { steps } = readSteps(document, builder);
  if (steps.length === 0 && !complaints.failed) {
    complaints.error(
      'no-step',
      'the kit has no rework step for this variant',
      entryOf(document, 'work')?.span ?? document.span,
    );
  }
  const wanted = readWanted(document, wiresByName, builder);
  const rules = textsUnder(document, 'rules');
  for (const rule of rules) {
    if (rule.text !== oneSpliceRule) complaints.unknown('rule set', rule.text, rule.span, [oneSpliceRule]);
  }
  const job: Job = {
    kit: textUnder(document, 'kit')?.text ?? '',
    revision: textUnder(document, 'revision')?.text ?? '',
    variant,
    places: builder.places,
    connectors: builder.connectors,
    wires: builder.wires,
    pieces: builder.pieces,
    ends: builder.ends,
    terminals: builder.terminals,
    joints: builder.joints,
    elements: builder.elements,
    supplies: builder.supplies,
    electrical,
    special,
    positions: builder.positions,
    tapsAsFound: builder.tapsAsFound,
    nodeCount: builder.nodeCount,
    facing,
    parts,
    bag,
    oneSplicePerSegment: rules.some((rule) => rule.text === oneSpliceRule),
    steps,
    wanted: {
      ...wanted,
      powered: readPowered(document, builder),
      mayTie: readMayTie(document, builder),
      drawn: drawn === null ? null : drawnRows(drawn, builder),
    },
  };
  if (complaints.failed) return { value: null, diagnostics: complaints.diagnostics };
  // Every proof asks for the flat arrays and the names, so they are part of reading.
  flatHarness(job);
  harnessNames(job);
  return { value: job, diagnostics: complaints.diagnostics };
}

/** FAA AC 43.13-1B paragraph 11-167c: not more than one splice in a wire segment between two disconnect points. */
const oneSpliceRule = 'one splice per segment';

function drawnRows(drawn: Located, builder: HarnessBuilder): readonly DrawnRow[] {
  return drawn.kind === 'list' ? drawn.items.flatMap((row) => drawnRow(row, builder)) : [];
}

function drawnRow(row: Located, builder: HarnessBuilder): readonly DrawnRow[] {
  const ends = (['from', 'to'] as const).map((side) => {
    const node = textUnder(row, side);
    const place = builder.placeByAddress.get(node?.text ?? '');
    const joint = builder.joints[builder.jointByName.get(node?.text ?? '') ?? -1];
    if (place === undefined && joint === undefined) {
      builder.unknownPlace('place or splice', node?.text ?? '', node?.span ?? row.span);
    }
    return place ?? joint?.node ?? -1;
  });
  const [from = -1, to = -1] = ends;
  if (from < 0 || to < 0) return [];
  const size = textUnder(row, 'size');
  const colour = textUnder(row, 'colour');
  const parsedSize = size === null ? null : parseSize(size.text);
  const parsedColour = colour === null ? null : parseColour(colour.text);
  if (parsedSize !== null && !parsedSize.ok)
    builder.complaints.error('size', parsedSize.problem, size?.span ?? null, parsedSize.help);
  if (parsedColour !== null && !parsedColour.ok)
    builder.complaints.error('colour', parsedColour.problem, colour?.span ?? null, parsedColour.help);
  return [
    {
      wire: textUnder(row, 'wire')?.text ?? '',
      from,
      to,
      size: parsedSize?.ok === true ? parsedSize.value : null,
      colour: parsedColour?.ok === true ? parsedColour.value : null,
      span: row.span,
    },
  ];
}
