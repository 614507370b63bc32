import type { Job } from '@loomproof/netlist';
import type { Stage } from '@loomproof/verify';

/** What is plugged, as `diagnose` reads it in the column `stage` of a table of readings. */
export function stageColumn(stage: Stage, job: Job): string {
  if (stage.is !== 'in place' || stage.pulled.size === 0) return stage.is;
  const names = [...stage.pulled].map((connector) => job.connectors[connector]?.name ?? '');
  return `${stage.is} without ${names.join(', ')}`;
}
