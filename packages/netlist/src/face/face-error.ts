/** Misuse of a face by the program: a label asked for that the face does not have. */
export class FaceError extends Error {
  /**
   * @param asker - the function that was misused
   * @param message - what was wrong
   */
  constructor(asker: string, message: string) {
    super(`netlist/${asker}: ${message}`);
    this.name = 'FaceError';
  }
}
