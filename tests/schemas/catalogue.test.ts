import { describe, expect, test } from 'vitest';
import { demoCriteriaNow } from '../../data/demo/criteria.ts';
import { demoFamilies } from '../../data/demo/families.ts';
import { readThread } from '../../shared/quantity/readThread.ts';
import {
  catalogueStackSchema,
  catalogueStudSchema,
  familySchema,
  keptFamilySchema,
  shopCriteriaSchema,
} from '../../shared/schemas/catalogue.ts';
import { USUAL_WEIGHT } from '../../shared/words/whatStops.ts';
import { changed, faults, taken } from './changed.ts';

// All invented.
const FAMILY = {
  name: 'Reedmoor 286',
  make: 'stamped',
  sideWall: 'ribbed',
  studCount: 4,
  studCircleDiameterMm: 286,
  trackInnerDiameterMm: 214,
  trackOuterDiameterMm: 264,
  nominalWallMm: 5,
  bossDiameterMm: 90,
  rimDiameterMm: 300,
  padDiameterMm: 24,
  padThicknessMm: 10,
  sideWallMm: 4,
  pistonSealDiameterMm: 64,
  hubDiameterMm: 48,
  lockUpPressureMPa: 0.7,
  yieldMPa: 320,
  limits: null,
  ring: { innerDiameterMm: 236, outerDiameterMm: 296, thicknessMm: 6, joinedToPads: null },
  makerMinimumWallMm: 4.2,
  makerMinimumWallSource: 'Reedmoor sheet 12, 2024',
  shopMinimumWallMm: null,
  shopMinimumWallBy: null,
  shopMinimumWallOn: null,
  shopMinimumWallSource: null,
  ringAllowed: true,
  note: 'Two lines\r\nof note',
};
const STUD = {
  threadStartMm: 1,
  threadEndMm: 20,
  projectionMm: 23,
  lengthToleranceMm: 0.25,
  pilotDiameterMm: 8,
  tensileMPa: 827,
  proofMPa: 586,
  filletMm: null,
};
const STACK = {
  name: 'One piece, thin',
  stack: {
    style: 'one-piece',
    layers: [{ name: 'plate', thicknessMm: 3.2, toleranceMm: 0.1, holeDiameterMm: 10.3, chamferMm: null }],
    holeCount: 6,
    holeCircleDiameterMm: 286,
    tipRoomMm: 40,
  },
  nut: { heightMm: 8.3, toleranceMm: 0.2, countersinkMm: 0.1 },
  nutThreadTyped: '3/8-24',
  pullForwardMm: 4,
  note: '',
};

