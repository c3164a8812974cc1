import { type Request, type Response, Router } from 'express';
import { demoCovers } from '../../../data/demo/covers.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import type { Frame } from '../../../views/frame.ts';
import { CoverPage } from '../../../views/pages/cover/coverPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { getEntry, listEntries } from '../../records/catalogue.ts';
import { StaleEdit } from '../../records/database/errors.ts';
import { masterChecksOf } from '../../records/gauges/masterChecks.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import { besideOf } from '../../shop/bending/bendings.ts';
import { shopMinimum } from '../../shop/limitsFor.ts';
import { quickAnswer } from '../../shop/quickCover.ts';
import type { Asker } from '../../shop/work/workPool.ts';
import { entryFields } from '../catalogue/entryFields.ts';
import { gaugesSeen } from '../measuring/gaugesOnForm.ts';
import { differences } from '../request/fieldLines.ts';
import { keepingUnits } from '../request/otherUnit.ts';
import {
  frameOf,
  type PageContext,
  preferencesOf,
  rememberPreference,
  todayIn,
} from '../request/pageContext.ts';
import { askerOf } from '../request/requestGone.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf, unitOf } from '../request/typed.ts';
import { withInitials } from '../request/whoFaults.ts';
import { type CoverForm, readCoverForm } from './coverForm.ts';
import { exampleQuery } from './example.ts';
import { keepAsJob } from './keepAsJob.ts';

/** A cover, quickly. Everything typed is in the address, so back, reload and a bookmark lose nothing. */
export function coverRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/cover', to(getCover));
  router.get('/cover/example/:id', to(getExample));
  router.post('/cover/keep', to(postKeep));
  return router;
}

async function getCover(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.query);
  const { unit } = preferencesOf(req);
  const frame = await frameOf(req, context);
  const writing = { ...frame, lengthUnit: unitOf(fields) ?? unit ?? frame.lengthUnit };
  const page = await coverPage(context, fields, writing, [], askerOf(req, res));
  res.status(page.status).send(page.html);
}

async function getExample(context: PageContext, req: Request, res: Response): Promise<void> {
  const cover = demoCovers.find((one) => one.id === req.params.id);
  const family = cover ? await getEntry(context.shop.db, 'family', cover.familyId) : null;
  const writing = await frameOf(req, context);
  const query = cover && family ? `?${exampleQuery(cover, family.id, family.body, writing)}` : '';
  res.redirect(303, `/cover${query}`);
}

async function postKeep(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.body);
  const frame = await frameOf(req, context);
  const address = `/cover?${new URLSearchParams(fields)}`;
  const writing = { ...frame, address, lengthUnit: unitOf(fields) ?? frame.lengthUnit };
  const { form } = await readQuickForm(context, fields, writing);
  if (form.input !== null && form.view.doubts.length === 0) {
    try {
      const job = await keepAsJob(context, form, fields);
      rememberPreference(res, 'initials', job.who);
      res.redirect(303, `/jobs/${encodeURIComponent(job.number)}`);
      return;
    } catch (error) {
      if (error instanceof StaleEdit) {
        const message = await gaugeChanged(context, form, fields, error, writing);
        const page = await coverPage(context, fields, writing, [{ path: 'wallGauge', message }]);
        res.status(409).send(page.html);
        return;
      }
      if (!(error instanceof Refusal)) throw error;
      const faults = withInitials(error.faults, fields.initials).map(inKeepForm);
      const page = await coverPage(context, fields, writing, faults);
      res.status(422).send(page.html);
      return;
    }
  }
  const page = await coverPage(context, fields, writing, [
    ...(form.input === null && form.view.faults.length === 0
      ? [
          {
            path: 'w.0',
            message: 'Nothing is measured yet. Enter a wall first.',
          },
        ]
      : []),
    ...form.view.doubts
      .filter(({ asTyped }) => asTyped !== null)
      .map((one) => ({
        path: one.name,
        message: `${one.label}: ${one.question} Choose one before it is saved.`,
      })),
    ...withInitials([], fields.initials).map(inKeepForm),
  ]);
  res.status(422).send(page.html);
}

