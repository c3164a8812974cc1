import type * as z from 'zod';
import { type CoverCheckInput, type CoverShape, isLost, type Station } from '../words/cover.ts';
import { COVER_SHAPE } from '../words/fields/cover.ts';
import { BALANCE, COVER_LIMITS } from '../words/fields/criteria.ts';
import { allOptional } from '../words/fields/field.ts';
import { GAUGE_FIGURES } from '../words/fields/setup.ts';
import { WHAT_STOPS } from '../words/fields/whatStops.ts';
import { ITEM_WORD, LOOK_ITEMS } from '../words/job.ts';
import { samePlace } from '../words/places.ts';
import {
  angle,
  choice,
  count,
  day,
  extent,
  height,
  list,
  orElse,
  orNull,
  radius,
  size,
  strict,
  text,
  yesNo,
} from './fields.ts';
import { shapeOf } from './fromFields.ts';
import { fitLimitsSchema, knockOnSchema } from './knockOn.ts';
import { across, type Refuse } from './studParts.ts';

const MOST_STATIONS = 400;
const MOST_REPEATS = 50;

const coverShape = strict('The cover', shapeOf(COVER_SHAPE));

const station = strict('The entry', {
  angleDeg: angle('The angle'),
  radiusMm: radius('The radius'),
  wallMm: list('The wall', size('The wall'), {
    least: 1,
    most: MOST_REPEATS,
  }),
  faceMm: orNull(height('The indicator reading')),
  markDepthMm: orNull(extent('The heat mark depth')),
});

const mark = strict('The entry', {
  angleDeg: angle('The angle'),
  radiusMm: radius('The radius'),
  depthMm: extent('The depth'),
});

const gaugeSchema = strict('The gauge', shapeOf(GAUGE_FIGURES));

const whatStopsSchema = orNull(strict('What stops and what warns', shapeOf(WHAT_STOPS)));

const limits = shapeOf(allOptional(COVER_LIMITS), {
  minimumWallSource: orNull(text('The source of the minimum wall', { most: 200 })),
  whatStops: whatStopsSchema,
});

const criteria = strict('The shop limits', {
  ...limits,
  minimumWallWorking: orNull(text('How the minimum wall was worked out', { most: 1000 })),
});

/** The same as they are sent to be worked out: with a figure for the minimum wall, or a formula. */
export const limitsAsked = strict('The shop limits', limits);

const inspectionFailure = strict('The entry', {
  item: text('The name', { least: 1, most: 200 }),
  final: yesNo('Whether it is final'),
});

/** What the checks of a gauge on its master say. */
const masterChecks = strict('The checks on a master', {
  everyDays: orNull(count('The days between checks', 1, 1000)),
  lastOn: orNull(day('The day of the last check')),
  lastOffMm: orNull(height('How far off the last check was')),
  nextOn: orNull(day('The day of the next check')),
  nextOffMm: orNull(height('How far off the next check was')),
  limitMm: orNull(extent('How far off the gauge may be')),
  driftsOutOn: orNull(day('The day the drift passes the limit')),
});

/** What a cover is judged by, as it is sent and as a decision keeps it. null and left out are the same. */
export const coverCheckSchema = strict('The request', {
  cover: coverShape,
  stations: list('The stations', station, { most: MOST_STATIONS }),
  marks: orElse(list('The marks', mark, { most: MOST_STATIONS }), []),
  gauge: orNull(gaugeSchema),
  criteria: orNull(criteria),
  makerMinimumWallMm: orNull(size('The maker’s minimum wall')),
  makerMinimumWallSource: orNull(text('The source of the maker’s minimum wall', { most: 200 })),
  chucking: orNull(choice('The chucking', ['pads-and-pilot-trued', 'side-wall-jaws'])),
  plannedCutMm: orNull(extent('The planned cut')),
  crackTest: orElse(choice('The crack test', ['found', 'none-found', 'not-done']), 'not-done'),
  releaseClearanceMm: orNull(extent('The release clearance')),
  inspectionFailures: orElse(list('The inspection failures', inspectionFailure, { most: 50 }), []),
  notInspected: orElse(
    list('The items not inspected', text('The item', { least: 1, most: 120 }), { most: 50 }),
    LOOK_ITEMS.map((item) => ITEM_WORD[item].toLowerCase()),
  ),
  doubtfulReadings: orElse(
    list('The doubtful readings', text('The place of a doubtful reading', { least: 1, most: 200 }), {
      most: MOST_STATIONS,
    }),
    [],
  ),
  gaugesUsed: orElse(
    list(
      'The gauges used',
      strict('The entry', {
        name: text('The name', { least: 1, most: 120 }),
        dueOn: orNull(day('The day the calibration is due')),
        masterChecks: orNull(masterChecks),
      }),
      { most: 20 },
    ),
    [],
  ),
  measuredOn: orNull(day('The day of the readings')),
  gaugesAtHand: orElse(
    list(
      'The gauges at hand',
      strict('The entry', {
        name: text('The name', { least: 1, most: 120 }),
        standardUncertaintyMm: orNull(extent('The gauge’s standard uncertainty')),
        resolutionMm: orNull(extent('The gauge’s resolution')),
        repeatabilityMm: orNull(extent('The gauge’s repeatability')),
      }),
      { most: 100 },
    ),
    [],
  ),
  balance: orNull(strict('The balance', shapeOf(BALANCE))),
  knockOn: orNull(knockOnSchema),
  familyLimits: orNull(fitLimitsSchema),
}).superRefine(across(refuseTogether)) satisfies z.ZodType<CoverCheckInput>;

