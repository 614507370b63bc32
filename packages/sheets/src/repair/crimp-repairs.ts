import type { Rework, StepAction } from '@loomproof/netlist';
import { type NoRepair, RepairDraft, type RepairPlan } from './repair-plan.ts';

/**
 * A wire slides in the crimp of a splice: the splice is cut out and a new one is made. A crimp that holds nothing joins
 * nothing, so it has no edge in the model; what is cut off each wire goes with the spoilt splice.
 */
export function crimpRepairs(rework: Rework, at: number): readonly (RepairPlan | NoRepair)[] {
  const { job } = rework;
  const meant = job.steps[at]?.action;
  if (meant?.kind !== 'join') return [];
  const told = { mistake: 'A wire slides in the crimp', at: '' };
  const pieces = meant.ends.map((end) => rework.endPiece[end] ?? -1);
  if (new Set(pieces).size < pieces.length)
    return [{ ...told, why: 'two ends of one wire would be made shorter at once' }];
  const draft = new RepairDraft(job);
  const { part = null, zone = 'dry' } = job.joints[meant.joint] ?? {};
  if (part !== null) draft.tell(`1 ${part} more than the bag holds`);
  const repair: StepAction[] = [];
  const prepare: StepAction[] = [];
  const otherEnds = new Map<number, number>();
  const otherPieces = new Map<number, number>();
  for (const [index, end] of meant.ends.entries()) {
    const piece = pieces[index] ?? -1;
    const { name = '', ends = [-1, -1] as const } = job.pieces[piece] ?? {};
    const tip = ends[0] === end ? 0 : 1;
    const endName = job.ends[end]?.name ?? '';
    const whole = draft.endNamed(endName, job.ends[end]?.wire ?? -1);
    const cut = draft.cutAt(
      piece,
      {
        ends: tip === 0 ? [null, whole] : [whole, null],
        names: tip === 0 ? [`tip of ${name}`, name] : [name, `tip of ${name}`],
        where: null,
        after: tip === 0 ? 0 : rework.jointsOn(piece).length,
      },
      zone,
    );
    repair.push(cut, { kind: 'remove off-cut', piece: cut.leaves[tip] });
    prepare.push({ kind: 'strip', end: whole });
    const tube = job.parts.get(rework.endTube.get(end) ?? '');
    if (tube !== undefined)
      prepare.push({
        kind: 'slide tube',
        end: whole,
        part: draft.need(tube, `1 ${tube.name} more than the bag holds, where the one on the wire is spoilt`),
      });
    otherEnds.set(end, whole);
    otherPieces.set(piece, cut.leaves[tip === 0 ? 1 : 0]);
  }
  const wires = meant.ends.map((end) => job.ends[end]?.wire ?? -1);
  return [
    draft.plan(
      at,
      told,
      [],
      [...repair, ...prepare],
      { wires },
      {
        before:
          'Only where every wire still reaches without a pull when it is shorter by the splice: else stop and ask',
        instead: { ...meant, ends: meant.ends.map((end) => otherEnds.get(end) ?? end) },
        ends: otherEnds,
        pieces: otherPieces,
      },
    ),
  ];
}
