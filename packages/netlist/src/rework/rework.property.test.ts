import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readFixture, tablesBeside } from '../../../../tests/support/fixture-folder.ts';
import { kitNames, kitPath } from '../../../../tests/support/kit-fixtures.ts';
import { describeRework } from '../../../../tests/support/rework-of.ts';
import type { Job, Step } from '../harness/job.ts';
import { reachedFrom } from '../harness/nets.ts';
import { readKit } from '../kit/read-kit.ts';
import { Rework } from './rework.ts';

const jobs: readonly Job[] = kitNames.flatMap((name) => {
  const path = kitPath(name);
  return readKit(readFixture(path), tablesBeside(path)).value?.variants.map((one) => one.job) ?? [];
});

/** A job with its steps done in an order that nobody would follow: some left out, some twice. */
const anyWork = fc
  .record({ job: fc.constantFrom(...jobs), picks: fc.array(fc.nat(), { maxLength: 60 }) })
  .map(({ job, picks }) => ({
    job,
    steps: picks
      .map((pick) => job.steps[pick % job.steps.length])
      .filter((step): step is Step => step !== undefined),
  }));

/** The work in its own order, with single steps exchanged or left out: most of it is done. */
const nearlyRight = fc
  .record({
    job: fc.constantFrom(...jobs),
    left: fc.array(fc.nat(), { maxLength: 3 }),
    swapped: fc.array(fc.nat(), { maxLength: 3 }),
  })
  .map(({ job, left, swapped }) => {
    const steps = [...job.steps];
    for (const one of swapped) steps.push(...steps.splice(one % steps.length, 1));
    return { job, steps: steps.filter((_, index) => !left.some((one) => one % steps.length === index)) };
  });

const work = fc.oneof(anyWork, nearlyRight);

test('there are jobs to be tried', () => {
  expect(jobs.length).toBeGreaterThan(6);
});

// Each run does dozens of steps and writes the whole state down after each; a busy machine needs its time for that.
const patient = { timeout: 60_000 };

test('a refused step changes nothing at all', patient, () => {
  fc.assert(
    fc.property(work, ({ job, steps }) => {
      const rework = new Rework(job);
      for (const step of steps) {
        const before = describeRework(rework);
        const { refused, breaches, touches } = rework.apply(step);
        if (refused === null) continue;
        expect(describeRework(rework)).toEqual(before);
        expect([breaches, touches]).toEqual([[], []]);
      }
    }),
  );
});

test('occupancy and copper tell the same story after every step', patient, () => {
  fc.assert(
    fc.property(work, ({ job, steps }) => {
      const rework = new Rework(job);
      for (const step of steps) {
        rework.apply(step);
        expect(contradictions(rework)).toEqual([]);
      }
    }),
  );
});

/** Where the plain fields and the graph disagree. */
function contradictions(rework: Rework): readonly string[] {
  const { job, graph, ordinal } = rework;
  const found: string[] = [];
  const edges = Array.from({ length: graph.edgeCount }, (_, edge) => edge);
  const alive = (kind: string, a: number, b: number): boolean =>
    edges.some(
      (edge) =>
        graph.kindOf(edge) === kind &&
        graph.aliveAt(edge, ordinal) &&
        ((graph.fromOf(edge) === a && graph.toOf(edge) === b) ||
          (graph.fromOf(edge) === b && graph.toOf(edge) === a)),
    );
  const count = (kind: string): number =>
    edges.filter((edge) => graph.kindOf(edge) === kind && graph.aliveAt(edge, ordinal)).length;
  let seats = 0;
  for (const [index, terminal] of job.terminals.entries()) {
    const place = rework.terminalPlace[index] ?? -1;
    if (place < 0) continue;
    seats += 1;
    if (!alive('seat', terminal.node, place)) found.push(`terminal ${index} is not seated`);
    if (job.places[place]?.kind === 'cavity' && rework.seated[place] !== index)
      found.push(`${job.places[place]?.address} does not know its terminal`);
  }
  if (seats !== count('seat')) found.push(`${count('seat')} seats for ${seats} terminals`);
  const taken = [...rework.seated].filter((terminal) => terminal >= 0);
  if (new Set(taken).size !== taken.length) found.push('one terminal sits in two cavities');
  for (let place = 0; place < job.places.length; place += 1)
    if (rework.plug.at(place) !== null && (rework.seated[place] ?? -1) >= 0)
      found.push(`plug and terminal at ${place}`);
  let joints = 0;
  for (const [index, end] of job.ends.entries()) {
    const joint = rework.endJoint[index] ?? -1;
    if (joint < 0) continue;
    joints += 1;
    if (!alive('joint', end.node, job.joints[joint]?.node ?? -1)) found.push(`${end.name} is in no joint`);
    if (rework.isFree(index)) found.push(`${end.name} is free and in a joint`);
  }
  if (joints !== count('joint')) found.push(`${count('joint')} joints for ${joints} ends`);
  for (const [place, other] of rework.facing.entries()) {
    if (other <= place) continue;
    const device = [place, other].some(
      (one) => job.connectors[job.places[one]?.connector ?? -1]?.device === true,
    );
    const mated = device || (rework.hasContact(place) && rework.hasContact(other));
    if (alive('mate', place, other) !== mated) found.push(`${job.places[place]?.address} is mated wrongly`);
  }
  const copperOnly = (edge: number): boolean => graph.kindOf(edge) === 'conductor';
  for (const [index, piece] of job.pieces.entries()) {
    if (rework.pieceThere[index] !== 1) continue;
    const [a, b] = piece.ends.map((end) => job.ends[end]?.node ?? -1);
    const reached = reachedFrom(graph, ordinal, a ?? -1, copperOnly);
    if (!reached.includes(b ?? -1)) found.push(`${piece.name} is not whole`);
    // Along a piece lie its two ends and its taps, and nothing else.
    if (reached.length !== 2 + rework.jointsOn(index).length) found.push(`${piece.name} leads astray`);
    for (const end of piece.ends)
      if (rework.endPiece[end] !== index || rework.endThere[end] !== 1)
        found.push(`${piece.name} lost an end`);
  }
  return found;
}
