import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from './start-program.ts';

/** One fenced block of a Markdown file: what stands after the backticks, and the text. */
export interface FencedBlock {
  readonly info: string;
  readonly text: string;
}

/** The text of a Markdown file of the project. */
export function readDocumentFile(path: string): string {
  return readFileSync(join(projectFolder, path), 'utf8');
}

/** The fenced blocks of a Markdown text, in order. */
export function fencedBlocks(markdown: string): readonly FencedBlock[] {
  return [...markdown.matchAll(/^```([^\n`]*)\n([\s\S]*?)^```$/gm)].map(([, info = '', text = '']) => ({
    info: info.trim(),
    text,
  }));
}

/** The rows of every table of a Markdown text, without heads: the cells of each, trimmed. */
export function tableRows(markdown: string): readonly (readonly string[])[] {
  return markdown
    .split('\n')
    .filter((line) => /^\|.*\|$/.test(line) && !/^\|[\s|-]+\|$/.test(line))
    .map((line) =>
      line
        .slice(1, -1)
        .split(/(?<!\\)\|/)
        .map((cell) => cell.trim()),
    );
}

/** The texts in backticks of a cell. */
export function codesIn(cell: string): readonly string[] {
  return [...cell.matchAll(/`([^`]+)`/g)].map(([, code = '']) => code);
}
