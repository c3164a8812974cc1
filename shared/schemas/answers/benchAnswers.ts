import * as z from 'zod';
import type { GaugeStudy, StudyAnswer, VarianceRow } from '../../words/gauges/gaugeStudies.ts';
import type { InspectionList } from '../../words/inspection.ts';
import type { ShelfChange, ShelfCover } from '../../words/shelf.ts';
import { errorBeside } from './errorAnswer.ts';
import { exactly, named } from './exactly.ts';
import { answer, number, numberOrNull, text, textOrNull, yes } from './finding.ts';
import { inspectedItem, inspectionItem } from './jobAnswers.ts';

const count = z.int();
const at = text.describe('UTC, ISO 8601.');

const shelfCover = named(
  'ShelfCover',
  exactly<ShelfCover>({
    jobNumber: text,
    familyId: text,
    familyName: text,
    lies: text.describe('Where it lies, in words.'),
    forJob: textOrNull.describe('Number of the job it is kept for.'),
    since: at,
    wallsAre: z.enum(['measured', 'cut', 'to-cut']),
    wallLeftMm: numberOrNull,
    wantedMm: numberOrNull.describe(
      'What it is held against: the minimum wall, or more where that is asked.',
    ),
    sure: numberOrNull.describe('That no station is below that.'),
    cutsLeft: count.nullable(),
    studName: textOrNull,
    signed: yes,
    will: z.enum(['yes', 'with-care', 'no']),
    reasons: z.array(text),
  }),
);

/** What `GET /api/shelf` answers: the best first. */
export const shelfAnswer = named(
  'Shelf',
  z.strictObject({
    covers: z.array(shelfCover),
    next: textOrNull.describe('Send it as after to get the next page; null on the last.'),
  }),
);

export type ShelfChangeTold = Omit<ShelfChange, 'jobId' | 'jobNumber' | 'facts'>;
const shelfChange = exactly<ShelfChangeTold>({
  place: count.describe('Counts up from 1; send the newest as from.'),
  what: z.enum(['put', 'moved', 'reserved', 'freed', 'off']),
  at,
  who: text,
  why: text,
  lies: text,
  forJob: textOrNull,
});

/** What `GET` and `PUT /api/shelf/{number}` answer. */
export const shelfCoverAnswer = named(
  'ShelfOfJob',
  z.strictObject({
    jobNumber: text,
    place: count.describe('Of the newest change; 0 where it never lay there.'),
    onShelf: yes,
    cover: shelfCover
      .nullable()
      .describe('As it is held against today’s shop limits; null where it is not on the shelf.'),
    changes: z.array(shelfChange).describe('Oldest first.'),
  }),
);

/** Somebody else changed it first. */
export const staleShelf = named('StaleShelf', errorBeside({ theirs: shelfChange.nullable() }));

const plan = z.strictObject({ covers: count, stations: count, people: z.array(text), rounds: count });
const stopped = z.strictObject({ who: text, at, why: text }).nullable();
const study = {
  number: count,
  gaugeId: text,
  at,
  day: text,
  who: text,
  plan,
  asked: count.describe('How many readings are asked for.'),
  taken: count,
  stopped,
};

/** What `GET /api/studies` answers: newest first. */
export const studiesAnswer = named('Studies', z.strictObject({ studies: z.array(z.strictObject(study)) }));

const variance = exactly<VarianceRow>({
  squares: number,
  degreesOfFreedom: number,
  fRatio: numberOrNull,
  chance: numberOrNull,
});
const gaugeStudy = named(
  'GaugeStudy',
  exactly<GaugeStudy>({
    people: variance,
    covers: variance,
    interaction: variance,
    within: variance,
    totalSquares: number,
    pooled: yes,
    repeatability: answer,
    betweenPeople: answer,
    peopleByCover: answer,
    reproducibility: answer,
    both: answer,
    betweenCovers: answer,
    total: answer,
    share: answer,
    categories: count.nullable(),
    repeatabilityDegreesOfFreedom: number,
  }),
);

/** What `GET /api/studies/{number}` and a reading sent to it answer. Nobody sees readings while it goes on. */
export const studyOneAnswer = named(
  'Study',
  z.strictObject({
    ...study,
    next: z
      .strictObject({ place: count, cover: count, angleDeg: number, person: text, round: count })
      .nullable()
      .describe('What is read next; null where every reading is taken, or the study was stopped.'),
    readings: z
      .array(
        z.strictObject({
          id: text,
          place: count,
          cover: count,
          angleDeg: number,
          person: text,
          round: count,
          valueMm: number,
          typed: text,
          confirmed: yes,
          at,
          who: text,
          withdrawn: z.strictObject({ who: text, at, why: text }).nullable(),
        }),
      )
      .nullable()
      .describe('null while the study goes on: nobody sees them until then.'),
    answer: exactly<StudyAnswer>({
      rounds: count,
      leftOver: count,
      variance: gaugeStudy.nullable(),
      repeatsOnly: z.strictObject({ repeatability: answer, degreesOfFreedom: number }).nullable(),
      takenAgain: count,
    }).nullable(),
  }),
);

/** What `GET /api/inspection` answers. */
export const listsAnswer = named(
  'InspectionLists',
  z.strictObject({
    lists: z.array(
      z.strictObject({
        id: text,
        revision: count,
        retired: yes,
        list: exactly<InspectionList>({
          name: text,
          familyIds: z.array(text).describe('None: for every cover type.'),
          items: z.array(inspectionItem),
          source: text,
          note: text,
        }),
      }),
    ),
  }),
);

/** What `GET /api/jobs/{number}/inspected` answers. */
export const inspectedAnswer = named(
  'JobInspected',
  z.strictObject({
    number: text,
    revision: count,
    done: count,
    of: count,
    items: z.array(
      z.strictObject({
        listId: text,
        listRevision: count,
        item: inspectionItem,
        answer: inspectedItem.nullable().describe('null where nobody answered it as it now is.'),
        ok: yes.nullable(),
      }),
    ),
  }),
);
