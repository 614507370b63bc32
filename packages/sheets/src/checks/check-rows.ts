import { type Job, placeInWords, type Side } from '@loomproof/netlist';
import {
  type Asked,
  type Bands,
  type Check,
  type Checklist,
  expectedText,
  type FaultTable,
  isOhmRange,
  type ProbeProof,
  writtenLimits,
} from '@loomproof/verify';

/** One line of a sheet. */
export interface CheckRow {
  readonly number: number;
  readonly from: string;
  readonly to: string;
  readonly expected: string;
  /** What it reads when all is well. */
  readonly reads: Asked;
  /** Whether the probe that the meter makes positive has to be on `from`, since a diode may lie between. */
  readonly oneWay: boolean;
  /** How an open reading is shown not to be a probe that touches nothing; empty for whole ones. */
  readonly proof: string;
  /** Numbers of the whole readings that are the proof; none where something else is to be done or seen. */
  readonly provedBy: readonly number[];
  /** Devices beside the path that would read low as well, to be unplugged before this reading. */
  readonly unplugFirst: readonly string[];
  readonly whereFrom: string;
  readonly whereTo: string;
}

/** The lines of one of the two lists of a checklist, in order. */
export function checkRows(checklist: Checklist, list: 'short' | 'full'): readonly CheckRow[] {
  const { table } = checklist;
  const { checks } = checklist[list];
  const proofs = list === 'short' ? checklist.shortProofs : checklist.fullProofs;
  const unplug = list === 'short' ? checklist.shortUnplug : checklist.fullUnplug;
  return checks.map((check, index) =>
    rowOf(table, check, index + 1, proofs[index] ?? null, unplug[index] ?? []),
  );
}

function rowOf(
  table: FaultTable,
  { a, b, expected }: Check,
  number: number,
  proof: ProbeProof | null,
  unplugFirst: readonly string[],
): CheckRow {
  const name = (point: number): string => table.points[point]?.name ?? '';
  return {
    number,
    from: name(a),
    to: name(b),
    expected: expectedWords(expected, table.bands),
    reads: expected,
    oneWay: table.designed.bothWays,
    unplugFirst,
    provedBy: proof?.is === 'readings' ? proof.numbers : [],
    proof: proofWords(proof, name),
    whereFrom: whereInWords(table.world.job, name(a)),
    whereTo: whereInWords(table.world.job, name(b)),
  };
}

function proofWords(proof: ProbeProof | null, name: (point: number) => string): string {
  if (proof === null) return '';
  if (proof.is === 'readings') return `probes proved by ${proof.numbers.join(' and ')}`;
  if (proof.is === 'jumper')
    return `first with a marked jumper from ${name(proof.from)} to ${name(proof.to)}: whole; jumper out and counted: open`;
  return `see that the probe touches metal, or the end of an empty cavity, at ${proof.at.map(name).join(' and ')}`;
}

/** What a reading has to be, with its limit. */
export function expectedWords(expected: Asked, bands: Bands): string {
  if (isOhmRange(expected))
    return expected.lowOhm > bands.wholeOhm
      ? expectedText(expected)
      : `between whole and open, through a diode: ${expectedText(expected)}, in a range that makes it conduct`;
  const { wholeLimit, openLimit } = writtenLimits(bands);
  return expected === 'whole' ? `whole, at most ${wholeLimit}` : `open, at least ${openLimit}`;
}

/** Where a place is on its connector, in words from one side; nothing where the kit file does not say. */
export function whereInWords(job: Job, address: string, side: Side = 'wire side'): string {
  const place = job.places.find((one) => one.address === address);
  const face = job.connectors[place?.connector ?? -1]?.face ?? null;
  return place === undefined || face === null ? '' : placeInWords(face, place.label, side);
}
