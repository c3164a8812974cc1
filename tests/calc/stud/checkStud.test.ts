import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../shared/words/refusal.ts';
import type { StudCheckInput } from '../../../shared/words/stud/stud.ts';
import { checkStud } from '../../../src/calc/stud/checkStud.ts';
import { engagementFinding } from '../../../src/calc/stud/engaged/engagementFinding.ts';
import { threadEngagement } from '../../../src/calc/stud/engaged/threadEngagement.ts';
import { filletClearsChamfer } from '../../../src/calc/stud/holes/filletClearsChamfer.ts';
import { studNumbers } from '../../../src/calc/stud/numbers/studNumbers.ts';
import { EXAMPLE, layer, metric, NUT, STACK, unified, withNut, withStack, withStud } from './example.ts';

const P = 25.4 / 24;
const finding = (input: StudCheckInput, id: string, unit: 'mm' | 'in' = 'mm') =>
  checkStud(input, unit).findings.find((one) => one.id === id)!;
const status = (input: StudCheckInput, id: string) => finding(input, id).status;

describe('the example of the JSON interface, by hand (first principles)', () => {
  const check = checkStud(EXAMPLE);

  it('the example stud fits, and its headline says so', () => {
    expect(check.fits).toBe('yes');
    expect(check.headline).toBe('Fits: the nut starts by hand.');
    expect(check.because).toBe(
      'With the converter pushed back 4.00 mm, 12.1 threads show; the nut needs 2 threads to start by hand.',
    );
    expect(check.decidedBy).toBeNull();
    expect(check.byMm).toBeNull();
  });

  it.each([
    ['stack', check.stackMm.nominal, 3.2],
    ['stack, least', check.stackMm.least, 3.1],
    ['stack, most', check.stackMm.most, 3.3],
    ['engagement: min(20, 11.4) − max(1, 3.3)', check.engagement?.nominalMm, 8.1],
    ['engagement, least: H − tH − 2 cs', check.engagement?.leastMm, 7.9],
    ['engagement in threads', check.engagement?.threads, 8.1 / P],
    ['engagement in diameters', check.engagement?.diameters, 8.1 / 9.525],
    ['protrusion: (20 − 11.5)/P', check.protrusionThreads?.nominal, 8.5 / P],
    ['protrusion, worst: ± 0.25, 0.1, 0.2', check.protrusionThreads?.least, 7.95 / P],
    ['protrusion, RSS', check.protrusionThreads?.leastRss, (8.5 - Math.sqrt(0.1125)) / P],
    ['tip beyond the stack, seated', check.reach.seatedMm, 19.8],
    ['tip beyond the stack, pushed back', check.reach.pushedBackMm, 15.8],
    ['threads showing: (20 − 4 − 3.2)/P', check.reach.threadsShowing, 12.8 / P],
  ])('the example stud’s %s is what a hand calculation gives', (_, found, expected) => {
    expect(found).toBeCloseTo(expected, 9);
  });

  it('every counted number has its working', () => {
    for (const answer of Object.values(check.answers)) {
      expect(answer.how.length).toBeGreaterThan(0);
      for (const step of answer.how) expect(step.numbers).not.toMatch(/NaN|undefined|null/);
    }
  });
});

describe('engagement by hand, wherever the thread begins and ends (first principles)', () => {
  // S 3.2 ± 0.1, H 8.3 ± 0.2, cs 0.1, ends ± 0.25
  it.each([
    ['ends inside the nut', { threadEndMm: 9 }, 9 - 3.3, 8.75 - 3.3 - 0.1],
    ['begins inside the nut', { threadStartMm: 5 }, 11.4 - 5, 11.1 - 5.25],
    ['begins and ends inside the nut', { threadStartMm: 5, threadEndMm: 9 }, 4, 3.5],
    ['never reaches the nut', { threadEndMm: 3, projectionMm: 4 }, 0, 0],
  ])('the engagement by hand of a thread that %s', (_, stud, nominal, least) => {
    const { engagement } = checkStud(withStud(stud));
    expect(engagement!.nominalMm).toBeCloseTo(nominal, 9);
    expect(engagement!.leastMm).toBeCloseTo(least, 9);
  });
});

