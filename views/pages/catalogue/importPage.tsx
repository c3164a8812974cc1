import type { Fault } from '../../../shared/words/refusal.ts';
import { type CatalogueKind, ENTRY_WORD } from '../../../shared/words/terms.ts';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';
import { Tick } from '../../parts/form/tick.tsx';
import { WhoField } from '../../parts/form/whoField.tsx';
import { type Compared, SideBySide } from '../../parts/sideBySide.tsx';

/** One thing of a row that is refused, or asked about and confirmed by a tick. */
export interface ImportFault {
  /** "F, new wall (in)"; '' where it is of the whole row. */
  readonly where: string;
  readonly sentence: string;
  readonly confirm: { readonly name: string; readonly typed: string } | null;
}

export interface ImportRow {
  readonly row: number;
  readonly name: string;
}

export interface ImportSeen {
  /** The catalog this was held against. */
  readonly mark: string;
  /** "Lengths in inches, decimals with a point." */
  readonly writing: string;
  readonly unread: readonly string[];
  readonly unchanged: number;
  readonly added: readonly ImportRow[];
  readonly changed: readonly (ImportRow & { readonly href: string; readonly lines: readonly Compared[] })[];
  readonly asked: readonly (ImportRow & { readonly faults: readonly ImportFault[] })[];
  readonly refused: readonly (ImportRow & { readonly faults: readonly ImportFault[] })[];
  /** How many there are of each; the lists above hold the first of them. */
  readonly counts: Readonly<Record<'added' | 'changed' | 'asked' | 'refused', number>>;
}

export type ImportState =
  | { readonly is: 'empty' }
  | { readonly is: 'under-way'; readonly words: string; readonly done: number; readonly of: number }
  | { readonly is: 'seen'; readonly seen: ImportSeen }
  | { readonly is: 'kept'; readonly added: number; readonly changed: number };

export interface ImportPageProps {
  readonly frame: Frame;
  readonly kind: CatalogueKind;
  /** null while no file was sent. */
  readonly id: string | null;
  readonly state: ImportState;
  /** Why a file, or what was to be kept of it, came to nothing. */
  readonly failure: string | null;
  readonly stale: boolean;
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
}

/** A list of one shelf from a file: sent, looked at, and kept whole or not at all. */
export function ImportPage(props: ImportPageProps) {
  const { frame, kind, state, failure, stale, faults } = props;
  const { many } = ENTRY_WORD[kind];
  return (
    <Layout title={`${many} from a CSV file`} here="catalogue" {...frame}>
      <link rel="stylesheet" href="/assets/lists.css" />
      <h1>{many} from a CSV file</h1>
      <div id="import">
        {failure && (
          <section class={stale ? 'faults stale' : 'faults'} role="alert">
            <h2>Nothing was saved</h2>
            <p>{failure}</p>
          </section>
        )}
        <ErrorSummary faults={faults} />
        {state.is === 'empty' && <SendFile {...props} />}
        {state.is === 'under-way' && <UnderWayPart {...props} {...state} />}
        {state.is === 'seen' && <Seen {...props} seen={state.seen} />}
        {state.is === 'kept' && <Kept kind={kind} {...state} />}
      </div>
    </Layout>
  );
}

function SendFile({ frame, kind, faults }: ImportPageProps) {
  const { one, many } = ENTRY_WORD[kind];
  return (
    <>
      <p>Send a list of {lower(many)} as CSV. You see what it adds and changes before anything is saved.</p>
      <form method="post" action={`/import/${kind}`} enctype="multipart/form-data" id="import-form">
        <div class="fields">
          <Field
            label="CSV file"
            name="file"
            type="file"
            size="words"
            error={errorsOf(faults)('file')}
            input={{ accept: '.csv,text/csv' }}
          />
        </div>
        <div class="actions">
          <button class="button first" type="submit" id="send-file">
            Check the file
          </button>
          <a class="button" href={`/catalogue/${kind}.csv`} id="import-headings">
            Download the list as it is
          </a>
        </div>
      </form>
      <h2>How a file is read</h2>
      <ul>
        <li>The first row holds the headings. They are those of the download, in any order.</li>
        <li>
          A heading names the unit of its figures, as in “new wall ({frame.lengthUnit})”. A cell may have a
          unit of its own.
        </li>
        <li>
          A row with the id of a {one}, or without an id its name, changes that {one}. Any other row adds one.
        </li>
        <li>A column that is left out changes nothing. A blank cell clears what is there.</li>
        <li>All rows are saved, or none.</li>
      </ul>
    </>
  );
}

