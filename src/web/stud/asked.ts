import { boxOf, type Place, typedAs } from '../../../shared/quantity/fieldText.ts';
import { mixedUnitDoubt } from '../../../shared/quantity/figureDoubt.ts';
import { readQuantity } from '../../../shared/quantity/readQuantity.ts';
import { type AnyFields, entriesOf, OWN_FIGURE } from '../../../shared/words/fields/field.ts';
import { JOINT } from '../../../shared/words/fields/joint.ts';
import {
  CATALOGUE_STACK,
  CATALOGUE_WASHER,
  LAYER,
  NUT,
  NUT_THREAD_BOX,
  STACK,
  STUD,
  THREAD_BOX,
} from '../../../shared/words/fields/stud.ts';
import { LAYER_KINDS } from '../../../shared/words/stud/stud.ts';
import {
  type About,
  type AnyExpected,
  type Expected,
  entryStackExpected,
  jointExpected,
  layerExpected,
  nutExpected,
  stackExpected,
  studExpected,
  washerExpected,
} from '../../shop/studs/expected.ts';
import { isFigure } from '../request/bodyForm.ts';
import type { TypedForm } from '../request/typed.ts';
import { layerRows } from './stackForm.ts';

interface Where extends Place {
  /** Said after a label: "layer 2". */
  readonly of?: string;
}

/** Every figure of a body that looks like a slip is asked about. */
export function askAboutFigures<F extends AnyFields>(
  form: TypedForm,
  fields: F,
  expected: Expected<F>,
  where: Where = {},
): void {
  for (const [key, field] of entriesOf(fields)) {
    const usual = (expected as Readonly<Record<string, AnyExpected | undefined>>)[key];
    const box = boxOf(key, field, where);
    if (usual === undefined || 'any' in usual || box === null || !isFigure(field)) continue;
    if (form.faults.some(({ path }) => path === box)) continue;
    const chosenIn = 'chosenIn' in field ? field.chosenIn : undefined;
    if (chosenIn !== undefined && form.text(chosenIn) !== OWN_FIGURE) continue;
    const label = where.of === undefined ? field.label : `${field.label} of ${where.of}`;
    form.askFigure(box, label, field.kind === 'lengths' ? 'length' : typedAs(field), usual);
  }
}

/** A nut, of a stack or of the catalog. */
export function askAboutNut(form: TypedForm): void {
  askAboutFigures(form, NUT, nutExpected({ thread: form.text(NUT_THREAD_BOX) }));
}

export function askAboutWasher(form: TypedForm): void {
  askAboutFigures(form, CATALOGUE_WASHER, washerExpected());
}

/** Layers, nut, holes and room of a stack as typed. */
export function askAboutStack(form: TypedForm): void {
  const thread = form.text(NUT_THREAD_BOX);
  for (let row = 0; row < layerRows(form); row++) {
    const of = form.text(`${LAYER.name.box}.${row}`) || `layer ${row + 1}`;
    const layer = { name: of, kind: form.choice(`${LAYER.kind.box}.${row}`, LAYER_KINDS) };
    askAboutFigures(form, LAYER, layerExpected(layer, { thread }), { row, of });
  }
  askAboutNut(form);
  askAboutFigures(form, STACK, stackExpected());
}

/** A stack, its gap and its torque, as the catalog keeps them. */
export function askAboutEntryStack(form: TypedForm): void {
  askAboutStack(form);
  askAboutFigures(form, CATALOGUE_STACK, entryStackExpected({ thread: form.text(NUT_THREAD_BOX) }));
}

export function askAboutStud(form: TypedForm): void {
  askAboutFigures(form, STUD, studExpected({ thread: form.text(THREAD_BOX) }));
}

/** The joint: beside what is usual, a torque without a unit beside one that was typed in another. */
export function askAboutJoint(form: TypedForm, about: About): void {
  const expected = jointExpected(about);
  askAboutFigures(form, JOINT, expected);
  const { torqueNm: tightening, engineTorqueNm: engine } = JOINT;
  const asked = form.faults.some(({ path }) => path === tightening.box || path === engine.box);
  const typedIn = asked ? null : unitTyped(form, tightening.box);
  const usual = expected.engineTorqueNm;
  if (typedIn !== null && !('any' in usual))
    form.askFigure(engine.box, engine.label, 'torque', usual, (figure) =>
      mixedUnitDoubt(figure, typedIn, usual),
    );
}

/** The unit that stands after a torque; null where none does. */
function unitTyped(form: TypedForm, box: string) {
  const { decimalSign } = form.writing;
  const read = readQuantity({ field: '', typed: form.text(box), kind: 'torque', unit: 'N·m', decimalSign });
  return read.ok && read.unitTyped !== null ? read.unit : null;
}
