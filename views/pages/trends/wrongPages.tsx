import { lengthInWords } from '../../../shared/quantity/fieldLines.ts';
import { printDay } from '../../../shared/words/day.ts';
import { upperFirst } from '../../../shared/words/fields/field.ts';
import { RIGHT_GAUGE } from '../../../shared/words/fields/wrong.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { slipName } from '../../../shared/words/stud/slip.ts';
import { type RestedOn, type SlipRestedOn, TO_DO, type Wrong } from '../../../shared/words/trends/wrong.ts';
import { DECISION_WORD, FIT_WORD, VERDICT_WORD } from '../../../shared/words/verdicts.ts';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import type { DoubtedLength } from '../../parts/form/askedHere.ts';
import { Boxes } from '../../parts/form/bodyFields.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field, type Option, TextArea } from '../../parts/form/fieldBox.tsx';
import { Questions } from '../../parts/form/questionAt.tsx';
import { WhoField } from '../../parts/form/whoField.tsx';
import { ListTable } from '../../parts/listTable.tsx';
import { When } from '../../parts/when.tsx';
import { STAGE_WORD } from '../job/stepWords.ts';

export interface WrongListProps {
  readonly frame: Frame;
  readonly all: readonly Wrong[];
  readonly things: readonly Option[];
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly doubts: readonly DoubtedLength[];
}

/** What was found to be wrong, and the form to mark something. */
export function WrongListPage({ frame, all, things, fields, faults, doubts }: WrongListProps) {
  const error = errorsOf(faults);
  return (
    <Layout title="Something was wrong" here="trends" {...frame}>
      <link rel="stylesheet" href="/assets/lists.css" />
      <p class="back">
        <a href="/trends">Trends</a>
      </p>
      <h1>Something was wrong</h1>
      <p class="why">
        A gauge, a catalog entry, limits or a calculation that was wrong is marked here. Every job, counter
        slip and cover on the shelf it was used for is then listed, to be gone through.
      </p>
      {all.length > 0 && (
        <ListTable
          caption="Marked wrong"
          columns={[
            { label: 'Marked wrong', plain: true },
            { label: 'From' },
            { label: 'Because', plain: true },
            { label: 'By' },
          ]}
          rows={all.map((one) => ({
            href: `/wrong/${one.number}`,
            name: one.name,
            cells: [printDay(one.since), one.reason, one.who],
          }))}
        />
      )}
      {may(frame, 'keeper') ? (
        <form method="post" action="/wrong" id="wrong-form">
          <h2>Mark something wrong</h2>
          <ErrorSummary faults={faults} />
          <input type="hidden" name="unit" value={frame.lengthUnit} />
          <Questions doubts={doubts} fields={fields}>
            <div class="fields">
              <Choice
                label="What was wrong"
                name="thing"
                value={fields.thing ?? ''}
                error={error('thing')}
                options={things}
              />
              <Field
                label="From this day on"
                name="since"
                type="date"
                value={fields.since}
                size="day"
                error={error('since')}
              />
              <TextArea
                label="What was wrong with it"
                name="reason"
                value={fields.reason}
                error={error('reason')}
              />
            </div>
            <fieldset class="group">
              <legend>What is right, of a gauge</legend>
              <p class="hint">
                Where it is known, walls read with the gauge from that day on are worked out again. Each job
                then shows its verdict then and now. It is advice: a cover in doubt is measured again.
              </p>
              <div class="fields">
                <Boxes of={RIGHT_GAUGE} fields={fields} faults={faults} writing={frame} />
              </div>
            </fieldset>
            <div class="fields">
              <WhoField known={frame.initials} typed={fields.who} error={error('who')} />
            </div>
          </Questions>
          <div class="actions">
            <button class="button first" type="submit" id="mark-wrong">
              Mark it, and list the jobs
            </button>
          </div>
        </form>
      ) : (
        <p class="note">Only a manager can mark something wrong.</p>
      )}
    </Layout>
  );
}

export interface WrongJobsProps {
  readonly frame: Frame;
  readonly wrong: Wrong;
  readonly jobs: readonly RestedOn[];
  readonly slips: readonly SlipRestedOn[];
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
}

