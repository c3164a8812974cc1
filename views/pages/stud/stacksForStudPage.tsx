import type { Writing } from '../../../shared/quantity/fieldText.ts';
import type { CatalogueStud } from '../../../shared/words/catalogue.ts';
import type { KnownFigures } from '../../../shared/words/fields/field.ts';
import { upperFirst } from '../../../shared/words/fields/field.ts';
import { CATALOGUE_STACK } from '../../../shared/words/fields/stud.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { Skipped, StackChoice, StudInHand } from '../../../shared/words/stud/choices.ts';
import { StudInStack } from '../../drawings/studInStack.tsx';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { Cautions } from '../../parts/caution.tsx';
import type { DoubtedLength } from '../../parts/form/askedHere.ts';
import { Boxes } from '../../parts/form/bodyFields.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { Choice } from '../../parts/form/fieldBox.tsx';
import { Questions } from '../../parts/form/questionAt.tsx';
import { bareCallout, HandFields, OnTheShelf, ThreadByCaliper } from './handParts.tsx';
import { JointFields } from './jointFields.tsx';
import { SkippedNote } from './shelfParts.tsx';
import { lowerFirst, RankedRow } from './studPage.tsx';

const { pullForwardMm } = CATALOGUE_STACK;

export interface StacksForStudProps {
  readonly frame: Frame;
  readonly fields: Readonly<Record<string, string>>;
  readonly studId: string;
  readonly studs: readonly { readonly id: string; readonly name: string }[];
  readonly writing: Writing;
  readonly figures: KnownFigures;
  /** What was measured of a stud in the hand; null where there is none, or with faults. */
  readonly hand: StudInHand | null;
  /** The stud that is checked in every stack. */
  readonly checked: { readonly id: string; readonly entry: CatalogueStud } | null;
  /** What stays with the stud when a stack is opened. */
  readonly along: Readonly<Record<string, string>>;
  readonly pullForwardMm: number | null;
  readonly doubts: readonly DoubtedLength[];
  readonly choices: readonly StackChoice[];
  readonly skipped: readonly Skipped[];
  readonly faults: readonly Fault[];
}

/** The reverse: a stud of the catalog, or one in the hand that is found by a caliper, and the stacks it fits. */
export function StacksForStudPage(props: StacksForStudProps) {
  const { checked, choices, hand, studId } = props;
  const near = choices.filter((choice) => !choice.otherThread);
  const others = choices.filter((choice) => choice.otherThread);
  return (
    <Layout title="Flexplate stacks for a stud" here="studs" {...props.frame}>
      <div id="stacks-page">
        <h1 data-tell>{headline(props)}</h1>
        <p class="why">
          {studId === 'own'
            ? 'Two measurements give the thread: across the threads, and over ten of them. The length from the pad tells the stud.'
            : 'Choose a stud from the catalog, or measure the one in your hand. It is then checked in every flexplate stack.'}
        </p>
        {hand && <ThreadByCaliper hand={hand} fields={props.fields} writing={props.writing} />}
        {hand && <OnTheShelf hand={hand} along={props.along} unit={props.frame.lengthUnit} />}
        {checked && near.length > 0 && (
          <section id="stacks-found" aria-labelledby="stacks-head">
            <h2 id="stacks-head">Flexplate stacks for the {lowerFirst(checked.entry.name)}</h2>
            <Ranked {...props} choices={near} checked={checked} />
          </section>
        )}
        {checked && others.length > 0 && (
          <details class="more-findings" open={near.length === 0}>
            <summary>{others.length} more with a different nut thread</summary>
            <Ranked {...props} choices={others} checked={checked} />
          </details>
        )}
        <StudForm {...props} />
        <SkippedNote kind="stack" skipped={props.skipped} />
        <Cautions kinds={['torque', 'general']} />
      </div>
    </Layout>
  );
}

function headline({ checked, choices, hand, studId }: StacksForStudProps): string {
  const suited = choices.filter((choice) => choice.check.fits !== 'no');
  if (checked && choices.length > 0)
    return `${upperFirst(checked.entry.name)} fits ${count(suited.length, choices.length)}.`;
  if (hand?.thread) return `Thread ${bareCallout(hand.thread)}.`;
  return studId === 'own' ? 'Which stud is it?' : 'Which flexplate stacks does this stud fit?';
}

function StudForm(props: StacksForStudProps) {
  const { frame, fields, studId, studs, writing, doubts, faults, hand, checked } = props;
  const boxes = { fields, faults, writing };
  return (
    <form
      method="get"
      action="/stud/stacks"
      id="stacks-form"
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
      <Questions doubts={doubts} fields={fields}>
        <div class="fields">
          <Choice
            label="Stud"
            name="stud"
            value={studId}
            options={[
              ...(studId === '' ? [{ value: '', label: 'choose' }] : []),
              { value: 'own', label: 'in my hand: measure it' },
              ...studs.map(({ id, name }) => ({ value: id, label: name })),
            ]}
          />
        </div>
        {studId === 'own' && <HandFields {...boxes} />}
        <div class="actions">
          <button class={hand || checked ? 'button' : 'button first'} type="submit" id="find-stacks">
            {studId === 'own' ? 'Find the stud' : 'Find flexplate stacks'}
          </button>
        </div>
        <div class="fields">
          <Boxes
            {...boxes}
            of={{ pullForwardMm }}
            hints={{ pullForwardMm: 'Used for every flexplate stack. Blank: each one’s own.' }}
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
        <JointFields
          {...boxes}
          figures={props.figures}
          ring={{ count: null, circleMm: null, of: 'stack' }}
          prevailing={false}
        />
      </Questions>
    </form>
  );
}

function Ranked({
  choices,
  checked: { id: studId, entry: stud },
  along,
  pullForwardMm: gapMm,
  frame,
}: StacksForStudProps & { readonly checked: NonNullable<StacksForStudProps['checked']> }) {
  return (
    <ol class="rows">
      {choices.map(({ id, entry, check, otherThread, mends }) => {
        const query = new URLSearchParams({ ...along, stack: id, stud: studId });
        return (
          <RankedRow
            id={`stack-${id}`}
            href={`/stud?${query}`}
            slipHref={check.fits === 'no' ? undefined : `/stud/slip?${query}`}
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
                  pullForwardMm={gapMm ?? entry.pullForwardMm}
                  name={stud.name}
                  unit={frame.lengthUnit}
                />
              )
            }
          />
        );
      })}
    </ol>
  );
}

function count(some: number, all: number): string {
  return some === 0 ? 'none of these flexplate stacks' : `${some} of ${all} flexplate stacks`;
}
