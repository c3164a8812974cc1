import { BARE_UNIT, kindOf, type TypedKind } from '../../../shared/quantity/bareUnit.ts';
import { bareUnitOf, type Writing, writingIn } from '../../../shared/quantity/fieldText.ts';
import {
  type FigureDoubt,
  type FigureTyped,
  figureDoubt,
  type Usual,
} from '../../../shared/quantity/figureDoubt.ts';
import { inReadersUnit } from '../../../shared/quantity/inReadersUnit.ts';
import { readQuantity } from '../../../shared/quantity/readQuantity.ts';
import type { UnitName } from '../../../shared/quantity/units.ts';
import type { AsTyped } from '../../../shared/words/catalogue.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { DoubtedLength } from '../../../views/parts/form/askedHere.ts';
import { MEANT } from '../../../views/parts/form/questionAt.tsx';
import { readFormula } from '../../shop/limits/minimumFormula.ts';

export type { Writing };
export type Fields = Readonly<Record<string, string>>;

/**
 * Query or body of a form as plain text fields; the last of several of one name counts, anything else is dropped. A
 * button `set.NAME` has the value that was meant, and puts it into the box NAME.
 */
export function fieldsOf(source: unknown): Fields {
  const fields: Record<string, string> = Object.create(null);
  if (typeof source !== 'object' || source === null) return fields;
  for (const [name, value] of Object.entries(source)) {
    const last: unknown = Array.isArray(value) ? value.at(-1) : value;
    if (typeof last === 'string') fields[name] = last.replaceAll('\0', '');
  }
  for (const name of Object.keys(fields)) {
    if (!name.startsWith(MEANT)) continue;
    fields[name.slice(MEANT.length)] = fields[name]!;
    delete fields[name];
  }
  return fields;
}

/** The unit chosen in the form itself or in the address; null where neither says. */
export function unitOf({ unit }: Fields): LengthUnit | null {
  return unit === 'in' || unit === 'mm' ? unit : null;
}

/** A quantity whose text says more than the number it gave, or a formula that is kept in another form. */
interface TypedQuantity extends AsTyped {
  readonly name: string;
  readonly value: number | string;
}

/** Reads a form field by field, and gathers one sentence for each that cannot be used. */
export class TypedForm {
  readonly fields: Fields;
  readonly faults: Fault[] = [];
  /** Lengths, torques and pressures read so far, but those typed simply as the number in mm, N·m or MPa. */
  readonly quantities: TypedQuantity[] = [];
  /** What looks like a slip and was not confirmed, or cannot be read and something else was probably meant. */
  readonly doubts: (DoubtedLength & { readonly question: string })[] = [];
  readonly #noted = new Map<string, { readonly kind: TypedKind; readonly bare: UnitName }>();
  /** As the form says, where it does. */
  readonly writing: Writing;
  /** What the form showed: a box that still says so was not typed, and is not asked about. */
  readonly #shown: Fields;

  constructor(fields: Fields, writing: Writing, shown: Fields = {}) {
    this.fields = fields;
    this.writing = writingIn(fields, writing);
    this.#shown = shown;
  }

  text(name: string): string {
    return (this.fields[name] ?? '').trim();
  }

  has(name: string): boolean {
    return this.text(name) !== '';
  }

  fault(path: string, message: string): void {
    this.faults.push({ path, message });
  }

  /** One of a closed list; null when nothing was chosen or something unknown was sent. */
  choice<T extends string>(name: string, choices: readonly T[]): T | null {
    const typed = this.text(name);
    return choices.find((choice) => choice === typed) ?? null;
  }

  /** The same, where anything else that was sent is a fault. */
  oneOf<T extends string>(name: string, label: string, choices: readonly T[]): T | null {
    const chosen = this.choice(name, choices);
    if (chosen === null && this.has(name)) this.fault(name, `${label}: choose one from the list.`);
    return chosen;
  }

  /** The one quantity in a box, in the unit it is kept in; null when left empty, or when it cannot be used. */
  quantity(name: string, label: string, kind: TypedKind): number | null {
    return this.#quantity(name, label, this.text(name), kind);
  }

