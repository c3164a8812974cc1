import { Router } from 'express';
import { Refusal } from '../../../shared/words/refusal.ts';
import { StaleEdit } from '../../records/database/errors.ts';
import { getJob } from '../../records/jobs/readJob.ts';
import { reviseJob } from '../../records/jobs/reviseJob.ts';
import { ringWeldedFrom } from '../../shop/ringWelded.ts';
import { NoSuchPage } from '../request/errors.ts';
import { type PageContext, todayIn } from '../request/pageContext.ts';
import { fieldsOf } from '../request/typed.ts';
import { whoOf } from '../request/whoSignedIn.ts';

const JOINED: Readonly<Record<string, boolean>> = { yes: true, no: false };

/** Ring first: once it is on, the job goes back to measuring, and what was measured before is kept and void. */
export function weldedRouter(context: PageContext): Router {
  const router = Router();
  const { db } = context.shop;

  router.post('/jobs/:number/welded', async (req, res) => {
    const fields = fieldsOf(req.body);
    const job = await getJob(db, req.params.number);
    if (job === null) throw new NoSuchPage('There is no such job in this shop. Look for it under jobs.');
    const there = `/jobs/${encodeURIComponent(job.number)}`;
    const edit = ringWeldedFrom(job, {
      on: (fields.weldedOn ?? '').trim() || todayIn(context),
      note: (fields.weldNote ?? '').trim(),
      joinedToPads: JOINED[fields.ringJoined ?? ''] ?? null,
    });
    if (edit === null) {
      res.redirect(303, `${there}#measure`);
      return;
    }
    const ctx = { who: whoOf(req, fields.who), why: fields.why ?? '', now: context.now };
    const fromRevision = /^\d{1,9}$/.test(fields.from ?? '') ? Number(fields.from) : 0;
    try {
      await reviseJob(db, ctx, { jobId: job.id, fromRevision, ...edit });
    } catch (error) {
      if (!(error instanceof StaleEdit)) throw error;
      throw new Refusal('stale', [{ path: '', message: error.message }]);
    }
    res.redirect(303, `${there}#measure`);
  });

  return router;
}
