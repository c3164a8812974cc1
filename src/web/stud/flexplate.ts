import { type Request, type Response, Router } from 'express';
import type { CatalogueStack } from '../../../shared/words/catalogue.ts';
import type { ThreadSpec } from '../../../shared/words/thread.ts';
import { type FlexplateMatch, FlexplatePage } from '../../../views/pages/stud/flexplatePage.tsx';
import { renderPage } from '../../../views/render.ts';
import { stacksByThickness } from '../../calc/stud/numbers/stacksByThickness.ts';
import type { NamedEntry } from '../../shop/studChoices.ts';
import type { House } from '../request/house.ts';
import { handledIn } from '../request/route.ts';
import { fieldsOf, TypedForm } from '../request/typed.ts';
import { shelves, studFrame } from './request.ts';
import { readThreadField } from './stackForm.ts';

/** How well a caliper is read at a stud hole, where nobody says. This program's own figure. */
const MEASURED_WITHIN_MM = 0.3;
const STYLES = ['one-piece', 'two-piece'] as const;

/** Which flexplate is it? By what is seen and measured; it ends in a stack. */
export function flexplateRouter(house: House): Router {
  const router = Router();
  router.get('/stud/flexplate', handledIn(house)(getFlexplate));
  return router;
}

async function getFlexplate(house: House, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.query);
  const frame = await studFrame(req, house, fields);
  const { stacks } = await shelves(house);
  const form = new TypedForm(fields, frame);
  const style = form.choice('style', STYLES);
  const totalMm = form.length('total', 'Thickness from the pad face to the engine side');
  const withinMm = form.length('within', 'How well it was measured') ?? MEASURED_WITHIN_MM;
  const thread = readThreadField(form, 'nutThread', 'internal');
  const holeCount = form.count('holeCount', 'Number of studs');
  if (totalMm !== null && totalMm <= 0)
    form.fault('total', 'The thickness must be more than nothing. Measure it at a stud hole.');
  if (withinMm < 0) form.fault('within', 'How well it was measured cannot be less than nothing.');
  const asked = stacks.filter(
    ({ body }) =>
      (thread === null || sameThread(body.nut?.thread ?? null, thread)) &&
      (holeCount === null || body.stack.holeCount === holeCount),
  );
  const ready = totalMm !== null && form.faults.length === 0;
  const found = ready ? matches(totalMm, withinMm, asked) : [];
  const ofStyle = found.filter(({ stack }) => style === null || stack.stack.style === style);
  res.status(form.faults.length > 0 ? 422 : 200).send(
    renderPage(
      FlexplatePage({
        frame,
        fields,
        style,
        totalMm: ready ? totalMm : null,
        withinMm,
        matches: ofStyle.filter(({ within }) => within),
        nearest: ofStyle.find(({ within }) => !within) ?? null,
        ofOtherStyle: style === null ? [] : found.filter((one) => one.within && !ofStyle.includes(one)),
        faults: form.faults,
      }),
    ),
  );
}

function matches(
  measuredMm: number,
  toleranceMm: number,
  stacks: readonly NamedEntry<CatalogueStack>[],
): FlexplateMatch[] {
  const named = stacks.map(({ id, body }) => ({ id, stack: body.stack }));
  return stacksByThickness({ measuredMm, toleranceMm, stacks: named }).flatMap((one) => {
    const stack = stacks.find(({ id }) => id === one.id)?.body;
    return stack ? [{ ...one, stack }] : [];
  });
}

/** Same size and pitch, whatever the class. */
function sameThread(a: ThreadSpec | null, b: ThreadSpec): boolean {
  if (a?.system === 'unified' && b.system === 'unified')
    return a.majorInch === b.majorInch && a.threadsPerInch === b.threadsPerInch;
  return (
    a?.system === 'metric' && b.system === 'metric' && a.majorMm === b.majorMm && a.pitchMm === b.pitchMm
  );
}
