import { type Job, Rework } from '@loomproof/netlist';
import { harnessState } from '../readings/harness-state.ts';
import { probePoints, type Stage } from '../readings/stage.ts';

/** A reading that two variants answer differently, before anything is cut or after the work. */
export interface Separation {
  readonly a: string;
  readonly b: string;
  readonly first: 'whole' | 'open';
  readonly second: 'whole' | 'open';
  readonly moment: 'before the work' | 'after the work';
}

/**
 * The cheapest reading that tells two variants apart: on the machine as found, or else on the finished work. Null
 * where no reading of the stage does, so that only the labels tell.
 */
export function separatingCheck(first: Job, second: Job, stage: Stage): Separation | null {
  for (const moment of ['before the work', 'after the work'] as const) {
    const [one, other] = [first, second].map((job) => {
      const rework = new Rework(job);
      if (moment === 'after the work') for (const step of job.steps) rework.apply(step);
      const points = probePoints(rework, stage);
      return {
        at: new Map(points.map(({ name }, index) => [name, index])),
        points,
        state: harnessState(rework, [], stage, points),
      };
    });
    if (one === undefined || other === undefined) return null;
    for (const [a, from] of one.points.entries())
      for (const [index, to] of one.points.slice(a + 1).entries()) {
        const [otherA, otherB] = [other.at.get(from.name), other.at.get(to.name)];
        if (otherA === undefined || otherB === undefined) continue;
        const [mine, theirs] = [one.state.expected(a, a + 1 + index), other.state.expected(otherA, otherB)];
        if (mine === theirs || (mine !== 'whole' && mine !== 'open')) continue;
        if (theirs !== 'whole' && theirs !== 'open') continue;
        return { a: from.name, b: to.name, first: mine, second: theirs, moment };
      }
  }
  return null;
}
