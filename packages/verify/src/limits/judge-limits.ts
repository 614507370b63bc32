import { type Conducts, compareText, type Job, type Rework } from '@loomproof/netlist';
import { missingSupplies } from '../backfeed/function-network.ts';
import { poweredBefore } from '../backfeed/powered-before.ts';
import { assembledView } from '../prove/assembled-view.ts';
import type { LossPart, RawFinding } from '../prove/finding.ts';
import { Names } from '../prove/names.ts';
import { type CircuitRegion, circuitRegions, untouchedRegions } from './circuit-region.ts';
import { type CarriedCurrent, dropRows, noAmpere, reachedLoads, unknownRows } from './drop-rows.ts';
import { judgeBusPairs } from './judge-bus-pairs.ts';
import { conductorCapacity, leadLimit } from './limit-sources.ts';
import type { DropRow, LimitTable, LoadingRow, ProtectionRow } from './limit-table.ts';
import { fuseRating, type ProtectionJudgement, protectionRows } from './protection-rows.ts';
import { type RegionState, regionSolver } from './solve-region.ts';

/** Findings of obligation 9 with the table that they come from. */
export interface LimitJudgement {
  readonly findings: readonly RawFinding[];
  readonly table: LimitTable;
  /** In words: how many circuits and conductors were looked at, and how many of the latter without data. */
  readonly coverage: string;
}

/**
 * Judges the electrical limits (obligation 9): what each circuit loses out and return, each conductor against the fuse
 * ahead of it, fuses and outputs against their loads. What is not said makes one finding that lists all of it.
 */
export function judgeLimits(rework: Rework, view: Conducts, names: Names): LimitJudgement {
  const { job } = rework;
  const findings: RawFinding[] = [];
  const missing = new Set<string>();
  for (const one of missingSupplies(job)) missing.add(one);
  const { drops, loading } = lossesOf(rework, circuitRegions(rework, view, names), missing);
  for (const row of drops)
    if (row.dropVolt !== null && row.limitVolt !== null && row.dropVolt > row.limitVolt + 1e-9)
      findings.push(dropFinding(row));
  for (const row of loading) findings.push(...loadingFindings(row));
  const protection: ProtectionRow[] = [];
  let unsaid = 0;
  for (const one of protectionRows(rework, view)) {
    if (one.row.fuse !== null || one.concerned) protection.push(one.row);
    if (one.concerned) for (const item of one.row.missing) missing.add(item);
    else if (one.row.missing.length > 0) unsaid += 1;
    if (one.kept === false) findings.push(protectionFinding(job, one));
  }
  const bus = judgeBusPairs(rework, view);
  findings.push(...bus.findings);
  for (const one of bus.missing) missing.add(one);
  if (missing.size > 0) {
    const items = [...missing].sort(compareText);
    findings.push({
      kind: 'electrical-unknown',
      step: null,
      points: items,
      witness: { is: 'missing', items },
      culprits: [],
      keys: [],
    });
  }
  const untold = unsaid === 0 ? '' : `; ${unsaid} of them, behind fuses that nothing touched, without data`;
  return {
    findings: distinct(findings),
    coverage: `${drops.length} circuits, ${protection.length} conductors${untold}`,
    table: {
      drops: sortedDrops(drops),
      protection: protection.sort(
        (a, b) => compareText(a.fuse ?? '', b.fuse ?? '') || compareText(a.conductor, b.conductor),
      ),
      loading: sortedLoading(loading),
    },
  };
}

/**
 * The circuits of the parts that the work left alone, with what their fuses, outputs and conductors carry. It is told
 * and not judged: the kit did not change it. The cost grows with the whole harness.
 */
export function untouchedLosses(rework: Rework): Pick<LimitTable, 'drops' | 'loading'> {
  const view = assembledView(rework);
  const regions = untouchedRegions(rework, view, new Names(rework.job));
  const { drops, loading } = lossesOf(rework, regions, new Set(missingSupplies(rework.job)));
  return { drops: sortedDrops(drops), loading: sortedLoading(loading) };
}

