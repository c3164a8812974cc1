import { type Request, type Response, Router } from 'express';
import type { CatalogueStack, CatalogueStud, ShopCriteria } from '../../../shared/words/catalogue.ts';
import type { Skipped, StackChoice } from '../../../shared/words/choices.ts';
import { CATALOGUE_STUD } from '../../../shared/words/fields/stud.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import type { Frame } from '../../../views/frame.ts';
import { StudSlipPage } from '../../../views/pages/stud/slipPage.tsx';
import { StacksForStudPage } from '../../../views/pages/stud/stacksForStudPage.tsx';
import { StudPage } from '../../../views/pages/stud/studPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { stackChoicesFor } from '../../shop/studChoices.ts';
import { JOINT_FIGURES, studRing } from '../../shop/studs/joint.ts';
import { narrowed, notToTake, ranked, studsHeld, threadsOf } from '../../shop/studs/onShelf.ts';
import { noteBody } from '../request/bodyForm.ts';
import { keepingUnits } from '../request/otherUnit.ts';
import { type PageContext, todayIn } from '../request/pageContext.ts';
import { handledIn } from '../request/route.ts';
import { fieldsOf, TypedForm } from '../request/typed.ts';
import { flexplateRouter } from './flexplate.ts';
import { gapRouter } from './gap.ts';
import { onJointField, readJoint } from './joint.ts';
import { shelves, studFrame } from './request.ts';
import { askAboutLayers, layerRows, noteStack, readGap, readStack } from './stackForm.ts';
import { readStud } from './studForm.ts';

const OWN = 'own';

/** A stud for a stack, and the stacks for a stud. Nothing is kept; everything typed is in the address. */
export function studRouter(context: PageContext): Router {
  const router = Router();
  router.use(flexplateRouter(context));
  router.use(gapRouter(context));
  const to = handledIn(context);
  router.get('/stud', to(getStudForStack));
  router.get('/stud/slip', to(getSlip));
  router.get('/stud/stacks', to(getStacksForStud));
  return router;
}

async function getStudForStack(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.query);
  const frame = await studFrame(req, context, fields);
  const { stacks, studs, criteria } = await shelves(context);
  const form = new TypedForm(fields, frame);
  noteStack(form);
  const stackId = fields.stack ?? '';
  const asked = stackFor(form, stackId, stacks);
  const pullForwardMm = readGap(form, stackId === OWN ? null : (asked?.pullForwardMm ?? null));
  // What is in doubt would make the answer so too: it waits until the person has said.
  const chosen = form.doubts.length > 0 ? null : asked;
  const ring = studRing(null, chosen?.stack ?? null);
  const joint = readJoint(form, ring);
  const wanted = narrowed(studs, { thread: fields.onlyThread ?? '', inStock: fields.inStock === '1' });
  const { shown, ...held } = studsHeld(
    wanted,
    { stack: chosen, pullForwardMm, joint, criteria, unit: frame.lengthUnit },
    fields.stud,
  );
  const faults = [...form.faults, ...held.faults.map(onJointField)];
  res.status(faults.length > 0 ? 422 : 200).send(
    renderPage(
      StudPage({
        frame: keepingUnits(frame, form),
        fields,
        stackId,
        stacks: stacks.map(({ id, body }) => ({ id, stack: body })),
        layerRows: layerRows(form),
        doubts: form.doubts,
        chosen,
        pullForwardMm: pullForwardMm ?? chosen?.pullForwardMm ?? null,
        ...held,
        joint,
        ring,
        writing: form.writing,
        figures: JOINT_FIGURES,
        shownId: shown?.match.id ?? null,
        threads: threadsOf(studs),
        faults,
      }),
    ),
  );
}

async function getSlip(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.query);
  const frame = await studFrame(req, context, fields);
  const { stacks, studs, criteria } = await shelves(context);
  const form = new TypedForm(fields, frame);
  noteStack(form);
  const asked = stackFor(form, fields.stack ?? '', stacks);
  const pullForwardMm = readGap(form, fields.stack === OWN ? null : (asked?.pullForwardMm ?? null));
  const chosen = form.doubts.length > 0 ? null : asked;
  const joint = readJoint(form, studRing(null, chosen?.stack ?? null));
  const { choices } = ranked(studs, {
    stack: chosen,
    pullForwardMm,
    joint,
    criteria,
    unit: frame.lengthUnit,
  });
  const choice = choices.find((one) => one.match.id === fields.stud) ?? choices[0];
  if (!chosen || !choice) {
    res.redirect(303, '/stud');
    return;
  }
  res.send(
    renderPage(
      StudSlipPage({
        frame: keepingUnits(frame, form),
        stack: chosen,
        pullForwardMm: pullForwardMm ?? chosen.pullForwardMm,
        joint,
        torqueFrom: fields.torqueFrom ?? '',
        choice,
        other: notToTake(choice, choices),
        on: todayIn(context),
      }),
    ),
  );
}

async function getStacksForStud(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.query);
  const frame = await studFrame(req, context, fields);
  const { stacks, studs, criteria } = await shelves(context);
  const form = new TypedForm(fields, frame);
  noteBody(form, CATALOGUE_STUD);
  const studId = fields.stud ?? '';
  const style = form.choice('onlyStyle', ['one-piece', 'two-piece'] as const);
  const asked = stacks.filter(({ body }) => style === null || body.stack.style === style);
  const entry =
    studId === OWN
      ? Object.keys(fields).some((name) => name === 'thread')
        ? readStud(form, 'the stud in hand')
        : null
      : (studs.find((one) => one.id === studId)?.body ?? null);
  const { choices, skipped, faults } = entry
    ? stackChoices(entry, asked, criteria, frame)
    : { choices: [], skipped: [], faults: [] };
  const all = [...form.faults, ...faults];
  res.status(all.length > 0 ? 422 : 200).send(
    renderPage(
      StacksForStudPage({
        frame: keepingUnits(frame, form),
        fields,
        studId,
        studs: studs.map(({ id, body }) => ({ id, name: body.name })),
        entry,
        choices,
        skipped,
        faults: all,
      }),
    ),
  );
}

function stackFor(
  form: TypedForm,
  stackId: string,
  stacks: readonly { id: string; body: CatalogueStack }[],
): CatalogueStack | null {
  if (stackId === OWN) {
    const typed = Object.keys(form.fields).some((name) => name.startsWith('lt.'));
    const stack = typed ? readStack(form, 'typed layer by layer') : null;
    if (stack) askAboutLayers(form);
    return stack;
  }
  return stacks.find((one) => one.id === stackId)?.body ?? null;
}

function stackChoices(
  entry: CatalogueStud,
  stacks: readonly { id: string; body: CatalogueStack }[],
  criteria: ShopCriteria,
  frame: Frame,
): { choices: readonly StackChoice[]; skipped: readonly Skipped[]; faults: readonly Fault[] } {
  try {
    return { ...stackChoicesFor(entry, stacks, criteria, frame.lengthUnit), faults: [] };
  } catch (error) {
    if (error instanceof Refusal) return { choices: [], skipped: [], faults: error.faults };
    throw error;
  }
}
