import type { CatalogueGauge } from '../../shared/words/catalogue.ts';
import type { GaugeUsed } from '../../shared/words/cover.ts';
import { daysAfter } from '../../shared/words/day.ts';
import type { Finding } from '../../shared/words/finding.ts';
import type { MasterCheck, MasterChecks } from '../../shared/words/gauges/masterChecks.ts';
import type { ChosenGauge } from '../../shared/words/job.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import { masterFindings } from '../calc/judge/masterFindings.ts';
import { type Drift, masterDrift } from '../calc/measure/masterDrift.ts';
import { masterLimit } from '../calc/measure/masterLimit.ts';
import { calibrationOf } from './gauges.ts';

const DAY_MS = 24 * 3600 * 1000;
const dayNumber = (day: string) => Date.parse(`${day}T00:00:00Z`) / DAY_MS;
/** Where the shop asks for no interval, a drift is looked ahead this far. */
const AHEAD_DAYS = 30;

export const offOf = ({ readingMm, masterMm }: MasterCheck): number => readingMm - masterMm;

/** The gauges chosen, with what their checks on a master say of the day they were used. */
export function gaugesUsed(
  chosen: readonly ChosenGauge[],
  checks: readonly MasterCheck[],
  day: string | null,
): readonly GaugeUsed[] {
  return chosen.map(({ id, gauge }) => {
    const own = checks.filter(({ gaugeId }) => gaugeId === id);
    return { name: gauge.name, dueOn: gauge.dueOn, masterChecks: masterChecksAt(gauge, own, day) };
  });
}

/** What a gauge's checks say of a day; null where there are none and none is asked for. */
function masterChecksAt(
  gauge: CatalogueGauge,
  checks: readonly MasterCheck[],
  day: string | null,
): MasterChecks | null {
  const everyDays = gauge.checkEveryDays ?? null;
  const stand = checks.filter(({ withdrawn }) => withdrawn === null);
  if (stand.length === 0 && everyDays === null) return null;
  const until = stand.filter((one) => day === null || one.day <= day);
  const last = until.at(-1) ?? null;
  const next = stand.find((one) => day !== null && one.day > day) ?? null;
  const outOn = last === null ? null : (driftOf(gauge, until)?.outOn ?? null);
  return {
    everyDays,
    lastOn: last?.day ?? null,
    lastOffMm: last && offOf(last),
    nextOn: next?.day ?? null,
    nextOffMm: next && offOf(next),
    limitMm: limitOf(gauge),
    driftsOutOn: outOn === null ? null : dayOf(outOn),
  };
}

/** What a gauge's checks say on a day, as an answer with it tells it; null where there is nothing to say. */
export function masterFinding(
  gauge: CatalogueGauge,
  checks: readonly MasterCheck[],
  day: string,
  unit: LengthUnit,
): Finding | null {
  const used = [{ name: gauge.name, dueOn: gauge.dueOn, masterChecks: masterChecksAt(gauge, checks, day) }];
  return masterFindings({ gaugesUsed: used, measuredOn: day }, unit)[0] ?? null;
}

const dayOf = (number: number) => daysAfter('1970-01-01', number);

/** How far off its master a gauge may read; null where nothing is known of its uncertainty. */
export function limitOf(gauge: CatalogueGauge): number | null {
  const { resolutionMm: stepMm, repeatabilityMm } = gauge;
  return masterLimit({ calibration: calibrationOf(gauge), stepMm, repeatabilityMm })?.value ?? null;
}

/** The line through the checks under the calibration of the last one; null where they are too few to tell. */
export function driftOf(gauge: CatalogueGauge, checks: readonly MasterCheck[]): Drift | null {
  const stand = checks.filter(({ withdrawn }) => withdrawn === null);
  const [last, limitMm] = [stand.at(-1), limitOf(gauge)];
  if (last === undefined || limitMm === null) return null;
  const errors = stand
    .filter(({ dueOn }) => dueOn === last.dueOn)
    .map((one) => ({ day: dayNumber(one.day), offMm: offOf(one) }));
  const nextDay = dayNumber(last.day) + (gauge.checkEveryDays ?? AHEAD_DAYS);
  return masterDrift(errors, { limitMm, stepMm: gauge.resolutionMm, nextDay });
}
