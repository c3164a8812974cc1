import type { Entry } from '../../../shared/words/catalogue.ts';
import { CATALOGUE_LATHE } from '../../../shared/words/fields/lathe.ts';
import { LINING } from '../../../shared/words/fields/lining.ts';
import { STEEL } from '../../../shared/words/fields/steel.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { type CatalogueKind, ENTRY_WORD } from '../../../shared/words/terms.ts';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { DrawnForm, type EntryTyped } from '../../parts/entryDrawnPart.tsx';
import {
  EntryHistory,
  type EntryRevisionTold,
  type EntryStale,
  EntryStaleShown,
} from '../../parts/entryHistory.tsx';
import type { DoubtedLength } from '../../parts/form/askedHere.ts';
import { BodyFields } from '../../parts/form/bodyFields.tsx';
import { ChangeForm } from '../../parts/form/changeForm.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';
import { Questions } from '../../parts/form/questionAt.tsx';
import { WhoField } from '../../parts/form/whoField.tsx';
import type { StackTyped } from '../../parts/stackDrawnPart.tsx';
import { NutFields, WasherFields } from '../stud/nutFields.tsx';
import { StackFields } from '../stud/stackFields.tsx';
import { StudFields } from '../stud/studFields.tsx';
import { FamilyFields, type ToName } from './familyFields.tsx';
import { GaugeEntryFields } from './gaugeEntryFields.tsx';
import { UsedPart, type WhereUsed } from './usedPart.tsx';

/** Why, by whom, and the buttons. */
function SaveEntry({ frame, kind, entry, fields, faults, action }: EntryPageProps & { action: string }) {
  const error = errorsOf(faults);
  return (
    <>
      <div class="fields">
        {entry && (
          <Field label="Why it changes" name="why" value={fields.why} error={error('why')} size="full" />
        )}
        <WhoField known={frame.initials} typed={fields.who} error={error('who')} />
      </div>
      <div class="actions">
        <button class="button first" type="submit" id="save">
          {entry ? 'Save' : 'Add to catalog'}
        </button>
        {kind === 'stack' && (
          <button class="button" type="submit" name="add" value="layer" id="add-layer">
            Add a layer
          </button>
        )}
        {entry && (
          <button
            class="button"
            type="submit"
            formaction={`${action}/${entry.retired ? 'reinstate' : 'retire'}`}
            id="retire"
          >
            {entry.retired ? 'Put back in use' : 'Retire'}
          </button>
        )}
        {entry && (
          <a class="button" href={`/catalogue/${kind}/new?like=${encodeURIComponent(entry.id)}`} id="copy">
            Add one like this
          </a>
        )}
      </div>
    </>
  );
}

export interface EntryPageProps {
  readonly frame: Frame;
  readonly kind: CatalogueKind;
  /** null while it is new. */
  readonly entry: Entry<CatalogueKind> | null;
  readonly history: readonly EntryRevisionTold[];
  readonly fields: Readonly<Record<string, string>>;
  /** What is kept, as its boxes show it. */
  readonly kept: Readonly<Record<string, string>>;
  readonly layerRows: number;
  /** The new cover it is begun from: the job it was measured in, and at how many stations. */
  readonly begunFrom: { readonly job: string; readonly walls: number } | null;
  /** null while it is new. */
  readonly used: WhereUsed | null;
  /** null for what is no stack. */
  readonly typedStack: StackTyped | null;
  /** null for what is drawn otherwise, or not at all. */
  readonly typed: EntryTyped | null;
  readonly faults: readonly Fault[];
  readonly doubts: readonly DoubtedLength[];
  readonly stale: EntryStale | null;
  /** Initials and names to choose from, where somebody set a figure. */
  readonly people: readonly string[];
  /** Steels and linings to choose from, each with its revision. */
  readonly toName: ToName;
}

/** One entry by form: a new one, or a new revision of one. */
export function EntryPage(props: EntryPageProps) {
  const { frame, kind, entry, history, fields, kept, layerRows, typedStack, typed } = props;
  const { faults, doubts, stale, people, used, begunFrom } = props;
  const word = ENTRY_WORD[kind].one;
  const mayChange = may(frame, 'keeper');
  const action = entry ? `/catalogue/${kind}/${encodeURIComponent(entry.id)}` : `/catalogue/${kind}`;
  const boxes = { fields, kept, faults, writing: frame };
  return (
    <Layout title={entry ? entry.name : `A new ${word}`} here="catalogue" {...frame}>
      <h1>{entry ? entry.name : `Add a ${word}`}</h1>
      {begunFrom && (
        <p class="note" id="begun-from">
          From job <a href={`/jobs/${encodeURIComponent(begunFrom.job)}`}>{begunFrom.job}</a>: its diameters,
          and the mean of {begunFrom.walls} wall reading{begunFrom.walls === 1 ? '' : 's'} as the new wall.
          That is right only if the cover was new and never cut.
        </p>
      )}
      {entry && (
        <p class="hint">
          {kind === 'steel' || kind === 'lining'
            ? `Cover types keep the ${word} as it was when they were saved. After a change here, choose it again in each.`
            : `Jobs keep the ${word} as it was when ${kind === 'lathe' ? 'it was chosen' : 'they were made'}; a change here does not change them.`}
        </p>
      )}
      {entry && frame.demo && (
        <p class="hint" id="made-up-figures">
          These figures are the demo's, made up.
          {frame.demoKept && ` This ${word} was kept because you use it or changed it.`} Replace them with
          yours.
        </p>
      )}
      {kind === 'gauge' && entry && (
        <p>
          <a class="button" href={`/gauges/${encodeURIComponent(entry.id)}/checks`} id="gauge-checks">
            Check it on a master
          </a>{' '}
          <a class="button" href={`/gauges/${encodeURIComponent(entry.id)}/studies`} id="gauge-studies">
            Gauge and hands
          </a>
        </p>
      )}
      <ChangeForm action={action} mayChange={mayChange}>
        {stale !== null && <EntryStaleShown stale={stale} />}
        <ErrorSummary faults={faults} />
        <input type="hidden" name="from" value={entry?.revision ?? 0} />
        <input type="hidden" name="unit" value={frame.lengthUnit} />
        {fields.back && <input type="hidden" name="back" value={fields.back} />}
        {!entry && fields.like && <input type="hidden" name="like" value={fields.like} />}
        <Questions doubts={doubts} fields={fields}>
          {typed && (
            <DrawnForm typed={typed} unit={frame.lengthUnit} entryId={entry?.id}>
              {kind === 'family' && <FamilyFields {...boxes} people={people} toName={props.toName} />}
              {kind === 'stud' && <StudFields {...boxes} />}
              {kind === 'nut' && <NutFields {...boxes} />}
              {kind === 'washer' && <WasherFields {...boxes} />}
              {kind === 'gauge' && <GaugeEntryFields {...boxes} />}
            </DrawnForm>
          )}
          {kind === 'steel' && <BodyFields of={STEEL} {...boxes} />}
          {kind === 'lining' && <BodyFields of={LINING} {...boxes} />}
          {kind === 'lathe' && <BodyFields of={CATALOGUE_LATHE} {...boxes} />}
          {typedStack && (
            <StackFields {...boxes} rows={layerRows} typedStack={typedStack} entryId={entry?.id} />
          )}
        </Questions>
        {mayChange && <SaveEntry {...props} action={action} />}
      </ChangeForm>
      {used && <UsedPart used={used} kind={kind} />}
      {history.length > 0 && (
        <section>
          <h2>Every revision</h2>
          <EntryHistory revisions={history} />
        </section>
      )}
    </Layout>
  );
}
