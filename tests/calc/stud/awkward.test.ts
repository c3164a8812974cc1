import { describe, expect, it } from 'vitest';
import type { StudCheckInput } from '../../../shared/words/stud/stud.ts';
import { checkStud } from '../../../src/calc/stud/checkStud.ts';
import { EXAMPLE, layer, NUT, withNut, withStack, withStud } from './example.ts';

/**
 * The awkward cases of the counter. Each figure is worked out a second way: by marking off faces along the stud's axis
 * in steps of 0.001 mm and counting what lies between them, or by hand from the sizes in the line.
 */
const STEP = 0.001;
const finding = (input: StudCheckInput, id: string) =>
  checkStud(input).findings.find((one) => one.id === id)!;

/** Steps along the axis that are full thread of the stud and full thread of the nut at once. */
function engagedByCounting({ stud, stack, nut }: StudCheckInput): number {
  const seat = stack.layers.reduce((sum, one) => sum + one.thicknessMm, 0) + nut!.washerMm;
  const from = seat + nut!.countersinkMm;
  const to = seat + nut!.heightMm - nut!.countersinkMm;
  let steps = 0;
  for (let at = STEP / 2; at < 80; at += STEP)
    if (at >= stud.threadStartMm && at <= stud.threadEndMm && at >= from && at <= to) steps++;
  return steps * STEP;
}

describe('awkward cases of the counter, with figures from a second way of working them out', () => {
  it('a worn thread is a caution, and its stress area is that of the smaller mean diameter', () => {
    // 3/8-24 2A: least pitch diameter 0.3430 in; 0.10 mm below it takes 0.05 mm off the mean of pitch and root.
    const least = 0.343 * 25.4;
    const input = withStud({ pitchDiameterMeasuredMm: least - 0.1 });
    expect(finding(input, 'thread-worn').status).toBe('caution');
    // ASME B1.1, table: At of 3/8-24 is 0.0878 in².
    const whole = 0.0878 * 25.4 ** 2;
    const byDiameter = (Math.PI / 4) * (Math.sqrt((whole * 4) / Math.PI) - 0.05) ** 2;
    expect(checkStud(input).strength.tensileAreaMm2).toBeCloseTo(byDiameter, 1);
  });

  it('six layers add up, tolerances and all: 1 + 0.5 + 3.2 + 2 + 4 + 2.5 = 13.2 ± 0.6', () => {
    const thick = [1, 0.5, 3.2, 2, 4, 2.5];
    const input = withStack(
      { layers: thick.map((mm) => layer(mm)) },
      withStud({ threadEndMm: 24, projectionMm: 40 }),
    );
    expect(checkStud(input).stackMm.nominal).toBeCloseTo(13.2, 9);
    expect(checkStud(input).stackMm.most).toBeCloseTo(13.8, 9);
    // Pieces before the last: 10.7; pilot 16.
    expect(checkStud(input).pilot!.intoLastPieceMm!.nominal).toBeCloseTo(5.3, 9);
  });

  it('a soft jam nut strips before the stud breaks', () => {
    const input = withNut({ heightMm: 5.5, tensileMPa: 400 });
    expect(finding(input, 'strip-or-break').status).toBe('fail');
    expect(checkStud(input).engagement!.nominalMm).toBeCloseTo(engagedByCounting(input), 2);
    expect(checkStud(input).strength.weakest).toBe('nut-thread');
    // Even sheared all round its thread, with no room between crests, it gives way before the rod breaks.
    const atMostN = 0.5 * 400 * Math.PI * 9.525 * engagedByCounting(input);
    expect(atMostN).toBeLessThan(0.0878 * 25.4 ** 2 * input.stud.tensileMPa!);
    expect(checkStud(input).strength.breakingLoadN).toBeLessThan(atMostN);
  });

  it('a thread that starts inside the nut clamps nothing', () => {
    const input = withStud({ threadStartMm: 5 });
    expect(finding(input, 'nut-clamps')).toMatchObject({ status: 'fail' });
    expect(finding(input, 'nut-clamps').sentence).toContain('1.80 mm beyond the nut’s washer face');
    expect(checkStud(input).engagement!.nominalMm).toBeCloseTo(engagedByCounting(input), 2);
  });

  it('a stud end flush with the engine side is blind: nothing to hold a nut by', () => {
    const input = { ...withStud({ threadEndMm: 7, projectionMm: 7.2 }), pullForwardMm: 4 };
    expect(checkStud(input).reach).toMatchObject({ grade: 'blind' });
    expect(checkStud(input).reach.pushedBackMm).toBeCloseTo(0, 9);
  });

  it('a stud without a pilot passes the nut and lines nothing up', () => {
    const none = withStud({ threadEndMm: 23, projectionMm: 23, pilotDiameterMm: null });
    expect(finding(none, 'pilot-passes-nut').status).toBe('pass');
    const two = withStack({ layers: [layer(3.2), layer(9.5, { name: 'casting' })] }, none);
    expect(finding(two, 'pilot-lines-up')).toMatchObject({ status: 'caution', value: -3.2 });
  });

  it('a washer is clamped and not reached through: grip 4.7, stack 3.2', () => {
    const input = withNut({ washerMm: 1.5 });
    // 12.1 threads show with or without it; past the nut it takes 1.5 mm: 8.03 − 1.42 threads.
    expect(checkStud(input).reach.threadsShowing).toBeCloseTo((20 - 4 - 3.2) / (25.4 / 24), 6);
    expect(checkStud(input).protrusionThreads!.nominal).toBeCloseTo((20 - 3.2 - 1.5 - 8.3) / (25.4 / 24), 6);
  });

  it('a locking nut is never started by hand, however much thread shows', () => {
    const input = withNut({ prevailing: true });
    expect(checkStud(input).reach.grade).toBe('pilot-shows');
    expect(checkStud(input).fits).toBe('with-care');
  });

  it('no gap at all leaves the whole stud in the flexplate', () => {
    const input = { ...EXAMPLE, pullForwardMm: 0 };
    expect(checkStud(input).reach.pushedBackMm).toBeCloseTo(23 - 3.2, 9);
    expect(checkStud(input).fits).toBe('yes');
  });

  it('a nut of a near twin never goes on: M8×1 on 5/16-24', () => {
    const input = withNut({
      ...NUT,
      thread: { system: 'metric', designation: 'M8x1-6H', majorMm: 8, pitchMm: 1, class: '6H' },
    });
    expect(checkStud(input)).toMatchObject({ fits: 'no', decidedBy: 'thread', engagement: null });
  });
});
