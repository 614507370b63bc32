import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cssText } from './css-text.ts';
import { fileStems } from './file-stem.ts';
import { markup } from './markup.ts';
import { safeJson } from './safe-json.ts';

/** Text as an attacker would write it: pieces that end things, among any letters. */
const hostile = fc
  .array(
    fc.oneof(
      fc.constantFrom('</script>', '<!--', '-->', '"', "'", '&', '\\', '*/', '}', '\u2028', '../', '<b>'),
      fc.string({ unit: 'grapheme' }),
    ),
  )
  .map((pieces) => pieces.join(''));

describe('text of a kit in a document', () => {
  it('as JSON in a script is read back the same and can end no element', () => {
    fc.assert(
      fc.property(fc.jsonValue(), hostile, (data, text) => {
        const written = safeJson({ data, text });
        expect(written).not.toMatch(/[<>&\u2028\u2029]/);
        expect(JSON.parse(written)).toEqual(JSON.parse(JSON.stringify({ data, text })));
      }),
    );
  });

  it('in a template opens no tag, ends no attribute and names no entity', () => {
    fc.assert(
      fc.property(hostile, (text) => {
        const inside = markup`[${text}]`.text.slice(1, -1);
        expect(inside).not.toMatch(/[<>"']/);
        expect(inside.replaceAll(/&(amp|lt|gt|quot|#39);/g, '')).not.toContain('&');
      }),
    );
  });

  it('in a style sheet ends no string', () => {
    fc.assert(
      fc.property(hostile, (text) => {
        const written = cssText(text);
        expect(written).toMatch(/^"([A-Za-z0-9 ]|\\[0-9a-f]{1,6} )*"$/);
      }),
    );
  });

  it('in the name of a file leads out of no folder, and no two names are alike', () => {
    fc.assert(
      fc.property(fc.array(hostile), (names) => {
        const stems = fileStems(names);
        expect(stems.length).toBe(names.length);
        expect(new Set(stems).size).toBe(stems.length);
        for (const stem of stems) expect(stem).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$|^[a-z0-9][a-z0-9-]*$/);
      }),
    );
  });
});
