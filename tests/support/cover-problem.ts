import fc from 'fast-check';

/** Random covers: rows and the rows that each column holds; every row is held by one at least. */
export const coverProblem = (most: {
  rows: number;
  columns: number;
}): fc.Arbitrary<{ rows: number; columns: number[][] }> =>
  fc.integer({ min: 1, max: most.rows }).chain((rows) =>
    fc
      .array(fc.uniqueArray(fc.nat({ max: rows - 1 }), { minLength: 1, maxLength: 4 }), {
        minLength: 1,
        maxLength: most.columns,
      })
      // A row of its own for each keeps the problem solvable.
      .map((columns) => {
        const held = new Set(columns.flat());
        const lone = Array.from({ length: rows }, (_, row) => row).filter((row) => !held.has(row));
        return { rows, columns: [...columns, ...lone.map((row) => [row])] };
      }),
  );