describe('a family', () => {
  test('a family comes through, its note with plain line breaks', () => {
    expect(taken(familySchema, FAMILY)).toEqual({
      ...FAMILY,
      steel: null,
      lining: null,
      note: 'Two lines\nof note',
    });
  });

  test.each<[string, unknown, string]>([
    ['name', ' ', 'The name is empty. Enter it.'],
    [
      'trackInnerDiameterMm',
      264,
      'The friction surface inner diameter is 264 mm; it must be less than the friction surface outer diameter, 264 mm.',
    ],
    [
      'bossDiameterMm',
      214.1,
      'The cover center diameter is 214.1 mm; it must be no more than the friction surface inner diameter, 214 mm.',
    ],
    [
      'trackOuterDiameterMm',
      300.5,
      'The friction surface outer diameter is 300.5 mm; it must be no more than the rim diameter, 300 mm.',
    ],
    [
      'studCircleDiameterMm',
      300,
      'The bolt circle diameter is 300 mm; it must be less than the rim diameter, 300 mm.',
    ],
    [
      'pistonSealDiameterMm',
      215,
      'The piston seal diameter is 215 mm; it must be no more than the friction surface inner diameter, 214 mm.',
    ],
    [
      'hubDiameterMm',
      300,
      'The impeller hub diameter is 300 mm; it must be less than the rim diameter, 300 mm.',
    ],
    [
      'ring.innerDiameterMm',
      296,
      'The ring inner diameter is 296 mm; it must be less than the ring outer diameter, 296 mm.',
    ],
    [
      'ring.outerDiameterMm',
      301,
      'The ring outer diameter is 301 mm; it must be no more than the rim diameter, 300 mm.',
    ],
    [
      'ring.innerDiameterMm',
      80,
      'The cover center diameter is 90 mm; it must be no more than the ring inner diameter, 80 mm.',
    ],
    [
      'lockUpPressureMPa',
      0,
      'The lock-up pressure is 0 MPa; it must be at least 0.05 MPa and at most 3 MPa. Give it with its unit, as in 0.7 MPa or 7 bar.',
    ],
    ['makerMinimumWallMm', 5.1, 'The maker’s minimum wall is 5.1 mm; a new cover, 5 mm, would not pass it.'],
    ['makerMinimumWallMm', null, 'The maker’s minimum wall has a source but no figure; give it in mm.'],
    [
      'makerMinimumWallSource',
      null,
      'The maker’s minimum wall of 4.2 mm needs its source; say the document it is in.',
    ],
    ['makerMinimumWallSource', '', 'The source of the maker’s minimum is empty. Enter it.'],
    ['ringAllowed', 'yes', 'Stiffening ring may be welded on must be true or false.'],
    ['note', 'a\u0007', 'The note has a control character in it; take it out.'],
    ['note', '\u202eabc', 'The note has a control character in it; take it out.'],
    ['note', '\ud800', 'The note has a control character in it; take it out.'],
  ])('a family with %s = %j is refused there', (path, value, message) => {
    expect(faults(familySchema, changed(FAMILY, path, value))).toEqual([{ path, message }]);
  });

  // In each the number a slip of the unit makes of an honest one: 4 mm as 0.157 in, 64 mm as 2.5 in, 7 bar, 100 psi.
  test.each<[string, number, RegExp]>([
    [
      'sideWallMm',
      0.157,
      /^The side wall thickness is 0.157 mm; with a new wall of 5 mm it must be at least 1 mm and at most 25 mm. Check both and their units.$/,
    ],
    ['sideWallMm', 101.6, /at least 1 mm and at most 25 mm/],
    [
      'pistonSealDiameterMm',
      2.52,
      /with a friction surface inner diameter of 214 mm it must be at least 10.7 mm/,
    ],
    ['hubDiameterMm', 1.89, /with a friction surface outer diameter of 264 mm it must be at least 13.2 mm/],
    ['bossDiameterMm', 3.54, /The cover center diameter is 3.54 mm; .* at least 10.7 mm/],
    ['rimDiameterMm', 7620, /The rim diameter is 7620 mm; .* at most 792 mm/],
    [
      'padDiameterMm',
      0.945,
      /The pad diameter is 0.945 mm; with a bolt circle diameter of 286 mm .* 5.72 mm/,
    ],
    ['padDiameterMm', 609.6, /at most 143 mm/],
    ['padThicknessMm', 0.394, /The pad thickness is 0.394 mm; .* at least 0.75 mm/],
    ['padThicknessMm', 254, /at most 40 mm/],
    ['ring.innerDiameterMm', 9.29, /The cover center diameter is 90 mm/],
    ['ring.thicknessMm', 0.236, /The ring thickness is 0.236 mm; .* at least 0.75 mm and at most 40 mm/],
    ['lockUpPressureMPa', 7, /The lock-up pressure is 7 MPa; .* at most 3 MPa. Give it with its unit/],
    ['lockUpPressureMPa', 100, /The lock-up pressure is 100 MPa/],
    [
      'yieldMPa',
      46,
      /The yield strength is 46 MPa; it must be at least 60 MPa and at most 2500 MPa. Give it in MPa/,
    ],
  ])('a family with %s = %j is refused as unbelievable', (path, value, message) => {
    const found = faults(familySchema, changed(FAMILY, path, value));
    expect(found.map((fault) => fault.path)).toEqual([path]);
    expect(found[0]?.message).toMatch(message);
  });

  test('a cover in the wrong unit is refused at its wall or its track', () => {
    expect(
      faults(familySchema, { ...FAMILY, nominalWallMm: 0.197, makerMinimumWallMm: 0.165 })[0]?.message,
    ).toBe(
      'The new wall is 0.197 mm; with a bolt circle diameter of 286 mm it must be at least 1.43 mm and at most 28.6 mm. Check both and their units.',
    );
    const bare = { ...FAMILY, bossDiameterMm: null, pistonSealDiameterMm: null };
    const track = { ...bare, trackInnerDiameterMm: 8.43, trackOuterDiameterMm: 10.4 };
    expect(faults(familySchema, track)[0]?.message).toContain(
      'The friction surface outer diameter is 10.4 mm',
    );
  });

  test('an empty figure of a family is not asked about, and a family kept by a job stays as it was', () => {
    const silent = Object.fromEntries(
      ['boss', 'rim', 'pad', 'pistonSeal', 'hub'].map((name) => [`${name}DiameterMm`, null]),
    );
    const empty = { padThicknessMm: null, sideWallMm: null, lockUpPressureMPa: null, yieldMPa: null };
    expect(faults(familySchema, { ...FAMILY, ...silent, ...empty, ring: null })).toEqual([]);
    const before = { ...FAMILY, sideWallMm: 0.157, pistonSealDiameterMm: 2.5, lockUpPressureMPa: 100 };
    expect(faults(familySchema, { ...before, lockUpPressureMPa: null })).toHaveLength(2);
    expect(faults(keptFamilySchema, before)).toEqual([]);
  });

  test('every demo family and the demo criteria are believable', () => {
    for (const { family } of demoFamilies) expect(faults(familySchema, family)).toEqual([]);
    expect(faults(shopCriteriaSchema, demoCriteriaNow)).toEqual([]);
  });

  test('a shop’s figure needs who set it', () => {
    expect(faults(familySchema, { ...FAMILY, shopMinimumWallMm: 4.3 })).toEqual([
      {
        path: 'shopMinimumWallBy',
        message: 'The shop’s minimum wall of 4.3 mm needs a person: enter who set it.',
      },
      {
        path: 'shopMinimumWallOn',
        message: 'The shop’s minimum wall of 4.3 mm needs a day: enter when it was set.',
      },
    ]);
    const set = { ...FAMILY, shopMinimumWallMm: 4.3 };
    const by = { shopMinimumWallBy: 'TO', shopMinimumWallOn: '2026-11-24' };
    expect(faults(familySchema, { ...set, ...by })).toEqual([]);
    expect(faults(familySchema, { ...set, shopMinimumWallSource: 'TO, in spring' })).toEqual([]);
    expect(faults(familySchema, { ...set, ...by, shopMinimumWallOn: null })).toHaveLength(1);
  });
});

