import { writePlace } from '../../../shared/words/places.ts';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { FieldError } from '../../parts/form/fieldBox.tsx';
import { Hidden } from '../../parts/form/hidden.tsx';
import { type MeasuringProps, measuringHref } from './measuringProps.ts';

const LETTER = { wall: 'w', face: 'f', mark: 'm' } as const;

/** The box for the next reading, and what can be done instead. */
export function ReadingForm(props: MeasuringProps) {
  const { frame, job, pass, asked, skipped, id, typed, faults, fields } = props;
  const error = errorsOf(faults)('value');
  const unit = frame.lengthUnit;
  return (
    <form method="post" action={`/jobs/${encodeURIComponent(job.number)}/measure`} id="reading-form">
      <Hidden
        fields={{
          pass,
          skipped: skipped.map((one) => one.step).join(','),
          unit,
          id,
          kind: asked && LETTER[asked.kind],
          place: asked && writePlace(asked),
          replaces: asked?.replaces?.id,
          at: fields.at,
          after: fields.after,
          again: fields.again,
          ma: fields.ma,
          mr: fields.mr,
        }}
      />
      <div class={`field reading${error ? ' field-wrong' : ''}`}>
        <label for="reading" id="reading-label">
          Reading
        </label>
        <span class="box">
          <input
            id="reading"
            name="value"
            type="text"
            inputmode="decimal"
            autocomplete="off"
            value={typed}
            enterkeyhint="next"
            autofocus
            aria-describedby="asked asked-more reading-unit reading-wrong"
            aria-invalid={error ? 'true' : undefined}
          />
          <span class="unit" id="reading-unit">
            {unit}
          </span>
        </span>
        <span id="reading-wrong" role="alert">
          {error && <FieldError text={error} />}
        </span>
      </div>
      <ReadingActions {...props} />
      <p id="said" class="said" role="status" />
      <Question {...props} />
      <p class="hint" id="reading-keys" hidden>
        Or type the letter on a button, then Enter.
      </p>
    </form>
  );
}

/** The letter that presses a button from the keyboard; shown where the script reads it. */
function Key({ letter }: { letter: string }) {
  return (
    <>
      {' '}
      <kbd>{letter}</kbd>
    </>
  );
}

/** A doubted value: what was probably meant, as typed, or again. */
function Question(props: MeasuringProps) {
  const { doubt, typed, asked, fields } = props;
  const { ma = '', mr = '' } = fields;
  const here: Record<string, string> = asked?.step ? { at: asked.step } : { ma, mr };
  return (
    <div class="doubt" id="doubt" role="alert" hidden={doubt === null}>
      <p id="doubt-question">{doubt?.question}</p>
      <div class="actions">
        <button
          class="button"
          type="submit"
          id="use-meant"
          name="meant"
          value={doubt?.meant ?? ''}
          hidden={doubt?.meant == null}
        >
          <span>Use {doubt?.meant}</span>
          <Key letter="u" />
        </button>
        <button
          class="button"
          type="submit"
          id="is-right"
          name="ok"
          value={typed.trim()}
          hidden={doubt?.mayConfirm === false}
        >
          <span>{typed.trim()} is right</span>
          <Key letter="y" />
        </button>
        <a class="button" id="measure-again" href={measuringHref(props, here)}>
          Measure again
          <Key letter="a" />
        </a>
      </div>
    </div>
  );
}

function ReadingActions(props: MeasuringProps) {
  const { job, pass, asked, skipped, fields } = props;
  const link = (more: Readonly<Record<string, string>>) => measuringHref(props, more);
  const step = asked?.step ?? '';
  const passed = [...skipped.map((one) => one.step), step].filter((one) => one !== '').join(',');
  return (
    <div class="actions" id="reading-actions">
      <button class={asked === null ? 'button' : 'button first'} type="submit" id="keep-reading">
        Save and next
      </button>
      <a
        class="button first"
        id="to-answer"
        href={`/jobs/${encodeURIComponent(job.number)}#${pass === 'before' ? 'decide' : 'verify'}`}
        hidden={asked !== null}
      >
        {pass === 'before' ? 'Go on: the answer' : 'Go on: check the cut'}
      </a>
      <button
        class="button"
        type="submit"
        id="no-mark"
        name="none"
        value="1"
        hidden={asked?.kind !== 'mark' || asked.at === null}
      >
        No mark here
        <Key letter="n" />
      </button>
      <a class="button" id="skip" href={link({ after: step, skipped: passed })} hidden={asked === null}>
        Skip
        <Key letter="s" />
      </a>
      <a class="button" id="back" href={link({ at: asked?.back ?? '' })}>
        Back
        <Key letter="b" />
      </a>
      <a class="button" id="repeat" href={link({ at: fields.after || step, again: '1' })}>
        Repeat the last
        <Key letter="r" />
      </a>
      <button class="button" type="button" id="begin-mark" aria-pressed="false" hidden>
        Heat mark
        <Key letter="h" />
      </button>
    </div>
  );
}
