import { randomUUID } from 'node:crypto';
import type { Request, Response } from 'express';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { NewJobPage } from '../../../views/pages/job/newJobPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { listEntries } from '../../records/catalogue.ts';
import { createJob } from '../../records/jobs/createJob.ts';
import { frameOf, type House, rememberPreference, todayIn } from '../request/house.ts';
import { type Fields, fieldsOf } from '../request/typed.ts';
import { addressOf, ctxOf } from './jobRequest.ts';
import { readReceived } from './receivedForm.ts';

const SENT_ID = /^[A-Za-z0-9-]{16,64}$/;

export async function getNewJob(house: House, req: Request, res: Response): Promise<void> {
  await showNewJob(house, req, res, fieldsOf(req.query), [], 200);
}

export async function postNewJob(house: House, req: Request, res: Response): Promise<void> {
  const { db } = house.shop;
  const fields = fieldsOf(req.body);
  try {
    const { number, received } = await readReceived(db, fields, { today: todayIn(house) });
    const job = await createJob(db, ctxOf(house, fields), {
      ...(number !== null && { number }),
      ...(SENT_ID.test(fields.sentId ?? '') && { sentId: fields.sentId! }),
      received,
    });
    rememberPreference(res, 'initials', (fields.who ?? '').trim());
    res.redirect(303, addressOf(job));
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    await showNewJob(house, req, res, fields, error.faults, error.code === 'sent-otherwise' ? 409 : 422);
  }
}

async function showNewJob(
  house: House,
  req: Request,
  res: Response,
  fields: Fields,
  faults: readonly Fault[],
  status: number,
) {
  const frame = await frameOf(req, house);
  const families = await listEntries(house.shop.db, 'family');
  res.status(status).send(
    renderPage(
      NewJobPage({
        frame,
        families: families.map(({ id, name }) => ({ id, name })),
        fields: {
          receivedOn: todayIn(house),
          who: frame.initials,
          sentId: randomUUID(),
          ...fields,
        },
        faults,
      }),
    ),
  );
}
