import { type StepAnswer, stepAnswers } from '../src/checks/work-record.ts';
import { byId, element } from './element.ts';
import type { PageHead } from './page-head.ts';
import type { RecordStore } from './record-store.ts';

/** The answers and notes of the steps, and what they leave unshown. */
export function stepAnswersPart(head: PageHead, store: RecordStore): void {
  const steps = [...document.querySelectorAll<HTMLElement>('.step')];
  const numberOf = (step: HTMLElement): number => Number(step.dataset['step']);
  const shows = new Map(head.shows);

  const put = (step: number, change: Partial<StepAnswer>): void =>
    store.change((record) => {
      const before = record.answers.find((one) => one.step === step) ?? { step, answer: null, note: '' };
      const after: StepAnswer = { ...before, ...change, time: new Date().toISOString() };
      const others = record.answers.filter((one) => one.step !== step);
      return { ...record, answers: [...others, after].sort((a, b) => a.step - b.step) };
    });

  for (const step of steps) {
    step.addEventListener('change', ({ target }) => {
      if (!(target instanceof HTMLInputElement) || target.type !== 'radio') return;
      put(numberOf(step), { answer: stepAnswers.find((word) => word === target.value) ?? null });
    });
    const note = step.querySelector('textarea');
    note?.addEventListener('input', () => put(numberOf(step), { note: note.value }));
  }

  store.follow(() => {
    const answers = new Map(store.record.answers.map((one) => [one.step, one]));
    for (const step of steps) {
      const one = answers.get(numberOf(step));
      for (const input of step.querySelectorAll<HTMLInputElement>('.answers input'))
        input.checked = one?.answer === input.value;
      const note = step.querySelector('textarea');
      if (note !== null && document.activeElement !== note) note.value = one?.note ?? '';
    }
    const told = store.record.answers.filter(({ answer }) => answer !== null);
    byId('count').textContent = `${told.length} of ${steps.length} steps answered`;
    const unshown = told
      .filter(({ answer }) => answer !== 'done')
      .map(({ step, answer, note }) => {
        const why = note.trim() === '' ? 'Why is not said yet.' : `Why: ${note.trim()}`;
        return element('li', {}, `Step ${step}, ${answer}: not shown is ${shows.get(step) ?? ''}. ${why}`);
      });
    byId('unshown').replaceChildren(...unshown);
    byId('unshown-part').hidden = unshown.length === 0;
  });
}
