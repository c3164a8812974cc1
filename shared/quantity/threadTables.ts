/** Unified sizes up to 1-1/2 in: how the size is written, its basic major diameter, its series. */
export interface UnifiedSize {
  readonly written: string;
  readonly inch: number;
  readonly UNC: number | null;
  readonly UNF: number | null;
  readonly UNEF: number | null;
  /** Threads per inch of the constant-pitch series that stand in the table and have no other name. */
  readonly UN: readonly number[];
}

function size(
  written: string,
  inch: number,
  UNC: number | null,
  UNF: number | null,
  UNEF: number | null,
  UN: readonly number[] = [],
): UnifiedSize {
  return { written, inch, UNC, UNF, UNEF, UN };
}

/** ASME B1.1, table of standard series; from memory of the standard, with some of its rows seen. */
export const UNIFIED_SIZES: readonly UnifiedSize[] = [
  size('#0', 0.06, null, 80, null),
  size('#1', 0.073, 64, 72, null),
  size('#2', 0.086, 56, 64, null),
  size('#3', 0.099, 48, 56, null),
  size('#4', 0.112, 40, 48, null),
  size('#5', 0.125, 40, 44, null),
  size('#6', 0.138, 32, 40, null),
  size('#8', 0.164, 32, 36, null),
  size('#10', 0.19, 24, 32, null),
  size('#12', 0.216, 24, 28, 32),
  size('1/4', 0.25, 20, 28, 32),
  size('5/16', 0.3125, 18, 24, 32, [20, 28]),
  size('3/8', 0.375, 16, 24, 32, [20, 28]),
  size('7/16', 0.4375, 14, 20, 28, [16, 32]),
  size('1/2', 0.5, 13, 20, 28, [16, 32]),
  size('9/16', 0.5625, 12, 18, 24, [16, 20, 28, 32]),
  size('5/8', 0.625, 11, 18, 24, [12, 16, 20, 28, 32]),
  size('11/16', 0.6875, null, null, 24, [12, 16, 20, 28, 32]),
  size('3/4', 0.75, 10, 16, 20, [12, 28, 32]),
  size('13/16', 0.8125, null, null, 20, [12, 16, 28, 32]),
  size('7/8', 0.875, 9, 14, 20, [12, 16, 28, 32]),
  size('15/16', 0.9375, null, null, 20, [12, 16, 28, 32]),
  size('1', 1, 8, 12, 20, [16, 28, 32]),
  size('1-1/16', 1.0625, null, null, 18, [8, 12, 16, 20, 28]),
  size('1-1/8', 1.125, 7, 12, 18, [8, 16, 20, 28]),
  size('1-3/16', 1.1875, null, null, 18, [8, 12, 16, 20, 28]),
  size('1-1/4', 1.25, 7, 12, 18, [8, 16, 20, 28]),
  size('1-5/16', 1.3125, null, null, 18, [8, 12, 16, 20, 28]),
  size('1-3/8', 1.375, 6, 12, 18, [8, 16, 20, 28]),
  size('1-7/16', 1.4375, null, null, 18, [6, 8, 12, 16, 20, 28]),
  size('1-1/2', 1.5, 6, 12, 18, [8, 16, 20, 28]),
];

/** ISO 261: nominal diameter [mm] → pitches [mm], the coarse one first. M3 to M30; from memory of the standard. */
export const METRIC_PITCHES: ReadonlyMap<number, readonly [number, ...number[]]> = new Map<
  number,
  readonly [number, ...number[]]
>([
  [3, [0.5, 0.35]],
  [3.5, [0.6, 0.35]],
  [4, [0.7, 0.5]],
  [4.5, [0.75, 0.5]],
  [5, [0.8, 0.5]],
  [6, [1, 0.75]],
  [7, [1, 0.75]],
  [8, [1.25, 1, 0.75]],
  [9, [1.25, 1, 0.75]],
  [10, [1.5, 1.25, 1, 0.75]],
  [11, [1.5, 1, 0.75]],
  [12, [1.75, 1.5, 1.25, 1]],
  [14, [2, 1.5, 1.25, 1]],
  [16, [2, 1.5, 1]],
  [18, [2.5, 2, 1.5, 1]],
  [20, [2.5, 2, 1.5, 1]],
  [22, [2.5, 2, 1.5, 1]],
  [24, [3, 2, 1.5, 1]],
  [27, [3, 2, 1.5, 1]],
  [30, [3.5, 3, 2, 1.5, 1]],
]);
