import { formulaTold } from '../../../shared/quantity/formulaSign.ts';
import { CRITERIA } from '../../../shared/words/fields/criteria.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import {
  EntryHistory,
  type EntryRevisionTold,
  type EntryStale,
  EntryStaleShown,
  Judged,
} from '../../parts/entryHistory.tsx';
import type { DoubtedLength } from '../../parts/form/askedHere.ts';
import { BodyFields } from '../../parts/form/bodyFields.tsx';
import { ChangeForm } from '../../parts/form/changeForm.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';
import { Questions } from '../../parts/form/questionAt.tsx';
import { WhoField } from '../../parts/form/whoField.tsx';
import { ZoneField, type ZoneHeld } from '../../parts/form/zoneField.tsx';
import { type MinimumGiven, MinimumGivenPart } from '../../parts/minimumGivenPart.tsx';
import { type Compared, SideBySide } from '../../parts/sideBySide.tsx';

/** What limits that are not saved yet would change. */
export interface LimitsPreview {
  readonly changes: readonly Compared[];
  /** Open jobs that would be answered otherwise. */
  readonly jobs: readonly {
    readonly number: string;
    readonly coverType: string;
    readonly before: string;
    readonly after: string;
  }[];
  /** Sent back with the form: this is what was seen. */
  readonly seen: string;
}

export interface CriteriaProps {
  readonly frame: Frame;
  /** 0 while none were saved. */
  readonly revision: number;
  readonly fields: Readonly<Record<string, string>>;
  /** The limits that apply now, as their boxes show them. */
  readonly kept: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  /** Limits that look like a slip and were not confirmed. */
  readonly doubts: readonly DoubtedLength[];
  readonly stale: EntryStale | null;
  readonly preview: LimitsPreview | null;
  /** What the minimum in the form gives for every cover type; null where there is no formula. */
  readonly given: MinimumGiven | null;
  /** They were saved just now. */
  readonly saved: boolean;
  readonly history: readonly EntryRevisionTold[];
  /** How many jobs each revision judged. */
  readonly judged: ReadonlyMap<number, number>;
  readonly zone: ZoneHeld;
}

/** The shop's own limits and habits: who set them, and when. */
export function CriteriaPage(props: CriteriaProps) {
  const { frame, revision, fields, kept, faults, doubts, stale, preview, saved, given, history, judged } =
    props;
  const mayChange = may(frame, 'keeper');
  const boxes = { fields, kept, faults, writing: frame };
  return (
    <Layout title="Shop limits" here="criteria" {...frame}>
      <h1>Shop limits</h1>
      <p class="hint">
        <a href="/criteria/costs">What facing, a ring, a new cover and a comeback cost</a>
      </p>
      {saved && (
        <p class="note" role="status" id="saved">
          <b>Saved as revision {revision}.</b> Open jobs use these limits from now on.
        </p>
      )}
      <p class="why">
        The program has no limits of its own; these are the shop's. A decision keeps the limits it was made
        under.
      </p>
      {revision === 0 && (
        <p class="note" id="starting">
          Clean-up allowance, confidence and stud threads start as common practice, no source: confirm or
          change them, then save. No limit starts by itself.
        </p>
      )}
      <ChangeForm action="/criteria" mayChange={mayChange}>
        {stale !== null && <EntryStaleShown stale={stale} />}
        <ErrorSummary faults={faults} />
        {preview !== null && <Preview preview={preview} />}
        <input type="hidden" name="from" value={revision} />
        <input type="hidden" name="unit" value={frame.lengthUnit} />
        <Questions doubts={doubts} fields={fields}>
          <BodyFields
            of={CRITERIA}
            {...boxes}
            hints={{ minimumWallFormula: formulaHint(frame) }}
            after={{ minimumWallFormula: <MinimumGivenPart given={given} /> }}
            instead={{
              timeZone: (
                <ZoneField value={fields.timeZone} error={errorsOf(faults)('timeZone')} zone={props.zone} />
              ),
            }}
          />
        </Questions>
        {mayChange && <Save {...props} />}
      </ChangeForm>
      <section>
        <h2>Every revision</h2>
        {history.length === 0 ? (
          <p>None yet. The program's starting values apply; they set no minimum wall.</p>
        ) : (
          <EntryHistory revisions={history} judged={judged} />
        )}
        {(judged.get(0) ?? 0) > 0 && (
          <p>
            Before any was saved
            <Judged revision={0} count={judged.get(0) ?? 0} />
          </p>
        )}
      </section>
    </Layout>
  );
}

function formulaHint({ lengthUnit, decimalSign }: Frame): string {
  const example = `max(${lengthUnit === 'in' ? '0.165 in' : '4.2 mm'}, 85 % of new wall)`;
  return `Instead of the figure, as in ${formulaTold(example, decimalSign)}. It may name new wall, stud count, bolt circle, friction surface inside and friction surface outside.`;
}

/** What would change, before it is saved. */
function Preview({ preview: { changes, jobs, seen } }: { preview: LimitsPreview }) {
  return (
    <section class="note" id="preview" role="alert">
      <h2>Not saved yet: what this changes</h2>
      <input type="hidden" name="seen" value={seen} />
      {changes.length === 0 ? (
        <p>No limit is changed.</p>
      ) : (
        <SideBySide caption="Limits changed" heads={['now', 'if saved']} lines={changes} />
      )}
      {jobs.length === 0 ? (
        <p>No open job changes its answer.</p>
      ) : (
        <>
          <p>
            {jobs.length === 1 ? 'One open job changes' : `${jobs.length} open jobs change`} its answer.
            Decided jobs keep theirs.
          </p>
          <SideBySide
            caption="Open jobs"
            heads={['now', 'if saved']}
            lines={jobs.map(({ number, coverType, before, after }) => ({
              label: `Job ${number}, ${coverType}`,
              before,
              after,
            }))}
          />
        </>
      )}
      <p class="hint">Limits on bending are checked when each job is opened.</p>
    </section>
  );
}

function Save({ frame, fields, faults, preview }: CriteriaProps) {
  const error = errorsOf(faults);
  return (
    <>
      <div class="fields">
        <Field
          label="Why"
          name="why"
          value={fields.why}
          error={error('why')}
          size="full"
          hint="Saved with the change"
        />
        <WhoField known={frame.initials} typed={fields.who} error={error('who')} />
      </div>
      <div class="actions">
        <button class="button first" type="submit" id="save">
          {preview === null ? 'Save' : 'Save these limits'}
        </button>
        <button class="button" type="submit" name="preview" value="1" id="preview-limits">
          See what it changes
        </button>
      </div>
    </>
  );
}
