import { type DiagnosisReport, type ExplanationWords, everyReadingDecides } from '@loomproof/verify';
import type { GroupExplanation } from '../src/checks/explain-group.ts';
import {
  answersInWords,
  explanationWords,
  fewAndPairs,
  mostExplanationsShown,
  mostPairsShown,
} from '../src/checks/explanation-words.ts';
import { type GroupMoment, readingsCsv } from '../src/checks/readings-csv.ts';
import { standingReadings } from '../src/checks/work-record.ts';
import { button, element } from './element.ts';
import type { Engine } from './engine.ts';
import type { PageHead } from './page-head.ts';
import type { RecordStore } from './record-store.ts';

/** What the readings of a group say, computed anew when one changes. */
export class DiagnosisPart {
  readonly #place: HTMLElement;
  readonly #head: PageHead;
  readonly #store: RecordStore;
  readonly #group: GroupMoment;
  readonly #engine: Engine;
  readonly #takeNext: (from: string, to: string) => void;
  readonly #bar = element('progress', { attributes: [['aria-label', 'pairs of faults tried']] });
  #shown = '';

  constructor(
    said: HTMLElement,
    head: PageHead,
    store: RecordStore,
    group: GroupMoment,
    engine: Engine,
    takeNext: (from: string, to: string) => void,
  ) {
    this.#place = element('section', {
      class: 'diagnosis',
      id: `${group.name}-diagnosis`,
      attributes: [['aria-live', 'polite']],
    });
    said.append(element('h4', {}, 'What the readings say'), this.#place);
    this.#head = head;
    this.#store = store;
    this.#group = group;
    this.#engine = engine;
    this.#takeNext = takeNext;
  }

  /** Shows what the readings that count say; nothing where they are as they were. */
  show(): void {
    const { record } = this.#store;
    const csv = readingsCsv(record, [this.#group]);
    const model = this.#head.checks.model;
    if (csv === this.#shown || model === null) return;
    this.#shown = csv;
    this.#store.say(this.#group.name, null);
    this.#place.dataset['busy'] = 'yes';
    if (standingReadings(record, this.#group.name).length === 0) {
      this.#engine.stop();
      this.#tell(element('p', {}, 'Nothing is read yet.'));
      return;
    }
    const ask = (mostPairs: number | undefined, then: (found: GroupExplanation) => void): void =>
      this.#engine.ask(
        {
          model,
          group: this.#group.name,
          csv,
          options: {
            elsewhere: this.#head.checks.elsewhere,
            designRefuted: this.#head.refuted,
            ...(mostPairs === undefined ? {} : { mostPairs }),
          },
        },
        {
          progress: ({ done, total }) => {
            this.#bar.max = total;
            this.#bar.value = done;
          },
          answer: (found) => (found === null ? this.#tell() : then(found)),
          failed: () =>
            this.#tell(
              element(
                'p',
                {},
                'The program failed here. Export the readings and give them to loomproof diagnose.',
              ),
            ),
        },
      );
    // What single faults say is there at once; pairs take their time.
    this.#bar.removeAttribute('value');
    this.#place.replaceChildren(this.#looking(), ...this.#place.querySelectorAll(':scope > .found'));
    ask(0, (quick) => {
      this.#place.replaceChildren(this.#looking(), this.#found(quick));
      ask(undefined, (whole) => {
        this.#store.say(this.#group.name, whole);
        this.#tell(this.#found(whole));
      });
    });
  }

  #looking(): HTMLElement {
    return element(
      'div',
      { class: 'looking' },
      element('p', {}, 'Trying pairs of faults too…'),
      this.#bar,
      button('Stop', () => {
        this.#engine.stop();
        const found = this.#place.querySelector<HTMLElement>('.found');
        this.#tell(
          element('p', {}, 'Stopped: not all pairs of faults were tried. The next reading starts it again.'),
          ...(found === null ? [] : [found]),
        );
      }),
    );
  }

  #found(found: GroupExplanation): HTMLElement {
    return element('div', { class: 'found' }, ...this.#explained(found));
  }

  #tell(...what: readonly HTMLElement[]): void {
    this.#place.replaceChildren(...what);
    this.#place.dataset['busy'] = 'no';
  }

  #explained({ report, readsAs, otherLimits }: GroupExplanation): readonly HTMLElement[] {
    const { next, groups, result } = report;
    const line = (text: string): HTMLElement => element('p', {}, text);
    const told: HTMLElement[] = [element('p', { class: 'result' }, resultWords(report))];
    told[0]?.setAttribute('data-result', result);
    if (readsAs !== null)
      told.push(
        line(`Label against content: every reading fits ${readsAs}. Look at the label and at the machine.`),
      );
    if (result !== 'no explanation')
      told.push(
        line(
          `What it may be: ${report.classes.join(', ')}${report.classes.length > 1 ? ' (not settled)' : ''}.`,
        ),
      );
    for (const [index, group] of groups.entries()) {
      told.push(
        line(
          index === 0
            ? 'One of these explains every reading; no reading so far tells them apart:'
            : 'Or one of these:',
        ),
      );
      const all = explanations(group, result);
      const isLong = result === 'as designed' && group.length > 1;
      told.push(
        isLong
          ? element(
              'details',
              {},
              element(
                'summary',
                {},
                `Nothing is wrong, or something that these readings do not tell from it: ${count(group, 1, 'fault')}, ${count(group, 2, 'pair')}`,
              ),
              all,
            )
          : all,
      );
    }
    if (report.inPart.length > 0)
      told.push(
        line('What is between the limits is explained by one of these, which are there only in part:'),
        explanations(report.inPart, 'single fault'),
      );
    if (next !== null)
      told.push(
        element(
          'div',
          { class: 'next' },
          line(
            `The reading that tells most now: ${next.from} to ${next.to}: ${answersInWords(next.answers)}.`,
          ),
          button('Take this reading', () => this.#takeNext(next.from, next.to), {
            id: `${this.#group.name}-next`,
          }),
        ),
      );
    for (const { reading, explains } of report.suspects)
      told.push(
        line(`Or one reading is wrong: ${reading}. Take it again. The others then fit:`),
        explanations(explains, result),
      );
    told.push(
      ...section(
        'These readings together exclude every single fault that is known of here:',
        report.conflict,
      ),
    );
    told.push(
      ...section(
        'Readings of one pair that disagree are set aside: a joint moves, or a probe slipped.',
        report.contradictory,
      ),
    );
    told.push(...section('Between the limits, to be looked into:', report.between));
    told.push(...section('Judged anew by the limits of this sheet:', otherLimits));
    told.push(...section('Not read:', report.unanswered));
    told.push(
      ...section(
        'Not used, since no probe gets there as things are plugged, or it is so far from the work that only loomproof diagnose knows it:',
        report.unreachable,
      ),
    );
    told.push(
      ...section(
        'Something was added, or a name is wrong:',
        report.additions.map(
          ({ reading, name, near }) => `${name} in ${reading}${near === null ? '' : `; is it ${near}?`}`,
        ),
      ),
    );
    if (report.notChecked.length > 0)
      told.push(
        element(
          'details',
          {},
          element(
            'summary',
            {},
            `Not excluded by any reading so far: ${report.notChecked.length} possible faults`,
          ),
          element('ul', {}, ...report.notChecked.map((one) => element('li', {}, one))),
        ),
      );
    if (!report.allPairsTried)
      told.push(line('More pairs of faults may explain the readings: not all were tried.'));
    return told;
  }
}

