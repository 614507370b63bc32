import type { Job, KitFile, StepAction } from '@loomproof/netlist';
import type { VariantVerdict } from '@loomproof/verify';
import { checksMarkup, laterLooksMarkup } from './checks/checks-markup.ts';
import { checksStyle } from './checks/checks-style.ts';
import { type CheckGroup, type WorkChecksOptions, workChecks } from './checks/work-checks.ts';
import { stepAnswers } from './checks/work-record.ts';
import { generalCautions } from './general-cautions.ts';
import type { JudgedVariant } from './judged-variants.ts';
import { listWords } from './list-words.ts';
import { type Markup, type MarkupValue, markup, trusted } from './markup.ts';
import { page } from './page.ts';
import { panScript } from './pan-script.ts';
import { placeMarkup } from './place-markup.ts';
import { repairMarkup } from './repair/repair-markup.ts';
import { safeJson } from './safe-json.ts';
import { sentence } from './sentence.ts';
import { type WorkStep, workSteps } from './work-steps.ts';

/** What a work instruction is made with beside the kit. */
export interface WorkSheetOptions extends WorkChecksOptions {
  /** The script of the page, bundled; see `scripts/phone-script.mjs`. */
  readonly script: string;
}

/**
 * The work instruction of one variant, on paper and as an app on a phone.
 *
 * @param options - the readings that it asks for, and its script
 */
export function workSheet(
  kit: KitFile,
  { one, verdict, head, stem }: JudgedVariant,
  options: WorkSheetOptions,
): string {
  const { variant, job } = one;
  const others = kit.variants.filter((other) => other.job !== job).map((other) => other.job);
  const steps = workSteps(job, verdict, others);
  const otherNumbers = new Set(others.flatMap((other) => other.steps.map(({ number }) => number)));
  for (const { number } of steps) otherNumbers.delete(number);
  const checks = workChecks(one, head.revision, options);
  const checksBefore = (index: number): readonly Markup[] =>
    checks.groups.flatMap((group) => [
      ...(group.before === index ? [checksMarkup(group, checks.page.plugged)] : []),
      ...laterLooksMarkup(group, index),
    ]);
  const record = {
    kit: head.kit,
    revision: head.revision,
    variant: head.variant,
    digest: head.digest,
    stage: checks.page.stage,
    file: stem,
    refuted: head.verdict === 'refuted',
    shows: steps.map(({ number, shows }) => [number, shows]),
    checks: checks.page,
  };
  const body = markup`<div id="storage-warning" class="caution screen" role="alert" hidden><b>This browser keeps nothing.</b> Ticks and notes are lost when the page is closed. Export the record before you close it.</div>
<div class="bar steps-bar screen"><button type="button" id="mode">One step at a time</button><button type="button" id="back" hidden>Step before</button><button type="button" id="next" hidden>Next step</button></div>
${notProved(verdict)}<section class="whole"><h2>Which machine this is for</h2>${recognise(kit, variant.values)}
<h2>Before you begin</h2>${[...kit.cautions, ...generalCautions].map((text) => caution(text))}
<h2>Tools</h2><ul>${toolsFor(job, verdict, checks.groups).map((tool) => markup`<li>${tool}</li>`)}</ul></section>
<section><h2>The work</h2><p class="help whole">${howToRead(job, otherNumbers)}</p>${steps.map((step, index) => [...checksBefore(index), stepMarkup(step)])}${checksBefore(steps.length)}</section>
${leftBehind(verdict)}
<section id="record" class="screen"><h2>Record</h2><p id="count" role="status"></p><p id="looked" role="status"></p><div id="unshown-part" hidden><h3>What is not shown yet</h3><ul id="unshown"></ul></div><div class="bar"><button type="button" id="export-json">Export the record (JSON)</button><button type="button" id="export-csv">Export the record (CSV)</button></div><p><label for="import">Take over an exported record (JSON):</label> <input type="file" id="import" accept=".json,application/json"></p><p id="said" role="status"></p></section>`;
  const end = markup`<script type="application/json" id="record-head">${trusted(safeJson(record))}</script><script>${trusted(options.script)}</script><script>${trusted(panScript)}</script>`;
  return page(head, 'Work instruction', body, end, checksStyle);
}

