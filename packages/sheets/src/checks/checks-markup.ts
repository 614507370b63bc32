import { expectedText } from '@loomproof/verify';
import { type Markup, markup } from '../markup.ts';
import { sentence } from '../sentence.ts';
import type { PageCheck } from './group-state.ts';
import { readingCautions } from './reading-cautions.ts';
import type { CheckGroup, LookMoment } from './work-checks.ts';

/**
 * A group of readings as a part of the work instruction: on paper a list with lines to fill in, on a phone a list from
 * which one reading at a time is taken.
 *
 * @param plugged - what is plugged while the readings are taken
 */
export function checksMarkup(group: CheckGroup, plugged: string): Markup {
  const { name, title, checks, told, looks, locks } = group;
  return markup`<article class="leaf checks" id="${name}" data-group="${name}" aria-labelledby="${name}-title"><div class="together">
${locks.length === 0 ? null : markup`<p class="hold"><b>Hold.</b> No power while one of these readings is open. Not reachable, not done and between the limits leave it open.</p>`}
<h3 class="order" id="${name}-title">${title}</h3>
<p>Plugged: ${plugged}.</p>
<div class="caution probing"><b>Caution.</b><ul>${readingCautions.map((text) => markup`<li>${text}</li>`)}</ul></div>
${told.map((text) => markup`<p>${text}</p>`)}
<p class="tick-lines">${['Instrument __________', 'range ________', 'leads alone ________', 'person ____________', 'time ________'].map((blank) => markup`<span class="measure">${blank}</span> `)}</p></div>
<div class="desk screen"></div>
<div class="said screen"></div>
<ol class="readings">${checks.map((check) => checkMarkup(name, check))}</ol>
${
  locks.length === 0 && name === 'found'
    ? markup`<p class="stranger">A reading that is not as written here: this is not the harness that the kit was proved for. Stop, cut nothing, and ask.</p>`
    : null
}
${looks.some(({ when }) => when === 'with the readings') ? markup`<section class="looks"><h4>${lookTitles['with the readings']}</h4>${looksMarkup(group, 'with the readings')}</section>` : null}</article>`;
}

function checkMarkup(
  group: string,
  { number, from, to, reads, expected, proof, unplugFirst, whereFrom, whereTo }: PageCheck,
): Markup {
  return markup`<li id="${group}-${number}" data-number="${number}"><button type="button" class="pick screen"><span class="number">${number}</span><span class="points">${from} <span class="to">to</span> ${to}</span><span class="want">${expectedText(reads)}</span><span class="state">not read</span></button>
<div class="paper"><b>${number} &nbsp; ${from} to ${to}</b>: ${expected}. Read ____________ ☐ not reachable ☐ not done${[
    [from, whereFrom],
    [to, whereTo],
  ].map(([place = '', where = '']) =>
    where === '' ? null : markup`<br>${place}: ${where}`,
  )}${unplugFirst.length === 0 ? null : markup`<br>☐ Unplug first: ${unplugFirst.join(', ')}`}${proof === '' ? null : markup`<br>☐ ${sentence(proof)}`}</div></li>`;
}

/** How many of the mistakes that a look shows are named. */
const mostCovers = 3;

const lookTitles: Readonly<Record<LookMoment, string>> = {
  'with the readings': 'Look and pull: no reading shows these',
  'before power': 'Look before power: no reading shows these',
  'with power on': 'See with power on: no reading shows these',
};

/** What is looked at later than the readings of a group are taken, before one of the later steps or at the end. */
export function laterLooksMarkup(group: CheckGroup, step: number): readonly Markup[] {
  return (['before power', 'with power on'] as const).flatMap((when) => {
    if (!group.looks.some((look) => look.when === when && look.before === step)) return [];
    const id = `${group.name}-${when.replaceAll(' ', '-')}`;
    return [
      markup`<article class="leaf later looks" aria-labelledby="${id}"><h3 class="order" id="${id}">${lookTitles[when]}</h3>${looksMarkup(group, when)}</article>`,
    ];
  });
}

function looksMarkup({ name, looks }: CheckGroup, moment: LookMoment): Markup {
  return markup`<ul>${looks.map(({ when, what, covers }, index) => {
    if (when !== moment) return null;
    const id = `${name}-look-${index + 1}`;
    return markup`<li><label class="tick" for="${id}"><input type="checkbox" id="${id}" data-look="${index}"> <span>${sentence(what)}</span></label><p class="help">Shows ${covers.slice(0, mostCovers).join('; ')}${covers.length > mostCovers ? `; and ${covers.length - mostCovers} more like these` : ''}.</p></li>`;
  })}</ul>`;
}
