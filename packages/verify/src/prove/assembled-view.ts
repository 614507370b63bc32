import type { Conducts, Job, Rework } from '@loomproof/netlist';

/**
 * Whether a pair counts as plugged when nets are judged: as it was in the machine as found, and yes for every pair that
 * the kit brings. What is left unplugged or plugged by mistake is judged apart, as procedure.
 */
export function assembledPlugged(job: Job): readonly boolean[] {
  return job.connectors.map((connector) => {
    const other = job.connectors[connector.counterpart];
    if (other === undefined) return false;
    return connector.origin === 'kit' || other.origin === 'kit' || connector.plugged;
  });
}

/** The view of the machine as it was found, whatever the work did since; for moments before the first step. */
export function asFoundView({ job, graph }: Rework): Conducts {
  const plugged = assembledPlugged(job);
  return (edge) => graph.kindOf(edge) !== 'mate' || (plugged[graph.whatOf(edge)] ?? false);
}

/**
 * The assembled view of a rework after some step: everything plugged as before, except what intent leaves unplugged,
 * which counts as it really is at the end, and what intent interposes.
 */
export function assembledView(rework: Rework): Conducts {
  const { job, graph } = rework;
  const plugged = assembledPlugged(job);
  const assembled = job.connectors.map((_, index) => {
    const other = rework.counterpart[index] ?? -1;
    // A pair that the work itself made, by an adapter, is as it is.
    if (other !== job.connectors[index]?.counterpart) return true;
    const leave = job.wanted.leftUnplugged.has(index) || job.wanted.leftUnplugged.has(other);
    return leave ? rework.plugged[index] === true : plugged[index] === true;
  });
  return (edge) => {
    if (graph.kindOf(edge) !== 'mate') return true;
    return assembled[graph.whatOf(edge)] as boolean;
  };
}