describe('each length check fails at nominal or RSS, cautions at worst case only', () => {
  // start such that the margin to one pitch is m: start = 3.2 − P − m; tolerances 0.25 and 0.1, RSS 0.269, worst 0.35.
  it.each([
    [0.4, 'pass'],
    [0.3, 'caution'],
    [0.2, 'fail'],
    [-0.1, 'fail'],
  ])('the nut clamps with %f mm to spare: %s', (spare, expected) => {
    expect(status(withStud({ threadStartMm: 3.2 - P - spare }), 'nut-clamps')).toBe(expected);
  });

  // end = 11.5 + P + m; tolerances 0.25, 0.1, 0.2: RSS 0.335, worst 0.55.
  it.each([
    [0.56, 'pass'],
    [0.4, 'caution'],
    [0.3, 'fail'],
    [-0.1, 'fail'],
  ])('the thread protrudes with %f mm to spare: %s', (spare, expected) => {
    expect(status(withStud({ threadEndMm: 11.5 + P + spare }), 'protrusion')).toBe(expected);
  });

  // end = 11.4 + m for the whole of the nut's thread.
  it.each([
    [0.56, 'pass'],
    [0.4, 'caution'],
    [0.3, 'fail'],
    [-0.1, 'fail'],
  ])('the nut is engaged with %f mm to spare: %s', (spare, expected) => {
    expect(status(withStud({ threadEndMm: 11.4 + spare }), 'engagement')).toBe(expected);
  });

  // Only the projection has a tolerance here: RSS and worst case are one, 0.25.
  it.each([
    [17, 'pass'],
    [0.2, 'fail'],
    [0, 'fail'],
    [-1, 'fail'],
  ])('the tip clears by %f mm: %s', (clear, expected) => {
    expect(status(withStack({ tipRoomMm: 23 + clear }), 'tip-clearance')).toBe(expected);
  });

  it('a worst-case caution says what the worst case does, in the person’s unit', () => {
    const input = withStud({ threadStartMm: 3.2 - P - 0.3 });
    expect(finding(input, 'nut-clamps').sentence).toBe(
      'The thread starts 1.36 mm below the nut’s washer face; one pitch, 1.06 mm, is needed. Worst case: 0.05 mm short of one pitch. The nut would stop on the shank and leave the joint loose, however tight it feels.',
    );
    expect(finding(EXAMPLE, 'nut-clamps', 'in').sentence).toBe(
      'The thread starts 0.087 in below the nut’s washer face; one pitch, 0.042 in, is needed.',
    );
  });
});

describe('what would do is told only where it can be', () => {
  const because = (input: StudCheckInput) => checkStud(input).because;

  it('a thread nearer the pad is suggested, but none behind the pad’s face', () => {
    // RSS of 0.25 and 0.1 is 0.27: 1.06 + 0.27 − 1.9 + 1 nearer; of a plate of 1.2 nothing of 1.0 would be left.
    expect(because(withStud({ threadStartMm: 1 }, withStack({ layers: [layer(1.9)] })))).toContain(
      'Needs a first full thread at least 0.43 mm nearer the pad.',
    );
    expect(because(withStud({ threadStartMm: 1 }, withStack({ layers: [layer(1.2)] })))).not.toContain(
      'nearer',
    );
  });
  it('a thread nearer the pad is suggested for the whole nut, but none behind the pad’s face', () => {
    const mend = (toleranceMm: number) =>
      engagementFinding(
        studNumbers(withStud({ threadStartMm: 1 })),
        threadEngagement({
          threadStartMm: 1,
          threadEndMm: 20,
          lengthToleranceMm: 0,
          gripMm: 0.5,
          layerTolerancesMm: [toleranceMm],
          nutHeightMm: 8.3,
          nutToleranceMm: 0,
          countersinkMm: 0.1,
        }),
        'mm',
      ).mend;
    expect(mend(0)).toBe('Needs a first full thread at least 0.40 mm nearer the pad.');
    expect(mend(0.7)).toBe('');
  });
  it('a shorter stud is suggested, but none of no length', () => {
    expect(because(withStack({ tipRoomMm: 20 }))).toContain('Needs a stud at least 3.26 mm shorter.');
    expect(because(withStack({ tipRoomMm: 0.2 }))).not.toContain('shorter');
  });
  it('a smaller fillet is suggested, but none below zero', () => {
    const withFillet = (holeDiameterMm: number) =>
      withStud({ filletMm: 0.6 }, withStack({ layers: [layer(3.2, { holeDiameterMm, chamferMm: 0 })] }));
    expect(because(withFillet(10.3))).toContain('Needs a weld fillet at least 0.22 mm smaller.');
    const finding = filletClearsChamfer(studNumbers(withFillet(9.4)), 'mm');
    expect([finding?.finding.status, finding?.mend]).toEqual(['fail', '']);
  });
});

