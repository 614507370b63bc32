import { writtenLimits } from '@loomproof/verify';
import { addressesAtLength } from '../src/checks/addresses-in-short.ts';
import { groupState, isOf, type PageCheck } from '../src/checks/group-state.ts';
import { judgeReading } from '../src/checks/judge-reading.ts';
import type { PageGroup } from '../src/checks/work-checks.ts';
import { roundOf, standingReadings, type TakenReading } from '../src/checks/work-record.ts';
import { DiagnosisPart } from './diagnosis-part.ts';
import { button, byId, element, field } from './element.ts';
import { Engine } from './engine.ts';
import { meterPart } from './meter-part.ts';
import { ohmStrip } from './ohm-strip.ts';
import type { PageHead } from './page-head.ts';
import { ProbeFaces } from './probe-faces.ts';
import { readingWords, stateSign } from './reading-words.ts';
import type { RecordStore } from './record-store.ts';

/** Two points between which a reading is taken, on a list or not. */
type Aim = Pick<PageCheck, 'from' | 'to'> & { readonly check: PageCheck | null };

/** One group of readings: the desk at which one is taken, the list, and what the readings say. */
export class ReadingsGroup {
  readonly #head: PageHead;
  readonly #store: RecordStore;
  readonly #group: PageGroup;
  readonly #desk: HTMLElement;
  readonly #rows: readonly HTMLElement[];
  readonly #diagnosis: DiagnosisPart | null;
  readonly #faces: ProbeFaces;
  #aim: Aim | null = null;

