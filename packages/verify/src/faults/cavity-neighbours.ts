import { type Job, misreadings, neighbours } from '@loomproof/netlist';

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

/** Cavities that a person may take for another one, each with the way of it. */
export function cavitiesMistaken(
  job: Job,
  place: number,
): readonly { readonly hit: number; readonly how: string }[] {
  const there = job.places[place];
  const connector = job.connectors[there?.connector ?? -1];
  if (there === undefined || connector === undefined) return [];
  const found = new Map<number, string>();
  for (const one of cavityNeighbours(job, place)) found.set(one, 'the cavity next to it');
  if (connector.face === null) {
    const last = connector.firstPlace * 2 + connector.placeCount - 1;
    const other = last - place;
    if (other !== place && !found.has(other)) found.set(other, 'counted from the other end');
  } else {
    const otherFace = job.connectors[connector.counterpart]?.face ?? undefined;
    for (const one of misreadings(connector.face, otherFace)) {
      const label = one.cavities.get(there.label);
      const hit = label === undefined ? -1 : placeLabelled(job, there.connector, label);
      if (hit >= 0 && hit !== place && !found.has(hit)) found.set(hit, one.sentence);
    }
  }
  return [...found].map(([hit, how]) => ({ hit, how })).sort((a, b) => a.hit - b.hit);
}

function placeLabelled(job: Job, connector: number, label: string): number {
  const { firstPlace, placeCount } = job.connectors[connector] ?? { firstPlace: 0, placeCount: 0 };
  for (let place = firstPlace; place < firstPlace + placeCount; place += 1)
    if (job.places[place]?.label === label) return place;
  return -1;
}
