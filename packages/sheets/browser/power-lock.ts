import { groupState } from '../src/checks/group-state.ts';
import type { PageChecks, PageGroup } from '../src/checks/work-checks.ts';
import { standingReadings, type WorkRecord } from '../src/checks/work-record.ts';
import { element } from './element.ts';

/** Keeps every step that gives power from being answered done while its readings are open. */
export class PowerLock {
  readonly #checks: PageChecks;
  readonly #bar = element('p', { class: 'power screen', attributes: [['role', 'status']] });
  readonly #stops = new Map<number, HTMLElement>();

  constructor(checks: PageChecks) {
    this.#checks = checks;
    document.querySelector('main')?.append(this.#bar);
    for (const { locks } of checks.groups)
      for (const number of locks) {
        const stop = element('p', { class: 'hold screen stop', attributes: [['role', 'status']] });
        stop.hidden = true;
        this.#stops.set(number, stop);
        document.querySelector(`#step-${number} fieldset`)?.before(stop);
      }
  }

  show(record: WorkRecord): void {
    const powered = new Set(record.answers.filter((one) => one.answer === 'done').map(({ step }) => step));
    let told: string | null = null;
    for (const group of this.#checks.groups) {
      const { open } = groupState(group.checks, standingReadings(record, group.name), this.#checks.bands);
      const count = `${open} of ${group.checks.length} readings open`;
      for (const number of group.locks) this.#lock(number, open > 0, powered.has(number), count);
      if (open > 0 && group.locks.length > 0) told ??= openWords(group, count, powered);
    }
    this.#bar.textContent = told ?? 'All readings are closed.';
    this.#bar.classList.toggle('open', told !== null);
    this.#bar.hidden = this.#checks.groups.every(({ checks }) => checks.length === 0);
  }

  #lock(number: number, isLocked: boolean, isDone: boolean, count: string): void {
    const done = document.querySelector<HTMLInputElement>(`#step-${number} input[value="done"]`);
    if (done !== null) done.disabled = isLocked && !isDone;
    const stop = this.#stops.get(number);
    if (stop === undefined) return;
    stop.hidden = !isLocked;
    stop.textContent = isDone
      ? `Stop. Take power off again: ${count}.`
      : `Stop. Power stays off: ${count}. This step can be done when they are closed.`;
  }
}

function openWords({ locks }: PageGroup, count: string, powered: ReadonlySet<number>): string {
  return locks.some((one) => powered.has(one))
    ? `Take power off again: ${count}`
    : `Power stays off: ${count}`;
}
