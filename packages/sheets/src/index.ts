export { type CheckRow, checkRows } from './checks/check-rows.ts';
export {
  answersInWords,
  explanationWords,
  fewAndPairs,
  mostExplanationsShown,
  mostPairsShown,
} from './checks/explanation-words.ts';
export { readingCautions } from './checks/reading-cautions.ts';
export { type RecordReadings, recordReadings } from './checks/record-readings.ts';
export { stageColumn } from './checks/stage-column.ts';
export { stageWords } from './checks/stage-words.ts';
export { csvText } from './csv-text.ts';
export { kitSheets } from './kit-sheets.ts';
export type { SheetFile } from './sheet-table.ts';
export { stepWords } from './step-words.ts';
export { workInstructions } from './work-instructions.ts';
export type { WorkSheetOptions } from './work-sheet.ts';
