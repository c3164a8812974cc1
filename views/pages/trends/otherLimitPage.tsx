import { thanNew } from '../../../shared/words/bending/thanNew.ts';
import { briefLength, printAgainst, printLength, printShare } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import {
  CONFIDENCES,
  type JudgedTwice,
  type OtherLimit,
  type PeaksCounted,
} from '../../../shared/words/trends/otherLimit.ts';
import { tooFew } from '../../../shared/words/trends/trendsShown.ts';
import { VERDICT_WORD } from '../../../shared/words/verdicts.ts';
import { HistogramDrawn } from '../../drawings/trends/histogramDrawn.tsx';
import { RowBars } from '../../drawings/trends/rowBars.tsx';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field } from '../../parts/form/fieldBox.tsx';
import { Hidden } from '../../parts/form/hidden.tsx';
import { When } from '../../parts/when.tsx';
import { count, TwinTable } from './twinTable.tsx';

export interface OtherLimitProps {
  readonly frame: Frame;
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly underWay: { readonly words: string; readonly done: number; readonly of: number } | null;
  readonly stopped: string | null;
  /** The last one that came to its end; null while there is none. */
  readonly found: OtherLimit | null;
  /** Of the shop limits now. */
  readonly criteriaRevision: number;
}

const SWAPS = { 'hx-target': '#other-limit', 'hx-select': '#other-limit', 'hx-swap': 'outerHTML' } as const;

/** What another minimum wall would have done to every cover that was measured. Nothing is changed by asking. */
export function OtherLimitPage(props: OtherLimitProps) {
  const { frame, found, underWay } = props;
  return (
    <Layout title="Another minimum wall" here="trends" {...frame}>
      <p class="back">
        <a href="/trends">Trends</a>
      </p>
      <h1>What another minimum wall would have done</h1>
      <p class="hint">
        Every cover that was measured is judged again from its readings, under the shop limits of today and
        with the shop’s minimum moved. Makers’ minimums stay. Bending is left out of the verdict. Nothing is
        changed.
      </p>
      <div id="other-limit">
        {underWay === null ? <Ask {...props} /> : <UnderWayPart underWay={underWay} />}
        {underWay === null && found !== null && <Found {...props} found={found} />}
      </div>
    </Layout>
  );
}

function Ask({ frame, fields, faults, stopped }: OtherLimitProps) {
  const error = errorsOf(faults);
  if (!may(frame, 'recorder')) return <p class="note">Only who records readings can start this.</p>;
  return (
    <form method="post" action="/trends/limit" id="limit-form" hx-post="/trends/limit" {...SWAPS}>
      <ErrorSummary faults={faults} />
      {stopped && (
        <p class="note" role="alert">
          {stopped}
        </p>
      )}
      <Hidden fields={{ unit: frame.lengthUnit }} />
      <div class="fields">
        <Field
          label="Move the shop’s minimum by"
          name="by"
          value={fields.by}
          unit={frame.lengthUnit}
          size="figure"
          error={error('by')}
        />
        <Choice
          label="Which way"
          name="way"
          value={fields.way ?? 'less'}
          options={[
            { value: 'less', label: 'less wall' },
            { value: 'more', label: 'more wall' },
          ]}
        />
      </div>
      <div class="actions">
        <button class="button first" type="submit" id="judge-again" name="start" data-then="stop">
          Judge every cover again
        </button>
      </div>
    </form>
  );
}

function UnderWayPart({ underWay }: { readonly underWay: NonNullable<OtherLimitProps['underWay']> }) {
  const { words, done, of } = underWay;
  return (
    <div class="under-way" hx-get="/trends/limit" hx-trigger="every 1s" {...SWAPS}>
      <label for="judging" id="judging-words">
        {words}
      </label>
      <progress id="judging" {...(of > 1 && { value: done, max: of })} />
      <noscript>
        <p>Load this page again to see how far it is.</p>
      </noscript>
      <form method="post" action="/trends/limit/stop" id="stop-form" hx-post="/trends/limit/stop" {...SWAPS}>
        <button
          class="button"
          type="submit"
          id="stop-judging"
          name="stop"
          data-then="start"
          aria-describedby="judging-words"
        >
          Stop it
        </button>
      </form>
    </div>
  );
}

/** "0.005 in less". */
function movedInWords(byMm: number, unit: Frame['lengthUnit']): string {
  return `${briefLength(Math.abs(byMm), unit)} ${byMm < 0 ? 'less' : 'more'}`;
}

const covers = (n: number) => `${count(n)} ${n === 1 ? 'cover' : 'covers'}`;

function Found({ frame, found, criteriaRevision }: OtherLimitProps & { readonly found: OtherLimit }) {
  const unit = frame.lengthUnit;
  const { byMm, judged, left, makers, saved, lost, otherwise, at } = found;
  return (
    <section id="limit-found">
      <h2>With {movedInWords(byMm, unit)}</h2>
      <p data-tell>
        <b>
          {covers(saved.length)} of {count(judged)} would have been saved
          {lost.length > 0 && `, ${count(lost.length)} lost`}.
        </b>{' '}
        {otherwise.length > 0 && `${covers(otherwise.length)} would be answered otherwise. `}
        {makers > 0 && `For ${count(makers)} the maker’s minimum governs either way. `}
        {left > 0 &&
          `${covers(left)} without a minimum of the shop, or that can’t be worked out, are left out.`}
      </p>
      <p class="hint">
        Worked out <When at={at} />
        {criteriaRevision !== found.criteriaRevision && ', under shop limits that have changed since'}. A
        thinner wall bends more: this counts covers, and says nothing of what is safe. Makers’ figures come
        first.
      </p>
      {saved.length > 0 && <Saved frame={frame} found={found} />}
      <Changed frame={frame} title="Lost" some={lost} />
      <Changed frame={frame} title="Answered otherwise" some={otherwise} />
      {saved.length + lost.length + otherwise.length > 0 && (
        <p>
          <a href="/trends/limit/covers.csv" id="limit-csv">
            All of these covers as CSV
          </a>
        </p>
      )}
    </section>
  );
}

