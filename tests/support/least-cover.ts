import loadHighs from 'highs';

const highs = await loadHighs();

/**
 * The number of columns of a least cover by an integer program: minimise the columns taken, each row held at least once.
 * @throws Error when the program is not solved to its optimum
 */
export function leastCover(rowCount: number, columns: readonly (readonly number[])[]): number {
  if (rowCount === 0) return 0;
  const names = columns.map((_, index) => `c${index}`);
  const holding = Array.from({ length: rowCount }, (): string[] => []);
  for (const [index, rows] of columns.entries()) for (const row of rows) holding[row]?.push(`c${index}`);
  const lines = [
    'Minimize',
    ` cost: ${names.join(' + ')}`,
    'Subject To',
    ...holding.map((held, row) => ` r${row}: ${held.join(' + ')} >= 1`),
    'Binary',
    ` ${names.join(' ')}`,
    'End',
  ];
  const { Status, ObjectiveValue } = highs.solve(lines.join('\n'));
  // A text that the library cannot read gives a status and no exception.
  if (Status !== 'Optimal') throw new Error(`the integer program is ${Status}`);
  return Math.round(ObjectiveValue);
}
