import type { MeterNotes } from '../src/checks/work-record.ts';
import { element, field } from './element.ts';
import type { RecordStore } from './record-store.ts';

const labels: readonly (readonly [keyof MeterNotes, string])[] = [
  ['instrument', 'Instrument'],
  ['range', 'Range'],
  ['leadZero', 'What the leads alone read, such as 0.2 ohm'],
  ['person', 'Person'],
  ['plugged', 'What is plugged'],
];

/** What is written down beside every reading from now on. */
export function meterPart(store: RecordStore, group: string): HTMLElement {
  const fields = labels.map(([name, label]) => ({ name, ...field(label, `${group}-${name}`) }));
  const summary = element('summary', {});
  for (const { name, input } of fields)
    input.addEventListener('change', () =>
      store.change((record) => ({ ...record, meter: { ...record.meter, [name]: input.value.trim() } })),
    );
  store.follow(() => {
    const { meter } = store.record;
    for (const { name, input } of fields) if (document.activeElement !== input) input.value = meter[name];
    const told = [
      meter.instrument,
      meter.range,
      meter.leadZero === '' ? '' : `leads ${meter.leadZero}`,
      meter.person,
    ];
    const known = told.filter((one) => one !== '');
    summary.textContent = `Meter and person: ${known.length === 0 ? 'not said yet' : known.join(', ')}`;
  });
  return element('details', { class: 'meter screen' }, summary, ...fields.map(({ whole }) => whole));
}
