import { type Job, misreadings, neighbours, viewFrom } from '@loomproof/netlist';

/** Cavities next to a cavity: by the face, or by the order of the labels where no face is given. */
export function cavityNeighbours(job: Job, place: number): readonly number[] {
  const there = job.places[place];
  const connector = job.connectors[there?.connector ?? -1];
  if (there === undefined || connector === undefined) return [];
  if (connector.face === null)
    return [place - 1, place + 1].filter(
      (one) => one >= connector.firstPlace && one < connector.firstPlace + connector.placeCount,
    );
  const found = neighbours(connector.face, there.label, 'wire side').flatMap(({ label }) => {
    const one = label === null ? -1 : placeLabelled(job, there.connector, label);
    return one < 0 ? [] : [one];
  });
  return [...new Set(found)].sort((a, b) => a - b);
}

/** A way in which a whole connector is misread. */
export interface WayToMisread {
  readonly kind: string;
  readonly how: string;
  /** The cavity that is taken for a cavity of the connector, or -1 where there is none. */
  readonly hitOf: (place: number) => number;
}

/** The ways in which a connector may be misread: by its face, or counted from the other end where no face is given. */
export function waysToMisread(job: Job, connector: number): readonly WayToMisread[] {
  const half = job.connectors[connector];
  if (half === undefined) return [];
  if (half.face === null) {
    const last = half.firstPlace * 2 + half.placeCount - 1;
    return [{ kind: 'other end', how: 'counted from the other end', hitOf: (place) => last - place }];
  }
  const labelled = new Map<string, number>();
  for (let place = half.firstPlace; place < half.firstPlace + half.placeCount; place += 1)
    labelled.set(job.places[place]?.label ?? '', place);
  const otherFace = job.connectors[half.counterpart]?.face ?? undefined;
  // Left and right are told with the wires toward the person, as the sheets tell a place.
  return misreadings(viewFrom(half.face, 'wire side'), otherFace).map(({ kind, sentence, cavities }) => ({
    kind,
    how: sentence,
    hitOf: (place) => {
      const label = cavities.get(job.places[place]?.label ?? '');
      return label === undefined ? -1 : (labelled.get(label) ?? -1);
    },
  }));
}

/** Cavities that a person may take for another one, each with the way of it. */
export function cavitiesMistaken(
  job: Job,
  place: number,
): readonly { readonly hit: number; readonly how: string }[] {
  const there = job.places[place];
  if (there === undefined) return [];
  const found = new Map<number, string>();
  for (const one of cavityNeighbours(job, place)) found.set(one, 'the cavity next to it');
  for (const { how, hitOf } of waysToMisread(job, there.connector)) {
    const hit = hitOf(place);
    if (hit >= 0 && hit !== place && !found.has(hit)) found.set(hit, how);
  }
  return [...found].map(([hit, how]) => ({ hit, how })).sort((a, b) => a.hit - b.hit);
}

function placeLabelled(job: Job, connector: number, label: string): number {
  const { firstPlace, placeCount } = job.connectors[connector] ?? { firstPlace: 0, placeCount: 0 };
  for (let place = firstPlace; place < firstPlace + placeCount; place += 1)
    if (job.places[place]?.label === label) return place;
  return -1;
}
