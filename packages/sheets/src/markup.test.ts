import { expect, it } from 'vitest';
import { csvText } from './csv-text.ts';
import { fileStems } from './file-stem.ts';
import { markup } from './markup.ts';
import { safeJson } from './safe-json.ts';

it('escapes text in elements and attributes, and leaves markup as it is', () => {
  expect(markup`<p title="${'"&'}">${'<b>\u202e'}${markup`<i>${1}</i>`}${null}</p>`.text).toBe(
    '<p title="&quot;&amp;">&lt;b&gt;\\u{202e}<i>1</i></p>',
  );
});

it('writes JSON that cannot end a script element and reads back the same', () => {
  const data = { text: '</script><!--&\u2028' };
  expect(safeJson(data)).not.toMatch(/[<>&\u2028]/);
  expect(JSON.parse(safeJson(data))).toEqual(data);
});

it('guards formulas in CSV but not numbers', () => {
  expect(csvText([['=1+1', ' @a', '-5', '-a', 'a"b,c']])).toBe(`'=1+1,' @a,-5,'-a,"a""b,c"\r\n`);
});

it('names files so that none leads out of the folder and none is another', () => {
  expect(fileStems(['side=left roof=high', '../..', 'SIDE=left/roof=high', '..'])).toEqual([
    'side-left-roof-high',
    'variant',
    'side-left-roof-high-2',
    'variant-2',
  ]);
});