function count(all: readonly ExplanationWords[], faults: number, name: string): string {
  const many = all.filter((one) => one.faults.length === faults).length;
  return `${many} ${name}${many === 1 ? '' : 's'}`;
}

function section(title: string, all: readonly string[]): readonly HTMLElement[] {
  if (all.length === 0) return [];
  return [element('p', {}, title), element('ul', {}, ...all.map((one) => element('li', {}, one)))];
}

function explanations(all: readonly ExplanationWords[], result: DiagnosisReport['result']): HTMLElement {
  const { few, pairs } = fewAndPairs(all, result);
  const told = (list: readonly ExplanationWords[], most: number): readonly HTMLElement[] => [
    ...list.slice(0, most).map((one) => {
      const item = element('li', {}, explanationWords(one));
      item.dataset['faults'] = one.faults.map(({ id }) => id).join(' + ');
      return item;
    }),
    ...(list.length > most ? [element('li', {}, `and ${list.length - most} more`)] : []),
  ];
  return element(
    'div',
    {},
    element('ul', { class: 'causes' }, ...told(few, mostExplanationsShown)),
    ...(pairs.length === 0
      ? []
      : [
          element(
            'details',
            {},
            element('summary', {}, `${pairs.length} pairs of faults at once would read the same`),
            element('ul', {}, ...told(pairs, mostPairsShown)),
          ),
        ]),
  );
}

function resultWords(report: DiagnosisReport): string {
  switch (report.result) {
    case 'as designed':
      return everyReadingDecides(report)
        ? 'So far as designed.'
        : 'Nothing that decides speaks against the design, but not every reading decides. Keep power off.';
    case 'single fault':
      return 'Not as designed. One fault explains every reading. Keep power off.';
    case 'two faults':
      return 'Not as designed. No single fault explains every reading; two together do. Keep power off.';
    case 'no explanation':
      return 'Not as designed, and nothing that is known of here explains every reading. Keep power off.';
  }
}