function caution(text: string): Markup {
  return markup`<p class="caution"><b>Caution.</b> ${text}</p>`;
}

function recognise({ axes }: KitFile, values: ReadonlyMap<string, string>): MarkupValue {
  if (axes.length === 0) return markup`<p>This kit has one variant.</p>`;
  return markup`<p>Look before you open the bag. If anything here is not so, stop: it is the wrong bag.</p><ul>${axes.map(
    (axis) => {
      const value = values.get(axis.name) ?? '';
      const how = axis.values.find(({ name }) => name === value)?.recognise ?? null;
      return markup`<li><b>${axis.name}: ${value}</b>${how === null ? null : `, ${how}`}</li>`;
    },
  )}</ul>`;
}

/** Why a sheet is not to be worked by, finding by finding. */
function notProved({ findings }: VariantVerdict): MarkupValue {
  if (findings.length === 0) return null;
  return markup`<section class="whole" id="not-proved"><h2>Why this is not proved</h2><ul>${findings.map(
    ({ step, message }) => markup`<li>${sentence(`${step === null ? '' : `step ${step}: `}${message}`)}</li>`,
  )}</ul></section>`;
}

/** How the names in the steps are read, and why some numbers are not there. */
function howToRead(job: Job, otherNumbers: ReadonlySet<number>): string {
  const cavity = job.places.find(({ kind }) => kind === 'cavity');
  const numbers = [...otherNumbers].sort((a, b) => a - b).map(String);
  return [
    ...(cavity === undefined
      ? []
      : [`${cavity.address} is cavity ${cavity.label} of ${job.connectors[cavity.connector]?.name ?? ''}.`]),
    'After @ stands the mark of that end of a wire; the end at a cut is called cut, or by the piece on its other side.',
    ...(numbers.length === 0
      ? []
      : [
          `${numbers.length === 1 ? 'Step' : 'Steps'} ${listWords(numbers)} ${numbers.length === 1 ? 'is' : 'are'} for other variants and not done here.`,
        ]),
  ].join(' ');
}

/** Ends that stay, live or dead, what stays unplugged, what was opened, and rules knowingly not kept. */
function leftBehind({ stubs, disturbed, deviations, judgement }: VariantVerdict): MarkupValue {
  const { job, plugged } = judgement.rework;
  const open = job.connectors.filter((one, index) => one.plugged && plugged[index] === false);
  const openNames = new Set(open.map(({ name }) => name));
  const closed = disturbed.filter((name) => !openNames.has(name));
  const apart = open.filter(({ device }) => !device).map(({ name }) => name);
  const told = [
    ...stubs.map(
      ({ wire, end, state, covered }) =>
        markup`<li>${end} of ${wire}: <b>${state}</b>, ${covered === null ? 'not covered' : `insulated with ${covered}`}. Put a label on it.</li>`,
    ),
    ...(apart.length === 0
      ? []
      : [markup`<li>Unplugged, and stays so: ${listWords(apart)}. Put a label on it.</li>`]),
    ...(closed.length === 0
      ? []
      : [
          markup`<li>Worked on, or opened to pass through; see that each is plugged, closed and locked again: ${listWords(closed)}.</li>`,
        ]),
    ...deviations.map(
      ({ allows, at, by, why }) =>
        markup`<li>Rule knowingly not kept: ${allows}${at === null ? null : ` at ${at}`}, allowed by ${by}: ${why}</li>`,
    ),
  ];
  if (told.length === 0) return null;
  return markup`<section class="whole" id="left-behind"><h2>What stays behind</h2><ul>${told}</ul></section>`;
}

