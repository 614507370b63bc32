import { type HarnessState, isUnused } from './harness-state.ts';
import type { WantedRows } from './kit-document.ts';
import type { Problem } from './problem.ts';

/** Judges what is left undone when the work ends. */
export function judgeEndOfWork(before: HarnessState, after: HarnessState, wanted: WantedRows): Problem[] {
  const problems: Problem[] = [];
  const problem = (kind: string, about: string): void => {
    problems.push({ kind, step: null, about });
  };
  const { facts } = after;
  const meantApart = new Set(
    (wanted['left unplugged'] ?? []).flatMap((name) => [name, facts.connectors.get(name)?.other ?? name]),
  );
  const seen = new Set<string>();
  for (const { name, other } of facts.connectors.values()) {
    if (other === null || seen.has(name)) continue;
    seen.add(other);
    const [was, is] = [before.plugged.has(name), after.plugged.has(name)];
    const kitPair =
      facts.connectors.get(name)?.fromKit === true || facts.connectors.get(other)?.fromKit === true;
    if (meantApart.has(name)) {
      if (is) problem('still-plugged', name);
    } else if (!is && (was || kitPair)) problem('left-unplugged', name);
    else if (is && !was && !kitPair) problem('mate-changed', name);
  }
  for (const states of [
    { was: before.locks, is: after.locks },
    { was: before.latches, is: after.latches },
  ]) {
    for (const [name, now] of states.is) {
      const excused = states.is === after.latches && (!after.plugged.has(name) || meantApart.has(name));
      const kit = facts.connectors.get(name)?.fromKit === true;
      if (now === 'open' && (kit || states.was.get(name) === 'closed') && !excused)
        problem('lock-left-open', name);
    }
  }
  const isAdapter = (list: WantedRows['interposed'], at: string): boolean =>
    (list ?? []).some((one) => one.at === at);
  for (const { at } of [...(wanted.interposed ?? []), ...after.interposed]) {
    if (isAdapter(wanted.interposed, at) !== isAdapter(after.interposed, at)) problem('mate-changed', at);
  }
  for (const { name, device, fromKit } of facts.connectors.values()) {
    if (device && fromKit && !after.placed.has(name)) problem('part-unused', name);
  }
  for (const wire of facts.wires.keys()) if (isUnused(after, wire)) problem('part-unused', wire);
  for (const supply of facts.supplies.keys()) if (!after.on.has(supply)) problem('supply-left-off', supply);
  for (const joint of after.joints.values()) {
    if (joint.is === 'jumper' && joint.state !== 'removed') problem('jumper-left', joint.name);
  }
  for (const [name, inBag] of facts.kit.bag?.parts ?? []) {
    if (Number(inBag) > 0 && countParts(after, name, Number(inBag)).left > 0) problem('part-unused', name);
  }
  for (const name of new Set(after.partsLog.filter((one) => one.is === 'taken').map((one) => one.part))) {
    const inBag = Number(facts.kit.bag?.parts?.get(name) ?? '0');
    if (countParts(after, name, inBag).missing > 0) problem('part-missing', name);
  }
  return problems;
}

/** Goes through the log with so many of a part in the bag: how many are left, and how often there was none. */
export function countParts(
  after: HarnessState,
  name: string,
  inBag: number,
): { left: number; missing: number } {
  let [left, spare, missing] = [inBag, 0, 0];
  for (const { part, is } of after.partsLog) {
    if (is === 'came out') {
      if (part === name) spare += 1;
    } else if (part === name) {
      if (left > 0) left -= 1;
      else if (spare > 0) spare -= 1;
      else missing += 1;
    }
  }
  return { left, missing };
}
