import { boxOf, inPart } from '../../../shared/quantity/fieldText.ts';
import { readQuantity } from '../../../shared/quantity/readQuantity.ts';
import type { Family } from '../../../shared/words/catalogue.ts';
import type { AnyField } from '../../../shared/words/fields/field.ts';
import { SETUP } from '../../../shared/words/fields/setup.ts';
import { setupExpected } from '../../shop/doubts/coverExpected.ts';
import { padHeightDoubt } from '../../shop/doubts/padHeightDoubt.ts';
import { askAboutFigures } from '../request/askFigures.ts';
import { splitRepeats, type TypedForm } from '../request/typed.ts';
import type { AS_MEASURED } from './asMeasured.ts';

/** How a cover is measured, in a job or without one: what looks like a slip is asked about. */
export function askAboutSetup(
  form: TypedForm,
  fields: typeof SETUP | typeof AS_MEASURED,
  family: Family | null,
): void {
  const expected = setupExpected(family);
  askAboutFigures(form, fields, { ...expected, gauge: expected.gaugeFigures } as never);
  askAboutPadHeights(form);
}

function askAboutPadHeights(form: TypedForm): void {
  const field: AnyField = SETUP.knockOn.fields.padHeightsMm;
  const box = boxOf('padHeightsMm', field, inPart(SETUP.knockOn, {}));
  if (box === null || form.isSure(box) || form.faults.some(({ path }) => path === box)) return;
  const { lengthUnit: unit, decimalSign } = form.writing;
  const parts = splitRepeats(form.text(box));
  const heights = parts.flatMap((typed) => {
    const read = readQuantity({ field: field.label, typed, kind: 'length', unit, decimalSign });
    return read.ok ? [{ valueMm: read.value, typed, unit: read.unit, decimalSign }] : [];
  });
  const asked = heights.length === parts.length ? padHeightDoubt(heights) : null;
  if (asked === null) return;
  const { index, doubt } = asked;
  const meant = parts.map((part, i) => (i === index ? (doubt.meantTyped ?? part) : part)).join('; ');
  form.ask(box, `${field.label}: ${doubt.question}`, `${field.label} are right, as typed`, [meant]);
}
