import type { KitDocument } from '../oracle/kit-document.ts';
import { KitDraft } from './kit-draft.ts';
import * as place from './place-jobs.ts';
import { randomChoice } from './random-choice.ts';
import { stateIntent } from './state-intent.ts';
import * as wire from './wire-jobs.ts';

/** Every job that a random kit may consist of, by name. */
export const jobs = {
  retireByCut: wire.retireByCut,
  retireWithOffCut: wire.retireWithOffCut,
  retireByWithdrawing: wire.retireByWithdrawing,
  moveThroughSplice: wire.moveThroughSplice,
  newWire: wire.newWire,
  tapBridging: wire.tapBridging,
  tapTwice: wire.tapTwice,
  repair: wire.repair,
  branchAtSplice: wire.branchAtSplice,
  exchangeWires: wire.exchangeWires,
  moveTerminal: place.moveTerminal,
  exchangeTerminals: place.exchangeTerminals,
  addAtStud: place.addAtStud,
  moveReturn: place.moveReturn,
  doubleCrimp: place.doubleCrimp,
  moveDoubleCrimp: place.moveDoubleCrimp,
  leaveUnplugged: place.leaveUnplugged,
  interposeAdapter: place.interposeAdapter,
  fitFuse: place.fitFuse,
  jumperThereAndGone: place.jumperThereAndGone,
  renewTerminal: place.renewTerminal,
  hangWire: place.hangWire,
} as const satisfies Record<string, wire.Job>;

/** The name of a job. */
export type JobName = keyof typeof jobs;

/** Everything that a random kit follows from. */
export type KitRecipe = { readonly seed: number; readonly jobs: readonly JobName[] };

/** Makes the kit of a recipe: a harness, a rework that is right, and the intent that the oracle reads from both. */
export function randomKit(recipe: KitRecipe): KitDocument {
  const random = randomChoice(recipe.seed);
  const draft = new KitDraft(random);
  for (let background = 1 + random.below(2); background > 0; background -= 1) draft.newStockWire();
  if (random.chance(0.3)) draft.newLoop();
  for (const name of recipe.jobs) jobs[name](draft);
  return stateIntent(draft.document(), random);
}
