import { shelfAnswer, shelfCoverAnswer, staleShelf } from '../../../shared/schemas/answers/benchAnswers.ts';
import { shelfChangeSchema } from '../../../shared/schemas/benchCalls.ts';
import { SHELF_ASKED } from '../../../shared/words/fields/shelf.ts';
import type { Job } from '../../../shared/words/job.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import type { ShelfAsked, ShelfChange } from '../../../shared/words/shelf.ts';
import { listEntries } from '../../records/catalogue.ts';
import { NotInRecords } from '../../records/database/errors.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { changeShelf, ShelfChanged, shelfHistory } from '../../records/shelf/shelfChanges.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import { shelfFactsOf, shelfNow } from '../../shop/shelf/shelfFacts.ts';
import { shelfRanked } from '../../shop/shelf/shelfRanked.ts';
import type { Asker } from '../../shop/work/workPool.ts';
import { ApiError, readBody } from '../request/apiErrors.ts';
import type { Fields } from '../request/typed.ts';
import { type JobAnswered, type JobAsked, type JobCall, type JobNeeds, ok } from './call.ts';
import { ctxOf } from './jobChanges.ts';

const MOST_COVERS = 200;

/** Covers that are measured and wait: which will do for an order, and where each lies. */
export const shelfCalls: readonly JobCall[] = [
  {
    methods: ['GET'],
    path: '/shelf',
    name: 'findCovers',
    summary: 'Covers on the shelf, those that will do first.',
    description:
      'Each held against what is asked, and against today’s shop limits. One page at a time: send next of a page as after. Advice: what a cover is used for is decided in its job.',
    query: {
      family: 'the id of a cover type',
      stack: 'the id of a flexplate stack its studs have to suit',
      leastWallMm: 'the least wall left; without it each cover’s minimum wall',
      sure: 'how sure of that, 0.5 to 0.9999; without it the confidence required',
      crankPilotMm: 'the crank pilot diameter',
      after: 'next, from the page before',
      limit: `1 to ${MOST_COVERS}; 50 without it`,
    },
    schema: null,
    answers: { 200: shelfAnswer },
    answer: findCovers,
  },
  {
    methods: ['GET'],
    path: '/shelf/{number}',
    name: 'getShelfCover',
    summary: 'How the cover of a job stands on the shelf, and every change.',
    description: 'Without a change it never lay there.',
    query: {},
    schema: null,
    answers: { 200: shelfCoverAnswer },
    answer: async (needs, { named, asker }) =>
      ok(await toldOf(needs, await jobNamed(needs.db, named), asker)),
  },
  {
    methods: ['PUT', 'POST'],
    path: '/shelf/{number}',
    name: 'changeShelf',
    summary: 'Put a cover on the shelf, move it, keep it for a job, free it, or take it off.',
    description:
      'from is the place of the newest change you read, 0 where there is none. If somebody changed it since, the answer is 409 with their change and nothing is saved; the same sent twice is kept once.',
    query: {},
    schema: shelfChangeSchema,
    answers: { 200: shelfCoverAnswer, 409: staleShelf },
    answer: sendChange,
  },
];

async function findCovers(needs: JobNeeds, { query, asker }: JobAsked): Promise<JobAnswered> {
  const { db, timeZone } = needs;
  const { body: criteria } = await currentCriteria(db);
  const asked = askedIn(query);
  const stacks = await listEntries(db, 'stack');
  const families = await listEntries(db, 'family', { retired: true });
  known('family', asked.familyId, families, 'cover type');
  known('stack', asked.stackId, stacks, 'flexplate stack');
  const stack = stacks.find(({ id }) => id === asked.stackId) ?? null;
  const unit = criteria.lengthUnit;
  const now = await shelfNow(db, criteria, { lengthUnit: unit, timeZone }, asker);
  const covers = await shelfRanked(now, asked, { criteria, stack, unit });
  const most = limitIn(query);
  const from = query.after === undefined ? 0 : covers.findIndex((one) => one.jobNumber === query.after) + 1;
  if (query.after !== undefined && from === 0)
    refuse('after', `"${query.after.slice(0, 40)}" is no place in the list. Send next of the page before.`);
  const page = covers.slice(from, from + most);
  return ok({ covers: page, next: from + most < covers.length ? page.at(-1)!.jobNumber : null });
}