/** @param missing - what makes everything unknown; what else is not said is added. */
function lossesOf(
  rework: Rework,
  regions: readonly CircuitRegion[],
  missing: Set<string>,
): { readonly drops: readonly DropRow[]; readonly loading: readonly LoadingRow[] } {
  const { job } = rework;
  const unsaid = [...missing].sort(compareText);
  if (unsaid.length > 0)
    return { drops: regions.flatMap((region) => unknownRows(job, region, unsaid)), loading: [] };
  const before = poweredBefore(rework);
  const drops: DropRow[] = [];
  const loading: LoadingRow[] = [];
  const conductors: LoadingRow[] = [];
  for (const region of regions) {
    const found = dropRows(job, region, before);
    drops.push(...found.rows);
    for (const one of [...found.missing, ...found.rows.flatMap((row) => row.missing)]) missing.add(one);
    for (const carried of found.carried) {
      loading.push(...fuseLoad(rework, region, carried));
      conductors.push(...conductorLoad(job, region, carried, missing));
    }
    if (found.missing.length === 0) loading.push(...driveLoads(job, region));
  }
  return { drops, loading: [...loading, ...worstPieces(conductors)] };
}

function sortedDrops(drops: readonly DropRow[]): readonly DropRow[] {
  return [...drops].sort((a, b) => compareText(a.circuit, b.circuit));
}

function sortedLoading(loading: readonly LoadingRow[]): readonly LoadingRow[] {
  return [...loading].sort((a, b) => compareText(a.what, b.what));
}

/** A wire in several pieces, or behind two ways, breaks one limit once. */
function distinct(findings: readonly RawFinding[]): readonly RawFinding[] {
  const seen = new Map<string, RawFinding>();
  for (const one of findings) {
    const key = `${one.kind} ${one.points.join('\n')}`;
    if (!seen.has(key)) seen.set(key, one);
  }
  return [...seen.values()];
}

const mostParts = 12;

function dropFinding(row: DropRow): RawFinding {
  return {
    kind: 'drop-too-large',
    step: null,
    points: [row.circuit],
    witness: {
      is: 'limit',
      quantity: `drop out and return${inState(row.state)}`,
      value: row.dropVolt ?? 0,
      limit: row.limitVolt ?? 0,
      unit: 'V',
      source: row.source ?? '',
      parts: largest(row.parts),
    },
    culprits: [],
    keys: [],
  };
}

/** What follows the quantity of a witness where not everything is on. */
function inState(state: readonly string[]): string {
  return state.length === 0 ? '' : ` with ${state.join(', ')}`;
}

function largest(parts: readonly LossPart[]): readonly LossPart[] {
  return [...parts]
    .filter(({ volts }) => volts > 0)
    .sort((a, b) => b.volts - a.volts || compareText(a.what, b.what))
    .slice(0, mostParts);
}

function protectionFinding(job: Job, { row, fuses, leadMm }: ProtectionJudgement): RawFinding {
  const lead = leadLimit(job);
  const unfused = leadMm !== null && lead.kind === 'limit';
  return {
    kind: 'conductor-unprotected',
    step: null,
    points: [row.conductor, ...fuses].sort(compareText),
    witness: {
      is: 'limit',
      quantity: unfused
        ? 'length ahead of its first fuse'
        : fuses.length > 1
          ? `fuses ${fuses.join(' and ')} together`
          : `fuse ${row.fuse ?? ''}`,
      value: unfused ? leadMm : (row.ratingAmpere ?? 0),
      limit: unfused ? lead.value : (row.limitAmpere ?? 0),
      unit: unfused ? 'mm' : 'A',
      source: row.source ?? '',
      parts: [],
    },
    culprits: [],
    keys: [],
  };
}

function fuseLoad(rework: Rework, region: CircuitRegion, carried: CarriedCurrent): readonly LoadingRow[] {
  const { job } = rework;
  const { own } = job.electrical;
  const branch = region.branches[carried.branch];
  if (branch?.kind !== 'contact') return [];
  const { index } = branch;
  const rating = fuseRating(rework, index);
  if (rating === null) return [];
  const percent = own?.fuseLoadPercent ?? null;
  return [
    {
      what: job.elements[index]?.name ?? '',
      is: 'fuse',
      ampere: carried.ampere,
      leastAmpere: null,
      mostAmpere: percent === null ? rating : (rating * percent) / 100,
      state: carried.state,
      source: percent === null || own === null ? 'its rating' : `${percent} % of its rating, ${own.source}`,
    },
  ];
}

