import type { Request, Response } from 'express';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import type { Refused } from '../../../views/pages/job/section.tsx';
import { addReadings } from '../../records/jobs/readings.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { closedRefusal } from '../../records/jobs/rules.ts';
import { readReadings } from '../measuring/table.ts';
import { frameOf, type PageContext, rememberPreference } from '../request/pageContext.ts';
import { fieldsOf, unitOf } from '../request/typed.ts';
import { withInitials } from '../request/whoFaults.ts';
import { addressOf, ctxOf, showJob } from './jobRequest.ts';

/** The measuring table of the job's page: what changed in it is kept. */
export async function postReadings(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const fields = fieldsOf(req.body);
  const job = await jobNamed(db, String(req.params.number));
  const frame = await frameOf(req, context);
  const writing = {
    ...frame,
    lengthUnit: unitOf(fields) ?? frame.lengthUnit,
  };
  const gauge = job.sections.setup?.body.gauge ?? '';
  const sent = await readReadings(job, fields, writing, gauge);
  const refuse = async (status: number, faults: readonly Fault[], stale: Refused['stale'] = null) =>
    showJob(context, req, res, job, {
      status,
      fields,
      refused: {
        section: 'readings',
        fields,
        faults: stale ? faults : withInitials(faults, fields.who),
        stale,
      },
      doubts: { pass: sent.pass, list: [...sent.doubts, ...sent.unread] },
    });
  const closed = closedRefusal(job);
  if (closed !== null) {
    await refuse(422, closed.faults);
    return;
  }
  if (sent.conflicts.length > 0) {
    await refuse(409, sent.faults, { theirs: sent.newest, compared: sent.conflicts, since: [] });
    return;
  }
  if (sent.faults.length > 0 || sent.doubts.length > 0) {
    await refuse(422, [
      ...sent.faults,
      ...sent.doubts.map((one) => ({ path: one.name, message: one.question })),
    ]);
    return;
  }
  if (sent.readings.length === 0) {
    res.redirect(303, addressOf(job));
    return;
  }
  try {
    await addReadings(db, ctxOf(context, fields), { jobId: job.id, readings: sent.readings });
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const status = error.code === 'reading-differs' || error.code === 'nothing-to-replace' ? 409 : 422;
    await refuse(status, error.faults);
    return;
  }
  rememberPreference(res, 'initials', (fields.who ?? '').trim());
  res.redirect(303, addressOf(job));
}
