import { describe, expect, it } from 'vitest';
import type { Joint } from '../../../../shared/words/stud/stud.ts';
import { checkStud } from '../../../../src/calc/stud/checkStud.ts';
import { EXAMPLE, JOINT, withNut } from '../example.ts';

const check = (joint: Partial<Joint>, prevailing = false) =>
  checkStud({ ...withNut({ prevailing }), joint: { ...JOINT, ...joint } });
const status = (found: ReturnType<typeof check>, id: string) =>
  found.findings.find((one) => one.id === id)?.status;

describe('used before, locking, tightened again', () => {
  it('new parts torqued once have no finding', () => {
    const ids = checkStud(EXAMPLE).findings.map((one) => one.id);
    for (const id of ['joint-studs-used', 'joint-prevailing-nut', 'joint-retightened'])
      expect(ids).not.toContain(id);
  });

  it('studs used before are a caution, and change neither fit nor hold', () => {
    const found = check({ studsUsedBefore: true });
    expect(status(found, 'joint-studs-used')).toBe('caution');
    expect([found.fits, found.holds]).toEqual(['yes', 'yes']);
  });

  it('torque that only turns a locking nut gives no preload: (37 − 3) of 37 N·m', () => {
    const found = check({ prevailingNm: 3 }, true);
    const whole = check({}, true);
    expect(found.joint!.preloadN.nominal / whole.joint!.preloadN.nominal).toBeCloseTo(34 / 37, 9);
    expect(status(found, 'joint-prevailing-nut')).toBe('caution');
    expect(status(whole, 'joint-prevailing-nut')).toBe('not-checked');
  });

  it('a locking nut that takes all the torque only to turn is refused', () => {
    expect(() => check({ prevailingNm: 37 }, true)).toThrow(
      'The prevailing torque is 37.0 N·m; it must be less than 37.0 N·m.',
    );
  });

  it('a re-torque counts half the settling, never none, and only where chosen', () => {
    const once = check({}).joint!;
    const again = check({ retightened: true });
    expect(again.joint!.embeddingLossN).toBeCloseTo(once.embeddingLossN! / 2, 6);
    expect(again.joint!.embeddingLossN).toBeGreaterThan(0);
    expect(again.answers.embeddingLossN!.warnings[0]!.text).toContain('no thread-locker');
    expect(status(again, 'joint-retightened')).toBe('caution');
  });
});