/** What a conductor carries against what it bears; what is not said of one that carries something is missing. */
function conductorLoad(
  job: Job,
  region: CircuitRegion,
  carried: CarriedCurrent,
  missing: Set<string>,
): readonly LoadingRow[] {
  const wire = job.wires[region.branches[carried.branch]?.wire ?? -1];
  if (wire === undefined || carried.ampere <= noAmpere) return [];
  const limit = conductorCapacity(job, wire);
  if (limit.kind === 'missing') {
    missing.add(limit.what);
    return [];
  }
  const { ampere, state } = carried;
  return [
    {
      what: wire.name,
      is: 'conductor',
      ampere,
      leastAmpere: null,
      mostAmpere: limit.value,
      state,
      source: limit.source,
    },
  ];
}

/** Of a wire in several pieces the one that carries most. */
function worstPieces(rows: readonly LoadingRow[]): readonly LoadingRow[] {
  const worst = new Map<string, LoadingRow>();
  for (const row of rows) {
    const known = worst.get(row.what);
    if (known === undefined || row.ampere > known.ampere + 1e-12) worst.set(row.what, row);
  }
  return [...worst.values()];
}

/** Each output alone: the most that it may have to give, and the least with which its module sees a lamp. */
function driveLoads(job: Job, region: CircuitRegion): readonly LoadingRow[] {
  const solve = regionSolver(job, region);
  return region.branches.flatMap((branch, index): LoadingRow[] => {
    const element = branch.kind === 'contact' ? job.elements[branch.index] : undefined;
    if (element?.kind !== 'drive' || (element.leastAmps === null && element.mostAmps === null)) return [];
    const { state, said } = aloneState(job, region, branch.index);
    const trial = solve(state, null);
    const flow = trial === null ? null : solve(state, reachedLoads(region, trial));
    if (flow === null) return [];
    return [
      {
        what: element.name,
        is: 'output',
        ampere: Math.abs(flow.amperes[index] ?? 0),
        leastAmpere: element.leastAmps,
        mostAmpere: element.mostAmps,
        state: said,
        source: 'the output of the module as the kit file says',
      },
    ];
  });
}

/** One drive on and no other source but the supplies; relays stand as with their coils on. */
function aloneState(
  job: Job,
  region: CircuitRegion,
  drive: number,
): { readonly state: RegionState; readonly said: readonly string[] } {
  const open = region.branches.flatMap(({ kind, index }) => {
    const element = kind === 'contact' ? job.elements[index] : undefined;
    if (element?.kind === 'drive') return index === drive ? [] : [index];
    return element !== undefined && element.workedBy >= 0 && element.restClosed ? [index] : [];
  });
  const off = [...region.poles].flatMap(([node, { output }]) => (output ? [node] : []));
  const names = [
    ...off.map((node) => job.places[node]?.address ?? ''),
    ...open.flatMap((index) =>
      job.elements[index]?.kind === 'drive' ? (job.elements[index]?.name ?? '') : [],
    ),
  ];
  return {
    state: { open: new Set(open), off: new Set(off) },
    said: names.sort(compareText).map((name) => `${name} off`),
  };
}

const overloaded = {
  fuse: 'fuse-overloaded',
  output: 'drive-overloaded',
  conductor: 'conductor-overloaded',
} as const;

function loadingFindings(row: LoadingRow): readonly RawFinding[] {
  const { what, is, ampere, leastAmpere, mostAmpere, state, source } = row;
  const over = mostAmpere !== null && ampere > mostAmpere + 1e-9;
  const under = leastAmpere !== null && ampere < leastAmpere - 1e-9;
  if (!over && !under) return [];
  return [
    {
      kind: under ? 'drive-underloaded' : overloaded[is],
      step: null,
      points: [what],
      witness: {
        is: 'limit',
        quantity: `current${inState(state)}`,
        value: ampere,
        limit: (under ? leastAmpere : mostAmpere) ?? 0,
        unit: 'A',
        source,
        parts: [],
      },
      culprits: [],
      keys: [],
    },
  ];
}
