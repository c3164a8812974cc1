import { shownInList } from '../../../shared/measuring/askedInWords.ts';
import type { StandingReading } from '../../../shared/measuring/benchState.ts';
import { writeStep } from '../../../shared/measuring/steps.ts';
import { READING_WORD } from '../../../shared/words/readings.ts';
import { type MeasuringProps, measuringHref } from './measuringProps.ts';

/** What was passed over, and what the other readings show to be off: each leads there with one press. */
export function LeftLists(props: MeasuringProps) {
  const { skipped, toCheck, frame, pass } = props;
  return (
    <div class="left-lists">
      <section aria-labelledby="skipped-head" id="skipped" hidden={skipped.length === 0}>
        <h2 id="skipped-head">
          Skipped: <span id="skipped-count">{skipped.length}</span>
        </h2>
        <ul class="plain pressed" id="skipped-list">
          {skipped.map(({ step, label }) => (
            <li>
              <a class="button" href={measuringHref(props, { at: step })}>
                {label}
              </a>
            </li>
          ))}
        </ul>
      </section>
      <section aria-labelledby="to-check-head" id="to-check" hidden={toCheck.length === 0}>
        <h2 id="to-check-head">
          To check: <span id="to-check-count">{toCheck.length}</span>
        </h2>
        <ul class="plain" id="to-check-list">
          {toCheck.map(({ reading, doubt }) => (
            <li class="doubt">
              <p>
                {reading.at >= 0 && <b>{reading.at + 1}</b>} {READING_WORD[pass][reading.kind].toLowerCase()}{' '}
                {reading.place}:{' '}
                {doubt?.question ?? `${shownInList(reading, frame.lengthUnit)}, not confirmed.`}
              </p>
              <div class="actions">
                <a class="button" href={readingHref(props, reading)}>
                  Measure again
                </a>
              </div>
            </li>
          ))}
        </ul>
      </section>
    </div>
  );
}

/** The measuring page, asking for a reading that is there already. */
function readingHref(props: MeasuringProps, one: StandingReading, more: Record<string, string> = {}): string {
  const at: Record<string, string> =
    one.at >= 0
      ? { at: writeStep({ kind: one.kind, at: one.at, nth: nthOf(props, one) }) }
      : { ma: String(one.angleDeg), mr: `${one.radiusMm} mm` };
  return measuringHref(props, { ...at, ...more });
}

/** Which of the readings of its kind at its station it is. */
function nthOf({ standing }: MeasuringProps, one: StandingReading): number {
  return standing.filter(({ kind, at }) => kind === one.kind && at === one.at).indexOf(one);
}

/** What is on the server, newest first, and what is still on this tablet. */
export function KeptLists(props: MeasuringProps) {
  const { standing, pass, frame } = props;
  return (
    <div class="two even kept-lists">
      <section aria-labelledby="on-tablet-head">
        <h2 id="on-tablet-head">
          Waiting on this tablet: <span id="waiting-count">0</span>
        </h2>
        <noscript>
          <p class="hint">Scripts are off, so each reading goes to the server at once.</p>
        </noscript>
        <p class="trouble" id="trouble" role="status" />
        <p class="hint" id="nothing-waits">
          Nothing waiting.
        </p>
        <p class="hint" id="keep-open" hidden />
        <ol class="plain readings" id="on-tablet" tabindex={0} aria-labelledby="on-tablet-head" />
      </section>
      <section aria-labelledby="on-server-head">
        <h2 id="on-server-head">
          Saved: <span id="server-count">{standing.length}</span>
        </h2>
        <ol class="plain readings" id="on-server" tabindex={0} aria-labelledby="on-server-head">
          {[...standing].reverse().map((one) => (
            <li data-id={one.id}>
              <span>
                {one.at >= 0 && <b>{one.at + 1}</b>} {READING_WORD[pass][one.kind].toLowerCase()} {one.place}:{' '}
                <b>{shownInList(one, frame.lengthUnit)}</b>, {one.who}
                {one.doubtful && <b>, not confirmed</b>}
              </span>
              <span class="reading-acts">
                <a class="button quiet" data-do="correct" href={readingHref(props, one)}>
                  correct<span class="unseen"> {one.shown}</span>
                </a>
                {one.kind === 'wall' && (
                  <a class="button quiet" data-do="again" href={readingHref(props, one, { again: '1' })}>
                    repeat<span class="unseen"> {one.place}</span>
                  </a>
                )}
              </span>
            </li>
          ))}
        </ol>
      </section>
    </div>
  );
}
