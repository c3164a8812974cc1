import { type LengthUnit, lengthFigure, MM_PER_STEP, printShare, wholeSteps } from './print.ts';

/**
 * The depth of cut as a machinist sets it, the same wherever it appears: rounded up to a step of the dial, so that the
 * printed cut cleans up too. `0.42` where that is exact, else `0.423`.
 */
function cutFigure(mm: number, unit: LengthUnit): string {
  return stepsFigure(wholeSteps(mm, unit, 'up'), unit);
}

/** The same with its unit. */
export function printCut(mm: number, unit: LengthUnit): string {
  return `${cutFigure(mm, unit)} ${unit}`;
}

/** The deepest cut that may be planned, rounded down so that the printed cut still leaves the minimum. */
export function printRoom(mm: number, unit: LengthUnit): string {
  return `${stepsFigure(wholeSteps(mm, unit, 'down'), unit)} ${unit}`;
}

function stepsFigure(steps: number, unit: LengthUnit): string {
  return lengthFigure(steps * MM_PER_STEP[unit], unit, steps % 10 === 0 ? 'coarse' : 'fine');
}

/** Passes that add up as printed: the depth reached after each on the dial, and how much deeper that is than before. */
export function passFigures(
  passes: readonly { readonly totalMm: number }[],
  unit: LengthUnit,
): readonly { readonly depth: string; readonly total: string }[] {
  const reached = passes.map(({ totalMm }) => wholeSteps(totalMm, unit, 'up'));
  return reached.map((steps, i) => ({
    depth: stepsFigure(steps - (reached[i - 1] ?? 0), unit),
    total: stepsFigure(steps, unit),
  }));
}

/** "72.2 %", or "more than 99.9 %": nothing measured is certain. */
export function printSure(share: number): string {
  return share > 0.999 ? 'more than 99.9 %' : printShare(share);
}

/** How sure a shop wants to be: `95 %`, `99.5 %`. */
export function printRequired(share: number): string {
  return `${Number((100 * share).toFixed(3))} %`;
}
