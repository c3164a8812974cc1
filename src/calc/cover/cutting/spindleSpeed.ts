import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';

/**
 * Spindle speed for a cutting speed at a diameter, kept within the lathe's range.   N = 1000·V/(π·D)
 *
 * V cutting speed [m/min] · D diameter [mm] · N [rpm].
 * Valid: V, D > 0. Outside the lathe's range its nearest speed is given, and a warning says so.
 * Source: definition of cutting speed; Machinery's Handbook, speeds and feeds (N = 12·V/(π·D) in ft/min and in)
 * Example: 150 m/min at Ø 264 → 180.9 rpm (tests/published/machining.test.ts)
 */
export function spindleSpeed({
  cuttingSpeedMPerMin,
  diameterMm,
  leastRpm,
  mostRpm,
}: {
  readonly cuttingSpeedMPerMin: number;
  readonly diameterMm: number;
  readonly leastRpm: number;
  readonly mostRpm: number;
}): Answer {
  const wanted = (1000 * cuttingSpeedMPerMin) / (Math.PI * diameterMm);
  const value = Math.min(mostRpm, Math.max(leastRpm, wanted));
  const rpm = (x: number) => printNumber(x, 0);
  return {
    symbol: 'N',
    value,
    unit: 'rpm',
    how: [
      {
        formula: 'N = 1000·V/(π·D)',
        numbers: `N = 1000 · ${cuttingSpeedMPerMin} m/min / (π · ${printNumber(diameterMm, 1)} mm) = ${printNumber(wanted, 1)} rpm`,
        source: 'definition of cutting speed, at the friction surface outer diameter',
      },
    ],
    warnings:
      value === wanted
        ? []
        : [
            {
              code: value > wanted ? 'faster-than-asked' : 'slower-than-asked',
              text: `The cutting speed needs ${rpm(wanted)} rpm; the lathe’s ${value > wanted ? 'minimum' : 'maximum'} is ${rpm(value)} rpm.`,
            },
          ],
  };
}
