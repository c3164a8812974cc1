import * as z from 'zod';
import type { CoverCheck, MeasuredCheck, StationAnswer } from '../../words/cover.ts';
import { type HeatMarkRow, MARK_PATTERNS } from '../../words/heatMarks.ts';
import { exactly, named } from './exactly.ts';
import {
  answers,
  type FiguresDoubted,
  figureDoubts,
  findings,
  number,
  numberOrNull,
  numbers,
  text,
  yes,
} from './finding.ts';

const station = exactly<StationAnswer>({
  angleDeg: number,
  radiusMm: number,
  wallMm: number.describe('Mean of the repeats.'),
  faceMm: numberOrNull,
  markDepthMm: number,
  cutMm: number,
  wallAfterMm: number,
  marginMm: numberOrNull,
  conformanceProbability: numberOrNull,
});

const mark = exactly<CoverCheck['marks'][number]>({
  angleDeg: number,
  radiusMm: number,
  depthMm: number,
  wallMm: number,
  faceMm: numberOrNull,
  cutMm: number,
});

const bound = exactly<{ readonly dialledMm: number; readonly leastWallMm: number }>({
  dialledMm: number,
  leastWallMm: number,
});

const PARTS = {
  face: exactly<CoverCheck['face']>({
    runoutMm: numberOrNull.describe('Tilt over the friction surface.'),
    indicatorReadingMm: numberOrNull,
    flatnessLeastSquaresMm: numberOrNull,
    flatnessMinimumZoneMm: numberOrNull,
    dishMm: numberOrNull,
  }),
  cut: exactly<MeasuredCheck['cut']>({
    dialledMm: number,
    toolPlaneMm: number,
    cleansUp: yes,
    cleanUpMm: number.describe('The least cut that cleans up, whatever was planned.'),
  }),
  dialledIn: exactly<NonNullable<CoverCheck['dialledIn']>>({
    wallGainedMm: number,
    leastWallMm: number,
    tiltMm: number,
    tiltDirectionDeg: numberOrNull,
    shimsMm: numbers.describe('Under pads 1, 2, 3 …, in the order of the studs.'),
    dialledMm: number,
  }),
  leastWall: exactly<MeasuredCheck['leastWall']>({
    beforeMm: number,
    afterMm: number,
    station: z.int().describe('From 0, as sent.'),
    standardUncertaintyMm: numberOrNull,
    expandedUncertaintyMm: numberOrNull,
    degreesOfFreedom: numberOrNull.describe('null when they are infinite.'),
    sureFromMm: numberOrNull.optional(),
  }),
};

const heatMarkRow = exactly<HeatMarkRow>({
  radiusMm: number,
  meanMm: number,
  oneSidedShare: numberOrNull,
  oneSidedDeg: numberOrNull.describe('Where the marks are deepest, clockwise from stud 1.'),
  studShare: numberOrNull.describe('Positive behind the studs, negative between them.'),
  pattern: z.enum(MARK_PATTERNS).describe('The strongest of what they say.'),
});

const NOT_MEASURED = 'null where no wall was measured: a crack, or a fault beyond repair, needs none.';

const COMMON = {
  verdict: z.enum([
    'face',
    'face-if-sound',
    'face-and-ring',
    'replace',
    'measure-again',
    'plan-again',
    'advice-only',
  ]),
  headline: text,
  because: text,
  face: PARTS.face,
  dialledIn: PARTS.dialledIn.nullable(),
  minimumWall: exactly<NonNullable<CoverCheck['minimumWall']>>({
    mm: number,
    source: text,
    from: z.enum(['maker', 'shop']),
  }).nullable(),
  conformanceProbability: numberOrNull,
  cutsLeft: z.int().nullable(),
  stations: z.array(station),
  marks: z.array(mark),
  bounds: exactly<NonNullable<CoverCheck['bounds']>>({ padSideFlat: bound, faceFlat: bound })
    .nullable()
    .describe('Only without indicator readings: the two ways the face could lie.'),
  unbalance: exactly<NonNullable<CoverCheck['unbalance']>>({
    gmm: number,
    heavySideDeg: numberOrNull,
  }).nullable(),
  releaseClearanceAfterMm: numberOrNull,
  heatMarks: z
    .array(heatMarkRow)
    .optional()
    .describe('What the heat marks say, a row each, from the center. Advice; left out in older decisions.'),
  findings,
  answers,
};

const WHOLE = {
  ...COMMON,
  cut: PARTS.cut.nullable().describe(NOT_MEASURED),
  leastWall: PARTS.leastWall.nullable().describe(NOT_MEASURED),
};

/** What a decision keeps. */
export const coverAnswer = named('CoverCheck', exactly<CoverCheck>(WHOLE));

/** What `POST /api/cover/check` answers. */
export const coverCheckedAnswer = named(
  'CoverChecked',
  exactly<CoverCheck & FiguresDoubted>({ ...WHOLE, doubts: figureDoubts }),
);

/** The same of walls that were measured. */
export const measuredAnswer = exactly<MeasuredCheck>({
  ...COMMON,
  cut: PARTS.cut,
  leastWall: PARTS.leastWall,
});
