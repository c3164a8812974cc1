import { bareUnitOf } from '../../../shared/quantity/fieldText.ts';
import type { Entry } from '../../../shared/words/catalogue.ts';
import {
  type InspectionItem,
  ITEM_KIND_WORD,
  ITEM_KINDS,
  limitsOfItem,
} from '../../../shared/words/inspection.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import {
  EntryHistory,
  type EntryRevisionTold,
  type EntryStale,
  EntryStaleShown,
} from '../../parts/entryHistory.tsx';
import type { DoubtedLength } from '../../parts/form/askedHere.ts';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field, TextArea } from '../../parts/form/fieldBox.tsx';
import { Hidden } from '../../parts/form/hidden.tsx';
import { Questions } from '../../parts/form/questionAt.tsx';
import { Tick } from '../../parts/form/tick.tsx';
import { WhoField } from '../../parts/form/whoField.tsx';

export interface ListEditProps {
  readonly frame: Frame;
  /** null while it is new. */
  readonly entry: Entry<'checklist'> | null;
  readonly fields: Readonly<Record<string, string>>;
  /** How many rows of items there are. */
  readonly rows: number;
  readonly families: readonly { readonly id: string; readonly name: string }[];
  readonly history: readonly EntryRevisionTold[];
  readonly faults: readonly Fault[];
  readonly doubts: readonly DoubtedLength[];
  readonly stale: EntryStale | null;
}

/** One inspection list: the cover types it is for, its items with their limits, and its history. */
export function ListEditPage(props: ListEditProps) {
  const { frame, entry, history, stale } = props;
  return (
    <Layout title={entry?.name ?? 'New inspection list'} here="catalogue" {...frame}>
      <h1>
        {entry?.name ?? 'New inspection list'}
        {entry?.retired && <small> retired</small>}
      </h1>
      {stale && <EntryStaleShown stale={stale} />}
      {may(frame, 'keeper') ? (
        <>
          <ListForm {...props} />
          {entry && (
            <div class="for-paper">
              <ListRead items={entry.body.items} frame={frame} />
            </div>
          )}
        </>
      ) : (
        entry && <ListRead items={entry.body.items} frame={frame} />
      )}
      <p class="actions">
        <a class="button" href="/inspection">
          All inspection lists
        </a>
      </p>
      {history.length > 0 && (
        <section>
          <h2>Every revision</h2>
          <EntryHistory revisions={history} />
        </section>
      )}
    </Layout>
  );
}

/** For whoever may not change it. */
function ListRead({ items, frame }: { items: readonly InspectionItem[]; frame: Frame }) {
  return (
    <ul class="plain">
      {items.map((item) => (
        <li>
          <b>{item.name}</b>: {limitsOfItem(item, frame.lengthUnit)}
          {item.how !== '' && `. ${item.how}`}
        </li>
      ))}
    </ul>
  );
}

function ListForm(props: ListEditProps) {
  const { frame, entry, fields, rows, families, faults, doubts } = props;
  const error = errorsOf(faults);
  const address = entry ? `/inspection/${encodeURIComponent(entry.id)}` : '/inspection';
  return (
    <form method="post" action={address} id="list-form" class="job-form">
      <ErrorSummary faults={faults} />
      <Hidden fields={{ from: entry && String(entry.revision), unit: frame.lengthUnit }} />
      <div class="fields">
        <Field label="Name of the list" name="listName" value={fields.listName} error={error('listName')} />
        <Field
          label="Source of its limits"
          name="source"
          value={fields.source}
          error={error('source')}
          hint="Where they are printed, or who set them"
          optional
        />
      </div>
      <fieldset>
        <legend>Cover types</legend>
        <p class="hint">None ticked: for every cover type.</p>
        <div class="fields">
          {families.map(({ id, name }) => (
            <Tick label={name} name={`for.${id}`} value="1" checked={fields[`for.${id}`] === '1'} />
          ))}
        </div>
      </fieldset>
      <h2>Items</h2>
      <p class="hint">
        Units when none are typed: {bareUnitOf('length', frame)}, {bareUnitOf('torque', frame)},{' '}
        {bareUnitOf('pressure', frame)}. “No” is not OK, so ask for what is right.
      </p>
      <Questions doubts={doubts} fields={fields}>
        {Array.from({ length: rows }, (_, row) => (
          <ItemFields row={row} fields={fields} error={error} />
        ))}
      </Questions>
      <div class="fields">
        <TextArea label="Note" name="note" value={fields.note} error={error('note')} optional />
        {entry && (
          <Field label="Why it changes" name="why" value={fields.why} error={error('why')} size="full" />
        )}
        <WhoField known={frame.initials} typed={fields.who} error={error('who')} />
      </div>
      <div class="actions">
        <button class="button first" type="submit" id="save-list">
          {entry ? 'Save' : 'Add the list'}
        </button>
        <button class="button" type="submit" name="add" value="item" id="add-item">
          Add an item
        </button>
        {entry && (
          <button
            class="button"
            type="submit"
            formaction={`${address}/${entry.retired ? 'reinstate' : 'retire'}`}
            id="retire-list"
          >
            {entry.retired ? 'Put back in use' : 'Retire'}
          </button>
        )}
      </div>
    </form>
  );
}

function ItemFields({
  row,
  fields,
  error,
}: {
  row: number;
  fields: ListEditProps['fields'];
  error: ReturnType<typeof errorsOf>;
}) {
  const of = `Item ${row + 1}`;
  const box = (name: string) => `${name}.${row}`;
  return (
    <div class="fields look-item">
      <Hidden fields={{ [box('id')]: fields[box('id')] }} />
      <Field label={of} name={box('name')} value={fields[box('name')]} error={error(box('name'))} />
      <Choice
        label={`${of}: answered with`}
        name={box('kind')}
        value={fields[box('kind')] ?? 'yes-no'}
        options={ITEM_KINDS.map((kind) => ({ value: kind, label: ITEM_KIND_WORD[kind] }))}
      />
      <Field
        label={`${of}: least`}
        name={box('least')}
        value={fields[box('least')]}
        error={error(box('least'))}
        size="figure"
      />
      <Field
        label={`${of}: most`}
        name={box('most')}
        value={fields[box('most')]}
        error={error(box('most'))}
        size="figure"
      />
      <Field
        label={`${of}: how it is done`}
        name={box('how')}
        value={fields[box('how')]}
        error={error(box('how'))}
        optional
      />
    </div>
  );
}
