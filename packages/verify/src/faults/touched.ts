import type { Job, Rework } from '@loomproof/netlist';

/** What the work and what is wanted have to do with, so that faults and readings stay with it. */
export interface Touched {
  /** Places that a step or a statement names, and those where a wire that was worked on ends. */
  readonly places: ReadonlySet<number>;
  /** Wires of the kit and wires of the machine that a step cut, tapped or moved an end of. */
  readonly wires: ReadonlySet<number>;
}

/** Collects what is touched; linear in the job. */
export function touchedBy(rework: Rework): Touched {
  const { job } = rework;
  const places = new Set<number>();
  const wires = new Set<number>();
  for (const [index, wire] of job.wires.entries()) if (wire.origin === 'kit') wires.add(index);
  for (const { action } of job.steps) {
    if ('place' in action && typeof action.place === 'number' && action.kind !== 'prove dead')
      places.add(action.place);
    if (action.kind === 'fit jumper') for (const place of action.places) places.add(place);
    for (const wire of wiresOf(job, action)) wires.add(wire);
  }
  for (const edge of edgesOfWork(rework)) {
    if (rework.graph.kindOf(edge) === 'conductor') wires.add(rework.graph.whatOf(edge));
  }
  const { circuits, additions, moves, stubs, retiredPlaces, retiredWires } = job.wanted;
  for (const one of circuits) for (const place of one.places) places.add(place);
  for (const one of additions) for (const place of [one.to, ...one.add, ...one.take]) places.add(place);
  for (const { from, to } of moves) places.add(from).add(to);
  for (const { place } of stubs) places.add(place);
  for (const place of retiredPlaces) places.add(place);
  for (const wire of retiredWires) wires.add(wire);
  for (const wire of wires)
    for (const end of job.wires[wire]?.ends ?? []) {
      const home = job.ends[end]?.home;
      if (home?.kind === 'place') places.add(home.place);
    }
  for (const [terminal, place] of rework.terminalPlace.entries())
    if (place >= 0 && rework.endsOf(terminal).some((end) => wires.has(job.ends[end]?.wire ?? -1)))
      places.add(place);
  // A fault of the machine shows between places of wires that start at a touched one.
  return { places: new Set([...places].sort((a, b) => a - b)), wires };
}

function wiresOf(job: Job, action: Job['steps'][number]['action']): readonly number[] {
  if ('end' in action && action.end >= 0) return [job.ends[action.end]?.wire ?? -1];
  if ('ends' in action) return action.ends.map((end) => job.ends[end]?.wire ?? -1);
  return [];
}

function edgesOfWork({ graph, ordinal }: Rework): readonly number[] {
  const found: number[] = [];
  for (let edge = 0; edge < graph.edgeCount; edge += 1)
    if (graph.birthOf(edge) > 0 || graph.deathOf(edge) <= ordinal) found.push(edge);
  return found;
}