const MOST_SHOWN = 100;

/** The jobs and slips that rested on it, the worst first, each closed with a word; covers on the shelf before them. */
export function WrongJobsPage(props: WrongJobsProps) {
  const { frame, wrong, jobs, slips } = props;
  const open = jobs.filter(({ closed }) => closed === null);
  const openSlips = slips.filter(({ closed }) => closed === null);
  return (
    <Layout title={`${wrong.name} was wrong`} here="trends" {...frame}>
      <link rel="stylesheet" href="/assets/lists.css" />
      <p class="back">
        <a href="/wrong">Something was wrong</a>
      </p>
      <h1>{wrong.name} was wrong</h1>
      <p>
        From {printDay(wrong.since)} on: {wrong.reason} Marked by {wrong.who}, <When at={wrong.at} />.
      </p>
      <RightTold wrong={wrong} frame={frame} />
      <p>
        <b>
          {jobs.length === 0
            ? `No job names it from that day on.${wrong.what === 'gauge' ? ' (Jobs whose gauge was typed in words are not found.)' : ''}`
            : `${open.length} of ${jobs.length} jobs to go through.`}
          {slips.length > 0 && ` ${openSlips.length} of ${slips.length} counter slips to go through.`}
        </b>
      </p>
      <OnShelf jobs={open} />
      {open.length > MOST_SHOWN && <p>The worst {MOST_SHOWN} are shown; closing some brings up others.</p>}
      {open.slice(0, MOST_SHOWN).map((one) => (
        <JobRested {...props} one={one} />
      ))}
      {openSlips.length > 0 && (
        <section>
          <h2>Counter slips</h2>
          {openSlips.length > MOST_SHOWN && (
            <p>The worst {MOST_SHOWN} are shown; closing some brings up others.</p>
          )}
          {openSlips.slice(0, MOST_SHOWN).map((one) => (
            <SlipRested {...props} one={one} />
          ))}
        </section>
      )}
      <GoneThrough jobs={jobs} slips={slips} />
    </Layout>
  );
}

/** What is known of the gauge, in the reader's unit. */
function RightTold({
  wrong: { what, biasMm, calibrationUMm },
  frame,
}: Pick<WrongJobsProps, 'wrong' | 'frame'>) {
  if (what !== 'gauge') return null;
  const told = (mm: number) => lengthInWords(mm, frame);
  const said = [
    ...(biasMm === null
      ? []
      : [`It read ${told(Math.abs(biasMm))} ${biasMm < 0 ? 'too little' : 'too much'}`]),
    ...(calibrationUMm === null ? [] : [`its right calibration uncertainty is ${told(calibrationUMm)}`]),
  ];
  return (
    <p>
      {said.length === 0
        ? 'What is right is not entered, so nothing is worked out again.'
        : `${upperFirst(said.join('; '))}. Walls it read from that day on are worked out again with that. It is advice: measure a cover in doubt again.`}
    </p>
  );
}

/** Covers that wait on the shelf: nobody may take them before they were gone through. */
function OnShelf({ jobs }: { readonly jobs: readonly RestedOn[] }) {
  const lie = jobs.filter(({ shelf }) => shelf !== null);
  if (lie.length === 0) return null;
  return (
    <section id="wrong-shelf">
      <h2>On the shelf now</h2>
      <p>Take these off, or keep them back, until they were gone through.</p>
      <ListTable
        caption="Covers on the shelf"
        columns={[{ label: 'Job' }, { label: 'Cover type' }, { label: 'Lies' }, { label: 'Kept for job' }]}
        rows={lie.map(({ number, familyName, shelf }) => ({
          href: `/shelf/${encodeURIComponent(number)}`,
          name: number,
          cells: [familyName, shelf?.lies ?? '', shelf?.forJob ?? '—'],
        }))}
      />
    </section>
  );
}

