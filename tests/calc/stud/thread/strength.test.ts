import { describe, expect, it } from 'vitest';
import type { StudCheckInput } from '../../../../shared/words/stud/stud.ts';
import { checkStud } from '../../../../src/calc/stud/checkStud.ts';
import { EXAMPLE, withNut, withStud } from '../example.ts';

const strip = (input: StudCheckInput) =>
  checkStud(input).findings.find((one) => one.id === 'strip-or-break')!;

describe('strip or break', () => {
  it('the example needs 7.71 mm of engagement, and its stud breaks first at At · Rm', () => {
    // As and An per inch of engagement: 0.2169/0.375 and 0.2992/0.375 in (second implementation, not published)
    const { strength, engagement } = checkStud(EXAMPLE);
    expect(engagement!.neededMm! / 25.4).toBeCloseTo(0.3037, 4);
    expect(strength.studShearAreaMm2! / 645.16).toBeCloseTo((0.2169 / 0.375) * (8.1 / 25.4), 3);
    expect(strength.nutShearAreaMm2! / 645.16).toBeCloseTo((0.2992 / 0.375) * (8.1 / 25.4), 3);
    expect(strength.weakest).toBe('stud');
    expect(strength.breakingLoadN).toBeCloseTo(strength.tensileAreaMm2 * 827, 6);
    expect(strength.breakingLoadN! / 1000).toBeCloseTo(46.86, 2);
  });

  it('a thin nut strips the stud’s thread; the nut’s height decides', () => {
    const check = checkStud(withNut({ heightMm: 5.3 }));
    expect(strip(withNut({ heightMm: 5.3 })).status).toBe('fail');
    expect(check.strength.weakest).toBe('stud-thread');
    expect(check.strength.breakingLoadN).toBeCloseTo(check.strength.studShearAreaMm2! * 0.5 * 827, 6);
    expect([check.fits, check.decidedBy]).toEqual(['no', 'heightMm']);
    expect(check.byMm).toBeCloseTo(check.engagement!.neededMm! - 5.1, 9);
  });

  it('a weak nut lengthens what is needed by J, and its thread goes first', () => {
    const weak = withNut({ tensileMPa: 400 });
    const { strength, engagement } = checkStud(weak);
    const J = (strength.studShearAreaMm2! * 827) / (strength.nutShearAreaMm2! * 400);
    expect(J).toBeGreaterThan(1);
    expect(engagement!.neededMm).toBeCloseTo(7.712838 * J, 4);
    expect(strength.weakest).toBe('nut-thread');
    expect(strip(weak).status).toBe('fail');
  });

  it('an engagement below the needed only at its worst is a caution', () => {
    // 7.8 engaged nominally, 7.6 at the least, 7.71 needed
    expect(strip(withNut({ heightMm: 8 })).status).toBe('caution');
  });

  it.each([
    ['the nut’s', withNut({ tensileMPa: null })],
    ['the stud’s', withStud({ tensileMPa: null })],
  ])('without %s tensile strength the nut’s thread is not checked', (_, input) => {
    const check = checkStud(input);
    expect(check.findings.find((one) => one.id === 'nut-strip')!.status).toBe('not-checked');
    expect(check.fits).toBe('with-care');
    expect(check.strength.weakest).toBe('stud');
  });
  it('a strong nut does not shorten what is needed', () => {
    expect(checkStud(withNut({ tensileMPa: 2000 })).engagement!.neededMm).toBeCloseTo(7.712838, 5);
  });
});
