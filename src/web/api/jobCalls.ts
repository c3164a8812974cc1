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
import { type JobAnswered, type JobAsked, type JobCall, type JobNeeds, ok } from './call.ts';
import { receiveCover, takeReadings } from './jobChanges.ts';
import { answerHistory, answerJob, answerJobStiffness, answerJobs } from './jobReads.ts';
import { sectionCalls } from './sectionCalls.ts';

const ASKED = { methods: ['GET'], query: {}, schema: null } as const;
const SENT = { methods: ['POST'], query: {} } as const;

/** The calls about jobs and the catalogue. */
export const jobCalls: readonly JobCall[] = [
  {
    ...ASKED,
    path: '/jobs',
    name: 'findJobs',
    summary: 'Jobs, newest first.',
    description: 'A page at a time: send the next of one page as after for the page behind it.',
    query: {
      text: 'words found in the number, the family or the customer reference',
      family: 'the id of a cover family',
      stage: `one of ${STAGES.join(', ')}`,
      outcome: `one of ${DECISION_KINDS.join(', ')}`,
      from: 'received on this day or later, 2026-11-24',
      to: 'received on this day or earlier',
      after: 'the next of the page before',
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
      'With an id of the sender’s own, sending it again answers 200 with the job it made the first time; with another content it is refused (409). Without a number it gets the next free one. A day later than tomorrow is refused unless confirmed names it, as received.receivedOn.',
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
      'As it stands, or as it was at a revision. missing says what keeps it from being signed; criteria are the shop’s of today, whose revision a decision names.',
    query: { revision: 'the job as it was then' },
    answers: { 200: jobAnswer },
    answer: answerJob,
  },
  {
    ...ASKED,
    path: '/jobs/{number}/history',
    name: 'jobHistory',
    summary: 'What every revision of a job changed.',
    description: 'Oldest first, in plain words; the whole of a revision is the job asked for with revision.',
    answers: { 200: historyAnswer },
    answer: answerHistory,
  },
  {
    ...ASKED,
    path: '/jobs/{number}/stiffness',
    name: 'jobStiffness',
    summary: 'How a job’s cover bends and heats. Advice.',
    description:
      'As kept while the decision stands, else as the readings stand: new, now, after the cut and with a ring, each from a rigid to a conforming piston. bending is null where it could not be worked out, and why says what is missing. Findings are there where the shop has set a limit.',
    answers: { 200: jobStiffnessAnswer },
    answer: answerJobStiffness,
  },
  {
    ...SENT,
    path: '/jobs/{number}/readings',
    name: 'addReadings',
    summary: 'Add readings, all or none.',
    description:
      'Each has an id of the sender’s own, so that sending it again is harmless: added names the new ones, already those that were there. A correction replaces an earlier reading; one without a value withdraws it. A reading that looks like a slip is put down as doubtful, unless doubtful is sent.',
    schema: addReadingsSchema,
    answers: { 200: readingsAnswer, 409: staleReadings },
    answer: takeReadings,
  },
  ...sectionCalls,
  catalogueCall('family', 'cover family'),
  catalogueCall('stud', 'stud'),
  catalogueCall('stack', 'stack'),
];

function catalogueCall(kind: 'family' | 'stud' | 'stack', word: string): JobCall {
  return {
    ...ASKED,
    path: `/catalogue/${kind}`,
    name: `list${kind[0]!.toUpperCase()}${kind.slice(1)}`,
    summary: `Every ${word} of the catalogue.`,
    description: 'By name, each with its revision, who made it so and when.',
    query: { retired: 'true: with those out of use' },
    answers: { 200: entriesAnswers[kind] },
    answer: (needs, asked) => answerEntries(kind, needs, asked),
  };
}

async function answerEntries(
  kind: 'family' | 'stud' | 'stack',
  { db }: JobNeeds,
  { query }: JobAsked,
): Promise<JobAnswered> {
  return ok({ entries: await listEntries(db, kind, { retired: query.retired === 'true' }) });
}
