import { randomUUID } from 'node:crypto';
import { writeLength } from '../../../shared/quantity/writeQuantity.ts';
import { slipAnswer, slipsAnswer } from '../../../shared/schemas/answers/slipAnswer.ts';
import { type SlipSent, saveSlipSchema } from '../../../shared/schemas/slip.ts';
import { dayIn } from '../../../shared/words/day.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import {
  type KeptSlip,
  partsOf,
  type SlipTold,
  slipName,
  slipNumber,
} from '../../../shared/words/stud/slip.ts';
import { NotInRecords } from '../../records/database/errors.ts';
import { findSlips, getSlip, jobsOfSlip, MOST_SLIPS, slipSentAs } from '../../records/slips/slips.ts';
import { countsOf } from '../../records/slips/stock.ts';
import { keepSlip } from '../../shop/studs/counterSlip.ts';
import { kitTold } from '../../shop/studs/kit.ts';
import { slipAsked } from '../../shop/studs/slipAsked.ts';
import { shopFrame } from '../job/papers.ts';
import { ApiError, readBody } from '../request/apiErrors.ts';
import { jointAsTyped } from '../stud/jointForm.ts';
import { printsWith } from '../stud/slipPrint.ts';
import { slipQuestion } from '../stud/slipQuestion.ts';
import { type JobAnswered, type JobAsked, type JobCall, type JobNeeds, ok } from './call.ts';

/** Counter slips: found, read, saved. Stock is counted where the parts are handed over, on the slip’s page. */
export const slipCalls: readonly JobCall[] = [
  {
    methods: ['GET'],
    path: '/slips',
    name: 'findSlips',
    summary: 'Counter slips, newest first.',
    description: 'One page at a time: send next of a page as after to get the page behind it.',
    query: {
      text: 'a number such as S-12, or words of the slip: customer, stack, stud, nut, initials',
      fits: 'yes, with-care or no',
      who: 'initials of whoever answered',
      from: 'on this day or later, such as 2026-11-24',
      to: 'on this day or earlier',
      counted: 'yes: its parts were counted out of stock; no: not',
      after: 'next, from the page before',
      limit: `1 to ${MOST_SLIPS}; 50 without it`,
    },
    schema: null,
    answers: { 200: slipsAnswer },
    answer: answerSlips,
  },
  {
    methods: ['GET'],
    path: '/slips/{number}',
    name: 'getSlip',
    summary: 'A counter slip, whole.',
    description: 'As it was answered, with what was counted out of stock and the jobs begun from it.',
    query: {},
    schema: null,
    answers: { 200: slipAnswer },
    answer: async ({ db }, { named }) => ok(await toldOf(db, await slipNamed(db, named))),
  },
  {
    methods: ['POST'],
    path: '/slips',
    name: 'saveSlip',
    summary: 'Answer a caller, and save the slip.',
    description:
      'For a stack of the catalog, with the stud named, else the best one. Without pullForwardMm the gap is the catalog’s. Nothing is saved while a figure looks like a slip: 422 asks, and confirmed names those that are right. With an id of your own, sending it again answers 200 with the slip it made the first time; another question under that id is refused (409).',
    query: {},
    schema: saveSlipSchema,
    answers: { 200: slipAnswer, 201: slipAnswer },
    answer: saveSlip,
  },
];

async function answerSlips({ db }: JobNeeds, { query }: JobAsked): Promise<JobAnswered> {
  const { after, limit, ...rest } = query;
  const before = after === undefined ? undefined : (numberIn(after) ?? refused('after', after));
  const most = limit === undefined ? 50 : Number(limit);
  if (!(Number.isInteger(most) && most >= 1 && most <= MOST_SLIPS)) refused('limit', limit ?? '');
  const { slips, more } = await findSlips(db, { ...slipQuestion(rest, most), before });
  const told = slips.map((slip) => ({ ...slip, number: slipName(slip.number) }));
  return ok({ slips: told, next: more ? (told.at(-1)?.number ?? null) : null });
}

function refused(path: string, sent: string): never {
  const message =
    path === 'limit'
      ? `The limit "${sent.slice(0, 40)}" must be a whole number from 1 to ${MOST_SLIPS}.`
      : `"${sent.slice(0, 40)}" is no place in the list. Send next of the page before.`;
  throw new Refusal('wrong-values', [{ path, message }]);
}

/** "S-12" or 12. */
function numberIn(typed: string): number | null {
  return /^\d{1,9}$/.test(typed) ? Number(typed) : slipNumber(typed);
}

async function slipNamed(db: JobNeeds['db'], named: string): Promise<KeptSlip> {
  const number = numberIn(named);
  const slip = number === null ? null : await getSlip(db, number);
  if (slip === null) throw new NotInRecords('number', `There is no counter slip "${named.slice(0, 20)}".`);
  return slip;
}

async function saveSlip(needs: JobNeeds, { body }: JobAsked): Promise<JobAnswered> {
  const sent = readBody(saveSlipSchema, body);
  const { db, now, timeZone } = needs;
  const made = sent.id === null ? false : await slipSentAs(db, sent.id);
  const { slip, studId } = await slipAsked(db, sent);
  const frame = await shopFrame(db, timeZone);
  const typed = typedOf(sent, studId, frame);
  try {
    const kept = await keepSlip(
      db,
      { who: sent.who, now },
      {
        sentId: sent.id ?? randomUUID(),
        day: dayIn(timeZone, now()),
        customerReference: sent.customerReference,
        asked: { stackId: sent.stackId, studId, typed, unit: frame.lengthUnit },
        answered: slip,
      },
      printsWith(frame),
    );
    return { status: made ? 200 : 201, body: await toldOf(db, kept) };
  } catch (error) {
    if (!(error instanceof Refusal) || error.code !== 'sent-otherwise') throw error;
    throw new ApiError(409, error.code, error.message, error.faults);
  }
}

/** The question as the form of the page would have it typed. */
function typedOf(
  { stackId, pullForwardMm, joint, torqueFrom }: SlipSent,
  studId: string,
  frame: Awaited<ReturnType<typeof shopFrame>>,
): Record<string, string> {
  return {
    stack: stackId,
    stud: studId,
    unit: frame.lengthUnit,
    ...(pullForwardMm !== null && { pull: writeLength(pullForwardMm, frame.lengthUnit, frame.decimalSign) }),
    ...(joint && jointAsTyped(joint, torqueFrom, frame)),
  };
}

async function toldOf(db: JobNeeds['db'], slip: KeptSlip): Promise<SlipTold> {
  const { number, at, day, who, customerReference, calcVersion, asked, answered } = slip;
  const { stack, stud, input, check, kit, gapMeasured, torqueFrom, notThis } = answered;
  return {
    number: slipName(number),
    at,
    day,
    who,
    customerReference,
    calcVersion,
    stackId: asked.stackId,
    studId: asked.studId,
    stack,
    stud,
    input,
    check,
    kit: kitTold(kit),
    gapMeasured,
    torqueFrom,
    notThis,
    parts: partsOf(slip),
    counts: await countsOf(db, number),
    jobs: await jobsOfSlip(db, number),
  };
}
