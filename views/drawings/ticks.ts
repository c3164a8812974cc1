import { type LengthUnit, MM_PER_UNIT, printNumber } from '../../shared/words/print.ts';

export interface Tick {
  readonly mm: number;
  /** The figure beside it; null for a small tick between two. */
  readonly text: string | null;
}

export interface Scale {
  readonly leastMm: number;
  readonly mostMm: number;
  readonly ticks: readonly Tick[];
}

const STEPS = [1, 2, 5, 10];
const DUST = 1e-9;

/** An axis of round figures in the person's unit, that starts and ends on a tick and holds both lengths. */
export function roundScale(leastMm: number, mostMm: number, unit: LengthUnit, figures: number): Scale {
  const perUnit = MM_PER_UNIT[unit];
  const least = leastMm / perUnit;
  const most = mostMm / perUnit;
  const rough = Math.max(most - least, 1e-6) / figures;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * (STEPS.find((candidate) => candidate * power >= rough - DUST) ?? 10);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + DUST));
  const small = step / 2;
  const first = Math.floor(least / small + DUST);
  const last = Math.ceil(most / small - DUST);
  const ticks: Tick[] = [];
  for (let i = first; i <= last; i++) {
    ticks.push({ mm: i * small * perUnit, text: i % 2 === 0 ? printNumber(i * small, decimals) : null });
  }
  return { leastMm: first * small * perUnit, mostMm: last * small * perUnit, ticks };
}
