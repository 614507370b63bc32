/** What the conductor of a wire is made of, in the words of the kit file. */
export const wireMaterials = ['copper', 'tinned-copper', 'aluminium'] as const;

/** One of {@link wireMaterials}. */
export type WireMaterial = (typeof wireMaterials)[number];

/** Which published text gives the resistance of a conductor, in the words of the kit file. */
export const wireStrands = [
  'formula',
  'iec60228-class5',
  'iec60228-class1-2',
  'iso6722',
  'ac4313-table-11-9',
] as const;

/** One of {@link wireStrands}. */
export type WireStrands = (typeof wireStrands)[number];
