import type { Request, Response } from 'express';
import { boxesOf } from '../../../shared/quantity/fieldText.ts';
import type { CatalogueStack, CatalogueStud, ShopCriteria } from '../../../shared/words/catalogue.ts';
import { JOINT } from '../../../shared/words/fields/joint.ts';
import { CATALOGUE_STACK } from '../../../shared/words/fields/stud.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import type { Skipped, StackChoice } from '../../../shared/words/stud/choices.ts';
import type { Frame } from '../../../views/frame.ts';
import { StacksForStudPage } from '../../../views/pages/stud/stacksForStudPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { type NamedEntry, stackChoicesFor } from '../../shop/studChoices.ts';
import { IN_HAND } from '../../shop/studs/inHand.ts';
import { JOINT_FIGURES } from '../../shop/studs/joint.ts';
import { keepingUnits } from '../request/otherUnit.ts';
import type { PageContext } from '../request/pageContext.ts';
import { type Fields, fieldsOf, TypedForm } from '../request/typed.ts';
import { handBoxes, kept, readInHand } from './inHandForm.ts';
import { readJointAlone } from './jointForm.ts';
import { shelves, studFrame } from './request.ts';
import { readGap } from './stackForm.ts';

/** A stud of the catalog, or one in the hand that is found by a caliper: the stacks it fits. */
export async function getStacksForStud(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.query);
  const frame = await studFrame(req, context, fields);
  const { stacks, studs, criteria } = await shelves(context);
  const form = new TypedForm(fields, frame);
  const studId = fields.stud ?? '';
  const style = form.choice('onlyStyle', ['one-piece', 'two-piece'] as const);
  const asked = stacks.filter(({ body }) => style === null || body.stack.style === style);
  const pullForwardMm = readGap(form, null);
  readJointAlone(form);
  // The form of a stud in the hand has this box: nothing is missing before it was seen.
  const hand = studId === IN_HAND && fields.thread !== undefined ? readInHand(form, studs) : null;
  const listed = studs.find((one) => one.id === studId);
  const checked =
    form.faults.length > 0
      ? null
      : (hand?.checked ?? (listed && { id: listed.id, entry: listed.body }) ?? null);
  const { choices, skipped, faults } = checked
    ? stackChoices(checked.entry, asked, { criteria, pullForwardMm }, frame)
    : { choices: [], skipped: [], faults: [] };
  const all = [...form.faults, ...faults];
  const along = alongWith(form, frame);
  res.status(all.length > 0 ? 422 : 200).send(
    renderPage(
      StacksForStudPage({
        frame: keepingUnits(frame, form),
        fields,
        writing: form.writing,
        figures: JOINT_FIGURES,
        studId,
        studs: studs.map(({ id, body }) => ({ id, name: body.name })),
        hand: form.faults.length > 0 ? null : hand,
        checked,
        along: checked?.id === IN_HAND ? { ...handBoxes(checked.entry, form), ...along } : along,
        pullForwardMm,
        doubts: form.doubts,
        choices,
        skipped,
        faults: all,
      }),
    ),
  );
}

/** What stays with the stud when a stack is opened: the gap, the torque, and whose it is. */
function alongWith(form: TypedForm, { lengthUnit }: Frame): Fields {
  const boxes = [CATALOGUE_STACK.pullForwardMm.box, ...boxesOf(JOINT), 'torqueFrom', 'torqueUnit'];
  return { ...kept(form, boxes), unit: lengthUnit };
}

function stackChoices(
  entry: CatalogueStud,
  stacks: readonly NamedEntry<CatalogueStack>[],
  { criteria, pullForwardMm }: { readonly criteria: ShopCriteria; readonly pullForwardMm: number | null },
  { lengthUnit }: Frame,
): { choices: readonly StackChoice[]; skipped: readonly Skipped[]; faults: readonly Fault[] } {
  try {
    return { ...stackChoicesFor(entry, stacks, criteria, lengthUnit, pullForwardMm), faults: [] };
  } catch (error) {
    if (error instanceof Refusal) return { choices: [], skipped: [], faults: error.faults };
    throw error;
  }
}
