import * as z from 'zod';
import type {
  CounterSlip,
  SlipCount,
  SlipLineTold,
  SlipPart,
  SlipTold,
  StockChanged,
} from '../../words/stud/slip.ts';
import { entryBodies } from './catalogueAnswer.ts';
import { exactly, named } from './exactly.ts';
import { text, textOrNull, yes } from './finding.ts';
import { keptStudInput, kitAnswer, studAnswer } from './studAnswer.ts';

const count = z.int();
const at = text.describe('UTC, ISO 8601.');
const slipNumber = text.describe('As S-12.');
const part = { kind: z.enum(['stud', 'nut', 'washer']), id: text, name: text, shelf: text, count };

/** What `GET /api/slips/{number}` and `POST /api/slips` answer. */
export const slipAnswer = named(
  'Slip',
  exactly<SlipTold>({
    number: slipNumber,
    at,
    day: text,
    who: text,
    customerReference: text,
    calcVersion: text,
    stackId: text,
    studId: text,
    stack: entryBodies.stack,
    stud: entryBodies.stud,
    input: keptStudInput,
    check: studAnswer.describe('With the nut of the kit, where there is one.'),
    kit: kitAnswer,
    gapMeasured: yes.describe('false: the gap is the catalog’s.'),
    torqueFrom: z.enum(['maker', 'other']).nullable(),
    notThis: exactly<NonNullable<CounterSlip['notThis']>>({ name: text, because: text }).nullable(),
    parts: z
      .array(exactly<SlipPart>(part))
      .nullable()
      .describe('To be handed over; null where nobody said how many.'),
    counts: z.array(
      exactly<SlipCount>({
        what: z.enum(['out', 'back']),
        at,
        who: text,
        why: text,
        lines: z.array(exactly<StockChanged>({ ...part, from: count, to: count })),
      }),
    ),
    jobs: z.array(text).describe('Numbers of the jobs begun from it.'),
  }),
);

/** What `GET /api/slips` answers: newest first. */
export const slipsAnswer = named(
  'Slips',
  z.strictObject({
    slips: z.array(
      exactly<SlipLineTold>({
        number: slipNumber,
        at,
        day: text,
        who: text,
        customerReference: text,
        stackName: text,
        studName: text,
        fits: z.enum(['yes', 'with-care', 'no']),
        counted: yes.describe('Its parts were counted out of stock.'),
      }),
    ),
    next: textOrNull.describe('Send it as after for the next page; null at the end.'),
  }),
);
