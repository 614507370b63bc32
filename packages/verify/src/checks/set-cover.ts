/** A cover of rows by columns with what is known of the least one. */
export interface Cover {
  /** Indices of the chosen columns, in order. */
  readonly columns: readonly number[];
  /** No cover has fewer columns than this. */
  readonly bound: number;
}

interface Part {
  readonly rows: readonly number[];
  readonly columns: readonly number[];
}

/**
 * The fewest columns that hold every row, by reduction (a row that any cover of another row covers is dropped, a column
 * that lies in another is dropped, a column that alone holds a row is taken), then branch and bound on each part that
 * shares no column with another. The bound is that of the dual (each row weighs one over the rows of its longest
 * column, then raised row by row), so a cover that reaches it is a minimum by proof.
 *
 * @param rowCount - rows 0..rowCount-1, each in at least one column
 * @param columnRows - the rows of each column
 * @param mostNodes - branch and bound stops after this many nodes of the search in a part and gives its best cover
 */
export function setCover(
  rowCount: number,
  columnRows: readonly (readonly number[])[],
  mostNodes = 20_000,
): Cover {
  const cover = new CoverProblem(rowCount, columnRows);
  const taken: number[] = [];
  cover.reduce(taken);
  let bound = taken.length;
  for (const part of cover.parts()) {
    const { columns, least } = cover.solve(part, mostNodes);
    taken.push(...columns);
    bound += least;
  }
  return { columns: taken.sort((a, b) => a - b), bound };
}

class CoverProblem {
  readonly #rows: Set<number>[];
  readonly #columns: Set<number>[];

  constructor(rowCount: number, columnRows: readonly (readonly number[])[]) {
    this.#columns = columnRows.map((rows) => new Set(rows));
    this.#rows = Array.from({ length: rowCount }, () => new Set<number>());
    for (const [column, rows] of columnRows.entries()) for (const row of rows) this.#rows[row]?.add(column);
  }

  #dropRow(row: number): void {
    for (const column of this.#rows[row] ?? []) this.#columns[column]?.delete(row);
    this.#rows[row]?.clear();
  }

  #dropColumn(column: number): void {
    for (const row of this.#columns[column] ?? []) this.#rows[row]?.delete(column);
    this.#columns[column]?.clear();
  }

