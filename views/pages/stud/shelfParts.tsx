import type { CatalogueNut, CatalogueStud, CatalogueWasher } from '../../../shared/words/catalogue.ts';
import { type LengthUnit, printLength } from '../../../shared/words/print.ts';
import type { Skipped, Substitute } from '../../../shared/words/stud/choices.ts';
import { FIT_WORD } from '../../../shared/words/verdicts.ts';
import { Choice } from '../../parts/form/fieldBox.tsx';
import { Tick } from '../../parts/form/tick.tsx';

/** The other one of the pair: everything alike but the tip. */
export function Substitutes({
  substitutes,
  unit,
  hrefOf,
}: {
  substitutes: readonly Substitute[];
  unit: LengthUnit;
  hrefOf: (id: string) => string;
}) {
  if (substitutes.length === 0) return null;
  return (
    <ul class="plain" id="substitutes">
      {substitutes.map(({ id, name, longerMm, fits }) => (
        <li>
          The same but {printLength(Math.abs(longerMm), unit, 'coarse')} {longerMm > 0 ? 'longer' : 'shorter'}
          : <a href={hrefOf(id)}>{name}</a>, {FIT_WORD[fits]} here.
        </li>
      ))}
    </ul>
  );
}

/** Fewer stacks in the list: of one kind, one number of studs, one thread. */
export function FewerStacks({
  fields,
  counts,
  nutThreads,
}: {
  fields: Readonly<Record<string, string>>;
  counts: readonly string[];
  nutThreads: readonly string[];
}) {
  const { listStyle = '', listCount = '', listThread = '' } = fields;
  const every = (label: string, values: readonly string[]) => [
    { value: '', label },
    ...values.map((value) => ({ value, label: value })),
  ];
  return (
    <details
      class="more-findings"
      id="fewer-stacks"
      open={[listStyle, listCount, listThread].some((value) => value !== '')}
    >
      <summary>Show fewer flexplate stacks</summary>
      <div class="fields">
        <Choice
          label="One- or two-piece"
          name="listStyle"
          value={listStyle}
          options={every('both', ['one-piece', 'two-piece'])}
        />
        <Choice label="Number of studs" name="listCount" value={listCount} options={every('any', counts)} />
        <Choice label="Nut thread" name="listThread" value={listThread} options={every('any', nutThreads)} />
      </div>
    </details>
  );
}

/** Fewer to look at: of one thread, or only those that are there. */
export function Narrow({
  fields,
  threads,
}: {
  fields: Readonly<Record<string, string>>;
  threads: readonly string[];
}) {
  const { onlyThread = '', inStock } = fields;
  return (
    <details class="more-findings" id="narrow" open={onlyThread !== '' || inStock === '1'}>
      <summary>Look at fewer studs</summary>
      <div class="fields">
        <Choice
          label="Thread"
          name="onlyThread"
          value={onlyThread}
          options={[
            { value: '', label: 'every thread' },
            ...threads.map((thread) => ({ value: thread, label: thread })),
          ]}
        />
        <Tick label="Only those in stock" name="inStock" value="1" checked={inStock === '1'} />
      </div>
    </details>
  );
}

/** "3/8-24 UNF-2B; 0.328 in high, washer face 0.528 in; 48 in stock, shelf N-2". */
export function nutInWords(entry: CatalogueNut, unit: LengthUnit): string {
  const { thread, heightMm, bearingOuterDiameterMm: face, prevailing } = entry.nut;
  const mm = (x: number) => printLength(x, unit, 'coarse');
  return [
    thread?.designation ?? entry.threadTyped,
    `${mm(heightMm)} high${face === null ? '' : `, washer face ${mm(face)}`}${prevailing ? ', locking' : ''}`,
    shelfInWords(entry),
  ]
    .filter((part) => part !== '')
    .join('; ');
}

/** "shim; 0.406 to 0.875 in, 0.030 in thick; shelf H-1". */
export function washerInWords(entry: CatalogueWasher, unit: LengthUnit): string {
  const { use, innerDiameterMm, outerDiameterMm, thicknessMm } = entry;
  const mm = (x: number) => printLength(x, unit, 'coarse');
  return [
    `${use}, ${mm(thicknessMm)} thick`,
    `inner diameter ${mm(innerDiameterMm)}, outer ${mm(outerDiameterMm)}`,
    shelfInWords(entry),
  ]
    .filter((part) => part !== '')
    .join('; ');
}

/** "24 in stock, S-3"; '' where nobody counts and nobody says where. */
export function shelfInWords({ stock, shelf }: Pick<CatalogueStud, 'stock' | 'shelf'>): string {
  const counted = stock == null ? '' : stock === 0 ? 'none in stock' : `${stock} in stock`;
  return [counted, shelf ? `shelf ${shelf}` : ''].filter((part) => part !== '').join(', ');
}

/** What could not be checked: entries of the catalog that need a correction first. */
export function SkippedNote({ kind, skipped }: { kind: 'stud' | 'stack'; skipped: readonly Skipped[] }) {
  if (skipped.length === 0) return null;
  return (
    <div class="note" id="skipped">
      <p>Not checked, because the catalog entry has an impossible figure:</p>
      <ul class="plain">
        {skipped.map(({ id, name, why }) => (
          <li>
            <a href={`/catalogue/${kind}/${encodeURIComponent(id)}`}>{name}</a>: {why} Correct it in the
            catalog.
          </li>
        ))}
      </ul>
    </div>
  );
}
