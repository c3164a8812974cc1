import { type LengthUnit, lengthFigure, MM_PER_UNIT, printNumber } from '../../../../shared/words/print.ts';

const STEP: Readonly<Record<LengthUnit, number>> = { mm: 0.01, in: 0.001 };

/** One step of a caliper: 0.01 mm or 0.001 in, in mm. */
function stepMm(unit: LengthUnit): number {
  return STEP[unit] * MM_PER_UNIT[unit];
}

/**
 * `0.020 in`: what is missing, rounded up to a caliper's step, so that what is asked for is enough. `more` where reaching
 * it exactly is not.
 */
export function atLeast(mm: number, unit: LengthUnit, { more = false } = {}): string {
  const steps = mm / stepMm(unit);
  const whole = more ? Math.floor(steps + 1e-6) + 1 : Math.ceil(steps - 1e-6);
  return `${lengthFigure(Math.max(1, whole) * stepMm(unit), unit, 'coarse')} ${unit}`;
}

/** Two faces a caliper cannot tell apart. */
export function isFlush(mm: number, unit: LengthUnit): boolean {
  return Math.abs(mm) < stepMm(unit) / 2;
}

/** `1 thread`, `2 threads`, `1.7 threads`. */
export function threadsInWords(count: number): string {
  if (count === 1) return '1 thread';
  return `${Number.isInteger(count) ? count : printNumber(count, 1)} threads`;
}
