import type { LengthUnit } from '../print.ts';

/** Words that name a unit say it in the reader’s: one sentence for each kind of shop. */
export type InUnits = string | Readonly<Record<LengthUnit, string>>;

export function inUnit(words: InUnits, unit: LengthUnit): string {
  return typeof words === 'string' ? words : words[unit];
}

/**
 * A field of a body, written once. From these records come the box of the form with what stands in it, the reading of
 * the form, where a fault is shown, the schema, the lines of the history, the columns of a list and the words of the
 * interface. `Fields<Body>` asks for every field of the body; the compiler names a forgotten one.
 */
interface Named {
  /** What screen, sheet, list and history call it: a noun, so that "The … is 4 mm" can follow. */
  readonly label: string;
  /** Where "The" before the label would be wrong: "Young’s modulus". */
  readonly subject?: string;
  /** The name of its box, where that is not the name of the field; null where no form has one. */
  readonly box?: string | null;
  /** What it is for, or how it is measured: one line under the box. */
  readonly help?: InUnits;
  /** Heads the boxes that follow, up to the next head. */
  readonly head?: string;
  /** One or two sentences under that head. */
  readonly headHelp?: InUnits;
  /** What stands under that head is folded, and its sentence says when it is needed. */
  readonly folded?: true;
  /** Marks its box and its dimension in the drawing beside the form. */
  readonly letter?: string;
  /** Told in place of a value that was not given. */
  readonly none?: string;
}

export interface Bounds {
  readonly least?: number;
  /** The least value itself is not allowed. */
  readonly open?: boolean;
  readonly most?: number;
}

/** Lengths: above zero, zero or more, of either sign. */
export type LengthKind = 'size' | 'extent' | 'height';

/** What has a unit that goes with the person’s lengths, or one of its own. */
export type MeasuredKind =
  | 'torque'
  | 'pressure'
  | 'stress'
  | 'speed'
  | 'cutting-speed'
  | 'angle'
  | 'mass'
  | 'density'
  | 'time'
  | 'temperature'
  | 'lining-modulus'
  | 'conductivity'
  | 'specific-heat'
  | 'ratio';

export interface LengthField extends Named {
  readonly kind: LengthKind;
}
export interface MeasuredField extends Named, Bounds {
  readonly kind: MeasuredKind;
  /** What to do about a value out of bounds, where the bounds alone do not say. */
  readonly advice?: InUnits;
}
/** One of several figures with a source, or the person’s own: the box that chooses, beside the box of the figure. */
interface Chosen {
  readonly chosenIn?: string;
}
/** A share, typed and shown in %. */
export interface ShareField extends Named, Bounds, Chosen {
  readonly kind: 'share';
}
/** A plain number of a unit that nothing else is typed in. */
export interface NumberField extends Named, Bounds, Chosen {
  readonly kind: 'number';
  /** '' where there is none. */
  readonly unit: string;
  readonly advice?: InUnits;
}
export interface CountField extends Named {
  readonly kind: 'count';
  readonly least: number;
  readonly most: number;
}
export type QuantityField = LengthField | MeasuredField | ShareField | NumberField | CountField;

/** The figures to choose from, by the name of the box that chooses, and the one that counts while nothing is chosen. */
export type KnownFigures = Readonly<
  Record<
    string,
    {
      readonly figures: readonly {
        readonly id: string;
        readonly value: number;
        readonly says: string;
        readonly source: string;
      }[];
      readonly otherwise: string | null;
    }
  >
>;
/** Chosen where the person types a figure of their own. */
export const OWN_FIGURE = 'own';

/** Several lengths in one box, with a semicolon between them. */
export interface LengthsField extends Named {
  readonly kind: 'lengths';
  readonly each: LengthKind;
  /** The longest list there may be. */
  readonly most: number;
}
export interface TextField extends Named {
  readonly kind: 'text';
  readonly least?: number;
  readonly most: number;
  /** Several lines. */
  readonly lines?: boolean;
}
/** Worked out anew for each cover: kept with a decimal point, shown and typed in the shop’s sign. */
export interface FormulaField extends Named {
  readonly kind: 'formula';
  readonly most: number;
}
export interface DayField extends Named {
  readonly kind: 'day';
}
/** One of a closed list, with the word for each, in the order they are offered. */
export interface ChoiceField<Value extends string = string> extends Named {
  readonly kind: 'choice';
  readonly options: Readonly<Record<Value, string>>;
  /** Offered first, where it follows from something else while nobody chooses. */
  readonly unsaid?: string;
  /** Every option in sight, instead of a list that opens. */
  readonly inSight?: boolean;
}
export interface YesNoField extends Named {
  readonly kind: 'yes-no';
  /** Where there are more words to it than yes and no. */
  readonly words?: { readonly yes: string; readonly no: string };
}
/** A part with fields of its own. One that may be left out is null while nothing of it was typed. */
export interface PartField extends Named {
  readonly kind: 'part';
  readonly fields: AnyFields;
  /** Stands before the name of each of its boxes. */
  readonly at?: string;
  /** Its history tells only what was given. */
  readonly quiet?: boolean;
}
/**
 * Nobody types it as it is kept: whoever makes it says how it is read, checked and told. `box` is where it is typed
 * otherwise, for a fault.
 */
