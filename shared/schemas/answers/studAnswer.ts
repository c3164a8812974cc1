import * as z from 'zod';
import type { KitTold, StudMatchedWithKit } from '../../words/stud/kit.ts';
import type { Joint, Nut, Stud, StudCheck, StudCheckInput, StudCriteria } from '../../words/stud/stud.ts';
import { jointSchema, nutFields, stackSchema, studFields } from '../studParts.ts';
import { exactly, named } from './exactly.ts';
import {
  answers,
  type FiguresDoubted,
  figureDoubts,
  findings,
  number,
  numberOrNull,
  text,
  textOrNull,
} from './finding.ts';
import { asKept, keptFields } from './kept.ts';
import { threadSpec } from './threadAnswer.ts';

const THREAD = { thread: threadSpec };
const { thread: _studThread, ...studLengths } = studFields(z.string());
const { thread: _nutThread, ...nutLengths } = nutFields(z.string());

export const keptStud = exactly<Stud>(keptFields(studLengths, THREAD));
export const keptStack = asKept(stackSchema);
export const keptNutLengths = keptFields(nutLengths);
export const keptNut = exactly<Nut>({ ...keptNutLengths, thread: threadSpec.nullable() });
const keptJoint = exactly<Joint>(
  keptFields(jointSchema.shape, {
    ofStack: z.array(z.enum(['count', 'circle'])).optional(),
  }),
);

/** What was asked of a stud, as a job keeps it. */
export const keptStudInput = exactly<StudCheckInput>({
  stud: keptStud,
  stack: keptStack,
  nut: keptNut.nullable(),
  pullForwardMm: numberOrNull,
  criteria: exactly<StudCriteria>({
    protrusionThreads: number,
    startThreads: number,
    pilotLeadMm: number.optional(),
    leastPullForwardMm: numberOrNull.optional(),
    mostPullForwardMm: numberOrNull.optional(),
  }),
  joint: keptJoint.nullable(),
  coverStudCount: numberOrNull,
  coverStudCircleDiameterMm: numberOrNull,
});

type Part<Name extends keyof StudCheck> = NonNullable<StudCheck[Name]>;

const PARTS = {
  stackMm: exactly<Part<'stackMm'>>({ nominal: number, least: number, most: number }),
  engagement: exactly<Part<'engagement'>>({
    nominalMm: number,
    leastMm: number,
    threads: number,
    diameters: number,
    neededMm: numberOrNull,
  }),
  protrusionThreads: exactly<Part<'protrusionThreads'>>({ nominal: number, least: number, leastRss: number }),
  reach: exactly<Part<'reach'>>({
    seatedMm: number,
    pushedBackMm: numberOrNull,
    threadsShowing: numberOrNull,
    grade: z.enum(['starts-by-hand', 'pilot-shows', 'blind']).nullable(),
  }),
  pilot: exactly<Part<'pilot'>>({
    lengthMm: number,
    intoLastPieceMm: exactly<NonNullable<Part<'pilot'>['intoLastPieceMm']>>({
      nominal: number,
      least: number,
    })
      .nullable()
      .describe('null with one piece.'),
    outOfLineMm: exactly<NonNullable<Part<'pilot'>['outOfLineMm']>>({
      pilot: numberOrNull,
      entering: number,
      seated: number,
    }).nullable(),
  }),
  strength: exactly<Part<'strength'>>({
    tensileAreaMm2: number,
    studShearAreaMm2: numberOrNull,
    nutShearAreaMm2: numberOrNull,
    weakest: z.enum(['stud', 'stud-thread', 'nut-thread']).nullable(),
    breakingLoadN: numberOrNull,
  }),
  joint: exactly<Part<'joint'>>({
    preloadN: exactly<Part<'joint'>['preloadN']>({ nominal: number, least: numberOrNull, most: number }),
    embeddingLossN: numberOrNull,
    proofShare: numberOrNull,
    slipTorqueNm: exactly<Part<'joint'>['slipTorqueNm']>({ nominal: numberOrNull, least: numberOrNull }),
  }),
};

const fits = z.enum(['yes', 'with-care', 'no']);

const CHECK = {
  fits,
  holds: z.enum(['yes', 'no', 'not-checked']),
  headline: text,
  because: text,
  decidedBy: textOrNull.describe('The field that decides, by its name.'),
  byMm: numberOrNull.describe('null when it is no length.'),
  stackMm: PARTS.stackMm,
  engagement: PARTS.engagement.nullable(),
  protrusionThreads: PARTS.protrusionThreads.nullable(),
  reach: PARTS.reach,
  pilot: PARTS.pilot.optional(),
  strength: PARTS.strength,
  joint: PARTS.joint.nullable(),
  findings,
  answers,
};

/** What a choice of studs and a slip keep. */
export const studAnswer = named('StudCheck', exactly<StudCheck>(CHECK));

/** What `POST /api/stud/check` answers. */
export const studCheckAnswer = named(
  'StudChecked',
  exactly<StudCheck & FiguresDoubted>({ ...CHECK, doubts: figureDoubts }),
);

const entryNamed = { id: text, name: text };

export const kitAnswer = exactly<KitTold>({
  count: numberOrNull.describe('Of each; null where neither stack nor joint says.'),
  nut: z.strictObject(entryNamed).nullable(),
  nuts: z.array(z.strictObject({ ...entryNamed, fits, because: text })),
  washer: z.strictObject(entryNamed).nullable(),
  shims: z.array(z.strictObject({ ...entryNamed, thicknessMm: number })),
  missing: z.array(text),
});

/** What `POST /api/stud/match` answers: best first. */
export const studMatchAnswer = named(
  'StudMatches',
  exactly<{ readonly studs: readonly StudMatchedWithKit[]; readonly leftOut: number } & FiguresDoubted>({
    leftOut: number.describe('Studs of a large catalog that fit no better than those told.'),
    doubts: figureDoubts,
    studs: z.array(
      exactly<StudMatchedWithKit>({
        id: text,
        fits,
        decidedBy: textOrNull,
        byMm: numberOrNull,
        check: studAnswer,
        kit: kitAnswer.nullable().describe('null where the stud does not fit.'),
      }),
    ),
  }),
);