describe('a stud of the catalogue', () => {
  const entry = { name: 'Short', stud: STUD, threadTyped: '3/8-24', note: '' };

  test('a stud’s thread is read from what was typed', () => {
    expect(taken(catalogueStudSchema, entry)).toMatchObject({
      threadTyped: '3/8-24',
      stud: { projectionMm: 23, thread: { designation: '3/8-24 UNF-2A' } },
    });
    const read = readThread('3/8-24', 'external');
    const already = { ...entry, stud: { ...STUD, thread: read.ok && read.thread } };
    expect(taken(catalogueStudSchema, already)).toEqual(taken(catalogueStudSchema, entry));
  });

  test('a stud is refused when callout and thread disagree, the thread is none, or its lengths are out of order', () => {
    const other = readThread('7/16-20', 'external');
    expect(
      faults(catalogueStudSchema, { ...entry, stud: { ...STUD, thread: other.ok && other.thread } }),
    ).toEqual([
      {
        path: 'stud.thread',
        message:
          'The thread is 7/16-20 UNF-2A, but "3/8-24" was typed, which is 3/8-24 UNF-2A; type it again.',
      },
    ]);
    expect(faults(catalogueStudSchema, { ...entry, threadTyped: '3/8' })[0]?.path).toBe('stud.thread');
    expect(faults(catalogueStudSchema, { ...entry, stud: { ...STUD, thread: '3/8-24' } })[0]?.path).toBe(
      'stud.thread',
    );
    expect(faults(catalogueStudSchema, { ...entry, stud: { ...STUD, threadEndMm: 24 } })).toEqual([
      {
        path: 'stud.projectionMm',
        message: 'The length from pad is 23 mm; it must be at least the last full thread’s, 24 mm.',
      },
    ]);
  });
});

describe('a stack of the catalogue', () => {
  test('a stack’s nut thread is read from what was typed, as a nut’s', () => {
    expect(taken(catalogueStackSchema, STACK).nut).toEqual({
      heightMm: 8.3,
      toleranceMm: 0.2,
      countersinkMm: 0.1,
      thread: expect.objectContaining({ designation: '3/8-24 UNF-2B' }),
      proofMPa: null,
      tensileMPa: null,
      bearingOuterDiameterMm: null,
      washerMm: 0,
      prevailing: false,
    });
    expect(taken(catalogueStackSchema, { ...STACK, nutThreadTyped: null }).nut?.thread).toBeNull();
    expect(taken(catalogueStackSchema, { ...STACK, nut: null, nutThreadTyped: null }).nut).toBeNull();
  });

  test('a stack is refused with a thread but no nut, or another thread than typed', () => {
    expect(faults(catalogueStackSchema, { ...STACK, nut: null })).toEqual([
      { path: 'nut', message: 'The nut’s thread is 3/8-24, but its height is missing; give it in mm.' },
    ]);
    const read = readThread('3/8-24', 'internal');
    const thread = read.ok && read.thread;
    expect(
      faults(catalogueStackSchema, { ...STACK, nut: { ...STACK.nut, thread }, nutThreadTyped: null }),
    ).toEqual([
      {
        path: 'nut.thread',
        message: 'The nut’s thread is 3/8-24 UNF-2B, but nothing was typed; type it again.',
      },
    ]);
    expect(faults(catalogueStackSchema, { ...STACK, nutThreadTyped: '3/8-24 2A' })[0]?.path).toBe(
      'nut.thread',
    );
  });
});

