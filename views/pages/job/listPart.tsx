import { bareUnitOf, type Writing } from '../../../shared/quantity/fieldText.ts';
import {
  foundOfItem,
  type InspectedItem,
  type InspectionItem,
  isItemOk,
  itemsOf,
  type ListForJob,
  limitsOfItem,
} from '../../../shared/words/inspection.ts';
import type { Job } from '../../../shared/words/job.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field } from '../../parts/form/fieldBox.tsx';
import { Sign } from '../../parts/form/sign.tsx';
import { When } from '../../parts/when.tsx';
import { JobForm, type Refused } from './section.tsx';

export interface ListPartProps {
  readonly job: Job;
  /** The inspection lists for its cover type. */
  readonly lists: readonly ListForJob[];
  /** What is kept, box by box. */
  readonly typed: Readonly<Record<string, string>>;
  readonly writing: Writing;
  readonly unit: LengthUnit;
  readonly initials: string;
  readonly refused: Refused | null;
  readonly readOnly: boolean;
}

/** The name of an item's box in the form. */
export function boxOfItem(listId: string, itemId: string): string {
  return `f.${listId}.${itemId}`;
}

/** What the shop's inspection list asks of this cover, what was found, and the form that answers it. */
export function ListPart(props: ListPartProps) {
  const { job, lists, readOnly, refused, unit } = props;
  const inspected = job.sections.inspected?.body ?? null;
  const items = itemsOf(lists, inspected);
  const present = new Set(items.map(({ of, item }) => `${of.id} ${item.id}`));
  const left = (inspected?.items ?? []).filter((one) => !present.has(`${one.listId} ${one.item.id}`));
  if (items.length + left.length === 0) return null;
  const done = items.filter(({ answer }) => answer !== null).length;
  return (
    <section id="inspection-list">
      <h3>
        Inspection list: {done} of {items.length} inspected
      </h3>
      <ul class="plain" id="inspected-items">
        {items.map(({ item, answer }) => (
          <Found item={item} answer={answer} unit={unit} />
        ))}
        {left.map((answer) => (
          <Found item={answer.item} answer={answer} unit={unit} />
        ))}
      </ul>
      <p class="no-print">
        <a href={`/jobs/${encodeURIComponent(job.number)}/inspection.csv`} id="inspection-csv">
          Inspection list as CSV
        </a>
      </p>
      {!readOnly && items.length > 0 && (
        <details class="change" open={refused !== null || (done < items.length && job.stage !== 'signed')}>
          <summary>{done === 0 ? 'Inspect by the list' : 'Go on with the list, or correct it'}</summary>
          <ListForm {...props} />
        </details>
      )}
    </section>
  );
}

function Found({
  item,
  answer,
  unit,
}: {
  item: InspectionItem;
  answer: InspectedItem | null;
  unit: LengthUnit;
}) {
  const needed = item.kind === 'yes-no' ? '' : `; ${limitsOfItem(item, unit)} is needed`;
  if (answer === null)
    return (
      <li>
        <Sign status="not-checked" /> {item.name}: not inspected{needed}
      </li>
    );
  return (
    <li>
      <Sign status={isItemOk(answer) ? 'pass' : 'fail'} /> {item.name}: <b>{foundOfItem(answer, unit)}</b>
      {needed}
      {answer.note !== '' && `. ${answer.note}`}
      <small>
        {' '}
        {answer.who}, <When at={answer.at} />
      </small>
    </li>
  );
}

function ListForm(props: ListPartProps) {
  const { job, lists, writing, typed, initials, refused, unit } = props;
  const fields = refused?.fields ?? typed;
  const error = errorsOf(refused?.faults ?? []);
  return (
    <JobForm
      id="inspected-form"
      action={`/jobs/${encodeURIComponent(job.number)}/inspected`}
      revision={job.revision}
      initials={initials}
      signed={job.stage === 'signed'}
      unit={writing.lengthUnit}
      refused={refused}
      submit="Save what was found"
    >
      {lists.map(({ id, list }) => (
        <>
          {lists.length > 1 && <h4>{list.name}</h4>}
          {list.items.map((item) => {
            const box = boxOfItem(id, item.id);
            return (
              <div class="fields look-item">
                <ItemBox
                  item={item}
                  box={box}
                  value={fields[box]}
                  error={error(box)}
                  writing={writing}
                  unit={unit}
                />
                <Field
                  label={`${item.name}: note`}
                  name={`${box}.note`}
                  value={fields[`${box}.note`]}
                  error={error(`${box}.note`)}
                  optional
                />
              </div>
            );
          })}
        </>
      ))}
    </JobForm>
  );
}

function ItemBox(props: {
  item: InspectionItem;
  box: string;
  value: string | undefined;
  error: string | null | undefined;
  writing: Writing;
  unit: LengthUnit;
}) {
  const { item, box, value, error = null, writing, unit } = props;
  const needed = limitsOfItem(item, unit);
  const hint = [item.how, item.kind === 'yes-no' ? '' : `Needed: ${needed}`].filter((one) => one !== '');
  if (item.kind === 'yes-no')
    return (
      <Choice
        label={item.name}
        name={box}
        value={value ?? ''}
        error={error}
        hint={hint.join('. ')}
        options={[
          { value: '', label: 'not inspected' },
          { value: 'yes', label: 'yes' },
          { value: 'no', label: 'no' },
        ]}
      />
    );
  return (
    <Field
      label={item.name}
      name={box}
      value={value}
      unit={bareUnitOf(item.kind, writing)}
      error={error}
      hint={hint.join('. ')}
    />
  );
}
