import type { Face } from './face.ts';
import { positionOf } from './face-layout.ts';
import type { Misreading } from './misreading.ts';

/** What a person finds in a cavity. */
export type Occupancy = 'empty' | 'plugged' | 'occupied' | 'blocked';

/** What can be seen of the cavities when the step is done. */
export interface CavitySight {
  readonly occupancy: (label: string) => Occupancy;
  /** The terminal kind in a cavity, or of an empty one the kind that it takes; null when not known. */
  readonly terminalKind?: (label: string) => string | null;
}

/** What one misreading does to one cavity. */
export interface MisreadingHit {
  readonly misreading: Misreading;
  /** The cavity taken by mistake; null when there is no cavity with a label. */
  readonly hit: string | null;
  /** What is found there; null when not known. */
  readonly finds: Occupancy | 'no cavity' | null;
  /** Whether nothing there looks different from what the person expects to find; what is not known tells nothing. */
  readonly unnoticed: boolean;
  readonly sentence: string;
}

/**
 * Which cavity is hit for another under each misreading, and whether the person would notice. A person notices when
 * the cavity hit is not in the state of the one meant (empty, plugged, occupied), or plainly of another terminal kind;
 * so a misread insertion goes unnoticed in an empty cavity, a misread removal in one with the same terminal.
 *
 * @param face - the face of the step's connector
 * @param label - the cavity meant
 * @param misread - misreadings of that face
 * @param sight - the cavities before the step; without it nothing would be noticed but a missing or blocked cavity
 * @returns a hit for each misreading that goes wrong for this cavity, in their order
 * @throws FaceError when the face has no such label
 */
export function hitsUnderMisreading(
  face: Face,
  label: string,
  misread: readonly Misreading[],
  sight?: CavitySight,
): readonly MisreadingHit[] {
  const meant = stateOf(face, label, sight);
  const hits: MisreadingHit[] = [];
  for (const misreading of misread) {
    const hit = misreading.cavities.get(label) ?? null;
    if (hit === label) continue;
    const finds = hit === null ? 'no cavity' : stateOf(face, hit, sight);
    const unnoticed =
      hit !== null && finds !== 'blocked' && finds === meant && !kindsDiffer(label, hit, sight);
    hits.push({
      misreading,
      hit,
      finds,
      unnoticed,
      sentence: sentenceOf(misreading, label, hit, finds, unnoticed),
    });
  }
  return hits;
}

function stateOf(face: Face, label: string, sight: CavitySight | undefined): Occupancy | null {
  if (positionOf(face, label, 'hitsUnderMisreading').blocked) return 'blocked';
  return sight?.occupancy(label) ?? null;
}

function kindsDiffer(label: string, hit: string, sight: CavitySight | undefined): boolean {
  const meant = sight?.terminalKind?.(label) ?? null;
  const found = sight?.terminalKind?.(hit) ?? null;
  return meant !== null && found !== null && meant !== found;
}

function sentenceOf(
  { sentence }: Misreading,
  label: string,
  hit: string | null,
  finds: MisreadingHit['finds'],
  unnoticed: boolean,
): string {
  if (hit === null) return `${sentence}: no cavity is where ${label} is looked for, which is noticed`;
  const state = finds === null ? '' : `, which is ${finds}`;
  const noticed = unnoticed ? 'and nothing shows the mistake' : 'and the mistake shows';
  return `${sentence}: ${hit} is taken for ${label}${state}, ${noticed}`;
}
