import { type Request, type Response, Router } from 'express';
import { FlexplatePage } from '../../../views/pages/stud/flexplatePage.tsx';
import { renderPage } from '../../../views/render.ts';
import { flexplatesLike, MEASURED_WITHIN_MM } from '../../shop/studs/flexplates.ts';
import { keepingUnits } from '../request/otherUnit.ts';
import type { PageContext } from '../request/pageContext.ts';
import { handledIn } from '../request/route.ts';
import { fieldsOf, TypedForm } from '../request/typed.ts';
import { shelves, studFrame } from './request.ts';
import { noteStack, readThreadField } from './stackForm.ts';

const STYLES = ['one-piece', 'two-piece'] as const;

/** Which flexplate is it? By what is seen and measured; it ends in a stack. */
export function flexplateRouter(context: PageContext): Router {
  const router = Router();
  router.get('/stud/flexplate', handledIn(context)(getFlexplate));
  return router;
}

async function getFlexplate(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.query);
  const frame = await studFrame(req, context, fields);
  const { stacks } = await shelves(context);
  const form = new TypedForm(fields, frame);
  noteStack(form);
  const style = form.choice('style', STYLES);
  const totalMm = form.length('total', 'Thickness from the pad face to the engine side');
  const withinMm = form.length('within', 'How well it was measured') ?? MEASURED_WITHIN_MM;
  const thread = readThreadField(form, 'nutThread', 'internal');
  const holeCount = form.count('holeCount', 'Number of studs');
  if (totalMm !== null && totalMm <= 0)
    form.fault('total', 'The thickness must be more than nothing. Measure it at a stud hole.');
  if (withinMm < 0) form.fault('within', 'How well it was measured cannot be less than nothing.');
  const found =
    totalMm === null || form.faults.length > 0
      ? null
      : flexplatesLike({ totalMm, withinMm, thread, holeCount, style }, stacks);
  res.status(form.faults.length > 0 ? 422 : 200).send(
    renderPage(
      FlexplatePage({
        frame: keepingUnits(frame, form),
        fields,
        style,
        totalMm: found && totalMm,
        withinMm,
        ...(found ?? { matches: [], nearest: null, ofOtherStyle: [] }),
        faults: form.faults,
      }),
    ),
  );
}