/** Only this part of the page is swapped. */
const SWAPS = { 'hx-target': '#import', 'hx-select': '#import', 'hx-swap': 'outerHTML' } as const;

function UnderWayPart({
  kind,
  id,
  words,
  done,
  of,
}: ImportPageProps & { words: string; done: number; of: number }) {
  const here = `/import/${kind}/${id}`;
  return (
    <div class="under-way" hx-get={here} hx-trigger="every 1s" {...SWAPS}>
      <label for="importing" id="importing-words">
        {words}
      </label>
      <progress id="importing" {...(of > 1 && { value: done, max: of })} />
      <noscript>
        <p>Load this page again to see how far it is.</p>
      </noscript>
      <form method="post" action={`${here}/stop`} id="stop-form">
        <button class="button" type="submit" id="stop-import" aria-describedby="importing-words">
          Stop it
        </button>
      </form>
    </div>
  );
}

function Seen(props: ImportPageProps & { seen: ImportSeen }) {
  const { kind, id, seen } = props;
  const { counts, unchanged, unread, writing } = seen;
  const nothing = counts.added + counts.changed === 0;
  const mayKeep = counts.refused === 0 && (!nothing || counts.asked > 0);
  return (
    <>
      <dl class="facts" id="import-counts">
        <dt>Added</dt>
        <dd>{counts.added}</dd>
        <dt>Changed</dt>
        <dd>{counts.changed}</dd>
        <dt>Unchanged</dt>
        <dd>{unchanged}</dd>
        {counts.asked > 0 && (
          <>
            <dt>Asked about</dt>
            <dd>{counts.asked}</dd>
          </>
        )}
        <dt>Refused</dt>
        <dd>{counts.refused}</dd>
        <dt>Read as</dt>
        <dd>{writing}</dd>
      </dl>
      {unread.length > 0 && (
        <p class="note" id="unread">
          {unread.length === 1 ? 'This column is' : 'These columns are'} not read: {unread.join(', ')}. The
          download has no such heading.
        </p>
      )}
      {counts.refused > 0 && <Refused {...props} />}
      <form method="post" action={`/import/${kind}/${id}`} id="keep-form">
        <input type="hidden" name="seen" value={seen.mark} />
        {counts.asked > 0 && <Asked {...props} mayConfirm={counts.refused === 0} />}
        {counts.changed > 0 && <Changed {...props} />}
        {counts.added > 0 && <Added {...props} />}
        {mayKeep && <Keep {...props} />}
      </form>
      {nothing && counts.asked + counts.refused === 0 && (
        <p>The file says what the catalog has already. There is nothing to save.</p>
      )}
      <p>
        <a class="button" href={`/import/${kind}`} id="another-file">
          {counts.refused > 0 ? 'Send the corrected file' : 'Send another file'}
        </a>
      </p>
    </>
  );
}

function Keep({ frame, fields, faults, seen }: ImportPageProps & { seen: ImportSeen }) {
  const error = errorsOf(faults);
  return (
    <>
      <div class="fields">
        {seen.counts.changed > 0 && (
          <Field label="Why they change" name="why" value={fields.why} error={error('why')} size="full" />
        )}
        <WhoField known={frame.initials} typed={fields.who} error={error('who')} />
      </div>
      <div class="actions">
        <button class="button first" type="submit" id="keep-these">
          Keep these
        </button>
      </div>
    </>
  );
}

