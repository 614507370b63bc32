import { byId } from './element.ts';
import type { PageHead } from './page-head.ts';
import type { RecordStore } from './record-store.ts';

/** What is to be looked at or pulled, and what is not shown while that is not done. */
export function looksPart({ checks: { groups } }: PageHead, store: RecordStore): void {
  const looks = groups.flatMap(({ name: group, looks: all }) =>
    all.map(({ what, covers }, index) => {
      const box = byId(`${group}-look-${index + 1}`) as HTMLInputElement;
      return { group, what, covers, box };
    }),
  );
  for (const { group, what, box } of looks)
    box.addEventListener('change', () =>
      store.change((record) => {
        const others = record.looks.filter((one) => one.group !== group || one.what !== what);
        const time = new Date().toISOString();
        return { ...record, looks: box.checked ? [...others, { group, what, time }] : others };
      }),
    );
  store.follow(() => {
    for (const { group, what, box } of looks)
      box.checked = store.record.looks.some((one) => one.group === group && one.what === what);
    const open = looks.filter(({ box }) => !box.checked);
    const covers = open.reduce((sum, one) => sum + one.covers, 0);
    byId('looked').textContent =
      open.length === 0
        ? ''
        : `${open.length} of ${looks.length} things to look at or pull are not done; they alone show ${covers} possible mistakes.`;
  });
}
