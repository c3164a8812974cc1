import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { printRequired, printSure } from '../../../shared/words/cut.ts';
import { SHELF_ASKED } from '../../../shared/words/fields/shelf.ts';
import { printLength } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { type ShelfCover, WALLS_WORD } from '../../../shared/words/shelf.ts';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { Cautions } from '../../parts/caution.tsx';
import { EmptyState } from '../../parts/emptyState.tsx';
import type { DoubtedLength } from '../../parts/form/askedHere.ts';
import { Boxes } from '../../parts/form/bodyFields.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { Choice } from '../../parts/form/fieldBox.tsx';
import { Questions } from '../../parts/form/questionAt.tsx';
import { Sign } from '../../parts/form/sign.tsx';
import { type ListColumn, ListTable } from '../../parts/listTable.tsx';

export type ShelfRow = ShelfCover & { readonly suits: readonly string[] };

export interface ShelfPageProps {
  readonly frame: Frame;
  readonly fields: Readonly<Record<string, string>>;
  readonly writing: Writing;
  readonly faults: readonly Fault[];
  readonly doubts: readonly DoubtedLength[];
  /** What the shop limits require. */
  readonly confidence: number;
  readonly families: readonly { readonly id: string; readonly name: string }[];
  readonly stacks: readonly { readonly id: string; readonly name: string }[];
  /** A page of them, the one to take first. */
  readonly covers: readonly ShelfRow[];
  readonly count: number;
  /** How many stand before this page, and before the next; null on the last. */
  readonly from: number;
  readonly next: number | null;
}

export const WILL_WORD: Readonly<Record<ShelfCover['will'], string>> = {
  yes: 'Will do',
  'with-care': 'Check first',
  no: 'Won’t do',
};
const WILL_STATUS = { yes: 'pass', 'with-care': 'caution', no: 'fail' } as const;

/** Covers measured and waiting, held against what an order asks for. */
export function ShelfPage(props: ShelfPageProps) {
  const { frame, fields, faults, covers, count, from, next } = props;
  const asked = ['family', 'stack', 'wall', 'sure', 'pilot'].some((name) => (fields[name] ?? '') !== '');
  const page = (at: number) => `/shelf?${new URLSearchParams({ ...fields, from: String(at) })}`;
  return (
    <Layout title="Shelf" here="shelf" {...frame}>
      <link rel="stylesheet" href="/assets/lists.css" />
      <h1>Which cover here will do?</h1>
      <Asked {...props} />
      {count === 0 && faults.length === 0 ? (
        <EmptyState
          title={asked ? 'No such cover on the shelf' : 'Nothing on the shelf yet'}
          actions={[
            asked ? { label: 'Show the whole shelf', href: '/shelf' } : { label: 'Jobs', href: '/jobs' },
          ]}
        >
          {asked
            ? 'Ask for less, or choose another cover type.'
            : 'Measure a cover in its job, then put it on the shelf from the job’s page.'}
        </EmptyState>
      ) : (
        <>
          {count > 0 && (
            <p class="hint" id="shelf-count">
              {count === 1 ? '1 cover' : `${count} covers`}, best first, under the shop limits of today.
              Signed and thickest come first; reserved ones last.
            </p>
          )}
          <Covers {...props} />
        </>
      )}
      {(from > 0 || next !== null) && (
        <p class="actions">
          {from > 0 && (
            <a class="button" href={page(0)} id="shelf-first">
              First page
            </a>
          )}
          {next !== null && (
            <a class="button" href={page(next)} id="shelf-next">
              Next {Math.min(count - next, covers.length)} of {count}
            </a>
          )}
        </p>
      )}
      <Cautions kinds={['general', 'crack']} />
    </Layout>
  );
}

function Asked({ frame, fields, writing, faults, doubts, confidence, families, stacks }: ShelfPageProps) {
  const options = (some: ShelfPageProps['families']) => [
    { value: '', label: 'any' },
    ...some.map(({ id, name }) => ({ value: id, label: name })),
  ];
  const { from: _, ...question } = fields;
  return (
    <form method="get" action="/shelf" class="finder" id="shelf-form">
      <ErrorSummary faults={faults} />
      <input type="hidden" name="unit" value={frame.lengthUnit} />
      <Questions doubts={doubts} fields={fields}>
        <div class="fields">
          <Choice label="Cover type" name="family" value={fields.family ?? ''} options={options(families)} />
          <Choice label="Flexplate stack" name="stack" value={fields.stack ?? ''} options={options(stacks)} />
          <Boxes of={SHELF_ASKED} fields={fields} faults={faults} writing={writing} />
        </div>
      </Questions>
      <p class="hint">The shop limits require {printRequired(confidence)}.</p>
      <div class="actions">
        <button class="button first" type="submit" id="ask-shelf">
          Which will do?
        </button>
        <a class="button" href={`/shelf.csv?${new URLSearchParams(question)}`} id="shelf-csv">
          Download as CSV
        </a>
      </div>
    </form>
  );
}

const COLUMNS: readonly ListColumn[] = [
  { label: 'Job', plain: true },
  { label: 'Will it do?', plain: true },
  { label: 'Cover type', plain: true },
  { label: 'Wall left' },
  { label: 'How sure' },
  { label: 'Cuts left' },
  { label: 'Studs', under: 'flexplate stacks they suit' },
  { label: 'Where it lies' },
];

function Covers({ covers, frame }: Pick<ShelfPageProps, 'covers' | 'frame'>) {
  return (
    <ListTable
      caption="Covers on the shelf"
      columns={COLUMNS}
      rows={covers.map((cover) => ({
        id: `shelf-${cover.jobNumber}`,
        href: `/shelf/${encodeURIComponent(cover.jobNumber)}`,
        name: cover.jobNumber,
        cells: [
          <span>
            <Sign status={WILL_STATUS[cover.will]} /> <b>{WILL_WORD[cover.will]}</b>
            {cover.reasons.map((reason) => (
              <small class="reason">{reason}</small>
            ))}
          </span>,
          cover.familyName,
          cover.wallLeftMm !== null && (
            <span>
              {printLength(cover.wallLeftMm, frame.lengthUnit)}
              <small class="reason">{WALLS_WORD[cover.wallsAre]}</small>
            </span>
          ),
          cover.sure !== null && printSure(cover.sure),
          cover.cutsLeft,
          cover.studName !== null && (
            <span>
              {cover.studName}
              {cover.suits.length > 0 && <small class="reason">{cover.suits.join('; ')}</small>}
            </span>
          ),
          cover.lies,
        ],
      }))}
    />
  );
}
