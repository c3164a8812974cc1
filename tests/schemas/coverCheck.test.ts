import { describe, expect, test } from 'vitest';
import { coverCheckSchema } from '../../shared/schemas/coverCheck.ts';
import { changed, faults, taken } from './changed.ts';

/** The request of the interface page, with three stations. */
const REQUEST = {
  cover: {
    studCount: 4,
    studCircleDiameterMm: 286,
    trackInnerDiameterMm: 214,
    trackOuterDiameterMm: 264,
    nominalWallMm: 5.0,
    densityKgPerM3: 7870,
  },
  stations: [
    { angleDeg: 0, radiusMm: 110, wallMm: [4.92, 4.94], faceMm: 0.06, markDepthMm: 0.2 },
    { angleDeg: 90, radiusMm: 110, wallMm: [4.86], faceMm: 0.01, markDepthMm: 0.12 },
    { angleDeg: 180, radiusMm: 128, wallMm: [4.8], faceMm: -0.05, markDepthMm: null },
  ],
  marks: [{ angleDeg: 10, radiusMm: 120, depthMm: 0.15 }],
  gauge: {
    standardUncertaintyMm: 0.005,
    resolutionMm: 0.001,
    repeatabilityMm: 0.003,
    faceStandardUncertaintyMm: 0.002,
    cutSettingStandardUncertaintyMm: 0.005,
  },
  criteria: {
    minimumWallMm: 4.3,
    minimumWallSource: 'shop',
    faceRunoutLimitMm: 0.13,
    cleanUpAllowanceMm: 0.05,
    confidence: 0.95,
    typicalCutMm: 0.25,
  },
  makerMinimumWallMm: null,
  chucking: 'pads-and-pilot-trued',
  plannedCutMm: null,
  crackTest: 'none-found',
  releaseClearanceMm: null,
};

const NEEDED = {
  cover: {
    studCount: 4,
    studCircleDiameterMm: 286,
    trackInnerDiameterMm: 214,
    trackOuterDiameterMm: 264,
    nominalWallMm: 5,
  },
  stations: [{ angleDeg: 0, radiusMm: 110, wallMm: [4.92] }],
};

const NOT_INSPECTED = ['welds', 'pads', 'stud threads', 'crank pilot', 'earlier repairs'];

test('a whole cover request comes through as sent', () => {
  expect(taken(coverCheckSchema, REQUEST)).toEqual({
    ...REQUEST,
    criteria: {
      ...REQUEST.criteria,
      minimumWallFormula: null,
      minimumWallWorking: null,
      whatStops: null,
    },
    makerMinimumWallSource: null,
    inspectionFailures: [],
    notInspected: NOT_INSPECTED,
    doubtfulReadings: [],
    gaugesUsed: [],
    measuredOn: null,
    gaugesAtHand: [],
    balance: null,
    knockOn: null,
    familyLimits: null,
  });
});

test('a field left out of a cover request is null, none or not done', () => {
  const whole = {
    cover: { ...NEEDED.cover, densityKgPerM3: null },
    stations: [{ angleDeg: 0, radiusMm: 110, wallMm: [4.92], faceMm: null, markDepthMm: null }],
    marks: [],
    gauge: null,
    criteria: null,
    makerMinimumWallMm: null,
    makerMinimumWallSource: null,
    chucking: null,
    plannedCutMm: null,
    crackTest: 'not-done',
    releaseClearanceMm: null,
    inspectionFailures: [],
    notInspected: NOT_INSPECTED,
    doubtfulReadings: [],
    gaugesUsed: [],
    measuredOn: null,
    gaugesAtHand: [],
    balance: null,
    knockOn: null,
    familyLimits: null,
  };
  expect(taken(coverCheckSchema, NEEDED)).toEqual(whole);
  const nulls = {
    marks: null,
    gauge: null,
    crackTest: null,
    inspectionFailures: null,
    doubtfulReadings: null,
  };
  expect(taken(coverCheckSchema, { ...NEEDED, ...nulls })).toEqual(whole);
  expect(taken(coverCheckSchema, { ...NEEDED, gauge: {}, criteria: {} })).toMatchObject({
    gauge: { standardUncertaintyMm: null, cutSettingStandardUncertaintyMm: null },
    criteria: { minimumWallMm: null, confidence: null },
  });
});

