import { randomUUID } from 'node:crypto';
import type { Request, Response } from 'express';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { NewJobPage } from '../../../views/pages/job/newJobPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { listEntries } from '../../records/catalogue.ts';
import { createJob } from '../../records/jobs/createJob.ts';
import { jobsOfCover } from '../../shop/sameCover.ts';
import { frameOf, type PageContext, rememberPreference, todayIn } from '../request/pageContext.ts';
import { type Fields, fieldsOf } from '../request/typed.ts';
import { withInitials } from '../request/whoFaults.ts';
import { slipAsked } from '../stud/slipRoutes.ts';
import { addressOf, ctxOf } from './jobRequest.ts';
import { readReceived, toNewCoverType } from './receivedForm.ts';

const SENT_ID = /^[A-Za-z0-9-]{16,64}$/;

export async function getNewJob(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.query);
  const slip = fields.slip === undefined ? null : await slipAsked(context, fields.slip);
  const customer = slip?.customerReference ?? '';
  await showNewJob(context, req, res, { ...(customer !== '' && { customer }), ...fields }, [], 200);
}

export async function postNewJob(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const fields = fieldsOf(req.body);
  if (fields.lookUp !== undefined) {
    await showNewJob(context, req, res, fields, [], 200);
    return;
  }
  if (fields.addType !== undefined) {
    res.redirect(303, toNewCoverType(fields, '/jobs/new'));
    return;
  }
  try {
    const slip = (fields.slip ?? '') === '' ? null : await slipAsked(context, fields.slip ?? '');
    const { number, received } = await readReceived(db, fields, { today: todayIn(context) });
    const job = await createJob(db, ctxOf(context, fields), {
      ...(number !== null && { number }),
      ...(SENT_ID.test(fields.sentId ?? '') && { sentId: fields.sentId! }),
      ...(slip && { slip: slip.number }),
      received,
    });
    rememberPreference(res, 'initials', (fields.who ?? '').trim());
    res.redirect(303, addressOf(job));
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    await showNewJob(
      context,
      req,
      res,
      fields,
      withInitials(error.faults, fields.who),
      error.code === 'sent-otherwise' ? 409 : 422,
    );
  }
}

async function showNewJob(
  context: PageContext,
  req: Request,
  res: Response,
  fields: Fields,
  faults: readonly Fault[],
  status: number,
) {
  const frame = await frameOf(req, context);
  const families = await listEntries(context.shop.db, 'family');
  res.status(status).send(
    renderPage(
      NewJobPage({
        frame,
        families: families.map(({ id, name }) => ({ id, name })),
        coverJobs: await jobsOfCover(context.shop.db, fields.coverNumber ?? ''),
        fields: {
          receivedOn: todayIn(context),
          who: frame.initials,
          sentId: randomUUID(),
          ...fields,
        },
        faults,
      }),
    ),
  );
}
