import type { CatalogueStud } from '../../../shared/words/catalogue.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { Skipped, StackChoice } from '../../../shared/words/stud/choices.ts';
import { StudInStack } from '../../drawings/studInStack.tsx';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { Cautions } from '../../parts/caution.tsx';
import { Doubted, type DoubtedLength } from '../../parts/form/doubted.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { Choice } from '../../parts/form/fieldBox.tsx';
import { SkippedNote } from './shelfParts.tsx';
import { StudFields } from './studFields.tsx';
import { RankedRow } from './studPage.tsx';

export interface StacksForStudProps {
  readonly frame: Frame;
  readonly fields: Readonly<Record<string, string>>;
  readonly studId: string;
  readonly studs: readonly { readonly id: string; readonly name: string }[];
  readonly entry: CatalogueStud | null;
  readonly doubts: readonly DoubtedLength[];
  readonly choices: readonly StackChoice[];
  readonly skipped: readonly Skipped[];
  readonly faults: readonly Fault[];
}

/** The reverse: a stud in the hand, and the stacks it suits. */
export function StacksForStudPage(props: StacksForStudProps) {
  const { frame, studId, entry, choices } = props;
  const near = choices.filter((choice) => !choice.otherThread);
  const others = choices.filter((choice) => choice.otherThread);
  const suited = choices.filter((choice) => choice.check.fits !== 'no');
  return (
    <Layout title="Flexplate stacks for a stud" here="studs" {...frame}>
      <div id="stacks-page">
        <h1>
          {entry && choices.length > 0
            ? `${capital(entry.name)} fits ${count(suited.length, choices.length)}.`
            : 'Which flexplate stacks does this stud fit?'}
        </h1>
        <p class="why">
          Choose a stud from the catalog, or enter what you measure on the one in your hand. It is then
          checked in every flexplate stack.
        </p>
        <StudForm {...props} />
        {entry && near.length > 0 && <Ranked choices={near} stud={entry} studId={studId} frame={frame} />}
        {entry && others.length > 0 && (
          <details class="more-findings" open={near.length === 0}>
            <summary>{others.length} more with another nut thread</summary>
            <Ranked choices={others} stud={entry} studId={studId} frame={frame} />
          </details>
        )}
        <SkippedNote kind="stack" skipped={props.skipped} />
        <Cautions kinds={['torque', 'general']} />
      </div>
    </Layout>
  );
}

function StudForm({ frame, fields, studId, studs, doubts, faults }: StacksForStudProps) {
  return (
    <form
      method="get"
      action="/stud/stacks"
      hx-get="/stud/stacks"
      hx-target="#stacks-page"
      hx-select="#stacks-page"
      hx-swap="outerHTML"
      hx-trigger="change from:#f-stud"
      hx-push-url="true"
      hx-select-oob="#unit-form"
    >
      <ErrorSummary faults={faults} />
      <input type="hidden" name="unit" value={frame.lengthUnit} />
      <div class="fields">
        <Choice
          label="Stud"
          name="stud"
          value={studId}
          options={[
            ...(studId === '' ? [{ value: '', label: 'choose' }] : []),
            ...studs.map(({ id, name }) => ({ value: id, label: name })),
            { value: 'own', label: 'not listed: enter what it measures' },
          ]}
        />
        <Choice
          label="Flexplates"
          name="onlyStyle"
          value={fields.onlyStyle ?? ''}
          options={[
            { value: '', label: 'one-piece and two-piece' },
            { value: 'one-piece', label: 'one-piece only' },
            { value: 'two-piece', label: 'two-piece only' },
          ]}
        />
      </div>
      {studId === 'own' && <StudFields fields={fields} faults={faults} writing={frame} inHand />}
      <Doubted doubts={doubts} fields={fields} />
      <div class="actions">
        <button class="button first" type="submit" id="find-stacks">
          Find flexplate stacks
        </button>
      </div>
    </form>
  );
}

function Ranked({
  choices,
  stud,
  studId,
  frame,
}: {
  choices: readonly StackChoice[];
  stud: CatalogueStud;
  studId: string;
  frame: Frame;
}) {
  return (
    <ol class="rows">
      {choices.map(({ id, entry, check, otherThread, mends }) => (
        <RankedRow
          id={`stack-${id}`}
          href={`/stud?stack=${encodeURIComponent(id)}${studId === 'own' ? '' : `&stud=${encodeURIComponent(studId)}`}`}
          fits={check.fits}
          name={entry.name}
          detail={entry.stack.style}
          because={check.because}
          mends={mends}
          drawing={
            otherThread ? undefined : (
              <StudInStack
                id={`row-${id}`}
                stud={stud.stud}
                stack={entry.stack}
                nut={entry.nut}
                check={check}
                pullForwardMm={entry.pullForwardMm}
                name={stud.name}
                unit={frame.lengthUnit}
              />
            )
          }
        />
      ))}
    </ol>
  );
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function count(some: number, all: number): string {
  return some === 0 ? 'none of these flexplate stacks' : `${some} of ${all} flexplate stacks`;
}