  constructor(head: PageHead, store: RecordStore, group: PageGroup, source: string) {
    this.#head = head;
    this.#store = store;
    this.#group = group;
    this.#faces = new ProbeFaces(head.checks, group.name);
    const article = byId(group.name);
    this.#desk = article.querySelector<HTMLElement>('.desk') ?? article;
    this.#rows = group.checks.map(({ number }) => byId(`${group.name}-${number}`));
    for (const [index, row] of this.#rows.entries())
      row.querySelector('.pick')?.addEventListener('click', () => {
        this.#take(index);
        this.#desk.scrollIntoView({ block: 'start' });
      });
    this.#desk.before(meterPart(store, group.name));
    const said = article.querySelector<HTMLElement>('.said');
    const isExplained = group.name !== 'found' && head.checks.model !== null;
    this.#diagnosis =
      said === null || !isExplained
        ? null
        : new DiagnosisPart(said, head, store, group, new Engine(source), (from, to) =>
            this.#takePair(from, to),
          );
    if (said !== null && group.name !== 'found' && head.checks.model === null)
      said.append(
        element(
          'p',
          {},
          'This harness is too large to be explained in the page. Export the readings and give them to loomproof diagnose.',
        ),
      );
    article
      .querySelector('.readings')
      ?.after(this.#otherReading(), ...(group.name === 'found' ? [] : [this.#anew()]));
    const firstOpen = this.#state().checks.findIndex((one) => one !== 'as designed');
    this.#take(Math.max(0, firstOpen));
  }

  /** Shows the state of every check and, where readings changed, what they say. */
  show(): void {
    const { checks } = this.#state();
    for (const [index, row] of this.#rows.entries()) {
      const state = checks[index] ?? 'not read';
      const told = row.querySelector('.state');
      const last = this.#readingsOf(this.#group.checks[index] ?? null).pop();
      if (told !== null)
        told.textContent = `${stateSign(state)} ${last === undefined ? state : `${last.reading}, ${state}`}`;
      row.dataset['state'] = state;
    }
    byId(this.#group.name)
      .querySelector('.stranger')
      ?.classList.toggle('hold', checks.includes('not as designed'));
    this.#showTaken();
    this.#diagnosis?.show();
  }

  #state() {
    const { checks, name } = this.#group;
    return groupState(checks, standingReadings(this.#store.record, name), this.#head.checks.bands);
  }

  #take(index: number): void {
    const check = this.#group.checks[index];
    if (check !== undefined) this.#aimAt({ from: check.from, to: check.to, check });
  }

  #takePair(from: string, to: string): void {
    const index = this.#group.checks.findIndex((one) => isOf(one, { from, to }));
    if (index >= 0) this.#take(index);
    else this.#aimAt({ from, to, check: null });
    this.#desk.scrollIntoView({ block: 'start' });
    this.#desk.querySelector('input')?.focus({ preventScroll: true });
  }

  /** Builds the desk for two points. */
  #aimAt(aim: Aim): void {
    this.#aim = aim;
    const { check, from, to } = aim;
    const id = `${this.#group.name}-desk`;
    for (const row of this.#rows)
      row.toggleAttribute('data-taken', check !== null && row.dataset['number'] === String(check.number));
    const reading = field('Reading', `${id}-reading`, [
      ['inputmode', 'decimal'],
      ['autocomplete', 'off'],
    ]);
    const unit = element(
      'select',
      { id: `${id}-unit`, attributes: [['aria-label', 'Unit']] },
      ...['ohm', 'kohm', 'Mohm'].map((one) => element('option', {}, one)),
    );
    const note = field('Note, and why when it was not done', `${id}-note`);
    const proved = element('input', { id: `${id}-proved`, type: 'checkbox' });
    const complaint = element('p', { class: 'complaint', attributes: [['role', 'alert']] });
    const write = (text: string): void => {
      const judged = judgeReading(text, this.#store.record.meter.leadZero, this.#head.checks.bands);
      if (judged.is === 'unreadable' || text === '') {
        complaint.textContent = `Not a reading: ${judged.is === 'unreadable' ? judged.help : 'write a number'}.`;
        return;
      }
      this.#write(aim, text, note.input.value, proved.checked);
    };
    const typed = (): void => {
      const text = reading.input.value.trim().replace(',', '.');
      write(/^[><]? ?[\d.]+$/.test(text) ? `${text} ${unit.value}` : text);
    };
    reading.input.addEventListener('keydown', (event) => {
      if (event.key === 'Enter') typed();
    });
    this.#desk.replaceChildren(
      element(
        'h4',
        {},
        check === null
          ? 'A reading beside the list'
          : `Reading ${check.number} of ${this.#group.checks.length}`,
      ),
      probe('red', from, check?.whereFrom ?? ''),
      probe('black', to, check?.whereTo ?? ''),
      element('div', { class: 'views' }, ...this.#faces.figures(from, to)),
      ...(check === null || check.unplugFirst.length === 0
        ? []
        : [
            element(
              'p',
              { class: 'hold' },
              `Unplug first: ${check.unplugFirst.join(', ')}. A load beside the path would read low as well.`,
            ),
          ]),
      element(
        'p',
        { class: 'want' },
        check === null ? 'The list does not ask for this pair.' : `Due: ${check.expected}.`,
      ),
      ...(check === null || check.proof === '' || check.provedBy.length > 0
        ? check === null || check.proof === ''
          ? []
          : [
              element(
                'p',
                {},
                `An open reading counts here when the probes are known to touch: ${check.proof}.`,
              ),
            ]
        : [
            element(
              'label',
              { class: 'tick', attributes: [['for', proved.id]] },
              proved,
              `Probes shown to touch: ${check.proof}`,
            ),
          ]),
      element(
        'div',
        { class: 'entry' },
        reading.whole,
        unit,
        button('Write down', typed, { id: `${id}-write` }),
      ),
      element(
        'div',
        { class: 'bar' },
        button('Open (OL)', () => write('open'), { id: `${id}-open`, class: 'second' }),
        button('Not reachable', () => write('not reachable'), { id: `${id}-unreachable`, class: 'second' }),
        button('Not done', () => write('not done'), { id: `${id}-undone`, class: 'second' }),
      ),
      note.whole,
      complaint,
      element('div', { id: `${id}-taken`, class: 'taken', attributes: [['aria-live', 'polite']] }),
    );
    this.#showTaken();
  }

  #write({ from, to, check }: Aim, reading: string, note: string, probesProved: boolean): void {
    const group = this.#group.name;
    this.#store.change((record) => ({
      ...record,
      readings: [
        ...record.readings,
        {
          ...record.meter,
          ...writtenLimits(this.#head.checks.bands),
          group,
          round: roundOf(record, group),
          from,
          to,
          reading,
          probesProved,
          note,
          time: new Date().toISOString(),
          struck: null,
        },
      ],
    }));
    const { checks } = this.#state();
    const at = check === null ? -1 : this.#group.checks.indexOf(check);
    // What is not as it should be stays on the desk, to be looked at.
    if (at >= 0 && checks[at] !== 'as designed') return;
    const next = [...checks.keys()].find((index) => index > at && checks[index] === 'not read');
    const field = (): void => this.#desk.querySelector('input')?.focus({ preventScroll: true });
    if (at < 0 || next === undefined) return;
    this.#take(next);
    field();
  }

