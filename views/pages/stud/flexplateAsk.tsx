import { boxesOf, type Writing } from '../../../shared/quantity/fieldText.ts';
import { upperFirst } from '../../../shared/words/fields/field.ts';
import { FLEXPLATE_SEEN } from '../../../shared/words/fields/gap.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { FlexplateLook, FlexplateNext, FlexplateSeen } from '../../../shared/words/stud/choices.ts';
import { FlexplateSection } from '../../drawings/flexplateSection.tsx';
import type { Frame } from '../../frame.ts';
import { Boxes } from '../../parts/form/bodyFields.tsx';

type Fields = Readonly<Record<string, string>>;

interface Look {
  /** Its box, and its name in a sentence. */
  readonly box: string;
  readonly called: string;
  readonly asks: string;
  readonly onBench: string;
  readonly inCar: string;
}

const { style, holeCount, thread, nutHeightMm, totalMm } = FLEXPLATE_SEEN;
const AT_A_HOLE = 'At a stud hole, one jaw on the pad side, one where the nut sits. Leave shims on the pads.';

/** What can be looked at, and how. */
export const LOOK: Readonly<Record<FlexplateLook, Look>> = {
  style: {
    box: 'style',
    called: 'kind of flexplate',
    asks: 'One thin plate, or a plate with a thick casting?',
    onBench: 'Look at a stud hole from the engine side, where the nut goes.',
    inCar: 'Look past one nut: it sits on the thin plate, or down in the middle on a casting.',
  },
  count: {
    box: 'holeCount',
    called: 'number of studs',
    asks: 'How many studs hold the converter?',
    onBench: 'Count the studs on the converter.',
    inCar: 'With the ignition off and the key out, turn the engine by hand and count the nuts.',
  },
  thread: {
    box: thread.box,
    called: 'nut thread',
    asks: 'What thread does the nut have?',
    onBench: 'Try a bolt you know in it, or measure the stud.',
    inCar: 'Take one nut off. Try it on a bolt you know, or measure the stud.',
  },
  nut: {
    box: nutHeightMm.box,
    called: 'nut height',
    asks: 'How high is the nut?',
    onBench: 'With a caliper, face to face.',
    inCar: 'With a caliper on the nut, from the flexplate to its end.',
  },
  total: {
    box: totalMm.box,
    called: 'thickness',
    asks: 'How thick is it, pad face to the engine side?',
    onBench: AT_A_HOLE,
    inCar: `Take the nuts off and push the converter back first. ${AT_A_HOLE}`,
  },
};

interface AskProps {
  readonly frame: Frame;
  readonly fields: Fields;
  readonly writing: Writing;
  readonly seen: FlexplateSeen;
}

/** The one thing to look at next; each answer is one press, and so is not being able to see it. */
export function AskNext({ frame, fields, writing, seen, next }: AskProps & { next: FlexplateNext }) {
  const { box, asks, inCar, onBench } = LOOK[next.look];
  const unit = frame.lengthUnit;
  return (
    <form method="get" action="/stud/flexplate" id="flexplate-ask" class="ask">
      {Object.entries(carriedOn(fields, unit)).map(([name, value]) => (
        <input type="hidden" name={name} value={value} />
      ))}
      <h2 id="ask">{asks}</h2>
      <p>{seen.onBench ? onBench : inCar}</p>
      {next.answers.length > 0 ? (
        <div class="actions answers">
          {next.answers.map(({ value, leaves }) => (
            <button class="button" type="submit" name={box} value={sent(value)} id={`answer-${slug(value)}`}>
              {spoken(next.look, value)} <small>leaves {leaves}</small>
            </button>
          ))}
        </div>
      ) : (
        <>
          <div class="fields">
            <Boxes
              of={next.look === 'nut' ? { nutHeightMm } : { totalMm }}
              fields={{}}
              faults={[]}
              writing={writing}
              at=""
            />
          </div>
          <div class="actions">
            <button class="button first" type="submit" id="answer">
              Next
            </button>
          </div>
        </>
      )}
      <div class="actions">
        <button class="button quiet" type="submit" name="skip" value={next.look} id="cannot-see">
          I can’t see it
        </button>
        {next.look === 'thread' && (
          <a class="button quiet" href="/stud/stacks?stud=own">
            Measure the stud with a caliper
          </a>
        )}
        <button
          class="button quiet"
          type="submit"
          name="onBench"
          value={seen.onBench ? '0' : '1'}
          id="on-bench"
        >
          {seen.onBench ? 'It is still in the vehicle' : 'It is out, on the bench'}
        </button>
      </div>
      {next.look === 'style' && <TwoKinds unit={frame.lengthUnit} />}
    </form>
  );
}