  /** A quantity in mm; null when left empty. */
  length(name: string, label: string): number | null {
    return this.quantity(name, label, 'length');
  }

  /** A length that looks like a slip is asked about, and null until the field `ok.NAME` repeats it. */
  lengthLike(name: string, label: string, usual: Usual): number | null {
    const valueMm = this.length(name, label);
    return valueMm === null || this.askFigure(name, label, 'length', usual) ? null : valueMm;
  }

  /** Whether a figure that was typed looks like a slip, and is asked about until the field `ok.NAME` repeats it. */
  askFigure(
    name: string,
    label: string,
    kind: TypedKind,
    usual: Usual,
    doubt: (figure: FigureTyped) => FigureDoubt | null = (figure) => figureDoubt(figure, usual),
  ): boolean {
    if (!this.has(name) || this.isSure(name)) return false;
    const { decimalSign } = this.writing;
    const unit = bareUnitOf(kind, this.writing);
    for (const typed of splitRepeats(this.text(name))) {
      const read = readQuantity({ field: label, typed, kind: kindOf(kind), unit, decimalSign });
      if (!read.ok) continue;
      const bare = read.unitTyped === null;
      const asked = doubt({ value: read.value, typed, unit: read.unit, decimalSign, bare });
      if (asked === null) continue;
      const said = asked.question.slice(0, asked.question.indexOf('?'));
      const meant = this.text(name) === typed ? [asked.meantTyped] : [];
      this.ask(name, `${label}: ${asked.question}`, `${label} is ${said}, as typed`, meant);
      return true;
    }
    return false;
  }

  /** Confirmed, or as the form showed it. */
  isSure(name: string): boolean {
    return this.isConfirmed(name) || this.#shown[name]?.trim() === this.text(name);
  }

  /** It was asked about, and is right as typed. */
  isConfirmed(name: string): boolean {
    return this.has(name) && this.text(`ok.${name}`) === this.text(name);
  }

  /** Asks about what is in a box: what may be meant has a button; `says` null where it cannot be taken as typed. */
  ask(name: string, question: string, says: string | null, meant: readonly string[]): void {
    if (this.faults.some(({ path }) => path === name)) {
      if (meant.length > 0)
        this.doubts.push({ name, typed: this.text(name), question, says: null, over: question, meant });
      return;
    }
    const asks = says === null || question.endsWith('confirm it.');
    this.fault(name, asks ? question : `${question} Enter it again, or confirm it below.`);
    this.doubts.push({ name, typed: this.text(name), question, says, meant });
  }

  /** Several readings of one place, parted by semicolons: `4.92; 4.93`. Empty gives none. */
  lengths(name: string, label: string): number[] {
    const parts = splitRepeats(this.text(name));
    return parts
      .map((part, i) =>
        this.#quantity(name, parts.length > 1 ? `${label}, reading ${i + 1}` : label, part, 'length'),
      )
      .filter((value) => value !== null);
  }

  /** A formula for a length, in the form it is kept in; null when left empty, or when it cannot be used. */
  formula(name: string, label: string): string | null {
    const typed = this.text(name);
    if (typed === '') return null;
    const read = readFormula(typed, this.writing.decimalSign);
    if (!read.ok) {
      this.fault(name, `${label}: ${read.message}`);
      return null;
    }
    if (read.kept !== read.typed)
      this.quantities.push({ name, value: read.kept, text: read.typed, bareUnit: null });
    return read.kept;
  }

  angle(name: string, label: string): number | null {
    return this.quantity(name, label, 'angle');
  }

  number(name: string, label: string): number | null {
    return this.quantity(name, label, 'number');
  }

  count(name: string, label: string): number | null {
    return this.quantity(name, label, 'count');
  }

  pressure(name: string, label: string): number | null {
    return this.#quantity(name, label, this.text(name), 'pressure', 'MPa');
  }

