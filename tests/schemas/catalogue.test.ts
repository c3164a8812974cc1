import { describe, expect, test } from 'vitest';
import { readThread } from '../../shared/quantity/readThread.ts';
import {
  catalogueStackSchema,
  catalogueStudSchema,
  familySchema,
  shopCriteriaSchema,
} from '../../shared/schemas/catalogue.ts';
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
  ring: { innerDiameterMm: 236, outerDiameterMm: 296, thicknessMm: 6 },
  makerMinimumWallMm: 4.2,
  makerMinimumWallSource: 'Reedmoor sheet 12, 2024',
  shopMinimumWallMm: null,
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
  test('comes through, its note with plain line breaks', () => {
    expect(taken(familySchema, FAMILY)).toEqual({ ...FAMILY, note: 'Two lines\nof note' });
  });

  test.each<[string, unknown, string]>([
    ['name', ' ', 'The name is empty; write it out.'],
    [
      'trackInnerDiameterMm',
      264,
      'The track’s inner diameter is 264 mm; it must be less than its outer diameter, 264 mm.',
    ],
    [
      'bossDiameterMm',
      214.1,
      'The boss’s diameter is 214.1 mm; it must be no more than the track’s inner diameter, 214 mm.',
    ],
    [
      'trackOuterDiameterMm',
      300.5,
      'The track’s outer diameter is 300.5 mm; it must be no more than the rim’s, 300 mm.',
    ],
    [
      'studCircleDiameterMm',
      300,
      'The stud circle is 300 mm; it must be less than the rim’s diameter, 300 mm.',
    ],
    [
      'pistonSealDiameterMm',
      215,
      'The piston seal is 215 mm; it must be no more than the track’s inner diameter, 214 mm.',
    ],
    ['hubDiameterMm', 300, 'The hub’s diameter is 300 mm; it must be less than the rim’s, 300 mm.'],
    [
      'ring.innerDiameterMm',
      296,
      'The ring’s inner diameter is 296 mm; it must be less than its outer diameter, 296 mm.',
    ],
    [
      'ring.outerDiameterMm',
      301,
      'The ring’s outer diameter is 301 mm; it must be no more than the rim’s, 300 mm.',
    ],
    [
      'ring.innerDiameterMm',
      80,
      'The boss’s diameter is 90 mm; it must be no more than the ring’s inner diameter, 80 mm.',
    ],
    [
      'lockUpPressureMPa',
      0,
      'The lock-up pressure is 0 MPa; it must be more than 0 MPa and at most 100 MPa.',
    ],
    ['makerMinimumWallMm', 5.1, 'The maker’s minimum wall is 5.1 mm; a new cover, 5 mm, would not pass it.'],
    ['makerMinimumWallMm', null, 'The maker’s minimum wall has a source but no figure; give it in mm.'],
    [
      'makerMinimumWallSource',
      null,
      'The maker’s minimum wall of 4.2 mm needs its source; say the document it stands in.',
    ],
    ['makerMinimumWallSource', '', 'The source of the maker’s minimum wall is empty; write it out.'],
    ['ringAllowed', 'yes', 'Whether a ring may be welded on must be true or false.'],
    ['note', 'a\u0007', 'The note has a control character in it; take it out.'],
    ['note', '\u202eabc', 'The note has a control character in it; take it out.'],
    ['note', '\ud800', 'The note has a control character in it; take it out.'],
  ])('%s = %j', (path, value, message) => {
    expect(faults(familySchema, changed(FAMILY, path, value))).toEqual([{ path, message }]);
  });

  test('a shop’s figure says who set it', () => {
    expect(faults(familySchema, { ...FAMILY, shopMinimumWallMm: 4.3 })).toEqual([
      {
        path: 'shopMinimumWallSource',
        message: 'The shop’s minimum wall of 4.3 mm needs its source; say who set it and when.',
      },
    ]);
  });
});

describe('a stud of the catalogue', () => {
  const entry = { name: 'Short', stud: STUD, threadTyped: '3/8-24', note: '' };

  test('has its thread read from what was typed', () => {
    expect(taken(catalogueStudSchema, entry)).toMatchObject({
      threadTyped: '3/8-24',
      stud: { projectionMm: 23, thread: { designation: '3/8-24 UNF-2A' } },
    });
    const read = readThread('3/8-24', 'external');
    const already = { ...entry, stud: { ...STUD, thread: read.ok && read.thread } };
    expect(taken(catalogueStudSchema, already)).toEqual(taken(catalogueStudSchema, entry));
  });

  test('is refused when the two disagree, or the thread is none, or the lengths are out of order', () => {
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
        message: 'The stud projects 23 mm; its tip cannot lie before the last full thread, at 24 mm.',
      },
    ]);
  });
});

describe('a stack of the catalogue', () => {
  test('has its nut’s thread read from what was typed, as a nut’s', () => {
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

  test('is refused with a thread but no nut, or another thread than typed', () => {
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

test('the shop’s criteria', () => {
  const criteria = {
    shopName: 'Fell & Daughter',
    minimumWallMm: 4.3,
    cleanUpAllowanceMm: 0.05,
    faceRunoutLimitMm: null,
    confidence: 0.95,
    typicalCutMm: 0.25,
    protrusionThreads: 1,
    startThreads: 2,
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
  expect(taken(shopCriteriaSchema, criteria)).toEqual(criteria);
  const { bending: _bending, heat: _heat, studSetting: _limits, shimsMm: _shims, ...before } = criteria;
  expect(taken(shopCriteriaSchema, before)).toEqual({
    ...before,
    bending: null,
    heat: null,
    studSetting: null,
    shimsMm: [],
  });
  expect(faults(shopCriteriaSchema, { ...criteria, shimsMm: [0.8, 0] })[0]?.path).toBe('shimsMm.1');
  expect(faults(shopCriteriaSchema, changed(criteria, 'bending.peakOverNew', 0.9))[0]?.message).toBe(
    'The limit on the pressure peak is 0.9 times new; it must be at least 1 times new and at most 100 times new.',
  );
  expect(faults(shopCriteriaSchema, { ...criteria, confidence: 95 })[0]?.path).toBe('confidence');
  expect(faults(shopCriteriaSchema, { ...criteria, confidence: undefined })[0]?.message).toBe(
    'The confidence is missing; give a plain number.',
  );
  expect(faults(shopCriteriaSchema, { ...criteria, decimalSign: ',' })[0]?.message).toBe(
    'The decimal sign was sent as the text ","; it is "point" or "comma".',
  );
});