function GoneThrough({ jobs, slips }: Pick<WrongJobsProps, 'jobs' | 'slips'>) {
  const closed = [
    ...jobs.map(({ number, closed: by }) => ({
      href: `/jobs/${encodeURIComponent(number)}`,
      name: `Job ${number}`,
      by,
    })),
    ...slips.map(({ number, closed: by }) => ({
      href: `/slips/${slipName(number)}`,
      name: `Slip ${slipName(number)}`,
      by,
    })),
  ].filter(({ by }) => by !== null);
  if (closed.length === 0) return null;
  return (
    <section>
      <h2>Gone through</h2>
      <ul>
        {closed.slice(0, MOST_SHOWN).map(({ href, name, by }) => (
          <li>
            <a href={href}>{name}</a>: {by?.word} ({by?.who}, <When at={by?.at ?? ''} />)
          </li>
        ))}
      </ul>
    </section>
  );
}

function JobRested(props: WrongJobsProps & { readonly one: RestedOn }) {
  const { wrong, one } = props;
  const { before, now, outcome, waits, thinAfter, shelf } = one;
  return (
    <section class="rested" id={`job-${one.jobId}`}>
      <h2>
        <a href={`/jobs/${encodeURIComponent(one.number)}`}>Job {one.number}</a>, {STAGE_WORD[one.stage]}
      </h2>
      <p>
        {one.familyName}
        {outcome && `, decided: ${DECISION_WORD[outcome]}`}.{' '}
        {shelf && `On the shelf: ${shelf.lies}${shelf.forJob ? `, kept for job ${shelf.forJob}` : ''}. `}
        {waits
          ? 'Not judged again yet: it will be once some of those above are closed.'
          : now === null
            ? `It can’t be judged again by itself: ${TO_DO[wrong.what]}.`
            : now === before
              ? `Judged again today it says the same: ${VERDICT_WORD[now]}.`
              : `Judged again today: ${VERDICT_WORD[now]}${before ? `; then: ${VERDICT_WORD[before]}` : ''}.`}
        {thinAfter && ` With that, after the cut: ${thinAfter}`}
      </p>
      <CloseForm {...props} which="job" id={one.jobId} name={`job ${one.number}`} />
    </section>
  );
}

function SlipRested(props: WrongJobsProps & { readonly one: SlipRestedOn }) {
  const { wrong, one } = props;
  const name = slipName(one.number);
  return (
    <section class="rested" id={`slip-${one.number}`}>
      <h3>
        <a href={`/slips/${name}`}>Slip {name}</a>, {printDay(one.day)}
      </h3>
      <p>
        {one.studName} in {one.stackName}
        {one.customerReference && `, for ${one.customerReference}`}
        {one.counted && ', parts counted out of stock'}.{' '}
        {one.now === null
          ? `It can’t be answered again by itself: ${TO_DO[wrong.what]}.`
          : one.now === one.before
            ? `Answered again today it says the same: ${FIT_WORD[one.now]}.`
            : `Answered again today: ${FIT_WORD[one.now]}; then: ${FIT_WORD[one.before]}. ${one.because}`}
      </p>
      <CloseForm {...props} which="slip" id={one.number} name={`slip ${name}`} />
    </section>
  );
}

function CloseForm({
  frame,
  wrong,
  fields,
  faults,
  which,
  id,
  name,
}: WrongJobsProps & { readonly which: 'job' | 'slip'; readonly id: number; readonly name: string }) {
  if (!may(frame, 'recorder')) return null;
  const here = fields[which] === String(id);
  const error = here ? errorsOf(faults) : () => null;
  return (
    <form method="post" action={`/wrong/${wrong.number}/closed`}>
      {here && <ErrorSummary faults={faults} />}
      <input type="hidden" name={which} value={id} />
      <div class="fields">
        <Field
          id={`word-${which}-${id}`}
          label="What was done about it"
          name="word"
          value={here ? fields.word : ''}
          error={error('word')}
        />
        <Field
          id={`who-${which}-${id}`}
          label="Your initials"
          name="who"
          value={here ? fields.who : frame.initials}
          error={error('who')}
          size="figure"
          input={{ maxLength: 8 }}
        />
      </div>
      <div class="actions">
        <button class="button" type="submit">
          Close {name}
        </button>
      </div>
    </form>
  );
}
