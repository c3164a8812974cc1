import type { CoverCheckInput } from '../../../shared/words/cover.ts';
import { daysAfter, printDay } from '../../../shared/words/day.ts';
import type { Finding, Status } from '../../../shared/words/finding.ts';
import type { MasterChecks } from '../../../shared/words/gauges/masterChecks.ts';
import { briefLength, type LengthUnit, printAgainst } from '../../../shared/words/print.ts';

const DUST_MM = 1e-9;

interface Said {
  readonly status: Status;
  readonly sentence: string;
  /** How far off it read; null where that is not what is told. */
  readonly offMm: number | null;
}

/**
 * Whether the gauges used agreed with their masters.   |e| ≤ e_max, and day of last check + days between ≥ day of use
 *
 * e what the gauge read less the master, at the last check up to the day of use and at the first one after it · e_max as
 * of masterLimit. Nothing is found of a gauge that nobody checks or asks a check of.
 * Valid: the day the check is due still counts.   Source: this program’s own rule; common practice, no source
 * Example: 0.006 mm over on Mar 1, 0.005 allowed → caution (tests/calc/judge/masterFindings.test.ts)
 */
export function masterFindings(
  { gaugesUsed = [], measuredOn = null }: Pick<CoverCheckInput, 'gaugesUsed' | 'measuredOn'>,
  unit: LengthUnit,
): readonly Finding[] {
  const said = gaugesUsed.flatMap(({ name, masterChecks = null }) =>
    masterChecks === null || isUnasked(masterChecks)
      ? []
      : [{ masterChecks, ...saidOf(name, masterChecks, measuredOn, unit) }],
  );
  const [worst] = said.toSorted((a, b) => GRAVEST.indexOf(a.status) - GRAVEST.indexOf(b.status));
  if (worst === undefined) return [];
  const alike = said.filter(({ status }) => status === worst.status);
  return [
    {
      id: 'gauge-master',
      title: 'Gauge on its master',
      status: worst.status,
      value: worst.offMm === null ? null : Math.abs(worst.offMm),
      limit: worst.offMm === null ? null : worst.masterChecks.limitMm,
      unit: worst.offMm === null ? '' : 'mm',
      sentence: alike.map(({ sentence }) => sentence).join(' '),
      source: 'checks on a master in the catalog',
      answer: null,
    },
  ];
}

const GRAVEST: readonly Status[] = ['fail', 'caution', 'not-checked', 'pass'];

/** Nobody asks for checks, and none says anything of the readings. */
function isUnasked({ everyDays, lastOn, nextOffMm, limitMm }: MasterChecks): boolean {
  return everyDays === null && lastOn === null && !isOff(nextOffMm, limitMm);
}

function isOff(offMm: number | null, limitMm: number | null): boolean {
  return limitMm !== null && offMm !== null && Math.abs(offMm) > limitMm + DUST_MM;
}

function saidOf(name: string, checks: MasterChecks, usedOn: string | null, unit: LengthUnit): Said {
  const { everyDays, lastOn, lastOffMm, nextOn, nextOffMm, limitMm, driftsOutOn } = checks;
  const caution = (sentence: string, offMm: number | null = null): Said => ({
    status: 'caution',
    sentence,
    offMm,
  });
  if (isOff(lastOffMm, limitMm))
    return caution(offInWords(name, lastOffMm!, lastOn!, limitMm!, unit), lastOffMm);
  if (isOff(nextOffMm, limitMm))
    return caution(offInWords(name, nextOffMm!, nextOn!, limitMm!, unit), nextOffMm);
  const plain = (status: Status, sentence: string): Said => ({ status, sentence, offMm: null });
  if (usedOn === null && everyDays !== null)
    return plain(
      'not-checked',
      `The day of the readings is missing, so the last check of ${name} can’t be judged.`,
    );
  if (everyDays !== null && usedOn !== null && (lastOn === null || daysAfter(lastOn, everyDays) < usedOn)) {
    const when =
      lastOn === null ? 'was not checked on a master' : `was last checked on a master on ${printDay(lastOn)}`;
    return caution(`${name} ${when}; a check is due every ${daysInWords(everyDays)}. Check it on a master.`);
  }
  if (driftsOutOn !== null)
    return caution(
      `${name} drifts: past ${briefLength(limitMm!, unit)} off its master by ${printDay(driftsOutOn)}. Have it calibrated.`,
    );
  if (limitMm === null)
    return plain(
      'not-checked',
      `No uncertainty is entered for ${name}, so its check on a master can’t be judged.`,
    );
  return {
    status: 'pass',
    sentence: `${name} agreed with its master on ${printDay(lastOn!)}: ${offInFigures(lastOffMm!, limitMm, unit)} off, ${briefLength(limitMm, unit)} allowed.`,
    offMm: lastOffMm,
  };
}

function offInWords(name: string, offMm: number, day: string, limitMm: number, unit: LengthUnit): string {
  const way = offMm > 0 ? 'over' : 'under';
  return `${name} read ${offInFigures(offMm, limitMm, unit)} ${way} its master on ${printDay(day)}; ${briefLength(limitMm, unit)} is allowed. Have it calibrated, or measure again with another gauge.`;
}

function daysInWords(days: number): string {
  return days === 1 ? 'day' : `${days} days`;
}

/** As brief as the limit, unless the two would read alike. */
function offInFigures(offMm: number, limitMm: number, unit: LengthUnit): string {
  const brief = briefLength(Math.abs(offMm), unit);
  return brief === briefLength(limitMm, unit) ? printAgainst(Math.abs(offMm), limitMm, unit) : brief;
}
