/** A table of values over rising radii (rows) and angles (columns). */
export type Values = readonly (readonly number[])[];

export interface PressureBand {
  /** Pressure over the mean. */
  readonly from: number;
  readonly to: number;
  /** 0 for the least pressure, up to COLOURS − 1 for the most. */
  readonly colour: number;
  /** Of the track’s area. */
  readonly share: number;
}

export const COLOURS = 7;
/** Widths a band may have, as shares of the mean. */
const WIDTHS = [0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50];
/** Pieces of a cell, each way, when areas are summed. */
const PIECES = 8;

/** At a place among the rows and columns, straight between the four values round it. */
export function between(values: Values, row: number, column: number): number {
  const i = Math.min(values.length - 2, Math.floor(row));
  const j = Math.min(values[0]!.length - 2, Math.floor(column));
  const along = (r: number) => values[r]![j]! + (column - j) * (values[r]![j + 1]! - values[r]![j]!);
  return along(i) + (row - i) * (along(i + 1) - along(i));
}

/** Where x lies among rising lines, counted in lines. */
export function placeAmong(lines: readonly number[], x: number): number {
  let i = 0;
  while (i < lines.length - 2 && lines[i + 1]! <= x) i++;
  return Math.min(lines.length - 1, Math.max(0, i + (x - lines[i]!) / (lines[i + 1]! - lines[i]!)));
}

/** Along lines, at a place counted in lines. */
export function lineAt(lines: readonly number[], place: number): number {
  const i = Math.min(lines.length - 2, Math.floor(place));
  return lines[i]! + (place - i) * (lines[i + 1]! - lines[i]!);
}

/** Sums areas, in a unit of their own, of all small pieces of the track. */
function sumAreas(ratios: Values, radiiMm: readonly number[], into: (ratio: number, area: number) => void) {
  for (let i = 0; i < (ratios.length - 1) * PIECES; i++) {
    const row = (i + 0.5) / PIECES;
    const area = lineAt(radiiMm, row) * (radiiMm[Math.floor(row) + 1]! - radiiMm[Math.floor(row)]!);
    for (let j = 0; j < (ratios[0]!.length - 1) * PIECES; j++) {
      into(between(ratios, row, (j + 0.5) / PIECES), area);
    }
  }
}

/**
 * Pressure over the mean in bands of one round width, no more than there are colors; how much of the track each
 * covers, how much touches nothing, and how much is pressed harder than the mean.
 */
export function pressureBands(ratios: Values, radiiMm: readonly number[]) {
  const all = ratios.flat();
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const width =
    WIDTHS.find((wide) => Math.ceil(most / wide) - Math.floor(least / wide) <= COLOURS) ?? WIDTHS.at(-1)!;
  const first = Math.floor(least / width + 1e-9);
  const count = Math.max(1, Math.ceil(most / width - 1e-9) - first);
  const areas = new Array<number>(count).fill(0);
  let [whole, touching, above] = [0, 0, 0];
  sumAreas(fallingOn(ratios), radiiMm, (ratio, area) => {
    whole += area;
    if (ratio > 1) above += area;
    if (ratio <= 0) return;
    touching += area;
    const band = Math.min(count - 1, Math.max(0, Math.floor(ratio / width) - first));
    areas[band] = areas[band]! + area;
  });
  const bands = areas.map(
    (area, i): PressureBand => ({
      from: (first + i) * width,
      to: (first + i + 1) * width,
      colour: Math.round(((i + 0.5) / count) * COLOURS - 0.5),
      share: area / whole,
    }),
  );
  return { bands, width, freeShare: 1 - touching / whole, aboveMeanShare: above / whole };
}

/**
 * Where the lining lets go, the pressure counts as falling on as it fell before, so that the edge of what touches lies
 * between two lines, as it does, and not on one of them.
 */
export function fallingOn(ratios: Values): number[][] {
  return ratios.map((row, i) =>
    row.map((value, j) => {
      if (value > 0) return value;
      const falls = [1, -1].map((way) => {
        const [near, far] = [ratios[i + way]?.[j] ?? 0, ratios[i + 2 * way]?.[j] ?? 0];
        return near > 0 ? 2 * near - far : 0;
      });
      return Math.min(...falls, -1e-9);
    }),
  );
}
