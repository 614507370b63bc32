/** The program itself is wrong: never thrown for bad input or bad wiring. */
export class InvariantError extends Error {
  /**
   * @param where - package and function, such as `netlist/Rework`.
   * @param what - what broke.
   */
  constructor(where: string, what: string) {
    super(`${where}: ${what}`);
    this.name = 'InvariantError';
  }
}
