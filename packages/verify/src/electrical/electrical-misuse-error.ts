/**
 * Thrown when a function of this folder is called with an argument that no caller may pass: a node that does
 * not exist, a resistance that is not a positive number. It reports a fault of the program, never of a kit.
 */
export class ElectricalMisuseError extends Error {
  /**
   * @param where - the function that refuses, such as `verify/solveNetwork`.
   * @param what - what was passed and what is wanted.
   */
  constructor(where: string, what: string) {
    super(`${where}: ${what}`);
    this.name = 'ElectricalMisuseError';
  }
}
