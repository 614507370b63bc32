export { csvText } from './csv-text.ts';
export { kitSheets, type SheetFile } from './kit-sheets.ts';
export { stepWords } from './step-words.ts';
