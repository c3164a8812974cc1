import type { ComponentChildren } from 'preact';
import { kindOf } from '../../../shared/quantity/bareUnit.ts';
import {
  asTyped,
  bareUnitOf,
  boxesOf,
  boxOf,
  inPart,
  typedAs,
  unitShown,
  type Writing,
} from '../../../shared/quantity/fieldText.ts';
import { readQuantity } from '../../../shared/quantity/readQuantity.ts';
import { tellQuantity } from '../../../shared/quantity/writeQuantity.ts';
import { printDay } from '../../../shared/words/day.ts';
import { boxWidth } from '../../../shared/words/fields/boxWidth.ts';
import {
  type AnyField,
  type AnyFields,
  entriesOf,
  type InUnits,
  inUnit,
  isQuantity,
  type KnownFigures,
  OWN_FIGURE,
  type PartField,
} from '../../../shared/words/fields/field.ts';
import { printShare } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { errorsOf } from './errorsOf.ts';
import { Choice, Field, FieldError, TextArea } from './fieldBox.tsx';
import { FoldedBoxes } from './foldedBoxes.tsx';
import { Tick } from './tick.tsx';

export interface BodyFieldsProps {
  readonly of: AnyFields;
  /** What stands in each box, by its name. */
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  /** What is kept, box by box: a fold that holds something else stands open. Nothing is, while this is left out. */
  readonly kept?: Readonly<Record<string, string>> | undefined;
  readonly writing: Writing;
  readonly known?: KnownFigures;
  /** Stands before the name of each box. */
  readonly at?: string;
  /** The row of a table, or what stands after the name of each box otherwise. */
  readonly row?: number | string;
  /** Only these, in the order of the record; every field of it otherwise. */
  readonly only?: readonly string[];
  readonly without?: readonly string[];
  /** A hint that depends on something beside the body, by the name of the field. */
  readonly hints?: Readonly<Record<string, ComponentChildren>>;
  /** Another box than the kind of field has, by the name of the field. */
  readonly instead?: Readonly<Record<string, ComponentChildren>>;
  /** What comes before or after a box, by the name of the field. */
  readonly before?: Readonly<Record<string, ComponentChildren>>;
  readonly after?: Readonly<Record<string, ComponentChildren>>;
  /** A drawing beside these boxes carries their letters. */
  readonly lettered?: boolean;
}

/** The boxes of a body, made from its fields: label, unit, help, what stands there and what is wrong with it. */
export function BodyFields(props: BodyFieldsProps) {
  return (
    <>
      {groupsOf(shownOf(props)).map(({ head, headHelp, folded, keys, part }) =>
        part !== null ? (
          <BodyFields {...partOf(props, part)} />
        ) : head === null ? (
          <div class="fields">
            <Boxes {...props} only={keys} />
          </div>
        ) : folded ? (
          <FoldedBoxes
            {...props}
            head={head}
            says={headHelp && inUnit(headHelp, props.writing.lengthUnit)}
            names={namesOf(props, keys)}
            told={filledInWords({ ...props, only: keys })}
          >
            <Boxes {...props} only={keys} />
          </FoldedBoxes>
        ) : (
          <fieldset class="group">
            <legend>{head}</legend>
            {headHelp && <p class="hint">{inUnit(headHelp, props.writing.lengthUnit)}</p>}
            <div class="fields">
              <Boxes {...props} only={keys} />
            </div>
          </fieldset>
        ),
      )}
    </>
  );
}

/** The same without heads, for a place that has its own. */
export function Boxes(props: BodyFieldsProps) {
  return (
    <>
      {shownOf(props).map(([key, field]) => (
        <>
          {props.before?.[key]}
          {props.instead?.[key] ?? <Box {...props} name={key} field={field} />}
          {props.after?.[key]}
        </>
      ))}
    </>
  );
}

function shownOf({ of, only, without = [] }: BodyFieldsProps) {
  return entriesOf(of).filter(
    ([key, field]) =>
      (only?.includes(key) ?? true) && !without.includes(key) && field.kind !== 'made' && field.box !== null,
  );
}

interface Group {
  readonly head: string | null;
  readonly headHelp: InUnits | undefined;
  readonly folded: boolean;
  readonly keys: string[];
  /** A part that heads its own fields: it is no row of the group before it. */
  readonly part: PartField | null;
}