/** How sure each would be, how thin it would be left, and what became of others so thin. */
function Saved({ frame, found }: { readonly frame: Frame; readonly found: OtherLimit }) {
  const unit = frame.lengthUnit;
  const { saved, bands, peaks } = found;
  const sure = CONFIDENCES.map((least, i) => ({
    label: least === 0 ? `less than ${printShare(0.9, 0)}` : `${printShare(least, 0)} or more`,
    n: saved.filter(
      ({ confidence }) =>
        confidence !== null && confidence >= least && (i === 0 || confidence < CONFIDENCES[i - 1]!),
    ).length,
  }));
  const unknown = saved.filter(({ confidence }) => confidence === null).length;
  const widthMm = bands.length === 0 ? 0 : bands[0]!.toMm - bands[0]!.fromMm;
  return (
    <>
      <div class="drawing">
        <div class="views">
          <figure class="drawing">
            <p class="view-caption">covers saved, by confidence that the wall is enough</p>
            <RowBars
              id="sure-drawn"
              title="Confidence in the covers saved"
              rows={unknown > 0 ? [...sure, { label: 'not worked out', n: unknown }] : sure}
            />
          </figure>
          <figure class="drawing">
            <p class="view-caption">
              covers saved, by wall left <small>{unit}</small>
            </p>
            <HistogramDrawn
              id="left-drawn"
              title="Wall left on the covers saved"
              histogram={{ widthMm, bins: bands.map(({ fromMm, saved: n }) => ({ fromMm, n })) }}
              unit={unit}
            />
          </figure>
        </div>
      </div>
      <TwinTable
        caption="Wall left, and what became of others released with so much"
        heads={['Wall left', 'Saved', 'Released before', 'Came back', '95 % interval', 'Enough to tell']}
        rows={bands.map((one) => [
          `${briefLength(one.fromMm, unit)} to ${briefLength(one.toMm, unit)}`,
          count(one.saved),
          count(one.released),
          count(one.back),
          one.interval === null ? '' : `${printShare(one.interval.low)} to ${printShare(one.interval.high)}`,
          one.interval === null || tooFew(one.interval) ? 'too few' : 'yes',
        ])}
        csv="/trends/limit/bands.csv"
      />
      <h3>Bending</h3>
      <p id="limit-bending">
        Peak lining pressure after the cut: covers saved {peakInWords(peaks.saved)}; released and came back{' '}
        {peakInWords(peaks.back)}; released and stayed out {peakInWords(peaks.stayed)}.
        {peaks.notWorkedOut > 0 &&
          ` Not worked out for ${count(peaks.notWorkedOut)} of the covers saved. Bending needs its figures in the shop limits and the cover type, and is done for the first 40.`}
      </p>
      <Changed frame={frame} title="Saved" some={saved} />
    </>
  );
}

function peakInWords({ n, mean, most }: PeaksCounted): string {
  if (mean === null || most === null) return 'not known';
  return `${thanNew(mean)} on average, ${thanNew(most)} at most (${count(n)})`;
}

/** A longer list is in the CSV. */
const MOST_LISTED = 50;

function Changed({
  frame,
  title,
  some,
}: {
  readonly frame: Frame;
  readonly title: string;
  readonly some: readonly JudgedTwice[];
}) {
  const unit = frame.lengthUnit;
  if (some.length === 0) return null;
  return (
    <details class="more-findings" open={some.length <= 10}>
      <summary>
        {title}: {covers(some.length)}
        {some.length > MOST_LISTED && `, the first ${MOST_LISTED}`}
      </summary>
      <section class="scroll" tabindex={0} aria-label={title}>
        <table class="figures">
          <thead>
            <tr>
              <th scope="col">Job</th>
              <th scope="col">Cover type</th>
              <th scope="col">Today</th>
              <th scope="col">Then</th>
              <th scope="col">Wall left</th>
              <th scope="col">Minimum then</th>
              <th scope="col">Confidence</th>
            </tr>
          </thead>
          <tbody>
            {some.slice(0, MOST_LISTED).map((one) => (
              <tr>
                <th scope="row">
                  <a href={`/jobs/${encodeURIComponent(one.number)}`}>{one.number}</a>
                </th>
                <td>{one.coverType}</td>
                <td>{VERDICT_WORD[one.before]}</td>
                <td>{VERDICT_WORD[one.after]}</td>
                <td>{one.leftMm === null ? '' : printAgainst(one.leftMm, one.minimumMm, unit)}</td>
                <td>{printLength(one.minimumMm, unit)}</td>
                <td>{one.confidence === null ? 'not worked out' : printShare(one.confidence)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}