/** A gauge that somebody changed while the page was open: as it was seen, and as it is now. */
async function gaugeChanged(
  { shop }: PageContext,
  { gauges }: CoverForm,
  fields: Fields,
  error: StaleEdit,
  writing: Frame,
): Promise<string> {
  const changes: string[] = [];
  for (const { id, revision } of gaugesSeen(fields, gauges)) {
    const [then, now] = [
      await getEntry(shop.db, 'gauge', id, revision),
      await getEntry(shop.db, 'gauge', id),
    ];
    if (then === null || now === null) continue;
    const both = [then, now].map(({ body }) => entryFields('gauge', body, writing));
    for (const { label, before, after } of differences(both[0]!, both[1]!)) {
      changes.push(`${label}: ${before || 'nothing'} as you saw it, ${after || 'nothing'} now.`);
    }
  }
  return [error.message, ...changes].join(' ');
}

const KEEP_BOX: Readonly<Record<string, string>> = { number: 'jobNumber', who: 'initials' };

/** A fault beside its box of the form that saves the cover as a job. */
function inKeepForm(fault: Fault): Fault {
  return { ...fault, path: KEEP_BOX[fault.path] ?? fault.path };
}

/** The quick page's form, with the catalog and the criteria of the shop. */
export async function readQuickForm(context: PageContext, fields: Fields, frame: Frame) {
  const families = await listEntries(context.shop.db, 'family');
  const criteria = (await currentCriteria(context.shop.db)).body;
  const chosen = fields.family === undefined && families[0] ? { ...fields, family: families[0].id } : fields;
  const gauges = await listEntries(context.shop.db, 'gauge');
  const used = [fields.wallGauge, fields.faceGauge].filter((id) => id !== undefined && id !== '');
  const masterChecks = await masterChecksOf(context.shop.db, used as string[]);
  const shop = { families, criteria, gauges, masterChecks, today: todayIn(context) };
  const form = readCoverForm(chosen, shop, frame);
  return {
    form,
    families,
    // A reading in doubt would make the answer one too: it waits until the person has said.
    input: form.view.doubts.length > 0 ? null : form.input,
    bent: { family: form.bends, own: form.familyId === 'own', criteria },
  };
}

async function coverPage(
  context: PageContext,
  fields: Fields,
  frame: Frame,
  more: readonly { path: string; message: string }[] = [],
  asker?: Asker,
): Promise<{ status: number; html: string }> {
  const { form, input, bent, families } = await readQuickForm(context, fields, frame);
  const asked = { ...bent, other: besideOf(families, fields.beside), asker };
  const { check, bending, plan, decides, faults } = await quickAnswer(
    input,
    form.view.cover,
    asked,
    frame.lengthUnit,
  );
  const { criteria } = bent;
  const view = { ...form.view, faults: [...form.view.faults, ...faults, ...more] };
  const family = form.view.family;
  const minimum = shopMinimum(family, criteria, form.view.cover);
  const html = renderPage(
    CoverPage({
      frame: keepingUnits(frame, form),
      form: view,
      check,
      plan,
      decides,
      bending,
      given: {
        minimumWallMm: minimum.mm,
        minimumSource:
          minimum.working ??
          (family?.shopMinimumWallMm != null ? 'set for this cover type' : 'set for every cover type'),
        cleanUpAllowanceMm: criteria.cleanUpAllowanceMm,
        faceRunoutLimitMm: criteria.faceRunoutLimitMm,
      },
      exampleHref: exampleFor(form.familyId),
    }),
  );
  return { status: view.faults.length > 0 ? 422 : 200, html };
}

function exampleFor(familyId: string): string | null {
  const cover = demoCovers.find((one) => one.familyId === familyId && one.stations.length > 0);
  return cover ? `/cover/example/${cover.id}` : null;
}
