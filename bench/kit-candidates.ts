import { type ConductorRecord, extractNets, type Job, type KitFile, Rework } from '@loomproof/netlist';
import { type KitVerdict, proveKit } from '@loomproof/verify';
import type { Candidate } from './candidate.ts';
import { makeKit } from './kit-model.ts';

/** Steps of the work where they do not grow with the harness. */
const fixedSteps = 200;

/** How many wires there are for each step where the steps grow with the harness. */
const wiresPerStep = 25;

/** The whole verdict on a kit with 200 steps; its reading is not counted. */
export function proof(wireCount: number): Candidate {
  return proofOf(kitOf(wireCount, fixedSteps));
}

/** The whole verdict on a kit whose steps grow with the harness: 200 for 5,000 wires. */
export function proofInProportion(wireCount: number): Candidate {
  return proofOf(kitOf(wireCount, Math.floor(wireCount / wiresPerStep)));
}

/** The nets of the kit's own harness, from records parsed from text anew for every round. */
export function kitNets(wireCount: number): Candidate {
  const text = JSON.stringify(joinsOf(kitOf(wireCount, fixedSteps)));
  return netsOf(() => JSON.parse(text));
}

/** The same from records that stay the same, whose names have their hashes computed by an earlier round. */
export function kitNetsAgain(wireCount: number): Candidate {
  const text = JSON.stringify(joinsOf(kitOf(wireCount, fixedSteps)));
  const records: readonly ConductorRecord[] = JSON.parse(text);
  return netsOf(() => records);
}

const kits = new Map<string, KitFile>();

function kitOf(wireCount: number, stepCount: number): KitFile {
  const key = `${wireCount} ${stepCount}`;
  const known = kits.get(key);
  if (known !== undefined) return known;
  const made = makeKit(wireCount, stepCount, 1);
  kits.set(key, made);
  return made;
}

function proofOf(kit: KitFile): Candidate {
  return {
    prepare: () => kit,
    work: (input) => proveKit(input as KitFile),
    digest: (result) => String((result as KitVerdict).verdict),
  };
}

function netsOf(prepare: () => readonly ConductorRecord[]): Candidate {
  return {
    prepare,
    work: (input) => extractNets(input as readonly ConductorRecord[]),
    digest: (result) => String((result as ReturnType<typeof extractNets>).nets.length),
  };
}

/** Every join of the harness before the work and of the kit as it comes, with the names of the points it joins. */
function joinsOf(kit: KitFile): readonly ConductorRecord[] {
  const [variant] = kit.variants;
  if (variant === undefined) return [];
  const names = pointNames(variant.job);
  const { graph } = new Rework(variant.job);
  return Array.from({ length: graph.edgeCount }, (_, edge) => ({
    wire: `J${edge + 1}`,
    from: names[graph.fromOf(edge)] ?? '',
    to: names[graph.toOf(edge)] ?? '',
  }));
}

function pointNames(job: Job): readonly string[] {
  const names: string[] = job.places.map((place) => place.address);
  for (const end of job.ends) names[end.node] = end.name;
  for (const joint of job.joints) names[joint.node] = joint.name;
  for (const [index, terminal] of job.terminals.entries()) names[terminal.node] = `T${index + 1}`;
  return names;
}
