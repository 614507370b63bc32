import { formatColour, formatSize } from '../value/index.ts';
import type { Job } from './job.ts';
import { onceForLists } from './once-for-lists.ts';

/** The words of a {@link Job} in flat lists, since a proof of a large net names tens of thousands of nodes. */
export interface HarnessNames {
  readonly wireName: readonly string[];
  /** The colour and the size of each wire as they are written, or null. */
  readonly wireColour: readonly (string | null)[];
  readonly wireSize: readonly (string | null)[];
  readonly endName: readonly string[];
  /** The name of each node, places first; null for a terminal that a step brings. */
  readonly nodeName: readonly (string | null)[];
}

/** The names of a job, made once for its lists. Linear in the job where they have to be made. */
export const harnessNames: (job: Job) => HarnessNames = onceForLists((job) => {
  const texts = new Map<string, string>();
  // Most wires share a few colours and sizes, so each text is kept once.
  const once = (text: string): string => {
    const kept = texts.get(text);
    if (kept === undefined) texts.set(text, text);
    return kept ?? text;
  };
  return {
    wireName: job.wires.map((wire) => wire.name),
    wireColour: job.wires.map(({ colour }) => (colour === null ? null : once(formatColour(colour)))),
    wireSize: job.wires.map(({ size }) => (size === null ? null : once(formatSize(size)))),
    endName: job.ends.map((end) => end.name),
    nodeName: nodeNames(job),
  };
});

function nodeNames({ ends, terminals, joints, places, nodeCount }: Job): readonly (string | null)[] {
  const names = new Array<string | null>(nodeCount).fill(null);
  for (const [node, place] of places.entries()) names[node] = place.address;
  for (const { node, name } of ends) names[node] = name;
  for (const { node, name } of joints) names[node] = name;
  for (const { node, ends: crimped } of terminals) {
    const first = ends[crimped[0] ?? -1];
    if (first !== undefined) names[node] = `terminal of ${first.name}`;
  }
  return names;
}
