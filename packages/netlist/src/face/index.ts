export type { Edge, Face, FacePosition, FaceReading, GridFace, RoundFace, Side } from './face.ts';
export { FaceError } from './face-error.ts';
export { type FaceForm, faceSchema } from './face-schema.ts';
export type {
  BlockScheme,
  BlocksScheme,
  EvenRoundScheme,
  FaceScheme,
  LabelStyle,
  WrittenRoundScheme,
  WrittenScheme,
} from './face-scheme.ts';
export { facingLabels } from './facing-labels.ts';
export {
  type CavitySight,
  hitsUnderMisreading,
  type MisreadingHit,
  type Occupancy,
} from './hits-under-misreading.ts';
export { defaultSkippedLetters } from './label-series.ts';
export { makeFace } from './make-face.ts';
export { type Misreading, type MisreadingKind, misreadingKinds } from './misreading.ts';
export { misreadings } from './misreadings.ts';
export { type Neighbour, type NeighbourDirection, neighbours } from './neighbours.ts';
export type { Corner, NumberingOrder } from './numbering-order.ts';
export { parsePlace } from './parse-place.ts';
export { placeInWords } from './place-in-words.ts';
export { readFace } from './read-face.ts';
export { viewFrom } from './view-from.ts';
export { writeFace } from './write-face.ts';
