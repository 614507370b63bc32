import type { Rework } from '@loomproof/netlist';
import { placeGuide } from '../place-guide.ts';
import { RepairDraft, type RepairPlan } from './repair-plan.ts';

/** What can go wrong when a terminal is put in or taken out, and how it is put right at once. */
export function seatRepairs(rework: Rework, at: number): readonly RepairPlan[] {
  const { job } = rework;
  const action = job.steps[at]?.action;
  if (action?.kind === 'insert') {
    const { end, place } = action;
    const again = new RepairDraft(job).plan(
      at,
      { mistake: 'It stands out, slides back, or sits turned round', at: '' },
      [{ kind: 'insert', end, place }],
      [{ kind: 'withdraw', place }],
      {},
    );
    return [
      ...mistakenCavities(rework, place, false).map((hit) =>
        new RepairDraft(job).plan(
          at,
          { mistake: 'It went into a wrong cavity', at: job.places[hit]?.address ?? '' },
          [{ kind: 'insert', end, place: hit }],
          [{ kind: 'withdraw', place: hit }],
          { places: [hit] },
        ),
      ),
      again,
    ];
  }
  if (action?.kind !== 'withdraw') return [];
  return mistakenCavities(rework, action.place, true).flatMap((hit) => {
    const end = rework.endsOf(rework.seated[hit] ?? -1)[0];
    if (end === undefined) return [];
    return [
      new RepairDraft(job).plan(
        at,
        { mistake: 'The terminal of another cavity was taken out', at: job.places[hit]?.address ?? '' },
        [{ kind: 'withdraw', place: hit }],
        [{ kind: 'insert', end, place: hit }],
        { places: [hit] },
      ),
    ];
  });
}

/** Cavities that a misreading hits and where nothing stops the hand, by whether a terminal stands in them. */
function mistakenCavities(rework: Rework, place: number, holding: boolean): readonly number[] {
  const { job } = rework;
  const half = job.connectors[job.places[place]?.connector ?? -1];
  if (half === undefined) return [];
  return placeGuide(rework, place, null).traps.flatMap(({ cavity }) => {
    for (let hit = half.firstPlace; hit < half.firstPlace + half.placeCount; hit += 1)
      if (job.places[hit]?.label === cavity && (rework.seated[hit] === -1) !== holding) return [hit];
    return [];
  });
}
