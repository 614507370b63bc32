import { byId } from './element.ts';
import { explainInWorker } from './engine-worker.ts';
import { looksPart } from './looks-part.ts';
import { oneAtATimePart } from './one-at-a-time.ts';
import type { PageHead } from './page-head.ts';
import { readingsPart } from './readings-part.ts';
import { recordPart } from './record-part.ts';
import { RecordStore } from './record-store.ts';
import { stepAnswersPart } from './step-answers.ts';

/*
 * The only script of a work instruction. It holds no text of a kit and reads what it needs from the JSON of the page. The
 * same text is the worker that computes a diagnosis, so that the page does not stand still meanwhile.
 */
if (typeof document === 'undefined') explainInWorker();
else {
  const head = JSON.parse(byId('record-head').textContent ?? '') as PageHead;
  const source = document.currentScript?.textContent ?? '';
  const store = new RecordStore(head);
  readingsPart(head, store, source);
  stepAnswersPart(head, store);
  looksPart(head, store);
  recordPart(head, store);
  oneAtATimePart();
  addEventListener('beforeprint', () => {
    for (const one of document.querySelectorAll('details')) one.open = true;
  });
}
