import type { CoverCheckInput } from '../../../shared/words/cover.ts';
import { printDay } from '../../../shared/words/day.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { listInWords } from '../../../shared/words/print.ts';

/**
 * Whether the gauges used were within their calibration on the day they were used.   due ≥ day of the readings
 *
 * Both are days, as `2026-03-01`. Nothing is found where no gauge was named.
 * Valid: the day itself still counts.   Source: this program's own rule
 * Example: due 2026-03-01, used 2026-03-02 → caution (tests/calc/judge/gaugeFindings.test.ts)
 */
export function gaugeFindings({ gaugesUsed = [], measuredOn = null }: CoverCheckInput): readonly Finding[] {
  if (gaugesUsed.length === 0) return [];
  const overdue = gaugesUsed.filter(
    ({ dueOn }) => dueOn !== null && measuredOn !== null && dueOn < measuredOn,
  );
  const undated = gaugesUsed.filter(({ dueOn }) => dueOn === null);
  const said = (gauges: typeof gaugesUsed) =>
    listInWords(gauges.map(({ name, dueOn }) => (dueOn === null ? name : `${name}, due ${printDay(dueOn)}`)));
  const found = (status: Finding['status'], sentence: string): readonly Finding[] => [
    {
      id: 'gauge-due',
      title: 'Gauge calibration',
      status,
      value: null,
      limit: null,
      unit: '',
      sentence,
      source: 'gauges in the catalog',
      answer: null,
    },
  ];
  if (measuredOn === null && undated.length < gaugesUsed.length) {
    return found('not-checked', 'The day of the readings is missing, so calibration can’t be checked.');
  }
  if (overdue.length > 0) {
    return found(
      'caution',
      `Calibration was overdue on ${printDay(measuredOn!)}: ${said(overdue)}. Calibrate, or measure again with another gauge.`,
    );
  }
  if (undated.length > 0) return found('not-checked', `No calibration date is entered for ${said(undated)}.`);
  return found('pass', `In calibration: ${said(gaugesUsed)}.`);
}
