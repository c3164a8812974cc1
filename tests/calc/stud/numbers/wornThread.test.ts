import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkStud } from '../../../../src/calc/stud/checkStud.ts';
import { wornThread } from '../../../../src/calc/stud/numbers/wornThread.ts';
import { threadGeometry } from '../../../../src/calc/stud/thread/threadGeometry.ts';
import { EXAMPLE, STUD, withStud } from '../example.ts';

const LEAST = threadGeometry(STUD.thread).pitchDiameterMm.min!;
const MOST = threadGeometry(STUD.thread).pitchDiameterMm.max!;
const measured = (pitchDiameterMeasuredMm: number) => checkStud(withStud({ pitchDiameterMeasuredMm }));
const status = (found: ReturnType<typeof checkStud>) =>
  found.findings.find((one) => one.id === 'thread-worn')?.status;

describe('a worn thread', () => {
  // √(4 · 56.663/π) = 8.49393; − 0.05 = 8.44393; π/4 · 71.3 = 55.998 … by hand: 0.785398 · 71.29995 = 55.9988 mm².
  it('a thread worn by 0.10 mm loses 0.05 mm of its stress diameter', () => {
    const worn = wornThread(threadGeometry(STUD.thread), LEAST - 0.1);
    expect(worn.tensileStressAreaMm2).toBeCloseTo(55.998, 2);
  });

  it('a worn thread is a caution, and makes a yes into with care', () => {
    const found = measured(LEAST - 0.02);
    expect(status(found)).toBe('caution');
    expect(found.fits).toBe('with-care');
    expect(measured(LEAST - 0.1).answers.tensileAreaMm2!.value).toBeCloseTo(55.998, 2);
    expect(found.joint!.proofShare!).toBeGreaterThan(checkStud(EXAMPLE).joint!.proofShare!);
  });

  it('a worn thread is a no once it would strip before the stud breaks', () => {
    const found = measured(LEAST - 0.1);
    expect(found.fits).toBe('no');
    expect(found.findings.find((one) => one.id === 'strip-or-break')?.status).toBe('fail');
  });

  it('a thread within its class changes nothing, and one above it is measured again', () => {
    const found = measured((LEAST + MOST) / 2);
    expect(status(found)).toBe('pass');
    expect(found.strength).toEqual(checkStud(EXAMPLE).strength);
    expect(status(measured(MOST + 0.01))).toBe('caution');
    expect(status(checkStud(EXAMPLE))).toBeUndefined();
  });

  it('a pitch diameter that cannot belong to the thread is refused', () => {
    expect(() => measured(7)).toThrow('The measured pitch diameter is 7 mm; it must be more than');
    expect(() => measured(9.6)).toThrow('The measured pitch diameter is 9.6 mm; it must be less than');
  });

  it('a thread with more wear is never stronger', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        fc.double({ min: 0.001, max: 0.1, noNaN: true }),
        (wear, more) => {
          const a = measured(LEAST - wear).strength;
          const b = measured(LEAST - wear - more).strength;
          expect(b.studShearAreaMm2!).toBeLessThan(a.studShearAreaMm2!);
          expect(b.tensileAreaMm2).toBeLessThan(a.tensileAreaMm2);
          expect(b.breakingLoadN!).toBeLessThan(a.breakingLoadN!);
        },
      ),
      { numRuns: 60 },
    );
  });
});
