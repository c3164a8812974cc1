import { coverageFactor } from './coverageFactor.ts';
import { meanOfRepeats } from './meanOfRepeats.ts';

/** A check on a master: when, and what the gauge read less the master. */
export interface ErrorOnDay {
  readonly day: number;
  readonly offMm: number;
}

export interface Drift {
  /** The straight line through the checks: its height on the last day, and what it gains a day. */
  readonly lastMm: number;
  readonly mmPerDay: number;
  readonly standardMmPerDay: number;
  /** The slope is more than chance. */
  readonly sure: boolean;
  /** The first whole day on which the line is past the limit, where it drifts and that comes before the next check. */
  readonly outOn: number | null;
}

/** Fewer checks tell no drift. */
const LEAST_CHECKS = 5;

/**
 * Whether a gauge drifts: the least-squares line through its errors on a master over time.
 *   e = e₀ + b t,  u(b) = max(s_e, a/√12) / √Σ(t − t̄)²;  a drift where |b| > t_95(n−2) · u(b)
 *
 * e error [mm] · t day · s_e residual standard deviation [mm] · a resolution [mm] · n checks. It counts where the line
 * comes past the limit before the next check is due.
 * Valid: at least 5 checks on 3 days under one calibration; else null.
 * Source: line and its uncertainty JCGM 100:2008, H.3; what counts as a drift is common practice, no source
 * Example: 0, 1, 2, 3, 4 µm on days 0, 10, 20, 30, 40, limit 5 µm → 0.1 µm a day, past it on day 51 (tests/calc/measure/masterChecks.test.ts)
 */
export function masterDrift(
  errors: readonly ErrorOnDay[],
  {
    limitMm,
    stepMm,
    nextDay,
  }: { readonly limitMm: number; readonly stepMm: number | null; readonly nextDay: number },
): Drift | null {
  const days = errors.map(({ day }) => day);
  if (errors.length < LEAST_CHECKS || new Set(days).size < 3) return null;
  const [middle, mean] = [meanOfRepeats(days), meanOfRepeats(errors.map(({ offMm }) => offMm))];
  let [across, along] = [0, 0];
  for (const { day, offMm } of errors) {
    along += (day - middle) ** 2;
    across += (day - middle) * (offMm - mean);
  }
  const mmPerDay = across / along;
  const line = (day: number) => mean + mmPerDay * (day - middle);
  const squares = errors.reduce((sum, { day, offMm }) => sum + (offMm - line(day)) ** 2, 0);
  const nu = errors.length - 2;
  const scatter = Math.max(Math.sqrt(squares / nu), (stepMm ?? 0) / Math.sqrt(12));
  const standardMmPerDay = scatter / Math.sqrt(along);
  const sure = Math.abs(mmPerDay) > coverageFactor(0.95, nu) * standardMmPerDay + 1e-12;
  const last = Math.max(...days);
  const outOn = sure ? dayPast(limitMm, { last, lastMm: line(last), mmPerDay }) : null;
  return {
    lastMm: line(last),
    mmPerDay,
    standardMmPerDay,
    sure,
    outOn: outOn !== null && outOn <= nextDay ? outOn : null,
  };
}

/** The first whole day past the limit, on the side the line goes to; the last day where it is past it by then. */
function dayPast(
  limitMm: number,
  { last, lastMm, mmPerDay }: { readonly last: number; readonly lastMm: number; readonly mmPerDay: number },
): number {
  const toGo = limitMm - Math.sign(mmPerDay) * lastMm;
  return toGo < 0 ? last : last + Math.floor(toGo / Math.abs(mmPerDay) + 1e-9) + 1;
}
