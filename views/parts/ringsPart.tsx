import type { Finding } from '../../shared/words/finding.ts';
import type { Fault } from '../../shared/words/refusal.ts';
import { type Frame, may } from '../frame.ts';
import { ErrorSummary } from './form/errorSummary.tsx';
import { errorsOf } from './form/errorsOf.ts';
import { Field } from './form/fieldBox.tsx';
import { InForm } from './form/inForm.ts';
import { WhoField } from './form/whoField.tsx';
import { day, When } from './when.tsx';

export interface RingsProps {
  /** Signed, the worst first. */
  readonly open: readonly {
    readonly number: string;
    readonly familyName: string;
    readonly signedAt: string;
    readonly signedBy: string;
    /** The cover without its ring; null where that could not be worked out. */
    readonly withoutRing: Finding | null;
  }[];
  readonly closed: readonly {
    readonly job: string;
    readonly word: string;
    readonly who: string;
    readonly at: string;
  }[];
  /** What was sent for one of them and could not be saved. */
  readonly refused: {
    readonly number: string;
    readonly fields: Readonly<Record<string, string>>;
    readonly faults: readonly Fault[];
  } | null;
}

/** Covers that went out on a ring nobody recorded as joined to the pads, until each is closed with a word. */
export function Rings({ open, closed, refused, frame }: RingsProps & { frame: Frame }) {
  if (open.length === 0 && closed.length === 0 && refused === null) return null;
  return (
    <section id="rings">
      <h2>Signed on a stiffening ring not recorded as welded to the pads</h2>
      {refused && !open.some(({ number }) => number === refused.number) && (
        <ErrorSummary faults={refused.faults} goTo={false} />
      )}
      {open.length > 0 && (
        <>
          <p class="note">
            These jobs were signed counting on a stiffening ring. It is not recorded that the ring is welded
            to the pads all around. Such a ring does not count. The worst is first.
          </p>
          <ul class="rings-open">
            {open.map((one, i) => (
              <li>
                <p>
                  <a href={`/jobs/${encodeURIComponent(one.number)}`}>Job {one.number}</a>, {one.familyName},
                  signed by {one.signedBy}, <When at={one.signedAt} />.{' '}
                  {one.withoutRing ? `Without its ring: ${one.withoutRing.sentence}` : NOT_WORKED_OUT}
                </p>
                {may(frame, 'recorder') && (
                  <Close
                    id={`ring-${i}`}
                    number={one.number}
                    initials={frame.initials}
                    refused={refused?.number === one.number ? refused : null}
                  />
                )}
              </li>
            ))}
          </ul>
        </>
      )}
      {closed.length > 0 && (
        <details class="twin">
          <summary>Closed: {closed.length}</summary>
          <ul>
            {closed.map(({ job, word, who, at }) => (
              <li>
                <a href={`/jobs/${encodeURIComponent(job)}`}>Job {job}</a>: {word} ({who}, {day(at)})
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

const NOT_WORKED_OUT = 'How it bends without its ring could not be worked out.';

function Close({
  id,
  number,
  initials,
  refused,
}: {
  id: string;
  number: string;
  initials: string;
  refused: RingsProps['refused'];
}) {
  const error = errorsOf(refused?.faults ?? []);
  return (
    <InForm.Provider value={id}>
      <form method="post" action={`/jobs/${encodeURIComponent(number)}/ring-closed`} id={id} class="job-form">
        {refused && <ErrorSummary faults={refused.faults} />}
        <div class="fields">
          <Field
            label="What was found or done"
            name="word"
            value={refused?.fields.word}
            error={error('word')}
            size="full"
          />
          <WhoField known={initials} typed={refused?.fields.who} error={error('who')} />
        </div>
        <div class="actions">
          <button class="button" type="submit" id={`${id}-send`}>
            Close job {number}
          </button>
        </div>
      </form>
    </InForm.Provider>
  );
}
