import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ReplacedStudInput, replacedStud } from '../../../../src/calc/stud/holes/replacedStud.ts';

const INPUT: ReplacedStudInput = {
  leanMm: 0.2,
  leanAtMm: 20,
  offMm: 0.1,
  stackMm: 12.7,
  tightestHoleMm: 10.3,
  studMostMm: 9.5,
  provedNm: 45,
  heldIt: true,
  how: 'welded',
  limits: null,
};
const found = (change: Partial<ReplacedStudInput>, id: string) =>
  replacedStud({ ...INPUT, ...change }).find((one) => one.id === id)!;

describe('a stud set anew', () => {
  // 0.1 + 0.2 · 12.7/20 = 0.227; (10.3 − 9.5)/2 = 0.4, half of it 0.2 (first principles).
  it('a replaced stud is out at the engine side by its base and its lean', () => {
    const standing = found({}, 'replaced-standing');
    expect(standing.value).toBeCloseTo(0.227, 9);
    expect(standing).toMatchObject({ status: 'caution', unit: 'mm' });
    expect(standing.limit).toBeCloseTo(0.2, 9);
  });
  it.each([
    [0.07, 'pass'],
    [0.08, 'caution'],
    [0.27, 'caution'],
    [0.28, 'fail'],
  ])('a replaced stud with its base out by %f is %s', (offMm, status) => {
    expect(found({ offMm }, 'replaced-standing').status).toBe(status);
  });
  it('a replaced stud is not judged where base or lean was not measured', () => {
    for (const change of [{ leanMm: null }, { offMm: null }, { tightestHoleMm: null }])
      expect(found(change, 'replaced-standing').status).toBe('not-checked');
  });
  it('a replaced stud’s proof torque is OK where it held, not where it turned, and not checked where it was not tested', () => {
    expect(found({}, 'replaced-proof').status).toBe('pass');
    expect(found({ heldIt: false }, 'replaced-proof').status).toBe('fail');
    expect(found({ provedNm: null }, 'replaced-proof').status).toBe('not-checked');
  });
  // 0.2 at 20 mm is 0.25 at 25 mm (first principles); limits as a shop might set them.
  it.each([
    ['replaced-square', { leanAt25Mm: 0.25, offMm: null, proofNm: null }, 'pass'],
    ['replaced-square', { leanAt25Mm: 0.24, offMm: null, proofNm: null }, 'fail'],
    ['replaced-square', { leanAt25Mm: null, offMm: 1, proofNm: null }, 'not-checked'],
    ['replaced-place', { leanAt25Mm: null, offMm: 0.1, proofNm: null }, 'pass'],
    ['replaced-place', { leanAt25Mm: null, offMm: 0.09, proofNm: null }, 'fail'],
    ['replaced-proof', { leanAt25Mm: null, offMm: null, proofNm: 45 }, 'pass'],
    ['replaced-proof', { leanAt25Mm: null, offMm: null, proofNm: 46 }, 'fail'],
  ] as const)('the shop’s limit on a replaced stud: %s under %j is %s', (id, limits, status) => {
    expect(found({ limits }, id).status).toBe(status);
  });
  it('a weld is never said to be strong', () => {
    for (const heldIt of [true, false, null])
      expect(found({ heldIt }, 'replaced-root').status).toBe('not-checked');
  });
  it('a replaced stud with impossible measurements is refused', () => {
    expect(() => replacedStud({ ...INPUT, leanAtMm: 0 })).toThrow('must be more than 0 mm');
    expect(() => replacedStud({ ...INPUT, offMm: -0.1 })).toThrow('must be 0 mm or more');
  });
  it('more lean, or a thicker stack, never helps', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (leanMm, more) => {
          const out = (change: Partial<ReplacedStudInput>) =>
            found({ leanMm, ...change }, 'replaced-standing').value!;
          expect(out({ leanMm: leanMm + more })).toBeGreaterThan(out({}));
          expect(out({ stackMm: INPUT.stackMm + more })).toBeGreaterThanOrEqual(out({}));
        },
      ),
      { numRuns: 50 },
    );
  });
});
