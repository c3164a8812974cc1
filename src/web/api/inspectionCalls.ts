import { inspectedAnswer, listsAnswer } from '../../../shared/schemas/answers/benchAnswers.ts';
import { changedAnswer, staleSections } from '../../../shared/schemas/answers/jobAnswers.ts';
import { inspectedCallSchema } from '../../../shared/schemas/benchCalls.ts';
import { type Inspected, type InspectedItem, isItemOk, itemsOf } from '../../../shared/words/inspection.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { listEntries } from '../../records/catalogue.ts';
import { NotInRecords, StaleEdit } from '../../records/database/errors.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { reviseJob } from '../../records/jobs/reviseJob.ts';
import { figuresDoubted } from '../../shop/doubts/figuresDoubted.ts';
import { itemExpected } from '../../shop/inspection/itemExpected.ts';
import { listStands, listsFor } from '../../shop/inspection/listFindings.ts';
import { whereItStands } from '../../shop/jobAnswer.ts';
import { printsFor } from '../job/papers.ts';
import { ApiError, readBody } from '../request/apiErrors.ts';
import { type JobAnswered, type JobAsked, type JobCall, type JobNeeds, ok } from './call.ts';
import { ctxOf } from './jobChanges.ts';

/** Inspection lists, and what was found of them on a job. Lists are made and changed on their page. */
export const inspectionCalls: readonly JobCall[] = [
  {
    methods: ['GET'],
    path: '/inspection',
    name: 'inspectionLists',
    summary: 'The shop’s inspection lists.',
    description: 'Each item with its limits, in mm, N·m or MPa; lists that are retired too.',
    query: {},
    schema: null,
    answers: { 200: listsAnswer },
    answer: async ({ db }) => {
      const lists = await listEntries(db, 'checklist', { retired: true });
      return ok({
        lists: lists.map(({ id, revision, retired, body }) => ({ id, revision, retired, list: body })),
      });
    },
  },
  {
    methods: ['GET'],
    path: '/jobs/{number}/inspected',
    name: 'jobInspected',
    summary: 'A job’s inspection lists, item by item, with what was found.',
    description: 'An item whose limits were changed since it was answered counts as not answered.',
    query: {},
    schema: null,
    answers: { 200: inspectedAnswer },
    answer: answerInspected,
  },
  {
    methods: ['PUT', 'POST'],
    path: '/jobs/{number}/inspected',
    name: 'changeInspected',
    summary: 'Record what was found of inspection items.',
    description:
      'Items that are not sent stay as they are. A yes or no takes ok, what is measured takes value. A value that looks like a slip is refused unless confirmed names it, as items.2.value. If somebody changed the list’s answers since fromRevision, the answer is 409 with both versions.',
    query: {},
    schema: inspectedCallSchema,
    answers: { 200: changedAnswer, 409: staleSections.inspected },
    answer: sendInspected,
  },
];

async function answerInspected({ db }: JobNeeds, { named }: JobAsked): Promise<JobAnswered> {
  const job = await jobNamed(db, named);
  const lists = await listsFor(db, job.sections.received?.body);
  const inspected = job.sections.inspected?.body ?? null;
  return ok({
    number: job.number,
    revision: job.revision,
    ...listStands(lists, inspected),
    items: itemsOf(lists, inspected).map(({ of, item, answer }) => ({
      listId: of.id,
      listRevision: of.revision,
      item,
      answer,
      ok: answer && isItemOk(answer),
    })),
  });
}

async function sendInspected(needs: JobNeeds, { named, body }: JobAsked): Promise<JobAnswered> {
  const { db, now } = needs;
  const sent = readBody(inspectedCallSchema, body);
  const job = await jobNamed(db, named);
  const kept = job.sections.inspected?.body ?? null;
  const items = itemsOf(await listsFor(db, job.sections.received?.body), kept);
  const by = { who: sent.who.trim(), at: now().toISOString() };
  const faults: Fault[] = [];
  const fault = (path: string, message: string) => faults.push({ path, message });
  const answered = sent.items.flatMap((one, i): InspectedItem[] => {
    const at = `items.${i}`;
    const found = items.find(({ of, item }) => of.id === one.listId && item.id === one.itemId);
    if (found === undefined) {
      fault(`${at}.itemId`, `No inspection list of this job has the item "${one.itemId.slice(0, 60)}".`);
      return [];
    }
    const { of, item } = found;
    const measured = item.kind !== 'yes-no';
    if (measured && one.value === null) fault(`${at}.value`, `${item.name} is measured: send its value.`);
    if (measured && one.ok !== null) fault(`${at}.ok`, `${item.name} is measured: send its value alone.`);
    if (!measured && one.ok === null) fault(`${at}.ok`, `${item.name} is a yes or no: send ok.`);
    if (!measured && one.value !== null) fault(`${at}.value`, `${item.name} is a yes or no: send ok alone.`);
    const usual = itemExpected(item);
    const [doubt] =
      item.kind === 'yes-no' || usual === null || one.value === null
        ? []
        : figuresDoubted(
            { value: { label: item.name, kind: item.kind === 'length' ? 'height' : item.kind } },
            one,
            { value: usual },
            at,
          );
    const sure = doubt !== undefined && sent.confirmed.includes(doubt.path);
    if (doubt !== undefined && !sure)
      fault(doubt.path, `${doubt.question} If it is right, name ${doubt.path} in confirmed.`);
    const { ok: right, value, note } = one;
    const typed = value === null ? (right ? 'yes' : 'no') : String(value);
    return [
      {
        listId: of.id,
        listRevision: of.revision,
        item,
        ok: right,
        value,
        typed,
        confirmed: sure,
        note,
        ...by,
      },
    ];
  });
  if (faults.length > 0) throw new Refusal('wrong-values', faults);
  const isSent = (one: InspectedItem) =>
    answered.some(({ listId, item }) => listId === one.listId && item.id === one.item.id);
  const whole: Inspected = { items: [...answered, ...(kept?.items ?? []).filter((one) => !isSent(one))] };
  try {
    const edit = { jobId: job.id, fromRevision: sent.fromRevision, what: 'inspected', body: whole } as const;
    const ctx = ctxOf(needs, sent.who, sent.why);
    return ok(whereItStands(await reviseJob(db, ctx, edit, printsFor(needs.publicUrl, needs))));
  } catch (error) {
    if (error instanceof NotInRecords || !(error instanceof StaleEdit)) throw error;
    const { section: of, theirs, currentRevision, since } = error;
    throw new ApiError(409, 'stale', error.message, [], {
      of,
      theirs,
      yours: whole,
      currentRevision,
      since,
    });
  }
}
