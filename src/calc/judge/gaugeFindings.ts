import type { CoverCheckInput } from '../../../shared/words/cover.ts';
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
    listInWords(gauges.map(({ name, dueOn }) => (dueOn === null ? name : `${name}, due ${dueOn}`)));
  const base = {
    id: 'gauge-due',
    title: 'Calibration of the gauges',
    value: null,
    limit: null,
    unit: '',
    source: 'the catalogue of gauges',
    answer: null,
  };
  if (measuredOn === null && undated.length < gaugesUsed.length) {
    return [
      {
        ...base,
        status: 'not-checked',
        sentence:
          'Whether the gauges were within their dates is not known: the day of the readings was not given.',
      },
    ];
  }
  if (overdue.length > 0) {
    return [
      {
        ...base,
        status: 'caution',
        sentence: `Past its date when it was used on ${measuredOn}: ${said(overdue)}. Have it calibrated, or measure again with another.`,
      },
    ];
  }
  if (undated.length > 0) {
    return [
      { ...base, status: 'not-checked', sentence: `No date of calibration is known of ${said(undated)}.` },
    ];
  }
  return [{ ...base, status: 'pass', sentence: `Within its date: ${said(gaugesUsed)}.` }];
}