  #readingsOf(aim: { readonly from: string; readonly to: string } | null): TakenReading[] {
    const standing = standingReadings(this.#store.record, this.#group.name);
    const oneWay = this.#group.checks.some((check) => check.oneWay);
    return aim === null ? [] : standing.filter((one) => isOf({ ...aim, oneWay }, one));
  }

  /** What was read between the two points of the desk, each with its place on the strip of ohms. */
  #showTaken(): void {
    const place = this.#desk.querySelector('.taken');
    if (place === null || this.#aim === null) return;
    const { bands } = this.#head.checks;
    const due = this.#aim.check?.reads ?? null;
    const taken = this.#readingsOf(this.#aim).map((one) => {
      const judged = judgeReading(one.reading, one.leadZero, bands);
      const why = element('input', {
        attributes: [
          ['aria-label', 'Why it is struck out'],
          ['placeholder', 'why'],
        ],
      });
      return element(
        'div',
        { class: 'reading' },
        element('p', {}, readingWords(one, judged, due)),
        ...(judged.is === 'read' ? [ohmStrip(judged.ohm, judged.outcome, bands, due)] : []),
        element(
          'details',
          {},
          element('summary', {}, 'Strike out'),
          why,
          button('Strike out', () => this.#strike(one, why.value)),
        ),
      );
    });
    place.replaceChildren(...taken);
  }

  #strike(reading: TakenReading, why: string): void {
    this.#store.change((record) => ({
      ...record,
      readings: record.readings.map((one) => (one === reading ? { ...one, struck: why } : one)),
    }));
  }

  #otherReading(): HTMLElement {
    const id = `${this.#group.name}-other`;
    const list = [['list', 'points']] as const;
    const from = field('Red probe at', `${id}-from`, list);
    const to = field('Black probe at', `${id}-to`, list);
    const known = new Set(this.#head.checks.points);
    const elsewhere = addressesAtLength(this.#head.checks.elsewhere);
    const never = addressesAtLength(this.#head.checks.neverProbed);
    const strangeness = (names: readonly string[]): string => {
      if (names.every((one) => known.has(one))) return '';
      return names.some((one) => elsewhere.has(one))
        ? 'No probe gets to that point as things are plugged, or it is so far from the work that only loomproof diagnose knows it.'
        : 'This harness has no such point: it is read as something that was added.';
    };
    const complaint = element('p', { class: 'complaint', attributes: [['role', 'alert']] });
    const go = (): void => {
      const [a, b] = [from.input.value.trim(), to.input.value.trim()];
      const isAny = a !== '' && b !== '' && a !== b;
      const special = [a, b].find((one) => never.has(one));
      if (special !== undefined) {
        complaint.textContent = `Never probe ${special}: it is on a special circuit that nobody released.`;
        return;
      }
      complaint.textContent = isAny ? strangeness([a, b]) : 'Name two points.';
      if (isAny) this.#takePair(a, b);
    };
    return element(
      'details',
      { class: 'screen' },
      element('summary', {}, 'Take a reading that the list does not ask for'),
      from.whole,
      to.whole,
      complaint,
      button('Take it', go),
    );
  }

  #anew(): HTMLElement {
    const { name } = this.#group;
    return element(
      'details',
      { class: 'screen' },
      element('summary', {}, 'Something was repaired'),
      element(
        'p',
        {},
        'Readings of the harness before the repair stay in the record and count no longer; every reading is due again.',
      ),
      button('Begin the readings anew', () =>
        this.#store.change((record) => ({
          ...record,
          rounds: [...record.rounds.filter(([group]) => group !== name), [name, roundOf(record, name) + 1]],
        })),
      ),
    );
  }
}

function probe(colour: 'red' | 'black', address: string, where: string): HTMLElement {
  return element(
    'p',
    { class: `probe ${colour}` },
    element('span', { class: 'tip' }, colour === 'red' ? '+' : '−'),
    element('b', {}, address),
    where === '' ? '' : `: ${where}`,
  );
}