/** What stands open comes first. */
function groupsOf(shown: readonly (readonly [string, AnyField])[]) {
  const groups: Group[] = [];
  for (const [key, field] of shown) {
    const { head, headHelp, folded = false } = field;
    const part = field.kind === 'part' && head === undefined && headsItself(field) ? field : null;
    const last = groups.at(-1);
    if (last === undefined || head !== undefined || part !== null || last.part !== null)
      groups.push({ head: head ?? null, headHelp, folded, keys: [key], part });
    else last.keys.push(key);
  }
  const closed = groups.filter((group) => group.folded || (group.part !== null && foldsItself(group.part)));
  return [...groups.filter((group) => !closed.includes(group)), ...closed];
}

/** The names of the boxes of these fields. */
function namesOf({ of, at = '', row }: BodyFieldsProps, keys: readonly string[]): string[] {
  const those = Object.fromEntries(entriesOf(of).filter(([key]) => keys.includes(key)));
  return boxesOf(those, { at, ...(row !== undefined && { row }) });
}

const MOST_TOLD = 5;
const FIGURES_TOLD = 4;

/** "Comeback of job: 1003; Note: rust at stud 2": what stands in these boxes, the first of those that are filled. */
export function filledInWords(props: BodyFieldsProps): string {
  const filled = filledIn(props);
  const more = filled.length - MOST_TOLD;
  return more <= 1 ? filled.join('; ') : `${filled.slice(0, MOST_TOLD).join('; ')}; and ${more} more`;
}

function filledIn(props: BodyFieldsProps): string[] {
  return shownOf(props).flatMap(([key, field]) => {
    if (field.kind === 'part') return filledIn(partOf(props, field));
    const text = (props.fields[boxOf(key, field, props) ?? key] ?? '').trim();
    return text === '' ? [] : [`${field.label}: ${boxInWords(field, text, props.writing)}`];
  });
}

function boxInWords(field: AnyField, text: string, writing: Writing): string {
  if (field.kind === 'choice') return field.options[text] ?? text;
  if (field.kind === 'yes-no')
    return field.words?.[text === 'no' ? 'no' : 'yes'] ?? (text === '1' ? 'yes' : text);
  if (field.kind === 'day') return printDay(text);
  const unit = unitShown(field, writing);
  if (unit === undefined) return text;
  return /\d$/.test(text) ? `${text} ${unit}` : inUnitOfPage(field, text, writing);
}

/** What stands there with a unit of its own; as it stands where that is no single quantity. */
function inUnitOfPage(field: AnyField, text: string, writing: Writing): string {
  if (!isQuantity(field)) return text;
  const { decimalSign } = writing;
  const kind = typedAs(field);
  const unit = bareUnitOf(kind, writing);
  const read = readQuantity({ field: field.label, typed: text, kind: kindOf(kind), unit, decimalSign });
  if (!read.ok) return text;
  return tellQuantity(read.value, kind, unit, decimalSign, kind === 'length' ? undefined : FIGURES_TOLD);
}

function headsItself({ fields }: PartField): boolean {
  return entriesOf(fields)[0]?.[1].head !== undefined;
}

function foldsItself({ fields }: PartField): boolean {
  return entriesOf(fields)[0]?.[1].folded === true;
}

function partOf(props: BodyFieldsProps, part: PartField): BodyFieldsProps {
  const { only: _, ...rest } = props;
  return { ...rest, of: part.fields, ...inPart(part, { at: props.at ?? '' }) };
}

function Box(props: BodyFieldsProps & { readonly name: string; readonly field: AnyField }) {
  const { fields, faults, writing, hints, name: key, field } = props;
  if (field.kind === 'part') {
    return <Boxes {...partOf(props, field)} />;
  }
  const name = boxOf(key, field, props) ?? key;
  const help = field.help === undefined ? undefined : inUnit(field.help, writing.lengthUnit);
  const hint = hints?.[key] ?? help;
  const value = fields[name] ?? emptyText(field, writing);
  const error = errorsOf(faults)(name);
  const optional = field.optional === true || (field.kind === 'text' && !field.least);
  const known = 'chosenIn' in field && field.chosenIn !== undefined && props.known?.[field.chosenIn];
  if (known) return <Chosen {...props} chosenIn={field.chosenIn ?? ''} figures={known} />;
  const described = {
    label: props.lettered ? <Lettered field={field} /> : field.label,
    name,
    value,
    error,
    ...(hint !== undefined && { hint }),
  };
  switch (field.kind) {
    case 'choice':
      return (
        <Choice
          {...described}
          {...(field.inSight && { as: 'radios' as const })}
          options={
            field.inSight
              ? optionsOf({ ...field, optional: undefined }, field.options, field.unsaid)
              : optionsOf(field, field.options, field.unsaid)
          }
        />
      );
    case 'yes-no':
      if (field.optional) return <Choice {...described} options={optionsOf(field, field.words ?? YES_NO)} />;
      return (
        <Tick
          label={help ? `${field.label}: ${help}` : field.label}
          name={name}
          value="1"
          checked={value === '1'}
        />
      );
    case 'text':
      if (field.lines) return <TextArea {...described} rows={2} optional={optional} />;
      return <Field {...described} optional={optional} size={boxWidth(field)} />;
    case 'formula':
      return <Field {...described} optional={optional} size={boxWidth(field)} />;
    case 'day':
      return (
        <>
          <Field {...described} type="date" size={boxWidth(field)} optional={optional} />
          <DayAsked {...props} name={name} label={field.label} />
        </>
      );
    case 'lengths':
      return (
        <Field {...described} optional size={boxWidth(field)} inputmode="decimal" unit={writing.lengthUnit} />
      );
    default: {
      const unit = unitShown(field, writing);
      const figure = { size: boxWidth(field), inputmode: 'decimal' as const };
      return <Field {...described} {...figure} {...(unit !== undefined && { unit })} optional={optional} />;
    }
  }
}

