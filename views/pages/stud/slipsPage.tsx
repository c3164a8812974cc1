import type { Fault } from '../../../shared/words/refusal.ts';
import { type SlipLine, slipName } from '../../../shared/words/stud/slip.ts';
import { FIT_WORD } from '../../../shared/words/verdicts.ts';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { EmptyState } from '../../parts/emptyState.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field } from '../../parts/form/fieldBox.tsx';
import {
  type ListColumn,
  ListTable,
  type ListTableProps,
  type Sort,
  sortTyped,
} from '../../parts/listTable.tsx';
import { day } from '../../parts/when.tsx';

export interface SlipsPageProps {
  readonly frame: Frame;
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly slips: readonly SlipLine[];
  readonly more: boolean;
  readonly sort: Sort;
}

/** Every saved slip, found by number, customer, stud, person and day. */
export function SlipsPage({ frame, fields, faults, slips, more, sort }: SlipsPageProps) {
  const error = errorsOf(faults);
  const asked = Object.entries(fields).some(([name, text]) => name !== 'sort' && text.trim() !== '');
  return (
    <Layout title="Counter slips" here="studs" {...frame}>
      <link rel="stylesheet" href="/assets/lists.css" />
      <h1>Counter slips</h1>
      <form method="get" action="/slips" class="finder" id="slips-finder">
        <ErrorSummary faults={faults} />
        <div class="fields">
          <Field
            label="Number, customer, stud, stack, any word"
            name="text"
            type="search"
            value={fields.text}
            error={error('text')}
          />
          <Choice
            label="Answer"
            name="fits"
            value={fields.fits ?? ''}
            error={error('fits')}
            options={[
              { value: '', label: 'any' },
              ...Object.entries(FIT_WORD).map(([value, label]) => ({ value, label })),
            ]}
          />
          <Choice
            label="Stock"
            name="counted"
            value={fields.counted ?? ''}
            error={error('counted')}
            options={[
              { value: '', label: 'any' },
              { value: 'yes', label: 'taken out of stock' },
              { value: 'no', label: 'not taken out of stock' },
            ]}
          />
          <Field label="Person, by initials" name="who" value={fields.who} size="figure" />
          <Field
            label="From"
            name="from"
            type="date"
            value={fields.from}
            size="figure"
            error={error('from')}
          />
          <Field label="to" name="to" type="date" value={fields.to} size="figure" error={error('to')} />
        </div>
        <div class="actions">
          <button class="button" type="submit" id="find">
            Find
          </button>
          <a
            class="button"
            href={`/slips.csv?${new URLSearchParams({ ...fields, before: '' })}`}
            id="slips-csv"
          >
            All of these as CSV
          </a>
        </div>
      </form>
      <div id="found">
        {slips.length === 0 && faults.length === 0 ? (
          <EmptyState
            title={asked ? 'No slips found' : 'No slips yet'}
            actions={[
              asked ? { label: 'Show every slip', href: '/slips' } : { label: 'Find a stud', href: '/stud' },
            ]}
          >
            {asked ? 'Try fewer words or other days.' : 'Find a stud, open its counter slip and save it.'}
          </EmptyState>
        ) : (
          <SlipLines
            slips={slips}
            sort={sort}
            hrefSorted={(by) =>
              `/slips?${new URLSearchParams({ ...fields, before: '', sort: sortTyped(by) })}`
            }
            sortedIn={{ form: 'slips-finder', value: sortTyped }}
          />
        )}
        {more && (
          <p>
            <a
              class="button"
              href={`/slips?${new URLSearchParams({ ...fields, before: String(slips.at(-1)?.number ?? '') })}`}
            >
              {sort.by === 'slip' && sort.down ? 'Earlier slips' : 'More slips'}
            </a>
          </p>
        )}
      </div>
    </Layout>
  );
}

const SLIP_COLUMNS: readonly ListColumn[] = [
  { id: 'slip', label: 'Slip', plain: true, order: ['oldest first', 'newest first'] },
  { id: 'stud', label: 'Stud', plain: true },
  { id: 'stack', label: 'Flexplate stack', plain: true },
  { id: 'customer', label: 'Customer', plain: true },
  { label: 'Day', plain: true },
  { id: 'by', label: 'By', plain: true },
  { id: 'answer', label: 'Answer', plain: true, order: ['no first', 'yes first'] },
  { label: 'Stock', plain: true },
];

/** Slips in a list, each a way in. */
export function SlipLines({
  slips,
  ...sorting
}: { slips: readonly SlipLine[] } & Pick<ListTableProps, 'sort' | 'hrefSorted' | 'sortedIn'>) {
  return (
    <ListTable
      caption="Counter slips"
      columns={SLIP_COLUMNS}
      {...sorting}
      rows={slips.map((slip) => ({
        id: `slip-${slip.number}`,
        href: `/slips/${slipName(slip.number)}`,
        name: slipName(slip.number),
        cells: [
          slip.studName,
          slip.stackName,
          slip.customerReference,
          day(slip.day),
          slip.who,
          FIT_WORD[slip.fits],
          slip.counted && 'out of stock',
        ],
      }))}
    />
  );
}