describe('a washer is clamped, and no part of the reach', () => {
  const check = checkStud(withNut({ washerMm: 1.5 }));
  const bare = checkStud(EXAMPLE);
  it('a washer moves protrusion and the clamp depth', () => {
    expect(check.protrusionThreads!.nominal).toBeCloseTo(7 / P, 9);
    expect(check.findings.find((one) => one.id === 'nut-clamps')!.value).toBeCloseTo(3.7, 9);
  });
  it('a washer leaves stack and reach as they are', () => {
    expect(check.stackMm).toEqual(bare.stackMm);
    expect(check.reach).toEqual(bare.reach);
  });
});

describe('what is not given is not checked, and never makes a yes', () => {
  it('a stud without a nut is checked as far as it can be, and is never a yes', () => {
    const check = checkStud({ ...EXAMPLE, nut: null });
    expect([check.engagement, check.protrusionThreads, check.fits]).toEqual([null, null, 'with-care']);
    expect(check.headline).toBe('Fits as far as it could be checked.');
    expect(check.because).toContain('Missing: the nut.');
  });
  it('a stud without a pull-forward gap is not checked for reach, and is never a yes', () => {
    const check = checkStud({ ...EXAMPLE, pullForwardMm: null });
    expect([check.reach.pushedBackMm, check.reach.threadsShowing, check.reach.grade]).toEqual([
      null,
      null,
      null,
    ]);
    expect(check.reach.seatedMm).toBeCloseTo(19.8, 9);
    expect(status({ ...EXAMPLE, pullForwardMm: null }, 'reach')).toBe('not-checked');
    expect([check.fits, check.decidedBy, check.byMm]).toEqual(['with-care', 'pullForwardMm', null]);
  });
  it.each([
    ['tipRoomMm', withStack({ tipRoomMm: null })],
    ['holeDiameterMm', withStack({ layers: [layer(3.2, { holeDiameterMm: null })] })],
    ['pilotDiameterMm', withStud({ pilotDiameterMm: null })],
    ['holeCircleDiameterMm', withStack({ holeCircleDiameterMm: null })],
    ['holeCount', withStack({ holeCount: null })],
  ])('a stud without %s is not checked for it, and is never a yes', (field, input) => {
    const check = checkStud(input);
    expect([check.fits, check.decidedBy]).toEqual(['with-care', field]);
  });
  it('a stud without fillet, chamfer, joint and cover may still be a yes', () => {
    expect(checkStud({ ...EXAMPLE, joint: null }).fits).toBe('yes');
    expect(checkStud({ ...EXAMPLE, joint: null }).holds).toBe('not-checked');
  });
});