/** What was answered, each to be taken back. */
export function AnswersSoFar({ fields, seen }: AskProps) {
  const looks = Object.keys(LOOK) as FlexplateLook[];
  const given = looks.filter((look) => (fields[LOOK[look].box] ?? '') !== '' || seen.cannot.includes(look));
  if (given.length === 0) return null;
  return (
    <ul class="plain" id="answers-so-far">
      {given.map((look) => (
        <li>
          {upperFirst(LOOK[look].called)}: {told(look, fields[LOOK[look].box] ?? '')}{' '}
          <a href={`/stud/flexplate?${without(fields, look)}`}>
            Change<span class="unseen"> the {LOOK[look].called}</span>
          </a>
        </li>
      ))}
    </ul>
  );
}

function told(look: FlexplateLook, typed: string): string {
  return typed === '' ? 'can’t be seen' : look === 'style' ? spoken(look, typed) : typed;
}

/** Everything answered so far, to be sent along. */
function carriedOn(fields: Fields, unit: LengthUnit): Fields {
  const names = [...boxesOf(FLEXPLATE_SEEN), thread.box, 'cannot', 'ok.total', 'ok.nutHeight'];
  const typed = names.flatMap((name) => (fields[name] ? [[name, fields[name]]] : []));
  return { ...Object.fromEntries(typed), unit };
}

/** The same questions without one answer. */
export function without(fields: Fields, look: FlexplateLook): string {
  const { [LOOK[look].box]: _taken, [`ok.${LOOK[look].box}`]: _sure, skip: _skip, ...rest } = fields;
  const cannot = (rest.cannot ?? '').split(',').filter((one) => one !== '' && one !== look);
  return new URLSearchParams({ ...rest, cannot: cannot.join(',') }).toString();
}

function spoken(look: FlexplateLook, value: string): string {
  if (look === 'style') return value === 'one-piece' || value === 'two-piece' ? style.options[value] : value;
  return look === 'count' ? `${value} ${holeCount.label.replace('Number of ', '')}` : sent(value);
}

/** A thread without the class of its nut. */
function sent(value: string): string {
  return value.replace(/-(2B|3B|6H)$/, '');
}

function slug(value: string): string {
  return sent(value)
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-');
}

/** Both kinds, drawn side by side. */
export function TwoKinds({ unit }: { unit: LengthUnit }) {
  const [thin, thick] = unit === 'in' ? ['1/8 in', '1/2 in'] : ['3 mm', '13 mm'];
  return (
    <section aria-label="The two kinds">
      <div class="two even kinds">
        <div>
          <h3>One piece</h3>
          <p>A single thin plate; the nut sits straight on it. About {thin} at a stud hole.</p>
          <figure class="drawing">
            <FlexplateSection id="one" style="one-piece" />
          </figure>
        </div>
        <div>
          <h3>Two piece</h3>
          <p>
            A plate, and in its middle a thick steel casting; the nut sits on the casting. About {thick} at a
            stud hole.
          </p>
          <figure class="drawing">
            <FlexplateSection id="two" style="two-piece" />
          </figure>
        </div>
      </div>
      <p class="hint">
        Common practice in the trade, no source. The converter's side wall does not tell which it is.
      </p>
    </section>
  );
}
