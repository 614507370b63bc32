import { readingsCsv } from '../src/checks/readings-csv.ts';
import { csvText } from '../src/csv-text.ts';
import { button, byId } from './element.ts';
import type { PageHead } from './page-head.ts';
import type { RecordStore } from './record-store.ts';
import { saveFile } from './save-file.ts';

/** Export of the record and of the readings, and taking over of a record. */
export function recordPart(head: PageHead, store: RecordStore): void {
  const say = (text: string): void => {
    byId('said').textContent = text;
  };
  byId('export-json').addEventListener('click', () =>
    saveFile(`${head.file}-record.json`, 'application/json', store.exported()),
  );
  byId('export-csv').addEventListener('click', () => {
    const { kit, revision, variant, digest, answers } = store.record;
    const rows = answers.map(({ step, answer, note, time }) => [
      kit,
      revision,
      variant,
      digest,
      String(step),
      answer ?? '',
      note,
      time,
    ]);
    const columns = ['kit', 'revision', 'variant', 'digest', 'step', 'answer', 'note', 'time'];
    saveFile(`${head.file}-record.csv`, 'text/csv', csvText([columns, ...rows]));
  });
  const exports = head.checks.groups.map(({ name, title, moment }) =>
    button(
      `Export: ${title.slice(0, 1).toLowerCase()}${title.slice(1)} (CSV)`,
      () => saveFile(`${head.file}-${name}.csv`, 'text/csv', readingsCsv(store.record, [{ name, moment }])),
      { id: `export-${name}` },
    ),
  );
  byId('export-csv').after(...exports);
  const input = byId('import') as HTMLInputElement;
  input.addEventListener('change', async () => {
    const [file] = input.files ?? [];
    if (file === undefined) return;
    const text = await file.text();
    input.value = '';
    say(
      store.takeOver(text)
        ? 'Record taken over.'
        : 'Refused: this record is not of this kit, revision, variant, digest and stage.',
    );
  });
}
