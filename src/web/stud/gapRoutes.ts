import { type Request, type Response, Router } from 'express';
import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { asTyped } from '../../../shared/quantity/fieldText.ts';
import { writeLength } from '../../../shared/quantity/writeQuantity.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { gapSchema } from '../../../shared/schemas/gap.ts';
import type { CatalogueStack } from '../../../shared/words/catalogue.ts';
import { GAP } from '../../../shared/words/fields/gap.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import type { GapFound, GapTyped } from '../../../shared/words/stud/gap.ts';
import { GapPage } from '../../../views/pages/stud/gapPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { gapFound } from '../../shop/studs/gap.ts';
import { gapExpected } from '../../shop/studs/studsExpected.ts';
import { askAboutFigures } from '../request/askFigures.ts';
import { boxAt, noteBody, readBody } from '../request/bodyForm.ts';
import { keepingUnits } from '../request/otherUnit.ts';
import type { PageContext } from '../request/pageContext.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf, TypedForm } from '../request/typed.ts';
import { shelves, studFrame } from './request.ts';
import { stackAsTyped } from './stackForm.ts';

/** Pull-forward: the gap from two measured depths, equal shims, and the stud that then fits. Nothing is kept. */
export function gapRouter(context: PageContext): Router {
  const router = Router();
  router.get('/stud/gap', handledIn(context)(getGap));
  return router;
}

async function getGap(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.query);
  const frame = await studFrame(req, context, fields);
  const { stacks, studs, criteria } = await shelves(context);
  const form = new TypedForm(fields, frame);
  noteBody(form, GAP);
  const typed = readGapForm(form);
  const stack = stacks.find(({ id }) => id === fields.stack)?.body ?? null;
  const answer = typed && foundFrom(form, typed, { stack, studs, criteria }, frame.lengthUnit);
  res.status(form.faults.length > 0 ? 422 : 200).send(
    renderPage(
      GapPage({
        frame: keepingUnits(frame, form),
        fields,
        writing: form.writing,
        doubts: form.doubts,
        stacks: stacks.map(({ id, body }) => ({ id, name: body.name })),
        shimsThere:
          asTyped({ shimsMm: GAP.shimsMm }, { shimsMm: criteria.shimsMm ?? [] }, frame)[GAP.shimsMm.box] ??
          '',
        answer,
        studHref: answer?.usable ? studHref(answer.usable, answer.found.gapMm, frame) : null,
        faults: form.faults,
      }),
    ),
  );
}

/** The gap of what was typed; null with the sentences in the form. */
function foundFrom(
  form: TypedForm,
  { shimsMm, shimMm, leastGapMm, mostGapMm, ...depths }: GapTyped,
  shelf: Parameters<typeof gapFound>[2],
  unit: Writing['lengthUnit'],
): GapFound | null {
  const thereMm = form.has(GAP.shimsMm.box) ? shimsMm : (shelf.criteria.shimsMm ?? []);
  const makersGapMm =
    leastGapMm === null || mostGapMm === null ? null : { least: leastGapMm, most: mostGapMm };
  try {
    return gapFound({ ...depths, makersGapMm }, { thereMm, chosenMm: shimMm }, shelf, unit);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    form.addFaults(error.faults, (path) => boxAt(GAP, MAKERS[path] ?? path) ?? GAP.padDepthMm.box);
    return null;
  }
}

const MAKERS: Readonly<Record<string, string>> = {
  'makersGapMm.least': 'leastGapMm',
  'makersGapMm.most': 'mostGapMm',
};

/** What was typed; null until a depth is, or with the sentences in the form. */
function readGapForm(form: TypedForm): GapTyped | null {
  const idle = ![GAP.padDepthMm, GAP.flexplateStandsOutMm].some(({ box }) => form.has(box));
  const read = readBody(form, GAP, { idle });
  const { leastGapMm, mostGapMm } = read;
  if ((leastGapMm === null) !== (mostGapMm === null) && form.faults.length === 0)
    form.fault(
      leastGapMm === null ? GAP.leastGapMm.box : GAP.mostGapMm.box,
      'The maker’s gap needs its minimum and its maximum. Enter both, or neither.',
    );
  if (idle || form.faults.length > 0) return null;
  askAboutFigures(form, GAP, gapExpected());
  if (form.faults.length > 0) return null;
  const parsed = gapSchema.safeParse(read);
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), (path) => boxAt(GAP, path) ?? path);
  return null;
}

/** The stud page with this very stack, shims and gap and all. */
function studHref(stack: CatalogueStack, gapMm: number, writing: Writing): string {
  const text = (mm: number | null) =>
    mm === null ? '' : writeLength(mm, writing.lengthUnit, writing.decimalSign);
  const { name: _name, note: _note, ...typed }: Fields = stackAsTyped(stack, writing);
  const query = new URLSearchParams({
    ...typed,
    stack: 'own',
    unit: writing.lengthUnit,
    pull: text(Math.round(gapMm * 1e6) / 1e6),
  });
  return `/stud?${query}`;
}