/** The label of a box, after the letter its dimension has in the drawing. */
function Lettered({ field: { label, letter } }: { field: AnyField }) {
  if (letter === undefined) return <>{label}</>;
  return (
    <>
      <b class="letter" aria-hidden="true">
        {letter}
      </b>
      {label}
    </>
  );
}

/** A day that was asked about, to be confirmed; entered again, it is judged anew. */
function DayAsked({ fields, faults, name, label }: BodyFieldsProps & { name: string; label: string }) {
  const [typed, confirmed] = [fields[name] ?? '', fields[`ok.${name}`] ?? ''];
  const asked = errorsOf(faults)(`ok.${name}`);
  if (typed === '' || !(asked || confirmed === typed)) return null;
  const says = `${label}: ${printDay(typed)}, as typed`;
  return (
    <div class="question">
      {asked && <FieldError text={asked} />}
      <Tick label={says} name={`ok.${name}`} value={typed} checked={confirmed === typed} />
    </div>
  );
}

/** One of the figures known, or the box for another. */
function Chosen(
  props: BodyFieldsProps & {
    readonly name: string;
    readonly field: AnyField;
    readonly chosenIn: string;
    readonly figures: KnownFigures[string];
  },
) {
  const { fields, faults, field, chosenIn } = props;
  const { figures, otherwise } = props.figures;
  const chosen = fields[chosenIn] || (otherwise ?? '');
  return (
    <>
      <Choice
        label={field.label}
        name={chosenIn}
        value={chosen}
        error={errorsOf(faults)(chosenIn)}
        hint={sourcesOf(field, figures)}
        options={[
          ...(chosen === '' ? [{ value: '', label: 'choose' }] : []),
          ...figures.map(({ id, value, says }) => ({
            value: id,
            label: `${figureText(field, value)}: ${says}`,
          })),
          { value: OWN_FIGURE, label: 'another figure: type it' },
        ]}
      />
      {chosen === OWN_FIGURE && <Box {...props} known={{}} />}
    </>
  );
}

function figureText(field: AnyField, value: number): string {
  return field.kind === 'share' ? `± ${printShare(value, 0)}` : value.toFixed(2);
}

/** Where the figures come from, below the list: in it they would be cut off. */
function sourcesOf(field: AnyField, figures: KnownFigures[string]['figures']): string {
  const sources = [...new Set(figures.map(({ source }) => source))];
  const of = (source: string) => figures.filter((one) => one.source === source);
  return sources
    .map(
      (source) =>
        `${of(source)
          .map(({ value }) => figureText(field, value))
          .join(', ')}: ${source}`,
    )
    .join('; ');
}

/** What an empty box is taken as, so that it is seen. */
function emptyText(field: AnyField, writing: Writing): string | undefined {
  if (field.kind !== 'choice' && field.kind !== 'number') return undefined;
  if (field.ifEmpty === undefined) return undefined;
  return asTyped({ it: { ...field, box: 'it' } }, { it: field.ifEmpty }, writing).it;
}

const YES_NO = { yes: 'yes', no: 'no' };

function optionsOf(
  { optional, none }: AnyField,
  words: Readonly<Record<string, string>>,
  unsaid = optional && (none ?? 'not given'),
) {
  const options = Object.entries(words).map(([value, label]) => ({ value, label }));
  return unsaid ? [{ value: '', label: unsaid }, ...options] : options;
}
