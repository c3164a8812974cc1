/** A place between grid lines, counted in rows and columns. */
export interface GridPoint {
  readonly row: number;
  readonly column: number;
}

/** One piece of a loop. `border` where it runs along the edge of the grid and not along the level. */
export interface LoopStep extends GridPoint {
  readonly border: boolean;
}

/**
 * Closed loops round everything above a level in a grid of values (marching squares).
 *
 * Beyond the edge everything counts as below, at no distance, so that loops close along the edge. Each cell leads
 * from every side on which the level is left to the next on which it is entered; the neighbor takes it from there.
 * At each step stands the point from which it goes on, and what kind of piece follows.
 */
export function levelLoops(values: readonly (readonly number[])[], level: number): LoopStep[][] {
  const [rows, columns] = [values.length, values[0]?.length ?? 0];
  const width = columns + 2;
  const valueAt = (row: number, column: number) => values[row]?.[column] ?? Number.NEGATIVE_INFINITY;
  const within = (count: number, i: number) => Math.min(count - 1, Math.max(0, i));
  /** Where the level is crossed between two corners, the first above it. */
  const crossing = (a: GridPoint, b: GridPoint): GridPoint => {
    const [high, low] = [valueAt(a.row, a.column), valueAt(b.row, b.column)];
    const share = low === Number.NEGATIVE_INFINITY ? 0 : (high - level) / (high - low);
    return {
      row: within(rows, a.row + share * (b.row - a.row)),
      column: within(columns, a.column + share * (b.column - a.column)),
    };
  };
  const sideOf = (a: GridPoint, b: GridPoint) =>
    2 * ((Math.min(a.row, b.row) + 1) * width + Math.min(a.column, b.column) + 1) + (a.row === b.row ? 0 : 1);

  const next = new Map<number, { readonly to: number; readonly step: LoopStep }>();
  for (let row = -1; row < rows; row++) {
    for (let column = -1; column < columns; column++) {
      const corners = [
        { row, column },
        { row, column: column + 1 },
        { row: row + 1, column: column + 1 },
        { row: row + 1, column },
      ];
      const above = corners.map((corner) => valueAt(corner.row, corner.column) > level);
      const border = row < 0 || column < 0 || row === rows - 1 || column === columns - 1;
      for (let i = 0; i < 4; i++) {
        if (!above[i] || above[(i + 1) % 4]) continue;
        const [from, beyond] = [corners[i]!, corners[(i + 1) % 4]!];
        let j = (i + 1) % 4;
        while (!above[(j + 1) % 4]) j = (j + 1) % 4;
        next.set(sideOf(from, beyond), {
          to: sideOf(corners[j]!, corners[(j + 1) % 4]!),
          step: { ...crossing(from, beyond), border },
        });
      }
    }
  }

  const loops: LoopStep[][] = [];
  for (const start of next.keys()) {
    const loop: LoopStep[] = [];
    for (let side = start; next.has(side); ) {
      const { to, step } = next.get(side)!;
      next.delete(side);
      loop.push(step);
      side = to;
    }
    if (loop.length > 0) loops.push(loop);
  }
  return loops;
}
