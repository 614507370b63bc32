/**
 * What the work instruction does on a phone. It is the only script of a sheet, holds no text of a kit, and reads what it
 * needs from the JSON of the page. Ticks and notes are kept in the browser under a key that names kit, revision, variant
 * and digest; where that fails, it says so at once.
 */
export const workScript = `
'use strict';
(() => {
  const head = JSON.parse(document.getElementById('record-head').textContent);
  const key = 'loomproof ' + JSON.stringify([head.kit, head.revision, head.variant, head.digest]);
  const byId = (id) => document.getElementById(id);
  const steps = [...document.querySelectorAll('.step')];
  let answers = new Map();
  let current = 0;
  let stored = true;

  const keep = () => {
    try {
      localStorage.setItem(key, JSON.stringify(record()));
      if (localStorage.getItem(key) === null) throw new Error('not kept');
      stored = true;
    } catch {
      stored = false;
    }
    byId('storage-warning').hidden = stored;
  };
  const record = () => ({ record: 'loomproof work', ...head, answers: [...answers.values()].sort((a, b) => a.step - b.step) });
  const fits = (one) => one !== null && typeof one === 'object' && one.record === 'loomproof work' && ['kit', 'revision', 'variant', 'digest'].every((name) => one[name] === head[name]) && Array.isArray(one.answers);
  const known = new Set(['done', 'not reachable', 'not done', 'found different']);
  const take = (one) => {
    answers = new Map();
    for (const each of one.answers) {
      if (each === null || typeof each !== 'object' || !steps.some((step) => Number(step.dataset.step) === each.step)) continue;
      answers.set(each.step, { step: each.step, answer: known.has(each.answer) ? each.answer : null, note: String(each.note ?? ''), time: String(each.time ?? '') });
    }
  };
  const show = () => {
    for (const step of steps) {
      const one = answers.get(Number(step.dataset.step));
      for (const input of step.querySelectorAll('input[type=radio]')) input.checked = one?.answer === input.value;
      const note = step.querySelector('textarea');
      if (document.activeElement !== note) note.value = one?.note ?? '';
    }
    const told = [...answers.values()].filter(({ answer }) => answer !== null);
    byId('count').textContent = told.length + ' of ' + steps.length + ' steps answered';
    const list = byId('unshown');
    list.textContent = '';
    for (const { step, answer } of told.filter((one) => one.answer !== 'done').sort((a, b) => a.step - b.step)) {
      const item = document.createElement('li');
      item.textContent = 'Step ' + step + ', ' + answer + ': not shown is ' + (head.shows[String(step)] ?? '');
      list.append(item);
    }
    byId('unshown-part').hidden = list.childElementCount === 0;
  };
  const put = (step, change) => {
    const before = answers.get(step) ?? { step, answer: null, note: '', time: '' };
    answers.set(step, { ...before, ...change, time: new Date().toISOString() });
    keep();
    show();
  };
  const turn = (to) => {
    current = Math.min(steps.length - 1, Math.max(0, to));
    steps.forEach((step, index) => step.classList.toggle('current', index === current));
    byId('back').disabled = current === 0;
    byId('next').disabled = current === steps.length - 1;
  };
  const save = (name, type, text) => {
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([text], { type }));
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  };
  const cell = (value) => {
    const text = String(value ?? '').replace(/[\\r\\n\\t]+/g, ' ');
    const guarded = /^\\s*[=+\\-@]/.test(text) ? "'" + text : text;
    return /[",;]/.test(guarded) ? '"' + guarded.replaceAll('"', '""') + '"' : guarded;
  };
  const say = (text) => { byId('said').textContent = text; };

  byId('export-json').addEventListener('click', () => save(head.file + '-record.json', 'application/json', JSON.stringify(record(), null, 2) + '\\n'));
  byId('export-csv').addEventListener('click', () => {
    const rows = [['kit', 'revision', 'variant', 'digest', 'step', 'answer', 'note', 'time'], ...record().answers.map((one) => [head.kit, head.revision, head.variant, head.digest, one.step, one.answer, one.note, one.time])];
    save(head.file + '-record.csv', 'text/csv', rows.map((row) => row.map(cell).join(',')).join('\\r\\n') + '\\r\\n');
  });
  byId('import').addEventListener('change', async (event) => {
    const [file] = event.target.files;
    event.target.value = '';
    if (file === undefined) return;
    let one = null;
    try { one = JSON.parse(await file.text()); } catch { one = null; }
    if (!fits(one)) return say('Refused: this record is not of this kit, revision, variant and digest.');
    take(one);
    keep();
    show();
    say('Record taken over.');
  });
  byId('mode').addEventListener('click', () => {
    const single = document.body.classList.toggle('single');
    byId('mode').textContent = single ? 'Show all steps' : 'One step at a time';
    for (const id of ['back', 'next']) byId(id).hidden = !single;
    turn(current);
  });
  byId('back').addEventListener('click', () => turn(current - 1));
  byId('next').addEventListener('click', () => turn(current + 1));
  for (const step of steps) {
    const number = Number(step.dataset.step);
    step.addEventListener('change', (event) => {
      if (event.target.type === 'radio') put(number, { answer: event.target.value });
    });
    step.querySelector('textarea').addEventListener('input', (event) => put(number, { note: event.target.value }));
  }
  addEventListener('beforeprint', () => document.querySelectorAll('details').forEach((one) => { one.open = true; }));
  try {
    const text = localStorage.getItem(key);
    const one = text === null ? null : JSON.parse(text);
    if (fits(one)) take(one);
  } catch {
    stored = false;
  }
  keep();
  turn(0);
  show();
})();
`;
