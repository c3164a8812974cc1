import { describe, expect, test } from 'vitest';
import {
  cutsSchema,
  lookedSchema,
  planSchema,
  readingSchema,
  receivedSchema,
  setupSchema,
} from '../../shared/schemas/job.ts';
import { changed, faults, taken } from './changed.ts';

const READING = {
  id: '7b0c6a52-95f4-4f57-8a39-1f2f4e6b0c11',
  pass: 'before',
  kind: 'wall',
  angleDeg: 45,
  radiusMm: 110,
  valueMm: 4.9,
  typed: '4.90',
  gauge: 'M-2',
  doubtful: false,
  replaces: null,
};

describe('a reading', () => {
  test('a reading comes through as sent', () => {
    expect(taken(readingSchema, READING)).toEqual(READING);
    expect(taken(readingSchema, { ...READING, id: 'A1-'.repeat(6), doubtful: undefined })).toMatchObject({
      doubtful: false,
    });
    expect(taken(readingSchema, { ...READING, valueMm: null, replaces: 'x'.repeat(16) }).valueMm).toBeNull();
    expect(taken(readingSchema, { ...READING, kind: 'face', valueMm: -0.05, typed: '-0.05' }).valueMm).toBe(
      -0.05,
    );
    expect(taken(readingSchema, { ...READING, kind: 'mark', valueMm: 0, typed: '0' }).valueMm).toBe(0);
  });

  test.each<[string, unknown, string]>([
    ['id', 'short', 'The reading’s id must be 16 to 64 letters, digits or hyphens, as a UUID is.'],
    [
      'id',
      `${'x'.repeat(15)}'`,
      'The reading’s id must be 16 to 64 letters, digits or hyphens, as a UUID is.',
    ],
    ['id', 'x'.repeat(65), 'The reading’s id has 65 characters; at most 64 are kept.'],
    ['pass', 'during', 'The pass was sent as the text "during"; it is "before" or "after".'],
    ['kind', 'pilot', 'The kind of reading was sent as the text "pilot"; it is "wall", "face" or "mark".'],
    ['valueMm', 0, 'The wall is 0 mm; it must be more than 0 mm.'],
    ['valueMm', -4.9, 'The wall is -4.9 mm; it must be more than 0 mm.'],
    ['valueMm', '4.9', 'The reading was sent as the text "4.9"; send a plain number of mm.'],
    ['valueMm', Number.NaN, 'The reading is not a finite number; send a plain number of mm.'],
    ['valueMm', null, 'The reading has no value; give it in mm, or name the reading it withdraws.'],
    ['replaces', READING.id, 'The reading replaces itself; name the earlier one.'],
    ['radiusMm', 0, 'The radius is 0 mm; it must be at least 1 mm and at most 10000 mm.'],
    ['angleDeg', 800, 'The angle is 800 degrees; it must be at least -360 degrees and at most 720 degrees.'],
    [
      'who',
      'me',
      '"who" is no field here; take it out or check its spelling. Known here are id, pass, kind, angleDeg, radiusMm, valueMm, typed, gauge, doubtful, replaces.',
    ],
  ])('a reading with %s = %j is refused there', (path, value, message) => {
    expect(faults(readingSchema, changed(READING, path, value))).toEqual([{ path, message }]);
  });

  test('a mark depth below zero is refused', () => {
    expect(faults(readingSchema, { ...READING, kind: 'mark', valueMm: -0.1 })).toEqual([
      { path: 'valueMm', message: 'The depth of the mark is -0.1 mm; it must be at least 0 mm.' },
    ]);
  });
});

describe('sections of a job', () => {
  const received = {
    familyId: 'reedmoor-286',
    familyRevision: 1,
    family: {
      name: 'Reedmoor 286',
      make: 'stamped',
      sideWall: 'plain',
      studCount: 4,
      studCircleDiameterMm: 286,
      trackInnerDiameterMm: 214,
      trackOuterDiameterMm: 264,
      nominalWallMm: 5,
      ringAllowed: false,
      note: '',
    },
    customerReference: '',
    receivedOn: '2026-11-24',
    note: '',
  };

  test('what was received needs a day that exists', () => {
    expect(taken(receivedSchema, received)).toMatchObject({
      receivedOn: '2026-11-24',
      family: { rimDiameterMm: null },
    });
    expect(taken(receivedSchema, { ...received, receivedOn: '2028-02-29' }).receivedOn).toBe('2028-02-29');
    for (const receivedOn of ['2026-02-29', '2026-13-01', '24.11.2026', '2026-11-2x', '2026-1-124']) {
      expect(faults(receivedSchema, { ...received, receivedOn }).map((fault) => fault.path)).toEqual([
        'receivedOn',
      ]);
    }
    expect(faults(receivedSchema, changed(received, 'family.nominalWallMm', 0))[0]?.path).toBe(
      'family.nominalWallMm',
    );
  });

  const welds = { item: 'welds', result: 'fault', final: true, note: 'split' };
  const looked = { crackTest: 'none-found', crackMethod: 'dye', crackNote: '', items: [welds] };

  test('an inspection comes through, and is refused where it contradicts itself', () => {
    expect(taken(lookedSchema, looked)).toEqual(looked);
    expect(faults(lookedSchema, { ...looked, items: [welds, welds] })).toEqual([
      { path: 'items.1.item', message: '"welds" is listed twice among the items looked at; give it once.' },
    ]);
    expect(faults(lookedSchema, { ...looked, items: [{ ...welds, result: 'sound' }] })).toEqual([
      {
        path: 'items.0.final',
        message:
          '"welds" is marked beyond repair but not as a fault; mark it as a fault, or take the mark off.',
      },
    ]);
    expect(faults(lookedSchema, { ...looked, crackTest: 'maybe' })[0]?.message).toBe(
      'The crack test was sent as the text "maybe"; it is "not-done", "none-found" or "found".',
    );
  });

  test('setup, plan and cuts come through, and are refused out of bounds', () => {
    const setup = {
      gauge: 'M-2',
      chucking: null,
      residualRunoutMm: 0.01,
      gaugeFigures: null,
      wallReadThrough: 'bare',
      stations: [{ angleDeg: 0, radiusMm: 110 }],
    };
    expect(taken(setupSchema, setup)).toEqual({
      ...setup,
      gauges: [],
      ringWelded: null,
      knockOn: null,
      releaseClearanceMm: null,
    });
    expect(faults(setupSchema, changed(setup, 'stations.0.radiusMm', -1))[0]?.message).toBe(
      'The radius at station 1 is -1 mm; it must be at least 1 mm and at most 10000 mm.',
    );
    expect(taken(planSchema, { plannedCutMm: null, typed: '' })).toEqual({
      plannedCutMm: null,
      typed: '',
      lathe: null,
    });
    expect(faults(planSchema, { plannedCutMm: -0.1, typed: '-0.1' })[0]?.path).toBe('plannedCutMm');
    const cuts = { cuts: [{ depthMm: 0.25, typed: '0.25', look: null, truedAgain: null, note: '' }] };
    expect(taken(cutsSchema, cuts)).toEqual(cuts);
    expect(faults(cutsSchema, changed(cuts, 'cuts.0.depthMm', 0))[0]?.message).toBe(
      'The depth of cut 1 is 0 mm; it must be more than 0 mm and at most 10000 mm.',
    );
  });
});