test('the shop’s criteria come through as sent', () => {
  const criteria = {
    shopName: 'Fell & Daughter',
    minimumWallMm: 4.3,
    cleanUpAllowanceMm: 0.05,
    faceRunoutLimitMm: null,
    confidence: 0.95,
    typicalCutMm: 0.25,
    protrusionThreads: 1,
    startThreads: 2,
    pilotLeadMm: 1,
    leastPullForwardMm: null,
    mostPullForwardMm: null,
    lengthUnit: 'mm',
    decimalSign: 'point',
    lathe: null,
    studSetting: { leanAt25Mm: 0.15, offMm: null, proofNm: 40 },
    shimsMm: [0.8, 1.5],
    balance: { gradeMmPerS: 6.3, massKg: 3, speedRpm: 3000 },
    bending: {
      liningModulusMPaPerMm: 60,
      youngMPa: 206_000,
      poisson: 0.29,
      lockUpPressureMPa: 0.7,
      yieldMPa: null,
      speedRpm: null,
      ringRunoutMm: 0.3,
      peakOverNew: 1.06,
      rippleOverNew: null,
    },
    heat: null,
  };
  const leftOut = {
    timeZone: null,
    whatStops: USUAL_WEIGHT,
    minimumWallFormula: null,
    inspectionStops: false,
    backupAwayDays: null,
  };
  expect(taken(shopCriteriaSchema, criteria)).toEqual({ ...criteria, ...leftOut });
  const { bending: _bending, heat: _heat, studSetting: _limits, shimsMm: _shims, ...before } = criteria;
  expect(taken(shopCriteriaSchema, before)).toEqual({
    ...before,
    ...leftOut,
    bending: null,
    heat: null,
    studSetting: null,
    shimsMm: [],
  });
  expect(
    faults(shopCriteriaSchema, { ...criteria, minimumWallFormula: '85 % of new wall' }).map(
      ({ path }) => path,
    ),
  ).toEqual(['minimumWallFormula']);
  expect(faults(shopCriteriaSchema, { ...criteria, shimsMm: [0.8, 0] })[0]?.path).toBe('shimsMm.1');
  expect(faults(shopCriteriaSchema, changed(criteria, 'bending.peakOverNew', 0.9))[0]?.message).toBe(
    'The maximum peak lining pressure is 0.9 times new; it must be at least 1 times new and at most 100 times new.',
  );
  for (const [field, value, sentence] of [
    [
      'youngMPa',
      206,
      'Young’s modulus is 206 MPa; it must be at least 50000 MPa and at most 250000 MPa. Give it in MPa, a thousand times the figure in GPa; steel has about 206000.',
    ],
    ['youngMPa', 30_000_000, 'Young’s modulus is 30000000 MPa'],
    ['poisson', 0.029, 'Poisson’s ratio is 0.029; it must be at least 0.15 and at most 0.4. Steel has'],
    ['liningModulusMPaPerMm', 1524, 'The lining modulus is 1524 MPa/mm; it must be at least 5 MPa/mm'],
    ['liningModulusMPaPerMm', 2.36, 'The lining modulus is 2.36 MPa/mm'],
    ['lockUpPressureMPa', 100, 'The lock-up pressure is 100 MPa; it must be at least 0.05 MPa and at most 3'],
    ['yieldMPa', 0.32, 'The yield strength is 0.32 MPa; it must be at least 60 MPa and at most 2500 MPa.'],
  ] as const) {
    const found = faults(shopCriteriaSchema, changed(criteria, `bending.${field}`, value));
    expect(found.map(({ path }) => path)).toEqual([`bending.${field}`]);
    expect(found[0]?.message).toContain(sentence);
  }
  expect(faults(shopCriteriaSchema, { ...criteria, confidence: 95 })[0]?.path).toBe('confidence');
  expect(faults(shopCriteriaSchema, { ...criteria, confidence: undefined })[0]?.message).toBe(
    'The confidence required is missing; give a plain number.',
  );
  expect(faults(shopCriteriaSchema, { ...criteria, decimalSign: ',' })[0]?.message).toBe(
    'The decimal sign was sent as the text ","; it is "point" or "comma".',
  );
});
