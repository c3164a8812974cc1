import { Router } from 'express';
import { setupSchema } from '../../../shared/schemas/job.ts';
import type { MeasuringSetup } from '../../../shared/words/job.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { ringToWeld } from '../../calc/job/jobStage.ts';
import { StaleEdit } from '../../records/database/errors.ts';
import { getJob } from '../../records/jobs/readJob.ts';
import { reviseJob } from '../../records/jobs/reviseJob.ts';
import { NoSuchPage } from '../request/errors.ts';
import { type House, todayIn } from '../request/house.ts';
import { fieldsOf } from '../request/typed.ts';
import { whoOf } from '../request/whoSignedIn.ts';

const JOINED: Readonly<Record<string, boolean>> = { yes: true, no: false };

const NOTHING_SAID: MeasuringSetup = {
  gauge: '',
  gaugeFigures: null,
  gauges: [],
  chucking: null,
  residualRunoutMm: null,
  wallReadThrough: 'bare',
  stations: [],
  ringWelded: null,
};

/** Ring first: once it is on, the job goes back to measuring, and what was measured before is kept and void. */
export function weldedRouter(house: House): Router {
  const router = Router();
  const { db } = house.shop;

  router.post('/jobs/:number/welded', async (req, res) => {
    const fields = fieldsOf(req.body);
    const job = await getJob(db, req.params.number);
    if (job === null) throw new NoSuchPage('There is no such job in this shop. Look for it under jobs.');
    const there = `/jobs/${encodeURIComponent(job.number)}`;
    if (!ringToWeld(job)) {
      // Sent a second time, or decided otherwise meanwhile: nothing is to be done.
      res.redirect(303, `${there}#measure`);
      return;
    }
    const before = job.sections.setup?.body ?? NOTHING_SAID;
    const on = (fields.weldedOn ?? '').trim() || todayIn(house);
    const body = {
      ...before,
      ringWelded: {
        on,
        note: (fields.weldNote ?? '').trim(),
        joinedToPads: JOINED[fields.ringJoined ?? ''] ?? null,
      },
    };
    const unfit = setupSchema.safeParse(body);
    if (!unfit.success) {
      throw new Refusal('bad-weld', [
        { path: 'weldedOn', message: unfit.error.issues[0]?.message ?? 'That day cannot be used.' },
      ]);
    }
    const ctx = { who: whoOf(req, fields.who), why: fields.why ?? '', now: house.now };
    const fromRevision = /^\d{1,9}$/.test(fields.from ?? '') ? Number(fields.from) : 0;
    try {
      await reviseJob(db, ctx, { jobId: job.id, fromRevision, what: 'setup', body });
    } catch (error) {
      if (!(error instanceof StaleEdit)) throw error;
      throw new Refusal('stale', [{ path: '', message: error.message }]);
    }
    res.redirect(303, `${there}#measure`);
  });

  return router;
}