/** Refuses fields that are right by themselves but not together. */
export function refuseTogether(input: CoverCheckInput, refuse: Refuse): void {
  refuseTrack(input.cover, refuse);
  if (input.stations.length === 0) {
    refuseNoStation(input, refuse);
    return;
  }
  refuseSomeHeights(input.stations, refuse);
  refuseSamePlaces(input.stations, refuse);
  refuseDeepMarks(input, refuse);
  refuseDeepCut(input, refuse);
}

/** A cover that is lost is judged without a wall; nothing can be made of a mark or a cut then. */
function refuseNoStation(input: CoverCheckInput, refuse: Refuse): void {
  if (!isLost(input)) {
    refuse(['stations'], 'No station was measured; give at least one with its angle, radius and wall.');
  }
  if (isLost(input) && input.marks.length > 0) {
    refuse(
      ['marks'],
      'Heat marks need a wall beside them. Give at least one station, or leave the marks out.',
    );
  }
}

function refuseTrack({ trackInnerDiameterMm, trackOuterDiameterMm }: CoverShape, refuse: Refuse): void {
  if (trackInnerDiameterMm < trackOuterDiameterMm) return;
  refuse(
    ['cover', 'trackInnerDiameterMm'],
    `The friction surface inner diameter is ${trackInnerDiameterMm} mm; it must be less than the friction surface outer diameter, ${trackOuterDiameterMm} mm.`,
  );
}

function refuseSomeHeights(stations: readonly Station[], refuse: Refuse): void {
  const given = stations.filter((one) => one.faceMm !== null).length;
  if (given === 0) return;
  for (const [i, one] of stations.entries()) {
    if (one.faceMm !== null) continue;
    refuse(
      ['stations', i, 'faceMm'],
      `The indicator reading at station ${i + 1} is missing; ${given} of ${stations.length} have one. Indicate every station, or none.`,
    );
  }
}

/** Two stations at one clock position on one ring are repeats of one wall, and belong in one station. */
function refuseSamePlaces(stations: readonly Station[], refuse: Refuse): void {
  for (const [i, one] of stations.entries()) {
    const k = stations.slice(0, i).findIndex((other) => samePlace(one, other));
    if (k < 0) continue;
    refuse(
      ['stations', i],
      `Station ${i + 1} is at the same place as station ${k + 1}; enter repeats as several readings at one station.`,
    );
  }
}

/** A mark as deep as the wall is a hole, or a slipped decimal. Between stations the thickest wall judges here. */
function refuseDeepMarks({ stations, marks }: CoverCheckInput, refuse: Refuse): void {
  const walls = stations.map(({ wallMm }) => wallMm.reduce((sum, wall) => sum + wall, 0) / wallMm.length);
  for (const [i, { markDepthMm }] of stations.entries()) {
    const wall = walls[i] ?? 0;
    if (markDepthMm === null || markDepthMm < wall) continue;
    refuse(
      ['stations', i, 'markDepthMm'],
      `The heat mark at station ${i + 1} is ${markDepthMm} mm deep, but the wall there is only ${Number(wall.toFixed(4))} mm. Measure both again.`,
    );
  }
  const thickest = Math.max(...walls);
  for (const [i, { depthMm }] of marks.entries()) {
    if (depthMm < thickest) continue;
    refuse(
      ['marks', i, 'depthMm'],
      `Heat mark ${i + 1} is ${depthMm} mm deep, but the thickest wall is only ${Number(thickest.toFixed(4))} mm. Measure both again.`,
    );
  }
}

function refuseDeepCut({ stations, plannedCutMm }: CoverCheckInput, refuse: Refuse): void {
  const thickest = Math.max(...stations.flatMap(({ wallMm }) => wallMm));
  if (plannedCutMm === null || plannedCutMm < thickest) return;
  refuse(
    ['plannedCutMm'],
    `The planned cut is ${plannedCutMm} mm, and the thickest wall is ${thickest} mm. Check the depth and its unit.`,
  );
}
