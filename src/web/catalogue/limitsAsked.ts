import { readQuantity } from '../../../shared/quantity/readQuantity.ts';
import type { TypedLength } from '../../../shared/quantity/slip.ts';
import type { Entry, Family, ShopCriteria } from '../../../shared/words/catalogue.ts';
import { CRITERIA } from '../../../shared/words/fields/criteria.ts';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import { printLength } from '../../../shared/words/print.ts';
import {
  coversUnder,
  formulaDoubt,
  type LimitName,
  limitDoubt,
  limitDoubts,
} from '../../shop/doubts/limitDoubt.ts';
import { CRITERIA_EXPECTED } from '../../shop/doubts/limitsExpected.ts';
import { typesWithoutMinimum } from '../../shop/limits/minimumByType.ts';
import { minimumByFormula } from '../../shop/limits/minimumFormula.ts';
import { askAboutFigures } from '../request/askFigures.ts';
import type { TypedForm } from '../request/typed.ts';

/** A cover type's own minimum, held against its new wall as the shop's is. */
export function askMinimums(form: TypedForm): void {
  const { nominalWallMm, makerMinimumWallMm, shopMinimumWallMm } = FAMILY;
  const wall = typedLength(form, nominalWallMm);
  if (wall === null) return;
  for (const field of [makerMinimumWallMm, shopMinimumWallMm]) {
    const typed = typedLength(form, field);
    if (typed === null || form.isSure(field.box)) continue;
    const doubt = limitDoubt('minimumWallMm', typed, [{ name: '', nominalWallMm: wall.valueMm }]);
    if (doubt === null) continue;
    const says = `${field.label}: ${typed.typed} is right, as typed`;
    // A new cover would not pass a minimum above its own wall: that is refused, so it cannot be confirmed.
    const mayBe = typed.valueMm <= wall.valueMm;
    form.ask(
      field.box,
      `${field.label}: ${doubt.question}`,
      mayBe ? says : null,
      doubt.meantTyped === null ? [] : [doubt.meantTyped],
    );
  }
}

/**
 * A cover type for which the shop’s formula gives no minimum, or less than the one entered for it, is asked about before
 * it is saved; `standing` is what was saved before, which is not asked about again while it says the same.
 */
export function askByFormula(
  form: TypedForm,
  body: Family,
  { standing, formula }: { readonly standing: Family | null; readonly formula: string | null },
): void {
  if (formula === null) return;
  const { lengthUnit } = form.writing;
  const given = minimumByFormula(formula, body, lengthUnit);
  const entered = enteredMinimum(body);
  const before = standing && minimumByFormula(formula, standing, lengthUnit);
  if (before?.mm === given.mm && standing !== null && enteredMinimum(standing).mm === entered.mm) return;
  const { box } = given.mm === null ? FAMILY.nominalWallMm : entered;
  if (form.isConfirmed(box) || form.doubts.some(({ name }) => name === box)) return;
  if (given.mm === null) {
    const sentence = `The shop’s formula gives this cover type no minimum: ${given.working}.`;
    form.ask(box, sentence, 'It is right, as typed; the formula gives no minimum', []);
  } else if (entered.mm !== null && given.mm < entered.mm - 1e-9) {
    const [less, more] = [given.mm, entered.mm].map((mm) => printLength(mm, lengthUnit));
    const sentence = `The shop’s formula gives ${less} for this cover type, less than the ${more} entered here.`;
    form.ask(box, sentence, `${more} is right, as typed; the formula gives less`, []);
  }
}

/** The larger of the maker’s minimum and the type’s own, and where it is typed. */
function enteredMinimum({ makerMinimumWallMm: maker, shopMinimumWallMm: own }: Family) {
  return own !== null && own >= (maker ?? 0)
    ? { mm: own, box: FAMILY.shopMinimumWallMm.box }
    : { mm: maker, box: FAMILY.makerMinimumWallMm.box };
}

const { minimumWallMm, faceRunoutLimitMm, cleanUpAllowanceMm, typicalCutMm } = CRITERIA;
const ASKED = { minimumWallMm, faceRunoutLimitMm, cleanUpAllowanceMm, typicalCutMm };

/**
 * Limits that can hardly be meant, beside the new walls of the cover types or as such things are at all, are asked about
 * before they are saved; a fault stands at each box until it is confirmed.
 */
export function askLimits(form: TypedForm, standing: ShopCriteria, families: readonly Family[]): void {
  const names = Object.keys(ASKED) as LimitName[];
  const typed = Object.fromEntries(names.map((name) => [name, typedLength(form, ASKED[name])]));
  for (const { limit, doubt } of limitDoubts(typed, standing, coversUnder(families))) {
    const { box, label } = ASKED[limit];
    const text = form.text(box);
    if (form.isSure(box)) continue;
    const meant = doubt.meantTyped === null ? [] : [doubt.meantTyped];
    form.ask(box, `${label}: ${doubt.question}`, `${label}: ${text} is right, as typed`, meant);
  }
  askAboutFigures(form, CRITERIA, CRITERIA_EXPECTED);
}

/**
 * A formula that gives a cover type no length is a fault; what it gives for each is asked about as a figure is. `formula`
 * as it is kept.
 */
export function askFormula(form: TypedForm, formula: string | null, types: readonly Entry<'family'>[]): void {
  const { box, label } = CRITERIA.minimumWallFormula;
  if (formula === null) return;
  const without = typesWithoutMinimum(formula, types, form.writing.lengthUnit);
  if (without !== null) form.fault(box, `${label}: ${without}`);
  if (without !== null || form.isSure(box)) return;
  const families = types.map(({ body }) => body);
  const question = formulaDoubt(formula, coversUnder(families), form.writing);
  if (question !== null)
    form.ask(box, `${label}: ${question}`, `${label}: ${form.text(box)} is right, as typed`, []);
}

/** The length in a box with what was typed for it; null where it is empty or no length. */
function typedLength(
  form: TypedForm,
  { box, label }: { readonly box: string; readonly label: string },
): TypedLength | null {
  const { lengthUnit, decimalSign } = form.writing;
  const typed = form.text(box);
  const read = readQuantity({ field: label, typed, kind: 'length', unit: lengthUnit, decimalSign });
  return read.ok ? { valueMm: read.value, typed, unit: read.unit, decimalSign } : null;
}