  /** Reduces until nothing changes; columns that must be taken are put into `taken`. */
  reduce(taken: number[]): void {
    for (let changed = true; changed; ) {
      changed = this.#dropRows();
      changed = this.#dropColumns() || changed;
      for (const columns of this.#rows) {
        const [only] = columns;
        if (columns.size !== 1 || only === undefined) continue;
        taken.push(only);
        for (const row of [...(this.#columns[only] ?? [])]) this.#dropRow(row);
        changed = true;
      }
    }
  }

  #dropRows(): boolean {
    let changed = false;
    const order = this.#living(this.#rows).sort((a, b) => size(this.#rows, a) - size(this.#rows, b) || a - b);
    for (const row of order) {
      const own = this.#rows[row] ?? new Set<number>();
      // A row whose columns include all of this one's is covered with it, and shares its rarest column.
      const rare = scarcest(own, this.#columns);
      if (rare === null) continue;
      for (const other of [...(this.#columns[rare] ?? [])]) {
        if (other === row || size(this.#rows, other) < own.size) continue;
        if (size(this.#rows, other) === own.size && other < row) continue;
        if (isSubset(own, this.#rows[other])) {
          this.#dropRow(other);
          changed = true;
        }
      }
    }
    return changed;
  }

  #dropColumns(): boolean {
    let changed = false;
    const order = this.#living(this.#columns).sort(
      (a, b) => size(this.#columns, a) - size(this.#columns, b) || b - a,
    );
    for (const column of order) {
      const own = this.#columns[column] ?? new Set<number>();
      // The larger column must hold the row that fewest columns hold.
      const rare = scarcest(own, this.#rows);
      if (rare === null) continue;
      for (const other of this.#rows[rare] ?? []) {
        if (other === column || size(this.#columns, other) < own.size) continue;
        if (isSubset(own, this.#columns[other])) {
          this.#dropColumn(column);
          changed = true;
          break;
        }
      }
    }
    return changed;
  }

  #living(sets: readonly Set<number>[]): number[] {
    return sets.flatMap((one, index) => (one.size > 0 ? [index] : []));
  }

  /** Groups of rows that share columns among themselves only. */
  parts(): readonly Part[] {
    const seen = new Set<number>();
    const parts: Part[] = [];
    for (const start of this.#living(this.#rows)) {
      if (seen.has(start)) continue;
      const rows = [start];
      const columns = new Set<number>();
      seen.add(start);
      for (let at = 0; at < rows.length; at += 1)
        for (const column of this.#rows[rows[at] ?? -1] ?? []) {
          if (columns.has(column)) continue;
          columns.add(column);
          for (const row of this.#columns[column] ?? []) {
            if (seen.has(row)) continue;
            seen.add(row);
            rows.push(row);
          }
        }
      parts.push({ rows, columns: [...columns].sort((a, b) => a - b) });
    }
    return parts;
  }

  /** The best cover of a part that was found, and a number that none is below. */
  solve(
    { rows, columns }: Part,
    mostNodes: number,
  ): { readonly columns: readonly number[]; readonly least: number } {
    let best = this.#greedy(rows);
    const least = this.#dual(new Set(rows), new Set(columns));
    if (best.length <= least) return { columns: best, least };
    // A stack of open choices: columns taken so far and columns that may still be taken.
    const stack: {
      readonly taken: readonly number[];
      readonly left: ReadonlySet<number>;
      readonly free: ReadonlySet<number>;
    }[] = [{ taken: [], left: new Set(rows), free: new Set(columns) }];
    let nodes = 0;
    for (let open = stack.pop(); open !== undefined; open = stack.pop()) {
      nodes += 1;
      if (nodes > mostNodes) return { columns: best, least };
      if (open.left.size === 0) {
        if (open.taken.length < best.length) best = open.taken;
        if (best.length <= least) break;
        continue;
      }
      if (open.taken.length + this.#dual(open.left, open.free) >= best.length) continue;
      const row = this.#scarcestRow(open.left, open.free);
      const choices = [...(this.#rows[row] ?? [])]
        .filter((column) => open.free.has(column))
        .sort((a, b) => this.#gain(a, open.left) - this.#gain(b, open.left) || b - a);
      // Choices are tried from the end; those before may then not be taken any more.
      for (const [index, column] of choices.entries()) {
        const later = new Set(choices.slice(index + 1));
        const left = new Set([...open.left].filter((one) => this.#columns[column]?.has(one) !== true));
        const free = new Set([...open.free].filter((one) => one !== column && !later.has(one)));
        stack.push({ taken: [...open.taken, column], left, free });
      }
    }
    return { columns: best, least: best.length };
  }

  #gain(column: number, left: ReadonlySet<number>): number {
    let gain = 0;
    for (const row of this.#columns[column] ?? []) if (left.has(row)) gain += 1;
    return gain;
  }

  #scarcestRow(left: ReadonlySet<number>, free: ReadonlySet<number>): number {
    let best = -1;
    let fewest = Number.POSITIVE_INFINITY;
    for (const row of left) {
      let count = 0;
      for (const column of this.#rows[row] ?? []) if (free.has(column)) count += 1;
      if (count < fewest) [best, fewest] = [row, count];
    }
    return best;
  }

  #greedy(rows: readonly number[]): readonly number[] {
    const left = new Set(rows);
    const taken: number[] = [];
    while (left.size > 0) {
      let best = -1;
      let most = 0;
      for (const column of columnsOf(left, this.#rows)) {
        const gain = this.#gain(column, left);
        if (gain > most || (gain === most && column < best)) [best, most] = [column, gain];
      }
      if (best < 0) break;
      taken.push(best);
      for (const row of this.#columns[best] ?? []) left.delete(row);
    }
    return this.#withoutNeedless(taken);
  }

  #withoutNeedless(taken: readonly number[]): readonly number[] {
    let kept = [...taken];
    for (const column of taken) {
      const others = kept.filter((one) => one !== column);
      const held = [...(this.#columns[column] ?? [])].every((row) =>
        others.some((other) => this.#columns[other]?.has(row) === true),
      );
      if (held) kept = others;
    }
    return kept;
  }

  /** A lower bound by a feasible dual: weights of rows of which no column holds more than one in sum. */
  #dual(left: ReadonlySet<number>, free: ReadonlySet<number>): number {
    const gains = new Map<number, number>();
    for (const column of free) gains.set(column, this.#gain(column, left));
    const load = new Map<number, number>();
    let total = 0;
    const order = [...left];
    const weights = order.map((row) => {
      let longest = 0;
      for (const column of this.#rows[row] ?? []) longest = Math.max(longest, gains.get(column) ?? 0);
      // A row that no free column holds cannot be covered at all.
      return longest === 0 ? Number.POSITIVE_INFINITY : 1 / longest;
    });
    if (weights.includes(Number.POSITIVE_INFINITY)) return Number.POSITIVE_INFINITY;
    for (const [index, row] of order.entries()) {
      total += weights[index] ?? 0;
      for (const column of this.#rows[row] ?? [])
        if (free.has(column)) load.set(column, (load.get(column) ?? 0) + (weights[index] ?? 0));
    }
    for (const row of order) {
      let slack = 1;
      for (const column of this.#rows[row] ?? [])
        if (free.has(column)) slack = Math.min(slack, 1 - (load.get(column) ?? 0));
      if (slack <= 1e-9) continue;
      total += slack;
      for (const column of this.#rows[row] ?? [])
        if (free.has(column)) load.set(column, (load.get(column) ?? 0) + slack);
    }
    return Math.max(Math.ceil(total - 1e-6), this.#independent(left, free));
  }

  /** Rows of which no two share a column: each needs a column of its own. */
  #independent(left: ReadonlySet<number>, free: ReadonlySet<number>): number {
    const used = new Set<number>();
    let count = 0;
    const order = [...left].sort((a, b) => size(this.#rows, a) - size(this.#rows, b) || a - b);
    for (const row of order) {
      const own = [...(this.#rows[row] ?? [])].filter((column) => free.has(column));
      if (own.some((column) => used.has(column))) continue;
      for (const column of own) used.add(column);
      count += 1;
    }
    return count;
  }
}

function size(sets: readonly Set<number>[], index: number): number {
  return sets[index]?.size ?? 0;
}

function scarcest(own: ReadonlySet<number>, others: readonly Set<number>[]): number | null {
  let best: number | null = null;
  for (const one of own) if (best === null || size(others, one) < size(others, best)) best = one;
  return best;
}

function columnsOf(left: ReadonlySet<number>, rows: readonly Set<number>[]): ReadonlySet<number> {
  const found = new Set<number>();
  for (const row of left) for (const column of rows[row] ?? []) found.add(column);
  return found;
}

function isSubset(small: ReadonlySet<number>, large: ReadonlySet<number> | undefined): boolean {
  if (large === undefined || large.size < small.size) return false;
  for (const one of small) if (!large.has(one)) return false;
  return true;
}
