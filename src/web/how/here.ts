import type { Request } from 'express';
import type { Answer } from '../../../shared/words/answer.ts';
import { bendingWorkings } from '../../../shared/words/bending/bendingWorkings.ts';
import { getJob, jobAtRevision } from '../../records/jobs/readJob.ts';
import { jobAnswer } from '../../shop/jobAnswer.ts';
import { jobUnder } from '../../shop/jobUnder.ts';
import { quickAnswer } from '../../shop/quickCover.ts';
import { readQuickForm } from '../cover/cover.ts';
import { ownAddress } from '../request/ownAddress.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { type Fields, fieldsOf } from '../request/typed.ts';
import { studsAsked } from '../stud/stud.ts';

/** One working of a page, with what it was checked for where a finding tells it. */
export interface WorkingHere {
  readonly title: string | null;
  readonly answer: Answer;
}

/** Every working of a page, and where it is. */
export interface Here {
  /** "Job 1005, revision 12". */
  readonly name: string;
  readonly href: string;
  readonly workings: readonly WorkingHere[];
}

/**
 * What the page that is named worked out, worked out again: a job at a revision, the quick page or a stud with what was
 * typed there. null where the address names none of them, or nothing can be worked out there.
 */
export async function workedOutHere(context: PageContext, req: Request, asked: Fields): Promise<Here | null> {
  const { job, revision } = asked;
  if (job !== undefined) return ofJob(context, req, job, Number(revision));
  const from = ownAddress(asked.from ?? '');
  const { pathname, searchParams } = new URL(from, 'http://shop.invalid');
  const typed = fieldsOf(Object.fromEntries(searchParams));
  if (pathname === '/cover')
    return { name: 'The cover you checked', href: from, workings: await ofCover(context, req, typed) };
  if (pathname === '/stud') {
    const { page } = await studsAsked(context, req, typed);
    return {
      name: 'The stud you looked for',
      href: from,
      workings: workingsIn(page.choices.find(({ match }) => match.id === page.shownId)),
    };
  }
  return null;
}

/** The job a page is of, at the revision it has now: as the address of its workings names it. */
export async function jobNow(
  { shop }: PageContext,
  from: string,
): Promise<{ readonly job: string; readonly revision: string } | null> {
  const number = /^\/jobs\/([^/?#]+)(?:[/?#]|$)/.exec(from)?.[1];
  if (number === undefined) return null;
  const job = await getJob(shop.db, decoded(number));
  return job && { job: job.number, revision: String(job.revision) };
}

async function ofJob(
  context: PageContext,
  req: Request,
  number: string,
  revision: number,
): Promise<Here | null> {
  const { shop, settings } = context;
  const now = await getJob(shop.db, number);
  if (now === null || !Number.isInteger(revision) || revision < 1 || revision > now.revision) return null;
  const asItWas = revision === now.revision ? null : revision;
  const job = asItWas === null ? now : await jobAtRevision(shop.db, now.id, revision);
  const { lengthUnit } = await frameOf(req, context);
  const under = await jobUnder(shop.db, job, { lengthUnit, timeZone: settings.timeZone }, asItWas);
  const answer = await jobAnswer(job, under);
  const { decision, studs } = job.sections;
  return {
    name: `Job ${job.number}, revision ${revision}`,
    href: `/jobs/${encodeURIComponent(job.number)}`,
    workings: workingsIn([
      answer,
      decision?.body.check,
      studs?.body.check,
      answer.bending?.bending && bendingWorkings(answer.bending.bending),
    ]),
  };
}

async function ofCover(context: PageContext, req: Request, typed: Fields): Promise<readonly WorkingHere[]> {
  const frame = await frameOf(req, context);
  const { form, input, bent } = await readQuickForm(context, typed, frame);
  const { check, bending, plan } = await quickAnswer(
    input,
    form.view.cover,
    { ...bent, other: null },
    frame.lengthUnit,
  );
  return workingsIn([check, bending, plan, bending?.bending && bendingWorkings(bending.bending)]);
}

const DEEPEST = 12;

/** Every answer that brings its working, wherever it lies; the same one once, under its finding where it has one. */
function workingsIn(whole: unknown): readonly WorkingHere[] {
  const found = new Map<string, WorkingHere>();
  const look = (value: unknown, title: string | null, depth: number): void => {
    if (typeof value !== 'object' || value === null || depth > DEEPEST) return;
    if (isAnswer(value)) {
      const key = JSON.stringify([value.symbol, value.value, value.how]);
      if (title !== null || !found.has(key)) found.set(key, { title, answer: value });
      return;
    }
    const { title: own } = value as { readonly title?: unknown };
    for (const inner of Object.values(value)) look(inner, typeof own === 'string' ? own : null, depth + 1);
  };
  look(whole, null, 0);
  return [...found.values()];
}

function isAnswer(value: object): value is Answer {
  return (
    'how' in value && Array.isArray(value.how) && 'symbol' in value && 'value' in value && 'warnings' in value
  );
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
