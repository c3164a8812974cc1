import { boxOf, inPart, type Place, typedAs } from '../../../shared/quantity/fieldText.ts';
import { type AnyFields, entriesOf, isFigure, OWN_FIGURE } from '../../../shared/words/fields/field.ts';
import type { AnyExpected, Expected } from '../../shop/doubts/expectedFigures.ts';
import type { TypedForm } from './typed.ts';

interface Where extends Place {
  /** Said after a label: "layer 2". */
  readonly of?: string;
}

/**
 * Every figure of a body that looks like a slip is asked about, those of its parts too. One that is refused already gets
 * the button of the value meant, and cannot be confirmed.
 */
export function askAboutFigures<F extends AnyFields>(
  form: TypedForm,
  fields: F,
  expected: Expected<F>,
  where: Where = {},
): void {
  for (const [key, field] of entriesOf(fields)) {
    const usual = (expected as Readonly<Record<string, AnyExpected | undefined>>)[key];
    if (usual === undefined) continue;
    if (field.kind === 'part') {
      askAboutFigures(form, field.fields, usual as never, inPart(field, where));
      continue;
    }
    const box = boxOf(key, field, where);
    if ('any' in usual || box === null || !isFigure(field)) continue;
    if (form.doubts.some(({ name }) => name === box)) continue;
    const chosenIn = 'chosenIn' in field ? field.chosenIn : undefined;
    if (chosenIn !== undefined && form.text(chosenIn) !== OWN_FIGURE) continue;
    const label = where.of === undefined ? field.label : `${field.label} of ${where.of}`;
    form.askFigure(box, label, field.kind === 'lengths' ? 'length' : typedAs(field), usual);
  }
}
