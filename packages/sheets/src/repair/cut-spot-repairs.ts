import type { Rework, StepAction } from '@loomproof/netlist';
import { placesOfStep } from '../step-place.ts';
import { type NoRepair, RepairDraft, type RepairPlan, sidesOf } from './repair-plan.ts';
import { spareSplice } from './spare-parts.ts';

/**
 * The right wire was cut, but too near the place from which its spot is measured, or too far from it. Where the part that
 * is then too short comes off as an off-cut anyhow, the rest is cut to its length; else the wire is joined again first.
 */
export function cutSpotRepairs(rework: Rework, at: number): readonly (RepairPlan | NoRepair)[] {
  const { job } = rework;
  const meant = job.steps[at]?.action;
  if (meant?.kind !== 'cut') return [];
  const place = placesOfStep(rework, meant)[0]?.place;
  const position = job.positions.get(job.ends[meant.newEnds[0]]?.node ?? -1);
  // A cut whose spot nobody gave cannot be at the wrong one.
  if (place === undefined || position === undefined) return [];
  const address = job.places[place]?.address ?? '';
  const wire = job.pieces[meant.piece]?.wire ?? -1;
  const { size = null, flex = false, lengthMm = null } = job.wires[wire] ?? {};
  const { fromEnd, mm } = position;
  return (['too near', 'too far from'] as const).map((spot): RepairPlan | NoRepair => {
    const told = { mistake: `The right wire was cut ${spot} ${address}`, at: '' };
    const none = (why: string): NoRepair => ({ ...told, why });
    if (rework.jointsOn(meant.piece).length > 0) return none('a tap sits on the wire');
    // Which of the two parts that the wrong cut leaves holds the right spot, and the leaf that is short of a piece.
    const short = (spot === 'too near') === (fromEnd === 0) ? 0 : 1;
    const leaf = meant.leaves[short];
    const later = job.steps.slice(at + 1).filter(({ action }) => 'piece' in action && action.piece === leaf);
    const name = job.pieces[leaf]?.name ?? '';
    const { name: whole = '', ends: wholeEnds = [] } = job.pieces[meant.piece] ?? {};
    const draft = new RepairDraft(job);
    const wrongMm = spot === 'too near' ? mm / 2 : lengthMm === null ? mm * 2 : (mm + lengthMm) / 2;
    const wrong = draft.cutAt(
      meant.piece,
      { names: sidesOf(job, whole, wholeEnds), where: { fromEnd, mm: wrongMm } },
      meant.zone,
    );
    const holder = wrong.leaves[short === 0 ? 1 : 0];
    const inner = wrong.newEnds[short === 0 ? 1 : 0];
    if (later.some(({ action }) => action.kind === 'remove off-cut')) {
      const kept = meant.newEnds[short === 0 ? 1 : 0];
      const rest = meant.leaves[short === 0 ? 1 : 0];
      const trim = draft.cutAt(
        holder,
        {
          ends: short === 0 ? [null, kept] : [kept, null],
          leaves: short === 0 ? [null, rest] : [rest, null],
          names: [`the rest of ${name}`, `the rest of ${name}`],
          where: position,
        },
        meant.zone,
      );
      const repair: readonly StepAction[] = [trim, { kind: 'remove off-cut', piece: trim.leaves[short] }];
      return draft.plan(
        at,
        told,
        [wrong],
        repair,
        { wires: [wire] },
        {
          before: 'Hold the two ends together and measure the right spot again, as the step says',
          instead: null,
          ends: new Map([[meant.newEnds[short], wrong.newEnds[short]]]),
          pieces: new Map([[leaf, wrong.leaves[short]]]),
        },
      );
    }
    if (later.some(({ action }) => action.kind !== 'fasten'))
      return none('a later step works on the part in which the joint would lie');
    if (flex) return none('the wire bends in use, and no joint may lie in it');
    if (size === null) return none('the size of the wire is not known');
    const joint = draft.joint('repair splice', 'splice', spareSplice(job, size, draft), meant.zone);
    const own = meant.newEnds[short];
    const part = draft.piece(name, wire, short === 0 ? [inner, own] : [own, inner]);
    const leaves = short === 0 ? ([part, meant.leaves[1]] as const) : ([meant.leaves[0], part] as const);
    const repair: readonly StepAction[] = [
      ...wrong.newEnds.map((end): StepAction => ({ kind: 'strip', end })),
      { kind: 'join', ends: wrong.newEnds, joint },
      { kind: 'seal', joint },
    ];
    return draft.plan(
      at,
      told,
      [wrong],
      repair,
      { wires: [wire] },
      {
        instead: { ...meant, piece: holder, leaves },
        pieces: new Map([[leaf, part]]),
      },
    );
  });
}
