import type { HarnessState } from './harness-state.ts';
import { terminalIn } from './harness-state.ts';
import type { Problem } from './problem.ts';
import { fits, readNumber } from './read-measure.ts';

/** Judges occupancy and fit when the work is done: open cavities, kinds of terminal, sizes. */
export function judgeFit(after: HarnessState): Problem[] {
  const problems: Problem[] = [];
  const { facts } = after;
  const problem = (kind: string, about: string): void => {
    problems.push({ kind, step: null, about });
  };
  const inRange = (range: string | undefined, value: number | null, outside: string, about: string): void => {
    const fit = fits(range, value);
    if (fit === false) problem(outside, about);
    if (fit === null) problem('range-unknown', about);
  };
  const sizeOf = (wire: string): number | null => readNumber(facts.wires.get(wire)?.row.size);

  for (const connector of facts.connectors.values()) {
    if (connector.device) continue;
    for (const cavity of connector.places) {
      const terminal = terminalIn(after, cavity);
      if (terminal === undefined) {
        const closed = after.plugs.has(cavity) || facts.places.get(cavity)?.blocked === true;
        if (connector.row.sealed === 'yes' && !closed) problem('open-cavity', cavity);
        continue;
      }
      const { accepts } = connector.row;
      // A terminal as found fits the connector that it was found in.
      const stays = facts.places.get(terminal.home ?? '')?.connector === connector.name;
      if (terminal.seatedByStep) {
        if (accepts !== undefined && terminal.part !== null) {
          if (!accepts.includes(terminal.part)) problem('terminal-unfit', cavity);
        } else if (!stays) problem('range-unknown', cavity);
      }
      if (connector.row.sealed === 'yes' && terminal.ends.some((end) => end.seal === null))
        problem('seal-missing', cavity);
    }
  }
  for (const terminal of after.terminals) {
    // Crimps as found are not judged; those of the kit are, whether a step or the kit maker made them.
    const isKits =
      terminal.madeByStep || terminal.ends.some((end) => facts.wires.get(end.wire)?.fromKit === true);
    if (terminal.part === null || !isKits) continue;
    // One crimp holds all its wires, so their sizes add up.
    const sizes = terminal.ends.map((end) => sizeOf(end.wire));
    const whole = sizes.some((size) => size === null)
      ? null
      : sizes.reduce((sum: number, size) => sum + (size ?? 0), 0);
    inRange(
      facts.parts.get(terminal.part)?.size,
      whole,
      'size-out-of-range',
      terminal.ends[0]?.name ?? terminal.name,
    );
    for (const end of terminal.ends) {
      if (end.seal === null) continue;
      const insulation = readNumber(facts.wires.get(end.wire)?.row.insulation);
      inRange(facts.parts.get(end.seal)?.insulation, insulation, 'seal-out-of-range', end.name);
    }
  }
  for (const joint of after.joints.values()) {
    if (!joint.fromKit || joint.state === 'removed' || joint.part === null || joint.is === 'jumper') continue;
    const part = facts.parts.get(joint.part);
    if (joint.is === 'splice')
      for (const end of joint.ends) inRange(part?.size, sizeOf(end.wire), 'size-out-of-range', end.name);
    else if (joint.state === 'crimped') {
      for (const end of joint.ends) inRange(part?.branch, sizeOf(end.wire), 'size-out-of-range', joint.name);
      const run = [...after.pieces.values()].find((piece) => piece.stations.some((one) => one.is === joint));
      if (run !== undefined) inRange(part?.run, sizeOf(run.wire), 'size-out-of-range', joint.name);
    }
  }
  return problems;
}
