import type { GroupExplanation } from '../src/checks/explain-group.ts';
import { emptyRecord, readRecord, type WorkRecord } from '../src/checks/work-record.ts';
import { byId } from './element.ts';
import type { PageHead } from './page-head.ts';

/**
 * The record of this page, kept in the browser under a key that names kit, revision, variant, digest and stage. Where that
 * fails, the page says so at once.
 */
export class RecordStore {
  #record: WorkRecord;
  readonly #key: string;
  readonly #head: PageHead;
  readonly #said = new Map<string, GroupExplanation>();
  readonly #listeners: (() => void)[] = [];

  constructor(head: PageHead) {
    const { kit, revision, variant, digest, stage } = head;
    this.#head = head;
    this.#key = `loomproof ${JSON.stringify([kit, revision, variant, digest, stage])}`;
    this.#record = this.#stored() ?? emptyRecord(head, head.checks.plugged);
    this.#keep();
  }

  get record(): WorkRecord {
    return this.#record;
  }

  /** Changes the record, keeps it and tells everyone who shows it. */
  change(how: (record: WorkRecord) => WorkRecord): void {
    this.#record = how(this.#record);
    this.#keep();
    for (const listener of this.#listeners) listener();
  }

  /** Keeps what the readings of a group were found to say, or that it is not known now. */
  say(group: string, found: GroupExplanation | null): void {
    if (found === null) this.#said.delete(group);
    else this.#said.set(group, found);
  }

  /** The record as a file, with what its readings say as far as it is known. */
  exported(): string {
    const { whole, groups } = this.#head.checks;
    const moments = groups.map(({ name, moment }) => [name, moment]);
    return `${JSON.stringify({ ...this.#record, whole, moments, said: [...this.#said] }, null, 2)}\n`;
  }

  /** Calls back now and after each change. */
  follow(listener: () => void): void {
    this.#listeners.push(listener);
    listener();
  }

  /** Takes over the text of an exported record; false where it belongs to something else. */
  takeOver(text: string): boolean {
    const one = readRecord(text, this.#head);
    if (one !== null) this.change(() => one);
    return one !== null;
  }

  #stored(): WorkRecord | null {
    try {
      const text = localStorage.getItem(this.#key);
      return text === null ? null : readRecord(text, this.#head);
    } catch {
      return null;
    }
  }

  #keep(): void {
    let kept = false;
    try {
      const text = JSON.stringify(this.#record);
      localStorage.setItem(this.#key, text);
      kept = localStorage.getItem(this.#key) === text;
    } catch {
      kept = false;
    }
    byId('storage-warning').hidden = kept;
  }
}