function Refused({ seen }: { seen: ImportSeen }) {
  const { refused, counts } = seen;
  return (
    <section id="refused">
      <h2>Refused</h2>
      <p>Nothing is saved while a row is refused. Correct these in the file, then send it again.</p>
      <section class="scroll" tabindex={0} aria-label="Refused rows">
        <table>
          <caption class="unseen">What cannot be taken, by row and column</caption>
          <thead>
            <tr>
              <th scope="col">Row</th>
              <th scope="col">Column</th>
              <th scope="col">What to correct</th>
            </tr>
          </thead>
          <tbody>
            {refused.flatMap(({ row, name, faults }) =>
              faults.map(({ where, sentence }) => (
                <tr>
                  <th scope="row">
                    {row} {name !== '' && <small>{name}</small>}
                  </th>
                  <td>{where || 'whole row'}</td>
                  <td>{sentence}</td>
                </tr>
              )),
            )}
          </tbody>
        </table>
      </section>
      <First shown={refused.length} of={counts.refused} />
    </section>
  );
}

function Asked(props: ImportPageProps & { seen: ImportSeen; mayConfirm: boolean }) {
  const { seen, fields, mayConfirm } = props;
  const { asked, counts } = seen;
  return (
    <section id="asked">
      <h2>Asked about</h2>
      <p>These look like slips. Correct them in the file, or confirm each one.</p>
      <ul class="plain">
        {asked.map(({ row, name, faults }) => (
          <li>
            <p>
              Row {row}
              {name !== '' && `, ${name}`}
            </p>
            {faults.map(({ where, sentence, confirm }) => (
              <>
                <p>
                  {where !== '' && <>{where}: </>}
                  {sentence}
                </p>
                {confirm && mayConfirm && (
                  <Tick
                    label={`Row ${row}: “${confirm.typed}” is right`}
                    name={confirm.name}
                    value={confirm.typed}
                    checked={fields[confirm.name] === confirm.typed}
                  />
                )}
              </>
            ))}
          </li>
        ))}
      </ul>
      <First shown={asked.length} of={counts.asked} />
    </section>
  );
}

function Changed({ seen }: { seen: ImportSeen }) {
  const { changed, counts } = seen;
  return (
    <section id="changed">
      <h2>Changed</h2>
      {changed.map(({ row, name, href, lines }) => (
        <details class="twin" open={changed.length <= 8}>
          <summary>
            {name}{' '}
            <small>
              row {row}, {lines.length} field{lines.length === 1 ? '' : 's'}
            </small>
          </summary>
          <SideBySide caption={`What row ${row} changes`} heads={['now', 'from the file']} lines={lines} />
          <p>
            <a href={href}>Open {name}</a>
          </p>
        </details>
      ))}
      <First shown={changed.length} of={counts.changed} />
    </section>
  );
}

function Added({ seen }: { seen: ImportSeen }) {
  const { added, counts } = seen;
  return (
    <section id="added">
      <h2>Added</h2>
      <ul class="added-names">
        {added.map(({ row, name }) => (
          <li>
            {name} <small>row {row}</small>
          </li>
        ))}
      </ul>
      <First shown={added.length} of={counts.added} />
    </section>
  );
}

function First({ shown, of }: { shown: number; of: number }) {
  return shown < of ? (
    <p class="hint">
      The first {shown} of {of} are shown.
    </p>
  ) : null;
}

function Kept({ kind, added, changed }: { kind: CatalogueKind; added: number; changed: number }) {
  const { many } = ENTRY_WORD[kind];
  return (
    <>
      <p id="import-kept" role="status">
        Saved: {added} added, {changed} changed.
      </p>
      <div class="actions">
        <a class="button first" href={`/catalogue?shelf=${kind}`} id="to-shelf">
          See the {lower(many)}
        </a>
        <a class="button" href={`/import/${kind}`} id="another-file">
          Send another file
        </a>
      </div>
    </>
  );
}

const lower = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);
