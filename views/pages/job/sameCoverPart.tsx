import { type LengthUnit, printLength } from '../../../shared/words/print.ts';
import type { CoverJob } from '../../../shared/words/sameCover.ts';
import { DECISION_WORD } from '../../../shared/words/verdicts.ts';
import { day } from '../../parts/when.tsx';
import { STAGE_WORD } from './stepWords.ts';

/** Jobs of the same cover over the years: the wall then and now, and what was decided. */
export function SameCover({
  jobs,
  coverNumber,
  here = null,
  unit,
}: {
  readonly jobs: readonly CoverJob[];
  readonly coverNumber: string;
  /** Number of the job that is shown; null at receipt. */
  readonly here?: string | null;
  readonly unit: LengthUnit;
}) {
  const others = jobs.filter(({ number }) => number !== here);
  if (others.length === 0) return null;
  const wall = (mm: number | null) => (mm === null ? '—' : printLength(mm, unit));
  return (
    <section id="same-cover-jobs">
      <h3>
        Cover {coverNumber}: {others.length === 1 ? '1 other job' : `${others.length} other jobs`}
      </h3>
      <ul class="plain">
        {jobs.map((one) => (
          <li>
            {one.number === here ? (
              <b>This job</b>
            ) : (
              <a href={`/jobs/${encodeURIComponent(one.number)}`}>Job {one.number}</a>
            )}
            , {day(one.receivedOn)}: {one.familyName}
            {one.customerReference !== '' && `, ${one.customerReference}`}. Thinnest wall{' '}
            {wall(one.wallBeforeMm)} as received, {wall(one.wallAfterMm)} after the cut.{' '}
            {one.outcome === null
              ? STAGE_WORD[one.stage]
              : `${DECISION_WORD[one.outcome]}; ${STAGE_WORD[one.stage].toLowerCase()}`}
            .
          </li>
        ))}
      </ul>
    </section>
  );
}