function refuse(path: string, message: string): never {
  throw new Refusal('wrong-values', [{ path, message }]);
}

function known(
  path: string,
  id: string | null,
  entries: readonly { readonly id: string }[],
  word: string,
): void {
  if (id === null || entries.some((one) => one.id === id)) return;
  refuse(path, `There is no ${word} "${id.slice(0, 60)}" in the catalog.`);
}

function limitIn({ limit = '50' }: Fields): number {
  const most = Number(limit);
  if (/^\d{1,4}$/.test(limit) && most >= 1 && most <= MOST_COVERS) return most;
  return refuse(
    'limit',
    `The limit "${limit.slice(0, 40)}" must be a whole number from 1 to ${MOST_COVERS}.`,
  );
}

function askedIn(query: Fields): ShelfAsked {
  const figure = (name: keyof typeof SHELF_ASKED, least: number, most: number) => {
    const sent = query[name];
    if (sent === undefined || sent === '') return null;
    const value = /^\d+(\.\d+)?$/.test(sent) ? Number(sent) : Number.NaN;
    if (value >= least && value <= most) return value;
    return refuse(
      name,
      `${SHELF_ASKED[name].label} is "${sent.slice(0, 40)}"; send a plain number from ${least} to ${most}.`,
    );
  };
  return {
    familyId: query.family || null,
    stackId: query.stack || null,
    leastWallMm: figure('leastWallMm', 0.1, 100),
    crankPilotMm: figure('crankPilotMm', 1, 500),
    sure: figure('sure', SHELF_ASKED.sure.least, SHELF_ASKED.sure.most),
  };
}

const ASKS_NOTHING: ShelfAsked = {
  familyId: null,
  stackId: null,
  crankPilotMm: null,
  leastWallMm: null,
  sure: null,
};

async function toldOf({ db, timeZone }: JobNeeds, job: Job, asker: Asker) {
  const changes = await shelfHistory(db, job.id);
  const newest = changes.at(-1) ?? null;
  const onShelf = newest !== null && newest.what !== 'off';
  const { body: criteria } = await currentCriteria(db);
  const unit = criteria.lengthUnit;
  const facts = onShelf ? await shelfFactsOf(db, job, { lengthUnit: unit, timeZone }, asker) : null;
  const familyId = job.sections.received?.body.familyId ?? '';
  const [cover = null] =
    newest !== null && facts !== null
      ? await shelfRanked([{ ...newest, facts, familyId, jobRevision: job.revision }], ASKS_NOTHING, {
          criteria,
          stack: null,
          unit,
        })
      : [];
  return {
    jobNumber: job.number,
    place: newest?.place ?? 0,
    onShelf,
    cover,
    changes: changes.map(changeTold),
  };
}

function changeTold({ place, what, at, who, why, lies, forJob }: ShelfChange) {
  return { place, what, at, who, why, lies, forJob };
}

async function sendChange(needs: JobNeeds, { named, body, asker }: JobAsked): Promise<JobAnswered> {
  const { db, timeZone } = needs;
  const { who, why, ...sent } = readBody(shelfChangeSchema, body);
  const job = await jobNamed(db, named);
  const { lengthUnit } = (await currentCriteria(db)).body;
  const facts = await shelfFactsOf(db, job, { lengthUnit, timeZone }, asker);
  try {
    await changeShelf(db, ctxOf(needs, who, why), { ...sent, jobId: job.id, facts });
  } catch (error) {
    if (error instanceof ShelfChanged) {
      const theirs = error.theirs && changeTold(error.theirs);
      throw new ApiError(409, 'stale', error.message, [], { theirs });
    }
    if (error instanceof NotInRecords) throw new Refusal('wrong-values', error.faults);
    throw error;
  }
  return ok(await toldOf(needs, job, asker));
}