export interface MadeField extends Named {
  readonly kind: 'made';
}

export type Field =
  | QuantityField
  | LengthsField
  | TextField
  | FormulaField
  | DayField
  | ChoiceField
  | YesNoField
  | PartField
  | MadeField;

/** What a form takes an empty box as, where that is not nothing. */
interface IfEmpty<V> {
  readonly ifEmpty?: V;
}
/** May be null: no box has to be filled. */
interface Optional {
  readonly optional: true;
}
interface Needed {
  readonly optional?: undefined;
}
/** What a field is where a body or a request does without it. */
interface IfLeftOut<V> {
  readonly ifLeftOut: V;
}

type KindFor<V> = [V] extends [readonly number[]]
  ? LengthsField
  : [V] extends [number]
    ? QuantityField
    : [V] extends [boolean]
      ? YesNoField
      : [V] extends [string]
        ? string extends V
          ? TextField | FormulaField | DayField
          : ChoiceField<V>
        : [V] extends [object]
          ? PartField & { readonly fields: Fields<V> }
          : never;

type FieldFor<V, Given = NonNullable<V>> =
  | MadeField
  | (KindFor<Given> &
      (null extends V
        ? Optional
        : undefined extends V
          ? Needed & IfLeftOut<Given>
          : Needed & Partial<IfLeftOut<Given>>) &
      IfEmpty<Given>);

/** Every field of a body. */
export type Fields<Body> = { readonly [Key in keyof Body]-?: FieldFor<Body[Key]> };

/** A field as whoever reads, writes or tells a record meets it. */
export type AnyField = Field & {
  readonly optional?: true | undefined;
  readonly ifEmpty?: unknown;
  readonly ifLeftOut?: unknown;
};
export type AnyFields = Readonly<Record<string, AnyField>>;

/** What nobody types of a body. */
export type MadeKeys<F> = { [Key in keyof F]: F[Key] extends { kind: 'made' } ? Key : never }[keyof F];

type Given<F> = F extends { kind: 'part'; fields: infer Part }
  ? BodyOf<Part>
  : F extends { kind: 'lengths' }
    ? readonly number[]
    : F extends { kind: 'choice'; options: infer Options }
      ? keyof Options & string
      : F extends { kind: 'yes-no' }
        ? boolean
        : F extends { kind: 'text' | 'formula' | 'day' }
          ? string
          : number;

/** What a record describes, but for what nobody types. */
export type BodyOf<F> = {
  readonly [Key in Exclude<keyof F, MadeKeys<F>>]: F[Key] extends { optional: true }
    ? Given<F[Key]> | null
    : Given<F[Key]>;
};

/** The same fields where each may be left out. */
export function allOptional<F extends AnyFields>(fields: F): { [Key in keyof F]: F[Key] & Optional } {
  const optional = Object.entries(fields).map(([key, field]) => [key, { ...field, optional: true }]);
  return Object.fromEntries(optional) as { [Key in keyof F]: F[Key] & Optional };
}

/** A body of which nothing was given: for one that is filled in part. */
export function nothingOf<F extends AnyFields>(fields: F): BodyOf<F> {
  const made = Object.entries(fields).flatMap(([key, field]) =>
    field.kind === 'made'
      ? []
      : [[key, field.optional ? null : (field.ifLeftOut ?? field.ifEmpty ?? NOTHING[field.kind])]],
  );
  return Object.fromEntries(made) as BodyOf<F>;
}

const NOTHING: Partial<Record<Field['kind'], unknown>> = { text: '', 'yes-no': false, lengths: [] };

/** Begins a sentence about it: "The pull-forward gap". */
export function subjectOf({ label, subject, kind }: Named & { readonly kind?: string }): string {
  return subject ?? (kind === 'yes-no' ? label : `The ${lowerFirst(label)}`);
}

/** "Crank pilot" → "crank pilot"; "US size", "K" and names of people stay. */
export function lowerFirst(label: string): string {
  return /^(?:\p{Lu}(?!\p{Ll})|Young|Poisson)/u.test(label)
    ? label
    : `${label.slice(0, 1).toLowerCase()}${label.slice(1)}`;
}

/** Begins a sentence or a title. */
export function upperFirst(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}

/** The fields with a name, typed: what `Object.entries` forgets. */
export function entriesOf<F extends AnyFields>(
  fields: F,
): readonly (readonly [keyof F & string, AnyField])[] {
  return Object.entries(fields);
}

const NO_QUANTITY: ReadonlySet<AnyField['kind']> = new Set([
  'part',
  'made',
  'text',
  'formula',
  'day',
  'choice',
  'yes-no',
  'lengths',
]);

/** A quantity, or a list of lengths. */
export function isFigure(field: AnyField): field is AnyField & (QuantityField | LengthsField) {
  return field.kind === 'lengths' || isQuantity(field);
}

/** A field that holds one quantity. */
export function isQuantity(field: AnyField): field is AnyField & QuantityField {
  return !NO_QUANTITY.has(field.kind);
}
