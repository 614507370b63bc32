import type { Rework } from '@loomproof/netlist';
import { type Bands, defaultBands, isFarFromWhole } from './bands.ts';
import { type HarnessState, harnessState } from './harness-state.ts';
import type { ProbePoint, Stage } from './stage.ts';

/** What a low reading between two points says of one join. */
export type Evidence =
  | { readonly is: 'evidence' }
  /** The reading is low with the join open as well, by copper alone. */
  | { readonly is: 'another path' }
  /** With the join open a load would read this low; these connectors must be unplugged first. */
  | { readonly is: 'through a load'; readonly lowOhm: number; readonly unplug: readonly string[] }
  /** The reading is not low even when all is well. */
  | { readonly is: 'not joined' };

/**
 * Whether a low reading proves a join: only if the join lies on every path between the probes as things are plugged,
 * and with it open no path through a load reads under the load factor times the limit for whole.
 *
 * @param rework - the finished work
 * @param stage - what is plugged
 * @param join - the two nodes that the join holds together
 * @param probes - the two points
 */
export function continuityEvidence(
  rework: Rework,
  stage: Stage,
  join: readonly [number, number],
  probes: readonly [ProbePoint, ProbePoint],
  bands: Bands = defaultBands,
): Evidence {
  const whole = harnessState(rework, [], stage, probes, bands);
  if (whole.expected(0, 1) !== 'whole') return { is: 'not joined' };
  const opened = (pulled: Stage): HarnessState =>
    harnessState(rework, [{ is: 'does not conduct', join }], pulled, probes, bands);
  const state = opened(stage);
  if (state.expected(0, 1) === 'whole') return { is: 'another path' };
  const least = (one: HarnessState): number => Math.min(one.range(0, 1).low, one.range(1, 0).low);
  const lowOhm = least(state);
  if (isFarFromWhole(lowOhm, bands) || stage.is !== 'in place') return { is: 'evidence' };
  // Everything is pulled in thought, and what need not be is put back.
  const { job } = rework;
  let pulled = new Set(job.connectors.flatMap((one, index) => (one.device ? [index] : [])));
  for (const device of [...pulled]) {
    const fewer = new Set([...pulled].filter((one) => one !== device));
    const rest = least(opened({ ...stage, pulled: new Set([...stage.pulled, ...fewer]) }));
    if (isFarFromWhole(rest, bands)) pulled = fewer;
  }
  const unplug = [...pulled].map((one) => job.connectors[one]?.name ?? '');
  return { is: 'through a load', lowOhm, unplug };
}
