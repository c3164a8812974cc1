import type { Answer, Warning } from '../answer.ts';

/** One engagement of the lock-up clutch, and the cover as a slab. */
export interface HeatInput {
  /** Heat into the cover at the start of the slip. */
  readonly fluxWPerM2: number;
  readonly slipTimeS: number;
  readonly thicknessMm: number;
  readonly conductivityWPerMK: number;
  readonly densityKgPerM3: number;
  readonly specificHeatJPerKgK: number;
  /** Pressure peak over mean: behind a stud the flux is so much larger. */
  readonly pressurePeak: number | null;
  /** Temperature before the engagement; with it, temperatures and temper colors are given too. */
  readonly startTemperatureC: number | null;
}

export interface HeatRise {
  readonly peakRiseK: number;
  readonly peakAtS: number;
  /** Rise of the rubbed face when the slip ends. */
  readonly endRiseK: number;
  /** Rise once the heat has spread through the thickness. */
  readonly evenRiseK: number;
}

export interface HeatAnswer extends HeatRise {
  /** null without a pressure peak. */
  readonly behindStud: HeatRise | null;
  /** At the peak, behind a stud where a pressure peak was given; null without a start temperature. */
  readonly peakTemperatureC: number | null;
  /** The color steel takes there, a rough guide. null below the first color, or without a start temperature. */
  readonly temperColour: string | null;
  readonly warnings: readonly Warning[];
  readonly answers: Readonly<Record<string, Answer>>;
}