describe('each wrong field is named, with one sentence', () => {
  test.each<[string, unknown, string]>([
    [
      'cover',
      undefined,
      'The cover is missing; give an object with the fields studCount, studCircleDiameterMm, trackInnerDiameterMm, trackOuterDiameterMm, nominalWallMm, densityKgPerM3.',
    ],
    ['cover.studCount', 4.5, 'The number of studs is 4.5; it must be a whole number from 2 to 24.'],
    ['cover.studCount', 0, 'The number of studs is 0; it must be a whole number from 2 to 24.'],
    [
      'cover.studCount',
      '4',
      'The number of studs was sent as the text "4"; it must be a whole number from 2 to 24.',
    ],
    [
      'cover.studCircleDiameterMm',
      -286,
      'The bolt circle diameter is -286 mm; it must be more than 0 mm and at most 10000 mm.',
    ],
    [
      'cover.trackInnerDiameterMm',
      264,
      'The friction surface inner diameter is 264 mm; it must be less than the friction surface outer diameter, 264 mm.',
    ],
    ['cover.nominalWallMm', 0, 'The new wall is 0 mm; it must be more than 0 mm and at most 10000 mm.'],
    [
      'cover.densityKgPerM3',
      0,
      'The density is 0 kg/m³; it must be more than 0 kg/m³ and at most 30000 kg/m³.',
    ],
    [
      'cover.wallMm',
      5,
      '"wallMm" is no field here; take it out or check its spelling. Known here are studCount, studCircleDiameterMm, trackInnerDiameterMm, trackOuterDiameterMm, nominalWallMm, densityKgPerM3.',
    ],
    ['stations', undefined, 'The stations: the list is missing.'],
    ['stations', [], 'No station was measured; give at least one with its angle, radius and wall.'],
    ['stations', { a: 1 }, 'The stations: an object was sent; send a list.'],
    [
      'stations.1',
      5,
      'The entry at station 2 was sent as the number 5; send an object with the fields angleDeg, radiusMm, wallMm, faceMm, markDepthMm.',
    ],
    [
      'stations.1.angleDeg',
      721,
      'The angle at station 2 is 721 degrees; it must be at least -360 degrees and at most 720 degrees.',
    ],
    [
      'stations.1.angleDeg',
      Number.NaN,
      'The angle at station 2 is not a finite number; send a plain number of degrees.',
    ],
    [
      'stations.1.radiusMm',
      0,
      'The radius at station 2 is 0 mm; it must be at least 1 mm and at most 10000 mm.',
    ],
    ['stations.1.wallMm', [], 'The wall at station 2 is an empty list; give at least one.'],
    ['stations.1.wallMm', 4.9, 'The wall at station 2: the number 4.9 was sent; send a list.'],
    [
      'stations.1.wallMm.0',
      -4.86,
      'The wall at station 2, reading 1, is -4.86 mm; it must be more than 0 mm and at most 10000 mm.',
    ],
    [
      'stations.1.wallMm.0',
      0,
      'The wall at station 2, reading 1, is 0 mm; it must be more than 0 mm and at most 10000 mm.',
    ],
    [
      'stations.1.wallMm.0',
      '4.9',
      'The wall at station 2, reading 1, was sent as the text "4.9"; send a plain number of mm.',
    ],
    [
      'stations.1.wallMm.0',
      Number.NaN,
      'The wall at station 2, reading 1, is not a finite number; send a plain number of mm.',
    ],
    [
      'stations.1.wallMm.0',
      Number.POSITIVE_INFINITY,
      'The wall at station 2, reading 1, is not a finite number; send a plain number of mm.',
    ],
    ['stations.1.wallMm.0', null, 'The wall at station 2, reading 1, is missing; give a plain number of mm.'],
    [
      'stations.1.faceMm',
      null,
      'The indicator reading at station 2 is missing; 2 of 3 have one. Indicate every station, or none.',
    ],
    [
      'stations.1.faceMm',
      undefined,
      'The indicator reading at station 2 is missing; 2 of 3 have one. Indicate every station, or none.',
    ],
    [
      'stations.0.markDepthMm',
      -0.1,
      'The heat mark depth at station 1 is -0.1 mm; it must be at least 0 mm and at most 10000 mm.',
    ],
    [
      'stations.0.markDepthMm',
      4.93,
      'The heat mark at station 1 is 4.93 mm deep, but the wall there is only 4.93 mm. Measure both again.',
    ],
    [
      'stations.0.facemm',
      0.1,
      '"facemm" is no field here; take it out or check its spelling. Known here are angleDeg, radiusMm, wallMm, faceMm, markDepthMm.',
    ],
    [
      'marks.0.depthMm',
      4.93,
      'Heat mark 1 is 4.93 mm deep, but the thickest wall is only 4.93 mm. Measure both again.',
    ],
    ['marks.0.depthMm', undefined, 'The depth of mark 1 is missing; give a plain number of mm.'],
    [
      'gauge.resolutionMm',
      -0.001,
      'The gauge resolution is -0.001 mm; it must be at least 0 mm and at most 10000 mm.',
    ],
    ['criteria.confidence', 95, 'The confidence required is 95; it must be at least 0.5 and at most 0.9999.'],
    [
      'criteria.minimumWallMm',
      0,
      'The minimum wall is 0 mm; it must be more than 0 mm and at most 10000 mm.',
    ],
    [
      'criteria.minimumWallSource',
      'a\u0000b',
      'The source of the minimum wall has a control character in it; take it out.',
    ],
    [
      'chucking',
      'magnet',
      'The chucking was sent as the text "magnet"; it is "pads-and-pilot-trued" or "side-wall-jaws".',
    ],
    ['crackTest', true, 'The crack test was sent as true; it is "found", "none-found" or "not-done".'],
    ['plannedCutMm', '0.3', 'The planned cut was sent as the text "0.3"; send a plain number of mm.'],
    [
      'speed',
      3,
      '"speed" is no field here; take it out or check its spelling. Known here are cover, stations, marks, gauge, criteria, makerMinimumWallMm, makerMinimumWallSource, chucking, plannedCutMm, crackTest, releaseClearanceMm, inspectionFailures, notInspected, doubtfulReadings, gaugesUsed, measuredOn, gaugesAtHand, balance, knockOn, familyLimits.',
    ],
  ])('a cover request with %s = %j is refused there', (path, value, message) => {
    expect(faults(coverCheckSchema, changed(REQUEST, path, value))).toEqual([{ path, message }]);
  });

  test('a cover request that is no object is refused', () => {
    for (const value of [3, 'cover', [], true]) {
      const [fault, ...more] = faults(coverCheckSchema, value);
      expect(more).toEqual([]);
      expect(fault?.path).toBe('');
      expect(fault?.message).toMatch(
        /^The request was sent as .*; send an object with the fields cover, stations,/,
      );
    }
    expect(faults(coverCheckSchema, null)[0]?.message).toMatch(/^The request is missing; give an object/);
  });
});

