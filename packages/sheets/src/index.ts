export { type CheckRow, checkRows } from './checks/check-rows.ts';
export { readingCautions } from './checks/reading-cautions.ts';
export { stageWords } from './checks/stage-words.ts';
export { csvText } from './csv-text.ts';
export { kitSheets, type SheetFile } from './kit-sheets.ts';
export { stepWords } from './step-words.ts';
export type { WorkSheetOptions } from './work-sheet.ts';
