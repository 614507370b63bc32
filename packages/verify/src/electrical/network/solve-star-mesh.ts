/** A branch of a linear network: current out of `from` into `to` = siemens * (volts from - volts to) + ampere. */
export interface Branch {
  readonly from: number;
  readonly to: number;
  /** Conductance, zero for a current source. */
  readonly siemens: number;
  readonly ampere: number;
}

/** What all branches between two vertices amount to; the current counts out of the lower vertex. */
interface Tie {
  siemens: number;
  ampere: number;
}

/** A vertex taken out, with what its voltage follows from. */
interface Step {
  readonly vertex: number;
  readonly neighbours: readonly number[];
  readonly siemens: readonly number[];
  /** Amperes out of each neighbour into the vertex, beyond those that the voltages drive. */
  readonly amperes: readonly number[];
  readonly total: number;
}

/**
 * Solves a sparse linear network: vertices are taken out one by one in minimum-degree order, each replaced by the
 * mesh of its neighbours, and their voltages follow in reverse. In matrix words this is an LDL^T factorization of
 * the Laplacian. Conductances are only added and never subtracted, and the sources stay in their branches and are
 * not summed up at the vertices; so no digits are lost however far a milliohm joint, a megohm insulation and
 * a large circulating current lie apart.
 *
 * @param size - how many vertices there are.
 * @param branches - the branches; one from a vertex to itself has no effect. Into each part that conductances tie
 * together, branches without conductance bring a sum of zero.
 * @param reference - the vertex whose voltage is zero.
 * @returns the volts of each vertex against the root of its part: `reference`, or the vertex left last.
 */
export function solveStarMesh(size: number, branches: readonly Branch[], reference: number): Float64Array {
  const ties: Map<number, Tie>[] = Array.from({ length: size }, () => new Map());
  const add = (from: number, to: number, siemens: number, ampere: number): void => {
    let tie = ties[from]?.get(to);
    if (tie === undefined) {
      tie = { siemens: 0, ampere: 0 };
      ties[from]?.set(to, tie);
      ties[to]?.set(from, tie);
    }
    tie.siemens += siemens;
    tie.ampere += from < to ? ampere : -ampere;
  };
  for (const { from, to, siemens, ampere } of branches) if (from !== to) add(from, to, siemens, ampere);

  const takeOut = (vertex: number): Step => {
    const neighbours: number[] = [];
    const siemens: number[] = [];
    const amperes: number[] = [];
    let total = 0;
    for (const [neighbour, tie] of ties[vertex] ?? []) {
      neighbours.push(neighbour);
      siemens.push(tie.siemens);
      amperes.push(neighbour < vertex ? tie.ampere : -tie.ampere);
      total += tie.siemens;
      ties[neighbour]?.delete(vertex);
    }
    return { vertex, neighbours, siemens, amperes, total };
  };

  const steps: Step[] = [];
  for (const vertex of minimumDegreeOrder(ties, reference)) {
    const step = takeOut(vertex);
    steps.push(step);
    for (const [place, one] of step.neighbours.entries()) {
      const oneSiemens = step.siemens[place] ?? 0;
      const oneAmpere = step.amperes[place] ?? 0;
      if (step.total === 0) {
        // Current sources alone meet here and add up to zero: all flow on into the first of the others.
        if (place > 0) add(one, step.neighbours[0] ?? one, 0, oneAmpere);
        continue;
      }
      for (let later = place + 1; later < step.neighbours.length; later++) {
        const otherShare = (step.siemens[later] ?? 0) / step.total;
        const ampere = oneAmpere * otherShare - (oneSiemens / step.total) * (step.amperes[later] ?? 0);
        if (oneSiemens * otherShare > 0 || ampere !== 0) {
          add(one, step.neighbours[later] ?? one, oneSiemens * otherShare, ampere);
        }
      }
    }
  }

  const volts = new Float64Array(size);
  for (let at = steps.length - 1; at >= 0; at--) {
    const step = steps[at];
    if (step === undefined || step.total === 0) continue;
    // Summed apart, so that source currents that cancel out do so before they meet the voltages.
    let driven = 0;
    let ampere = 0;
    for (const [place, neighbour] of step.neighbours.entries()) {
      driven += (step.siemens[place] ?? 0) * (volts[neighbour] ?? 0);
      ampere += step.amperes[place] ?? 0;
    }
    volts[step.vertex] = driven / step.total + ampere / step.total;
  }
  return volts;
}

/**
 * Yields each vertex but the reference when it has the fewest neighbours of those left; the caller takes it out
 * of `ties` before asking for the next.
 */
function* minimumDegreeOrder(
  ties: readonly ReadonlyMap<number, Tie>[],
  reference: number,
): Generator<number> {
  const done = new Array<boolean>(ties.length).fill(false);
  // Buckets by degree. An entry is stale when the vertex has changed its degree since; it is then passed over.
  const buckets: number[][] = [];
  const enter = (vertex: number): void => {
    if (vertex === reference || done[vertex]) return;
    const degree = ties[vertex]?.size ?? 0;
    while (buckets.length <= degree) buckets.push([]);
    buckets[degree]?.push(vertex);
  };
  for (let vertex = ties.length - 1; vertex >= 0; vertex--) enter(vertex);
  for (let degree = 0; degree < buckets.length; ) {
    const vertex = buckets[degree]?.pop();
    if (vertex === undefined) {
      degree++;
      continue;
    }
    if (done[vertex] || ties[vertex]?.size !== degree) continue;
    done[vertex] = true;
    const neighbours = [...(ties[vertex]?.keys() ?? [])];
    yield vertex;
    for (const neighbour of neighbours) enter(neighbour);
    degree = Math.max(0, degree - 1);
  }
}
