import type { ComponentChildren } from 'preact';
import type { BoxWidth } from '../../../shared/words/fields/boxWidth.ts';
import type { Extra, InputExtra } from '../extra.ts';
import { SignedAs, SignedIn } from '../signedIn.tsx';
import { useFieldIds } from './inForm.ts';
import { QuestionAt } from './questionAt.tsx';
import { Sign } from './sign.tsx';

/** The sentence beside a field that was not taken. */
export function FieldError({ id, text }: { id?: string; text: string }) {
  return (
    <span class="field-error" id={id}>
      <Sign status="fail" /> {text}
    </span>
  );
}

interface Described {
  readonly label: ComponentChildren;
  readonly name: string;
  readonly id?: string;
  readonly hint?: ComponentChildren;
  readonly error?: string | null;
  /** Said after the label: may be left empty. */
  readonly optional?: boolean;
}

/** Ids of what describes a field, in the order it is read. */
function describedBy(id: string, parts: { unit?: unknown; hint?: unknown; error?: unknown }) {
  const ids = (['unit', 'hint', 'error'] as const)
    .filter((part) => parts[part])
    .map((part) => `${id}-${part}`);
  return ids.length > 0 ? ids.join(' ') : undefined;
}

export interface FieldProps extends Described {
  readonly value?: string | number | null;
  readonly unit?: string;
  readonly type?: 'text' | 'date' | 'search' | 'email' | 'password' | 'range' | 'number' | 'file';
  readonly inputmode?: 'decimal' | 'numeric' | 'text' | 'search' | 'email' | 'none';
  readonly required?: boolean;
  readonly size?: BoxWidth;
  /** More for the input: hx-*, data-*, min, max, list, autofocus. */
  readonly input?: InputExtra;
}

/** The fields that ask who is writing; nobody is asked who has signed in. */
const ASKS_WHO = ['who', 'initials'];

/** Label above, box, unit after it, the error beside it in words. */
export function Field(props: FieldProps) {
  if (!ASKS_WHO.includes(props.name)) return <Box {...props} />;
  return (
    <SignedIn.Consumer>
      {(person) => (person ? <SignedAs person={person} /> : <Box {...props} />)}
    </SignedIn.Consumer>
  );
}

function Box(props: FieldProps) {
  const { label, name, value, unit, hint, error, optional, required, input } = props;
  const fieldId = useFieldIds();
  const id = props.id ?? fieldId(name);
  // preact ties list and role to each type; we set no role, and list only where it means something.
  const type = (props.type ?? 'text') as 'text';
  const size = props.size ?? (unit === undefined ? 'words' : 'figure');
  return (
    <div class={`field field-${size}${error ? ' field-wrong' : ''}`}>
      <label for={id}>
        {label}
        {optional && <span class="optional"> optional</span>}
      </label>
      <span class="box">
        <input
          id={id}
          name={name}
          type={type}
          inputmode={props.inputmode ?? (unit === undefined ? undefined : 'decimal')}
          autocomplete="off"
          value={value ?? ''}
          required={required}
          aria-invalid={error ? 'true' : undefined}
          aria-describedby={describedBy(id, { unit, hint, error })}
          {...input}
        />
        {unit !== undefined && (
          <span class="unit" id={`${id}-unit`}>
            {unit}
          </span>
        )}
      </span>
      {hint && (
        <span class="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {error && <FieldError id={`${id}-error`} text={error} />}
      <QuestionAt name={name} describedBy={error ? `${id}-error` : undefined} />
    </div>
  );
}

export interface TextAreaProps extends Described {
  readonly value?: string | null;
  readonly rows?: number;
}

export function TextArea(props: TextAreaProps) {
  const { label, name, value, hint, error, optional, rows = 3 } = props;
  const fieldId = useFieldIds();
  const id = props.id ?? fieldId(name);
  return (
    <div class={`field field-full${error ? ' field-wrong' : ''}`}>
      <label for={id}>
        {label}
        {optional && <span class="optional"> optional</span>}
      </label>
      <textarea
        id={id}
        name={name}
        rows={rows}
        aria-invalid={error ? 'true' : undefined}
        aria-describedby={describedBy(id, { hint, error })}
      >
        {value ?? ''}
      </textarea>
      {hint && (
        <span class="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {error && <FieldError id={`${id}-error`} text={error} />}
    </div>
  );
}

export interface Option {
  readonly value: string;
  readonly label: ComponentChildren;
  readonly hint?: ComponentChildren;
}

export interface ChoiceProps extends Described {
  readonly options: readonly Option[];
  readonly value?: string | null;
  /** A list that opens, or every option in sight (better for up to five). */
  readonly as?: 'select' | 'radios';
  readonly required?: boolean;
  /** More for the select, or for the box round the radios: hx-*. */
  readonly select?: Extra;
  readonly box?: Extra;
}

/** One of several. */
export function Choice(props: ChoiceProps) {
  const { label, name, options, value, hint, error, optional, as = 'select', required } = props;
  const fieldId = useFieldIds();
  const id = props.id ?? fieldId(name);
  const described = describedBy(id, { hint, error });
  const foot = (
    <>
      {hint && (
        <span class="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {error && <FieldError id={`${id}-error`} text={error} />}
    </>
  );
  if (as === 'select') {
    return (
      <div class={`field field-words${error ? ' field-wrong' : ''}`}>
        <label for={id}>
          {label}
          {optional && <span class="optional"> optional</span>}
        </label>
        <select
          id={id}
          name={name}
          required={required}
          aria-invalid={error ? 'true' : undefined}
          aria-describedby={described}
          {...props.select}
        >
          {options.map((option) => (
            <option value={option.value} selected={option.value === value}>
              {option.label}
            </option>
          ))}
        </select>
        {foot}
      </div>
    );
  }
  return (
    <fieldset
      class={`field radios${error ? ' field-wrong' : ''}`}
      id={id}
      tabindex={-1}
      aria-describedby={described}
      {...props.box}
    >
      <legend>
        {label}
        {optional && <span class="optional"> optional</span>}
      </legend>
      {options.map((option) => (
        <label class="radio">
          <input
            type="radio"
            id={`${id}-${option.value}`}
            name={name}
            value={option.value}
            checked={option.value === value}
            required={required}
          />
          <span>
            {option.label}
            {option.hint && <span class="hint">{option.hint}</span>}
          </span>
        </label>
      ))}
      {foot}
    </fieldset>
  );
}
