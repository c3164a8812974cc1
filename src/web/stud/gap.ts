import { type Request, type Response, Router } from 'express';
import { asTyped, type Writing } from '../../../shared/quantity/fieldText.ts';
import { writeLength } from '../../../shared/quantity/writeQuantity.ts';
import type { CatalogueStack } from '../../../shared/words/catalogue.ts';
import { CRITERIA } from '../../../shared/words/fields/criteria.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { type GapAnswer, GapPage } from '../../../views/pages/stud/gapPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { type GapMeasured, gapFound } from '../../shop/studs/gap.ts';
import { keepingUnits } from '../request/otherUnit.ts';
import type { PageContext } from '../request/pageContext.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf, TypedForm } from '../request/typed.ts';
import { shelves, studFrame } from './request.ts';
import { stackAsTyped } from './stackForm.ts';

const SHIMS = { shimsMm: CRITERIA.shimsMm } as const;

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
  const measured = readMeasured(form);
  const there = criteria.shimsMm ?? [];
  const thereMm = form.has('shims') ? form.lengths('shims', 'A shim there is') : there;
  const chosenMm = form.length('shim', 'The shims chosen');
  const stack = stacks.find(({ id }) => id === fields.stack)?.body ?? null;
  let answer: GapAnswer | null = null;
  if (measured && form.faults.length === 0) {
    try {
      const shelf = { stack, studs, criteria };
      const { usable, ...gap } = gapFound(measured, { thereMm, chosenMm }, shelf, frame.lengthUnit);
      answer = { ...gap, studHref: usable && studHref(usable, gap.found.gapMm, frame) };
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      form.addFaults(error.faults, (path) => GAP_FIELDS[path] ?? 'depth');
    }
  }
  res.status(form.faults.length > 0 ? 422 : 200).send(
    renderPage(
      GapPage({
        frame: keepingUnits(frame, form),
        fields,
        stacks: stacks.map(({ id, body }) => ({ id, name: body.name })),
        shimsThere: asTyped(SHIMS, criteria, frame)[SHIMS.shimsMm.box] ?? '',
        answer,
        faults: form.faults,
      }),
    ),
  );
}

const GAP_FIELDS: Readonly<Record<string, string>> = {
  padDepthMm: 'depth',
  flexplateStandsOutMm: 'standsOut',
  separatorPlateMm: 'separator',
  shimMm: 'shim',
  hubEngagementMm: 'hub',
  hubEngagementLeastMm: 'hubLeast',
  'makersGapMm.least': 'gapLeast',
  'makersGapMm.most': 'gapMost',
};

/** What was measured; null until both depths are typed. */
function readMeasured(form: TypedForm): GapMeasured | null {
  const padDepthMm = form.length('depth', 'Depth to the pads');
  const flexplateStandsOutMm = form.length('standsOut', 'How far the flexplate stands out');
  const least = form.length('gapLeast', "The maker's least gap");
  const most = form.length('gapMost', "The maker's greatest gap");
  const rest = {
    separatorPlateMm: form.length('separator', 'Separator plate') ?? 0,
    hubEngagementMm: form.length('hub', 'Hub in the pump'),
    hubEngagementLeastMm: form.length('hubLeast', 'Least hub in the pump'),
  };
  const begun = ['depth', 'standsOut'].some((name) => form.has(name));
  if (begun && !form.has('depth')) form.needed(padDepthMm, 'depth', 'Depth to the pads');
  if (begun && !form.has('standsOut'))
    form.needed(flexplateStandsOutMm, 'standsOut', 'How far the flexplate stands out');
  if ((least === null) !== (most === null))
    form.fault(
      least === null ? 'gapLeast' : 'gapMost',
      "The maker's gap has two ends. Type both, or leave both.",
    );
  if (padDepthMm === null || flexplateStandsOutMm === null) return null;
  return {
    padDepthMm,
    flexplateStandsOutMm,
    ...rest,
    makersGapMm: least === null || most === null ? null : { least, most },
  };
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