/** Tools by what the steps and readings need; the dies are those of the parts used. Common practice, no source. */
function toolsFor(job: Job, { stubs }: VariantVerdict, groups: readonly CheckGroup[]): readonly string[] {
  const kinds = new Set(job.steps.map(({ action }) => action.kind));
  const does = (...some: readonly StepAction['kind'][]): boolean => some.some((kind) => kinds.has(kind));
  const partsOf = (kind: 'tap' | 'crimp'): readonly string[] =>
    [
      ...new Set(
        job.steps.flatMap(({ action }) => {
          if (action.kind === 'tap') return kind === 'tap' ? [job.joints[action.joint]?.part ?? ''] : [];
          if (kind === 'tap') return [];
          if (action.kind === 'fit terminal') return [job.terminals[action.terminal]?.part ?? ''];
          return action.kind === 'join' ? [job.joints[action.joint]?.part ?? ''] : [];
        }),
      ),
    ]
      .filter((one) => one !== '')
      .sort();
  const checks = groups.flatMap((group) => group.checks);
  return [
    'Meter of at least 10 megohms, tried on a live point before and after',
    ...(checks.length > 0 ? ['Test pins that fit the contacts without spreading them'] : []),
    ...(checks.some(({ proof }) => proof.includes('jumper')) ? ['Jumper leads, marked and counted'] : []),
    ...(does('cut') ? ['Side cutter, steel rule'] : does('tap') ? ['Steel rule'] : []),
    ...(does('strip') ? ['Stripping tool for the sizes of the cut list'] : []),
    ...partsOf('crimp').map((part) => `Crimp tool with the die for ${part}`),
    ...partsOf('tap').map((part) => `Pliers for ${part}, as its maker says`),
    ...(does('withdraw')
      ? ['Release tool for the terminals']
      : does('insert')
        ? ['Release tool for the terminals, in case one must come out again']
        : []),
    ...(does('attach', 'detach') ? ['Spanners for the studs, and the torque that their maker gives'] : []),
    ...(does('remove plug') ? ['Puller for the cavity plugs'] : []),
    ...(does('fit fuse', 'remove fuse') ? ['Fuse puller'] : []),
    ...(does('seal') ? ['Heat source without a flame'] : []),
    ...(stubs.length > 0 ? ['Labels for what stays behind'] : []),
  ];
}

function stepMarkup(step: WorkStep): Markup {
  const { number, order, note, cautions, holds, stop, places, wire } = step;
  const id = `step-${number}`;
  // Cautions, holds, order, place and tick line are one block, which the end of a page does not part.
  return markup`<article class="step" id="${id}" data-step="${number}" aria-labelledby="${id}-order"><div class="together">${cautions.map((text) => caution(text))}${holds.map(
    (text) => markup`<p class="hold"><b>Hold.</b> ${text}</p>`,
  )}${holds.length === 0 ? null : markup`<details><summary>Stop here for today?</summary><ul>${(stop.length === 0 ? ['Nothing needs covering or keeping off.'] : stop).map((text) => markup`<li>${text}</li>`)}</ul></details>`}
<h3 class="order" id="${id}-order"><span class="number">${number}</span>${order}</h3>${note === null ? null : markup`<p>${note}</p>`}${places.map((place) => placeMarkup(place, String(number)))}${wire === null ? null : markup`<p class="help">${wire}</p>`}
<p class="tick-lines">☐ done &nbsp; ☐ not reachable &nbsp; ☐ not done &nbsp; ☐ found different: ______________________________</p></div>
<fieldset class="screen"><legend>Step ${number}</legend><div class="answers">${stepAnswers.map(
    (answer) => markup`<label><input type="radio" name="${id}" value="${answer}">${answer}</label>`,
  )}</div><label for="${id}-note">Note, and why when it was not done</label><textarea id="${id}-note" rows="1"></textarea></fieldset>${
    step.ifWrong.length === 0
      ? null
      : markup`<details><summary>If it goes wrong</summary><ul>${step.ifWrong.map((text) => markup`<li>${text}</li>`)}</ul>${step.repairs.map((one) => repairMarkup(one, number))}</details>`
  }</article>`;
}
