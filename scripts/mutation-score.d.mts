export interface MutationScore {
  readonly killed: number;
  readonly timedOut: number;
  readonly survived: number;
  readonly notReached: number;
  readonly static: number;
  readonly other: number;
}
export function scoreOf(statuses: readonly string[]): MutationScore;
export function directoryLine(directory: string, score: MutationScore): string;
export function totalLine(
  scores: readonly MutationScore[],
  missing: readonly string[],
  run: { readonly share: string; readonly seed: string },
): string;
