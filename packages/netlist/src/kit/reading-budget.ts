import { kitLimits } from './limits.ts';

/** What one run may still read, shared by a kit and all the kits that it stands on. */
export class ReadingBudget {
  #characters = kitLimits.tableCharacters;
  #conductors = kitLimits.conductors;

  /** Takes the characters of a table; false once there are too many. */
  takeCharacters(count: number): boolean {
    this.#characters -= count;
    return this.#characters >= 0;
  }

  /** Takes the conductors of a variant; false once there are too many. */
  takeConductors(count: number): boolean {
    this.#conductors -= count;
    return this.#conductors >= 0;
  }
}
