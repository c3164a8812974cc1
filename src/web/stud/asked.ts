import { mixedUnitDoubt } from '../../../shared/quantity/figureDoubt.ts';
import { readQuantity } from '../../../shared/quantity/readQuantity.ts';
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
  entryStackExpected,
  jointExpected,
  layerExpected,
  nutExpected,
  stackExpected,
  studExpected,
  washerExpected,
} from '../../shop/studs/studsExpected.ts';
import { askAboutFigures } from '../request/askFigures.ts';
import type { TypedForm } from '../request/typed.ts';
import { layerRows } from './stackForm.ts';

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
