import { type Request, type Response, Router } from 'express';
import type { CatalogueStack } from '../../../shared/words/catalogue.ts';
import { StudPage, type StudPageProps } from '../../../views/pages/stud/studPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { counterSlip } from '../../shop/studs/counterSlip.ts';
import { JOINT_FIGURES, studRing } from '../../shop/studs/joint.ts';
import { narrowed, stackFilters, stacksListed, studsHeld, threadsOf } from '../../shop/studs/onShelf.ts';
import { keepingUnits } from '../request/otherUnit.ts';
import type { PageContext } from '../request/pageContext.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf, TypedForm } from '../request/typed.ts';
import { askAboutStack } from './asked.ts';
import { flexplateRouter } from './flexplate.ts';
import { gapRouter } from './gapRoutes.ts';
import { handAlong, handBoxes } from './inHandForm.ts';
import { onJointField, readJoint, torqueFromOf } from './jointForm.ts';
import { shelves, studFrame } from './request.ts';
import { stackDrawn, stackDrawnRouter } from './stackDrawnRoutes.ts';
import { layerRows, noteStack, readGap, readStack } from './stackForm.ts';
import { getStacksForStud } from './stacks.ts';

const OWN = 'own';

/** A stud for a stack, and the stacks for a stud. Nothing is kept; everything typed is in the address. */
export function studRouter(context: PageContext): Router {
  const router = Router();
  router.use(flexplateRouter(context));
  router.use(gapRouter(context));
  router.use(stackDrawnRouter(context));
  const to = handledIn(context);
  router.get('/stud', to(getStudForStack));
  router.get('/stud/stacks', to(getStacksForStud));
  return router;
}

/** With another stack another caller asks: the gap and the stud of the one before do not stay. */
function ofThisStack(fields: Fields): Fields {
  const { gapOf, ...rest } = fields;
  if (gapOf === undefined || gapOf === fields.stack) return rest;
  const { pull: _gap, 'ok.pull': _sure, stud: _stud, ...others } = rest;
  return others;
}

/** What was asked of a stack, and every stud checked against it: nothing while anything typed is refused or in doubt. */
export async function studsAsked(context: PageContext, req: Request, asWritten: Fields) {
  const fields = ofThisStack(asWritten);
  const frame = await studFrame(req, context, fields);
  const { stacks, studs, nuts, washers, criteria } = await shelves(context);
  const form = new TypedForm(fields, frame);
  noteStack(form);
  const stackId = fields.stack ?? '';
  const asked = stackFor(form, stackId, stacks);
  const pullForwardMm = readGap(form, stackId === OWN ? null : (asked?.pullForwardMm ?? null));
  const hand = handAlong(form);
  const chosen = form.doubts.length > 0 ? null : asked;
  const ring = studRing(null, chosen?.stack ?? null);
  const joint = readJoint(form, ring, chosen);
  const onlyThread = fields.onlyThread ?? '';
  const wanted = narrowed(hand ? [...studs, hand] : studs, {
    thread: onlyThread,
    inStock: fields.inStock === '1',
  });
  const threadKnown = chosen?.nut?.thread != null || onlyThread !== '';
  const stack = form.faults.length === 0 && threadKnown ? chosen : null;
  const question = { stack, pullForwardMm, joint, criteria, unit: frame.lengthUnit };
  const held = studsHeld(wanted, question, fields.stud);
  const page: StudPageProps = {
    frame: keepingUnits(frame, form),
    fields,
    stackId,
    stacks: stacksListed(stacks, listedBy(fields), stackId).map(({ id, body }) => ({ id, stack: body })),
    stackFilters: stackFilters(stacks),
    layerRows: layerRows(form),
    typedStack: stackId === OWN ? stackDrawn(fields, frame) : null,
    doubts: form.doubts,
    chosen,
    threadMissing: chosen !== null && form.faults.length === 0 && !threadKnown,
    pullForwardMm: pullForwardMm ?? chosen?.pullForwardMm ?? null,
    ...held,
    hand: hand && { entry: hand.body, boxes: handBoxes(hand.body, form) },
    joint,
    ring,
    writing: form.writing,
    figures: JOINT_FIGURES,
    shownId: held.shown?.match.id ?? null,
    threads: threadsOf(studs),
    faults: [...form.faults, ...held.faults.map(onJointField)],
  };
  if (stack === null || held.shown === null || page.faults.length > 0) return { page, slip: null };
  const shelf = { nuts, washers };
  const slip = counterSlip({ ...question, stack }, held.shown, held.choices, torqueFromOf(form), shelf);
  return { page: { ...page, kit: slip.kit }, slip };
}

async function getStudForStack(context: PageContext, req: Request, res: Response): Promise<void> {
  const { page } = await studsAsked(context, req, fieldsOf(req.query));
  res.status(page.faults.length > 0 ? 422 : 200).send(renderPage(StudPage(page)));
}

function listedBy({ listStyle = '', listCount = '', listThread = '' }: Fields) {
  return { style: listStyle, count: listCount, thread: listThread };
}

function stackFor(
  form: TypedForm,
  stackId: string,
  stacks: readonly { id: string; body: CatalogueStack }[],
): CatalogueStack | null {
  if (stackId === OWN) {
    const typed = Object.keys(form.fields).some((name) => name.startsWith('lt.'));
    const stack = typed ? readStack(form, 'typed layer by layer') : null;
    if (stack) askAboutStack(form);
    return stack;
  }
  const kept = stacks.find((one) => one.id === stackId);
  if (kept === undefined && stackId !== '')
    form.fault('stack', 'That flexplate is no longer in the catalog. Choose one from the list.');
  return kept?.body ?? null;
}
