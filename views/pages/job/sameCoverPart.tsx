import { heatMarksInWords } from '../../../shared/words/heatMarks.ts';
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
      <MarksThenAndNow jobs={jobs} here={here} unit={unit} />
    </section>
  );
}

/** What the heat marks said each time, side by side: the same again points to the cover or its converter. */
function MarksThenAndNow({
  jobs,
  here,
  unit,
}: {
  readonly jobs: readonly CoverJob[];
  readonly here: string | null;
  readonly unit: LengthUnit;
}) {
  const told = jobs.filter(({ heatMarks }) => heatMarks.length > 0);
  if (!told.some(({ number }) => number !== here)) return null;
  return (
    <section class="table-box" tabindex={0} aria-label="Heat marks of this cover, job by job">
      <table>
        <caption>Heat marks of this cover, job by job. Advice; common practice, no source.</caption>
        <thead>
          <tr>
            <th scope="col">Job</th>
            <th scope="col">Received</th>
            <th scope="col">What the heat marks say</th>
          </tr>
        </thead>
        <tbody>
          {told.map(({ number, receivedOn, heatMarks }) => (
            <tr>
              <th scope="row">{number === here ? 'This job' : number}</th>
              <td>{day(receivedOn)}</td>
              <td>{heatMarksInWords(heatMarks, unit).join(' ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
