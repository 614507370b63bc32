import {
  appendTo,
  type Face,
  hitsUnderMisreading,
  misreadings,
  type Occupancy,
  placeInWords,
  type Rework,
  type Side,
  viewFrom,
} from '@loomproof/netlist';
import { sightIn } from './wire-words.ts';

/** How a person finds one place. */
export interface PlaceGuide {
  readonly address: string;
  readonly connector: string;
  readonly label: string;
  readonly away: string | null;
  /** Null where the kit file does not say where the cavities are, or the place is a stud. */
  readonly face: Face | null;
  /** The place in words from the side that the person looks at, with its neighbours. */
  readonly words: string | null;
  readonly otherWords: string | null;
  readonly side: Side;
  /** What is there now, such as `a wire RD (1 mm2)`. */
  readonly sight: string;
  readonly isStud: boolean;
  /** Cavities that a misreading hits and that look no different. */
  readonly traps: readonly {
    readonly cavity: string;
    readonly why: readonly string[];
    readonly sight: string;
  }[];
}

/** The guide to a place as the harness is at that moment. */
export function placeGuide(rework: Rework, place: number, away: string | null): PlaceGuide {
  const { job } = rework;
  const { address = '', label = '', connector = -1, kind } = job.places[place] ?? {};
  const half = job.connectors[connector];
  const face = half?.face ?? null;
  const base = {
    address,
    connector: half?.name ?? address,
    label,
    away,
    side: 'wire side' as Side,
    sight: sightIn(rework, place),
    isStud: kind === 'stud',
  };
  if (half === undefined || face === null)
    return { ...base, face: null, words: null, otherWords: null, traps: [] };
  const at = new Map<string, number>();
  for (let index = half.firstPlace; index < half.firstPlace + half.placeCount; index += 1)
    at.set(job.places[index]?.label ?? '', index);
  const see = (one: string): string => sightIn(rework, at.get(one) ?? -1);
  const otherHalf = job.connectors[half.counterpart]?.face ?? undefined;
  // Left and right of a misreading are those of the view that the words are told from.
  const hits = hitsUnderMisreading(face, label, misreadings(viewFrom(face, 'wire side'), otherHalf), {
    occupancy: (one) => occupancyOf(rework, at.get(one) ?? -1),
    terminalKind: (one) => job.terminals[rework.seated[at.get(one) ?? -1] ?? -1]?.part ?? null,
  });
  const traps = new Map<string, string[]>();
  for (const { hit, unnoticed, misreading } of hits) {
    if (hit === null || !unnoticed) continue;
    appendTo(traps, hit, misreading.sentence);
  }
  return {
    ...base,
    face,
    words: placeInWords(face, label, 'wire side', see),
    otherWords: placeInWords(face, label, 'mating side'),
    traps: [...traps].map(([cavity, why]) => ({ cavity, why, sight: see(cavity) })),
  };
}

function occupancyOf(rework: Rework, place: number): Occupancy {
  if (rework.job.places[place]?.blocked === true) return 'blocked';
  if (rework.plug.at(place) != null) return 'plugged';
  return rework.hasContact(place) ? 'occupied' : 'empty';
}