describe('nut and thread', () => {
  it('a nut of another thread is a no, whatever the lengths', () => {
    const check = checkStud(withNut({ thread: unified(0.375, 16, '2B', 'UNC') }));
    expect([check.fits, check.decidedBy, check.byMm]).toEqual(['no', 'thread', null]);
    expect(check.engagement).toBeNull();
  });
  it('a nut of class 3B goes on a stud of class 2A', () => {
    expect(status(withNut({ thread: unified(0.375, 24, '3B') }), 'nut-thread')).toBe('pass');
  });
  it('a nut without a thread is taken as the stud’s, and says so', () => {
    expect(finding(withNut({ thread: null }), 'nut-thread')).toMatchObject({
      status: 'pass',
      sentence: 'The nut’s thread is not entered; it is taken as the stud’s, class 2B.',
    });
  });
  it('the pilot must pass the least minor diameter of 2B, 0.330 in = 8.382 mm', () => {
    expect(finding(EXAMPLE, 'pilot-passes-nut').limit).toBeCloseTo(8.382, 9);
    expect(status(withStud({ pilotDiameterMm: 8.38 }), 'pilot-passes-nut')).toBe('pass');
    expect(status(withStud({ pilotDiameterMm: 8.382 }), 'pilot-passes-nut')).toBe('fail');
  });
  it('a thread to the tip needs no pilot', () => {
    expect(status(withStud({ pilotDiameterMm: null, projectionMm: 20 }), 'pilot-passes-nut')).toBe('pass');
  });
});

describe('nonsense is refused, by field', () => {
  const metricStud = { thread: metric(10, 1.5, '6g') };
  it.each<[string, StudCheckInput]>([
    ['stud.threadEndMm', withStud({ threadStartMm: 20, threadEndMm: 20 })],
    ['stud.projectionMm', withStud({ projectionMm: 19.9 })],
    ['stud.threadStartMm', withStud({ threadStartMm: Number.NaN })],
    ['stud.lengthToleranceMm', withStud({ lengthToleranceMm: -0.1 })],
    ['stud.pilotDiameterMm', withStud({ pilotDiameterMm: 0 })],
    ['stud.proofMPa', withStud({ proofMPa: 900 })],
    ['stud.thread', withStud({ thread: unified(0.375, 24, '2B') })],
    ['stud.thread', withStud({ thread: metric(10, 8, '6g') })],
    ['stack.layers', withStack({ layers: [] })],
    ['stack.layers.1.thicknessMm', withStack({ layers: [layer(3.2), layer(0)] })],
    ['stack.layers.0.thicknessMm', withStack({ layers: [layer(-3.2)] })],
    ['stack.layers.0.toleranceMm', withStack({ layers: [layer(3.2, { toleranceMm: 3.2 })] })],
    ['stack.holeCount', withStack({ holeCount: 2.5 })],
    ['nut.heightMm', withNut({ heightMm: 0 })],
    ['nut.countersinkMm', withNut({ countersinkMm: 4.15 })],
    ['nut.washerMm', withNut({ washerMm: Number.POSITIVE_INFINITY })],
    ['pullForwardMm', { ...EXAMPLE, pullForwardMm: -1 }],
    ['criteria.startThreads', { ...EXAMPLE, criteria: { protrusionThreads: 1, startThreads: -1 } }],
    ['joint.scatter', { ...EXAMPLE, joint: { ...EXAMPLE.joint!, scatter: 1 } }],
  ])('a stud check with nonsense is refused: %s', (path, input) => {
    expect.assertions(2);
    try {
      checkStud(input);
    } catch (error) {
      expect(error).toBeInstanceOf(Refusal);
      expect((error as Refusal).faults.map((fault) => fault.path)).toContain(path);
    }
  });
  it('a refused stud says what is wrong in one sentence', () => {
    expect(() => checkStud(withStack({ layers: [layer(-3.2)] }))).toThrow(
      'The thickness of the plate is −3.2 mm; it must be more than 0 mm.',
    );
  });
  it('a metric stud is checked like an inch stud', () => {
    const input = {
      ...withStud(metricStud),
      nut: { ...NUT, thread: null },
      stack: { ...STACK, layers: [layer(3.2, { holeDiameterMm: 10.6 })] },
    };
    expect(checkStud(input).findings.find((one) => one.id === 'nut-thread')!.status).toBe('pass');
  });
});
