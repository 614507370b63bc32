import type { Rework, StepAction } from '@loomproof/netlist';
import { mistakenWires } from './mistaken-wires.ts';
import { type NoRepair, RepairDraft, type RepairPlan } from './repair-plan.ts';
import { spareSleeve } from './spare-parts.ts';

/** A tap sits on a wrong wire, or holds badly on the right one: it comes off, its wound is closed, a new one is set. */
export function tapRepairs(rework: Rework, at: number): readonly (RepairPlan | NoRepair)[] {
  const { job } = rework;
  const meant = job.steps[at]?.action;
  if (meant?.kind !== 'tap') return [];
  const there = job.joints[meant.joint];
  const takeOff = (
    wire: number,
    told: { readonly mistake: string; readonly at: string },
    wrongTap: Pick<typeof meant, 'piece' | 'after'>,
  ): readonly (RepairPlan | NoRepair)[] => {
    const size = job.wires[wire]?.size ?? null;
    if (there === undefined || size === null) return [];
    const draft = new RepairDraft(job);
    const own = job.parts.get(there.part ?? '');
    const part = own === undefined ? null : draft.need(own, `1 ${own.name} more than the bag holds`);
    const joint = draft.joint(`${there.name} as first set`, 'tap', part, there.zone);
    const repair: readonly StepAction[] = [
      { kind: 'remove tap', joint },
      { kind: 'cover', end: -1, joint, part: spareSleeve(size, draft) },
    ];
    return [draft.plan(at, told, [{ ...meant, ...wrongTap, joint }], repair, { wires: [wire] })];
  };
  const run = job.pieces[meant.piece]?.wire ?? -1;
  // The mark of a tap that was taken off stays on its run; a later cut or tap there would be counted past it.
  const usedLater = job.steps
    .slice(at + 1)
    .some(
      ({ action }) =>
        (action.kind === 'cut' || action.kind === 'tap') && job.pieces[action.piece]?.wire === run,
    );
  return [
    ...mistakenWires(rework, at).flatMap(({ wire, address, refused }) => {
      const told = { mistake: 'A wrong wire was tapped', at: address };
      return refused === null ? takeOff(wire, told, { piece: wire, after: 0 }) : [{ ...told, why: refused }];
    }),
    ...(usedLater
      ? []
      : takeOff(
          run,
          { mistake: 'The blade missed the copper, or the tap does not hold', at: '' },
          { piece: meant.piece, after: meant.after },
        )),
  ];
}
