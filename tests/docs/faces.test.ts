import { describe, expect, it } from 'vitest';
import { type FaceForm, faceSchema } from '../../packages/netlist/src/face/face-schema.ts';
import { readFace } from '../../packages/netlist/src/face/read-face.ts';
import { writeFace } from '../../packages/netlist/src/face/write-face.ts';
import { plainOf } from '../../packages/netlist/src/kit/plain-of.ts';
import { readDocument } from '../../packages/netlist/src/kit/read-document.ts';
import { codesIn, fencedBlocks, readDocumentFile, tableRows } from '../support/read-document-file.ts';

const page = readDocumentFile('docs/faces.md');
const blocks = fencedBlocks(page);

/** An example with what it is when it is written out. */
const examples = blocks.flatMap(({ info, text }, at) =>
  info === 'yaml face' ? [[text.trim(), blocks[at + 1]?.text.trim() ?? ''] as const] : [],
);

describe('docs/faces.md', () => {
  it('has a face written out under each example, and nothing else', () => {
    expect(blocks.map(({ info }) => info)).toEqual(examples.flatMap(() => ['yaml face', 'text']));
    expect(examples.length).toBeGreaterThan(8);
  });

  it.each(examples)('%s is what is written under it', (text, written) => {
    const { value, diagnostics } = readDocument({ name: 'faces.md', text });
    expect(diagnostics).toEqual([]);
    if (value === null) throw new Error('an example cannot be read');
    const form = faceSchema.parse(plainOf(value)) as FaceForm;
    const face = readFace(form);
    expect(face.problems).toEqual([]);
    if (face.value === null) throw new Error('an example is no face');
    const out = writeFace(face.value);
    expect([out.written ?? out.round].flat().join('\n')).toBe(written);
    expect(out['seen from']).toBe(form['seen from']);
    expect([out.latch, out.key]).toEqual([form.latch, form.key]);
  });

  it('has a row for every key', () => {
    const told = tableRows(page).flatMap(([key = '']) => codesIn(key));
    expect([...told].sort()).toEqual(Object.keys(faceSchema.shape).sort());
  });
});
