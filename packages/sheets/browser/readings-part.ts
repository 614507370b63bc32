import { element } from './element.ts';
import type { PageHead } from './page-head.ts';
import { PowerLock } from './power-lock.ts';
import { ReadingsGroup } from './readings-group.ts';
import type { RecordStore } from './record-store.ts';

/** The groups of readings, with what their state allows. */
export function readingsPart(head: PageHead, store: RecordStore, source: string): void {
  document.body.append(
    element(
      'datalist',
      { id: 'points' },
      ...head.checks.points.map((name) => element('option', { attributes: [['value', name]] })),
    ),
  );
  const groups = head.checks.groups.map((group) => new ReadingsGroup(head, store, group, source));
  const lock = new PowerLock(head.checks);
  store.follow(() => {
    for (const group of groups) group.show();
    lock.show(store.record);
  });
}
