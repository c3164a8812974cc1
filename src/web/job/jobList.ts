import { type Request, type Response, Router } from 'express';
import type { JobLine } from '../../../shared/words/job.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { DECISION_WORD } from '../../../shared/words/verdicts.ts';
import { JobsPage } from '../../../views/pages/job/jobsPage.tsx';
import { STAGE_WORD } from '../../../views/pages/job/stepWords.ts';
import { renderPage } from '../../../views/render.ts';
import { listEntries } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';
import {
  countByStage,
  findJobs,
  type JobPage,
  type JobSort,
  MOST_LISTED,
  NEWEST_FIRST,
} from '../../records/jobs/findJobs.ts';
import { findSlips } from '../../records/slips/slips.ts';
import { type Column, sendCsv } from '../request/csv.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { type Fields, fieldsOf } from '../request/typed.ts';
import { jobQuestion } from './jobQuestion.ts';

const PAGE_LENGTH = 30;

/** The list of jobs, as a page and as CSV. */
export function jobListRouter(context: PageContext): Router {
  const router = Router();
  router.get('/jobs', (req, res) => showList(context, req, res));
  router.get('/jobs.csv', (req, res) => sendList(context, req, res));
  return router;
}

async function showList(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.query);
  const { found, faults } = await findOrFaults(context, fields);
  const { db } = context.shop;
  const families = await listEntries(db, 'family', { retired: true });
  res.status(faults.length > 0 ? 422 : 200).send(
    renderPage(
      JobsPage({
        frame: await frameOf(req, context),
        fields,
        faults,
        jobs: found.jobs,
        next: found.next,
        sort: found.sort,
        slips: faults.length > 0 ? [] : await slipsFound(db, fields),
        counts: await countByStage(db),
        families: families.map(({ id, name }) => ({ id, name })),
      }),
    ),
  );
}

const SLIPS_SHOWN = 5;

/** Counter slips that have every word as well: there is one search box. */
async function slipsFound(db: Db, { text = '' }: Fields) {
  if (text.trim() === '') return [];
  return (await findSlips(db, { text, limit: SLIPS_SHOWN })).slips;
}

async function findOrFaults(
  context: PageContext,
  fields: Fields,
): Promise<{ found: JobPage & { sort: JobSort }; faults: readonly Fault[] }> {
  try {
    const question = jobQuestion(fields, { limit: PAGE_LENGTH });
    const found = await findJobs(context.shop.db, question);
    return { found: { ...found, sort: question.sort ?? NEWEST_FIRST }, faults: [] };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return { found: { jobs: [], next: null, sort: NEWEST_FIRST }, faults: error.faults };
  }
}

/** Every job that is asked for, however many pages of the list they fill. */
async function sendList(context: PageContext, req: Request, res: Response): Promise<void> {
  const question = jobQuestion(fieldsOf(req.query), { limit: MOST_LISTED });
  const jobs: JobLine[] = [];
  let after = question.after;
  do {
    const page = await findJobs(context.shop.db, {
      ...question,
      limit: MOST_LISTED,
      ...(after !== undefined && { after }),
    });
    jobs.push(...page.jobs);
    after = page.next ?? undefined;
  } while (after !== undefined);
  sendCsv(res, 'jobs', JOBS, jobs);
}

const JOBS: readonly Column<JobLine>[] = [
  { name: 'job', of: (job) => job.number },
  { name: 'revision', of: (job) => job.revision },
  { name: 'state', of: (job) => STAGE_WORD[job.stage] },
  { name: 'decision', of: (job) => job.outcome && DECISION_WORD[job.outcome] },
  { name: 'cover type', of: (job) => job.familyName },
  { name: 'cover type id', of: (job) => job.familyId },
  { name: 'customer reference', of: (job) => job.customerReference },
  { name: 'received on', of: (job) => job.receivedOn },
  { name: 'created at (UTC)', of: (job) => job.createdAt },
  { name: 'changed at (UTC)', of: (job) => job.changedAt },
  { name: 'demo', of: (job) => job.demo },
];
