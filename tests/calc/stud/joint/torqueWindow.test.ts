import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Joint, StudCheckInput } from '../../../../shared/words/stud/stud.ts';
import { checkStud } from '../../../../src/calc/stud/checkStud.ts';
import { EXAMPLE, JOINT, withNut, withStud } from '../example.ts';

const withJoint = (joint: Partial<Joint>, input: StudCheckInput = EXAMPLE): StudCheckInput => ({
  ...input,
  joint: { ...JOINT, ...joint },
});
const window = (input: StudCheckInput) => {
  const { answers, findings } = checkStud(input);
  return {
    enough: answers.torqueEnoughNm?.value ?? null,
    most: answers.torqueMostNm?.value ?? null,
    finding: findings.find((one) => one.id === 'joint-torque')!,
  };
};

describe('the window of torque (first principles, by hand)', () => {
  // Needed 700 000/(0.15 · 6 · 143) = 5439.0 N; F_Z 7325.0 N (joint.test.ts): 12 764/0.75 = 17 018.7 N; · 1.905e-3 m.
  it('the torque that is enough is what a hand calculation gives', () =>
    expect(window(EXAMPLE).enough).toBeCloseTo(32.42, 2));
  // 0.75 · 586 · 56.663 = 24 903.5; /1.25 = 19 922.8 N; · 1.905e-3 m.
  it('the torque that is too much is what a hand calculation gives', () =>
    expect(window(EXAMPLE).most).toBeCloseTo(37.953, 3));
  it('a torque of 37 N·m is between enough and too much', () =>
    expect(window(EXAMPLE).finding.status).toBe('pass'));

  it.each([
    [32.4, 'fail', 'is too little to hold'],
    [32.5, 'pass', 'is in that range'],
    [38, 'fail', 'is too much'],
  ])('a torque of %f N·m is %s', (torqueNm, status, says) => {
    const { finding } = window(withJoint({ torqueNm }));
    expect(finding.status).toBe(status);
    expect(finding.sentence).toContain(says);
  });

  it('a window without a torque that does both says so', () => {
    const { finding } = window(withJoint({ engineTorqueNm: 900 }));
    expect(finding.sentence).toContain('No torque works');
  });
  it('a window leaves out the end that is not known', () => {
    expect(window(withStud({ proofMPa: null })).most).toBeNull();
    expect(window(withNut({ bearingOuterDiameterMm: null })).enough).toBeNull();
    expect(window(withStud({ proofMPa: null })).finding.status).toBe('not-checked');
  });

  it('the joint just holds at the enough torque, slips below it, and is at 75 % of proof at the too-much torque', () => {
    fc.assert(
      fc.property(
        fc.record({
          nutFactor: fc.double({ min: 0.09, max: 0.3, noNaN: true }),
          scatter: fc.double({ min: 0, max: 0.4, noNaN: true }),
          friction: fc.double({ min: 0.08, max: 0.5, noNaN: true }),
          engineTorqueNm: fc.double({ min: 50, max: 1500, noNaN: true }),
          studCount: fc.integer({ min: 3, max: 8 }),
          prevailingNm: fc.double({ min: 0, max: 5, noNaN: true }),
        }),
        (joint) => {
          const { enough, most } = window(withJoint({ torqueNm: 40, ...joint }));
          const at = (torqueNm: number) => checkStud(withJoint({ ...joint, torqueNm }));
          const slip = (torqueNm: number) =>
            at(torqueNm).findings.find((one) => one.id === 'joint-slip')!.status;
          expect(slip(enough! * 1.0001)).toBe('pass');
          expect(slip(Math.max(joint.prevailingNm * 1.0001, enough! * 0.9999))).toBe('fail');
          expect(at(most!).joint!.proofShare).toBeCloseTo(0.75, 9);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('two equal studs share equally', () => {
  it('twice the studs need half the preload each, beyond what settles, and double the slip torque', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 12 }), (studCount) => {
        const one = checkStud(withJoint({ studCount }));
        const two = checkStud(withJoint({ studCount: 2 * studCount }));
        expect(two.joint!.slipTorqueNm.least!).toBeCloseTo(2 * one.joint!.slipTorqueNm.least!, 6);
        expect(two.joint!.preloadN).toEqual(one.joint!.preloadN);
      }),
      { numRuns: 20 },
    );
  });
});
