import { Router } from 'express';
import QRCode from 'qrcode';
import type { Job } from '../../../shared/words/job.ts';
import { SheetPage } from '../../../views/pages/job/sheetPage.tsx';
import { TagPage } from '../../../views/pages/job/tagPage.tsx';
import type { QrModules } from '../../../views/parts/qr.tsx';
import { renderPage } from '../../../views/render.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { photosOf } from '../../records/photos/photos.ts';
import { jobAnswer } from '../../shop/jobAnswer.ts';
import { jobUnder } from '../../shop/jobUnder.ts';
import { coverLimitFields } from '../catalogue/entryFields.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { fieldsOf } from '../request/typed.ts';
import { jobAsked } from './jobRequest.ts';

/** What goes on paper: the sheet of a job, as it stands or as it was, and its tag. */
export function sheetRouter(context: PageContext): Router {
  const router = Router();
  const { db } = context.shop;

  router.get('/jobs/:number/sheet', async (req, res) => {
    const { job, asItWas } = await jobAsked(db, req, fieldsOf(req.query));
    const frame = await frameOf(req, context);
    const under = await jobUnder(db, job, frame, asItWas);
    const answer = await jobAnswer(job, under);
    const family = job.sections.received?.body.family;
    const decided = job.outcome === null ? null : job.sections.decision;
    res.send(
      renderPage(
        SheetPage({
          frame,
          job: answer.told,
          asItWas,
          shape: family ? { ...family, densityKgPerM3: null } : null,
          check: answer.stands,
          plan: answer.plan,
          bending: answer.bending?.bending ?? null,
          criteria: coverLimitFields(decided?.body.criteria ?? under.criteria, frame),
          verified: answer.verified,
          photos: await photosOf(db, job.id, job.revision),
          qr: qrOf(context, job),
        }),
      ),
    );
  });

  router.get('/jobs/:number/tag', async (req, res) => {
    const job = await jobNamed(db, String(req.params.number));
    res.send(renderPage(TagPage({ frame: await frameOf(req, context), job, qr: qrOf(context, job) })));
  });

  return router;
}

/** Leads to the job under PUBLIC_URL; without one there is no address a phone could open. */
function qrOf(context: PageContext, job: Job): QrModules {
  const { publicUrl } = context.settings;
  if (publicUrl === null) return null;
  const leadsTo = new URL(`/jobs/${encodeURIComponent(job.number)}`, publicUrl).href;
  const { size, data } = QRCode.create(leadsTo, { errorCorrectionLevel: 'M' }).modules;
  const dark = Array.from({ length: size }, (_, y) =>
    Array.from({ length: size }, (_, x) => data[y * size + x] === 1),
  );
  return { size, dark, leadsTo };
}
