import { entriesAnswers } from '../../../shared/schemas/answers/catalogueAnswer.ts';
import {
  changedAnswer,
  historyAnswer,
  jobAnswer,
  jobStiffnessAnswer,
  jobsAnswer,
  readingsAnswer,
  staleReadings,
} from '../../../shared/schemas/answers/jobAnswers.ts';
import { addReadingsSchema, receiveJobSchema } from '../../../shared/schemas/jobCalls.ts';
import { DECISION_KINDS, STAGES } from '../../../shared/words/job.ts';
import { listEntries } from '../../records/catalogue.ts';
import { MOST_LISTED } from '../../records/jobs/findJobs.ts';
import { JOB_SORTS } from '../job/jobQuestion.ts';
import { type JobAnswered, type JobAsked, type JobCall, type JobNeeds, ok } from './call.ts';
import { inspectionCalls } from './inspectionCalls.ts';
import { receiveCover, takeReadings } from './jobChanges.ts';
import { answerHistory, answerJob, answerJobStiffness, answerJobs } from './jobReads.ts';
import { sectionCalls } from './sectionCalls.ts';
import { shelfCalls } from './shelfCalls.ts';
import { slipCalls } from './slipCalls.ts';
import { studyCalls } from './studyCalls.ts';

const ASKED = { methods: ['GET'], query: {}, schema: null } as const;
const SENT = { methods: ['POST'], query: {} } as const;

/** The calls about jobs and the catalogue. */
export const jobCalls: readonly JobCall[] = [
  {
    ...ASKED,
    path: '/jobs',
    name: 'findJobs',
    summary: 'Jobs, newest first or as sorted.',
    description: 'One page at a time: send next of a page as after to get the page behind it.',
    query: {
      text: 'a number, which comes first, or words of the job: cover type, customer, initials, decision, notes, statement',
      family: 'the id of a cover type',
      stage: `open, one of ${STAGES.join(', ')}, or all; without it every one but closed`,
      who: 'initials of somebody who worked on it',
      outcome: `one of ${DECISION_KINDS.join(', ')}`,
      from: 'received on this day or later, such as 2026-11-24',
      to: 'received on this day or earlier',
      sort: `one of ${JOB_SORTS.join(', ')}; -received without it`,
      after: 'next, from the page before',
      limit: `1 to ${MOST_LISTED}; 50 without it`,
    },
    answers: { 200: jobsAnswer },
    answer: answerJobs,
  },
  {
    ...SENT,
    path: '/jobs',
    name: 'receiveJob',
    summary: 'Receive a cover: a new job.',
    description:
      'With an id of your own, sending it again answers 200 with the job it made the first time; other content under that id is refused (409). Without a number the job gets the next free one. A day after tomorrow is refused unless confirmed names received.receivedOn.',
    schema: receiveJobSchema,
    answers: { 200: changedAnswer, 201: changedAnswer },
    answer: receiveCover,
  },
  {
    ...ASKED,
    path: '/jobs/{number}',
    name: 'getJob',
    summary: 'A job, whole.',
    description:
      'As it is now, or as it was at a revision. missing lists what it needs before it can be signed. A decision names the revision of the shop limits, which are today’s here.',
    query: { revision: 'the job as it was then' },
    answers: { 200: jobAnswer },
    answer: answerJob,
  },
  {
    ...ASKED,
    path: '/jobs/{number}/history',
    name: 'jobHistory',
    summary: 'What every revision of a job changed.',
    description:
      'Oldest first, in plain words. For the whole job at a revision, ask for the job with revision.',
    answers: { 200: historyAnswer },
    answer: answerHistory,
  },
  {
    ...ASKED,
    path: '/jobs/{number}/stiffness',
    name: 'jobStiffness',
    summary: 'How a job’s cover bends and heats. Advice.',
    description:
      'As saved with the decision while that is current, otherwise from the readings: new, now, after the cut and with a ring, each with a rigid and a conforming piston. bending is null where it can’t be worked out; why says what is missing. findings need a shop limit.',
    answers: { 200: jobStiffnessAnswer },
    answer: answerJobStiffness,
  },
  {
    ...SENT,
    path: '/jobs/{number}/readings',
    name: 'addReadings',
    summary: 'Add readings, all or none.',
    description:
      'Each has an id of your own, so sending it again is harmless: added names the new ones, already the ones that were there. A correction replaces an earlier reading; one without a value withdraws it. A reading that looks like a slip counts as doubtful and is told in doubts with the value probably meant, unless confirmed names it, as readings.3; doubtful only adds.',
    schema: addReadingsSchema,
    answers: { 200: readingsAnswer, 409: staleReadings },
    answer: takeReadings,
  },
  ...sectionCalls,
  ...slipCalls,
  ...shelfCalls,
  ...studyCalls,
  ...inspectionCalls,
  catalogueCall('family', 'cover type'),
  catalogueCall('stud', 'stud'),
  catalogueCall('stack', 'flexplate stack'),
  catalogueCall('nut', 'nut'),
  catalogueCall('washer', 'washer and shim'),
  catalogueCall('steel', 'steel'),
  catalogueCall('lining', 'clutch lining'),
  catalogueCall('lathe', 'lathe'),
];

function catalogueCall(kind: keyof typeof entriesAnswers, word: string): JobCall {
  return {
    ...ASKED,
    path: `/catalogue/${kind}`,
    name: `list${kind[0]!.toUpperCase()}${kind.slice(1)}`,
    summary: `Every ${word} of the catalog.`,
    description: 'By name, each with its revision, who changed it and when.',
    query: { retired: 'true: with those retired' },
    answers: { 200: entriesAnswers[kind] },
    answer: (needs, asked) => answerEntries(kind, needs, asked),
  };
}

async function answerEntries(
  kind: keyof typeof entriesAnswers,
  { db }: JobNeeds,
  { query }: JobAsked,
): Promise<JobAnswered> {
  return ok({ entries: await listEntries(db, kind, { retired: query.retired === 'true' }) });
}