  /** A quantity in N·m; a bare number is of the unit the field shows. */
  torque(name: string, label: string, bare: 'N·m' | 'lb·ft' = 'N·m'): number | null {
    return this.#quantity(name, label, this.text(name), 'torque', bare);
  }

  /** A share; a bare 25 is 25 %. */
  share(name: string, label: string): number | null {
    return this.quantity(name, label, 'share');
  }

  /** Adds the faults a schema found: at this form's fields, and in the units of its boxes. */
  addFaults(faults: readonly Fault[], nameOf: (path: string) => string): void {
    for (const { path, message } of faults)
      this.faults.push({ path: nameOf(path), message: inReadersUnit(message, this.writing) });
  }

  /** The value when it was given; otherwise one sentence saying that it is needed. */
  needed<T>(value: T | null, name: string, label: string): T | null {
    if (value === null && !this.faults.some((fault) => fault.path === name)) {
      this.fault(name, `${label} is empty. Enter it.`);
    }
    return value;
  }

  /** That a box holds quantities of this kind, though nothing is asked of it now. */
  note(name: string, kind: TypedKind, bare: UnitName = bareUnitOf(kind, this.writing)): void {
    const { mm, in: inch } = BARE_UNIT[kind];
    if (mm !== inch) this.#noted.set(name, { kind, bare });
  }

  /**
   * An address of this form in which every number typed without a unit has the one it was read in, so that it means the
   * same whatever unit is chosen next. The boxes that were read are the list.
   */
  withUnits(address: string): string {
    const [path = '/', search] = address.split('?', 2);
    if (search === undefined) return address;
    const query = new URLSearchParams(search);
    for (const [name, { kind, bare }] of this.#noted) {
      const typed = query.get(name);
      if (typed === null || typed.trim() === '') continue;
      const parts = splitRepeats(typed).map((part) => {
        const asked = { field: '', typed: part, kind: kindOf(kind), unit: bare };
        const read = readQuantity({ ...asked, decimalSign: this.writing.decimalSign });
        return read.ok && read.unitTyped === null ? `${part} ${bare}` : part;
      });
      query.set(name, parts.join('; '));
    }
    query.delete('torqueUnit');
    return `${path}?${query}`;
  }

  #quantity(
    name: string,
    label: string,
    typed: string,
    kind: TypedKind,
    bare: UnitName = bareUnitOf(kind, this.writing),
  ): number | null {
    this.note(name, kind, bare);
    if (typed === '') return null;
    const { decimalSign } = this.writing;
    const read = readQuantity({ field: label, typed, kind: kindOf(kind), unit: bare, decimalSign });
    if (read.ok) {
      if (ONE_UNIT.has(kind)) return read.value;
      if (Number(read.typed.replace(',', '.')) !== read.value) {
        const bareUnit = read.unitTyped === null ? read.unit : null;
        this.quantities.push({ name, value: read.value, text: read.typed, bareUnit });
      }
      return read.value;
    }
    this.fault(name, read.message);
    if (read.meant !== undefined) this.#askInstead(name, typed, read.message, read.meant);
    return null;
  }

  /** What cannot be read as it stands, with a button for what was probably meant: a fraction of mm, the other decimal sign. */
  #askInstead(name: string, part: string, question: string, meant: string): void {
    if (this.doubts.some((one) => one.name === name)) return;
    const typed = this.text(name);
    const whole = splitRepeats(typed).map((one) => (one === part ? meant : one));
    this.doubts.push({ name, typed, question, says: null, meant: [whole.join('; ')] });
  }
}

/** Typed text says no more than the number: these are read in one unit alone. */
const ONE_UNIT: ReadonlySet<TypedKind> = new Set(['angle', 'ratio', 'share', 'number', 'count']);

/** `4.92; 4.93` is two readings. */
export function splitRepeats(typed: string): string[] {
  return typed
    .split(';')
    .map((part) => part.trim())
    .filter((part) => part !== '');
}

/** A revision that a form carries; one that nothing has when it does not. */
export function revisionIn(typed: string | undefined, without = -1): number {
  return /^\d{1,9}$/.test(typed ?? '') ? Number(typed) : without;
}
