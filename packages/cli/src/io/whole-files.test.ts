import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readWhole } from './read-whole.ts';
import { writeWhole } from './write-whole.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'loomproof-files-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('readWhole', () => {
  it('gives the bytes of a file, also of one that is longer than a chunk', () => {
    const content = Buffer.from('ab\u0000é'.repeat(50_000));
    writeFileSync(join(folder, 'a'), content);
    const reading = readWhole(join(folder, 'a'), 1_000_000);
    expect(reading.ok && Buffer.from(reading.bytes).equals(content)).toBe(true);
  });

  it('takes a file of exactly the limit and refuses a longer one', () => {
    writeFileSync(join(folder, 'a'), 'x'.repeat(100));
    expect(readWhole(join(folder, 'a'), 100).ok).toBe(true);
    expect(readWhole(join(folder, 'a'), 99)).toEqual({ ok: false, why: 'too large' });
  });

  it('says why there is nothing', () => {
    expect(readWhole(folder, 100)).toEqual({ ok: false, why: 'directory' });
    expect(readWhole(join(folder, 'none'), 100)).toEqual({ ok: false, why: 'missing' });
    expect(readWhole(join(folder, 'a\u0000b'), 100)).toEqual({ ok: false, why: 'failed' });
  });

  it.runIf(existsSync('/dev/zero'))('stops reading what has no end', () => {
    expect(readWhole('/dev/zero', 1_000_000)).toEqual({ ok: false, why: 'too large' });
  });
});

describe('writeWhole', () => {
  it('puts the text in place of what was there and leaves nothing beside it', () => {
    const path = join(folder, 'a');
    for (const text of ['long before', 'é']) {
      expect(writeWhole(path, text)).toEqual({ ok: true, why: '' });
      expect(readFileSync(path, 'utf8')).toBe(text);
    }
    expect(readdirSync(folder)).toEqual(['a']);
  });

  it('changes nothing and says why where it cannot', () => {
    expect(writeWhole(join(folder, 'none', 'a'), 'x')).toEqual({ ok: false, why: 'the folder is not there' });
    expect(writeWhole(folder, 'x').ok).toBe(false);
    expect(readdirSync(folder)).toEqual([]);
  });

  it('does not take away a file that it did not make', () => {
    const beside = join(folder, `a.${process.pid}.part`);
    writeFileSync(beside, 'mine');
    expect(writeWhole(join(folder, 'a'), 'x').ok).toBe(false);
    expect(readFileSync(beside, 'utf8')).toBe('mine');
  });
});