describe('stations among themselves', () => {
  const station = (angleDeg: number, radiusMm: number) => ({ angleDeg, radiusMm, wallMm: [4.9] });

  test('a cover request with 400 stations is taken, with 500 refused', () => {
    const many = (n: number) => Array.from({ length: n }, (_, i) => station((i * 360) / n, 110));
    expect(taken(coverCheckSchema, { ...NEEDED, stations: many(400) }).stations).toHaveLength(400);
    expect(faults(coverCheckSchema, { ...NEEDED, stations: many(500) })).toEqual([
      { path: 'stations', message: 'The stations: 500 were sent; at most 400 can be taken at once.' },
    ]);
  });

  test.each([
    [0, 110, 0, 110, true],
    [0, 110, 360, 110, true],
    [-90, 110, 270, 110.5, true],
    [0, 110, 359.9999999, 110, true],
    [-360, 110, 720, 110, true],
    [-20, 110, 380, 110, false],
    [0, 110, 0, 110.6, false],
    [0, 110, 1, 110, false],
    [0, 110, 180, 110, false],
  ])('stations at %d° on radius %d and %d° on radius %d are one place: %s', (a1, r1, a2, r2, same) => {
    const found = faults(coverCheckSchema, { ...NEEDED, stations: [station(a1, r1), station(a2, r2)] });
    expect(found).toEqual(
      same
        ? [
            {
              path: 'stations.1',
              message:
                'Station 2 is at the same place as station 1; enter repeats as several readings at one station.',
            },
          ]
        : [],
    );
  });

  test('a mark may be as deep as any wall that is deeper still', () => {
    expect(faults(coverCheckSchema, changed(REQUEST, 'stations.0.markDepthMm', 4.92))).toEqual([]);
    expect(faults(coverCheckSchema, changed(REQUEST, 'marks.0.depthMm', 4.92))).toEqual([]);
  });
});

test('faults beyond a hundred are counted, not sent', () => {
  const stations = Array.from({ length: 400 }, () => ({ angleDeg: 0, radiusMm: 0, wallMm: [0] }));
  const found = faults(coverCheckSchema, { ...NEEDED, stations });
  expect(found).toHaveLength(101);
  expect(found.at(-1)?.message).toMatch(/^There are \d{3,} more faults/);
});

test('names of every object’s prototype are unknown fields like any other', () => {
  const sent: unknown = JSON.parse(
    JSON.stringify(NEEDED).replace(
      '{"studCount"',
      '{"__proto__":{"studCount":9},"constructor":1,"studCount"',
    ),
  );
  expect(faults(coverCheckSchema, sent).map((fault) => fault.path)).toEqual([
    'cover.__proto__',
    'cover.constructor',
  ]);
});
