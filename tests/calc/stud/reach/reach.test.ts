import { describe, expect, it } from 'vitest';
import { checkStud } from '../../../../src/calc/stud/checkStud.ts';
import { reach } from '../../../../src/calc/stud/reach/reach.ts';
import { EXAMPLE, layer, withNut, withStack, withStud } from '../example.ts';

const P = 25.4 / 24;
const LENGTHS = {
  projectionMm: 23,
  threadEndMm: 20,
  stackMm: 3.2,
  gapMm: 4,
  pitchMm: P,
  startThreads: 2,
  prevailing: false,
};

describe('grades (first principles)', () => {
  it('the example’s reach is what a hand calculation gives', () => {
    const found = reach(LENGTHS);
    expect(found.tipBeyondMm).toBeCloseTo(15.8, 9);
    expect(found.threadsShowing).toBeCloseTo(12.0945, 4);
    expect(found.grade).toBe('starts-by-hand');
  });
  it.each([
    ['exactly the start threads', { threadEndMm: 7.2 + 2 * P }, 'starts-by-hand'],
    ['a hair less', { threadEndMm: 7.2 + 1.99 * P }, 'pilot-shows'],
    ['thread inside, pilot out', { threadEndMm: 5, projectionMm: 7.3 }, 'pilot-shows'],
    ['tip flush with the face', { threadEndMm: 5, projectionMm: 7.2 }, 'blind'],
    ['tip inside', { threadEndMm: 5, projectionMm: 6 }, 'blind'],
    ['a prevailing-torque nut at best', { prevailing: true }, 'pilot-shows'],
    [
      'a prevailing-torque nut, blind all the same',
      { prevailing: true, threadEndMm: 5, projectionMm: 6 },
      'blind',
    ],
  ])('the grade of reach where %s', (_, change, grade) => {
    expect(reach({ ...LENGTHS, ...change }).grade).toBe(grade);
  });
});

describe('what a grade does to the answer', () => {
  // Stack 14 thick: 20 − 4 − 14 = 2.0 mm of thread out, 1.9 threads; tip 5 mm out.
  const thick = withStack({ style: 'two-piece', layers: [layer(14)] });
  it('a stud that only shows its pilot fits with care, by the thread that is missing', () => {
    const check = checkStud({ ...thick, criteria: { protrusionThreads: 0, startThreads: 2 } });
    expect(check.reach.grade).toBe('pilot-shows');
    const found = check.findings.find((one) => one.id === 'reach')!;
    expect(found.status).toBe('caution');
    expect(found.sentence).toBe(
      'With the converter pushed back 4.00 mm, only 1.9 threads show; the nut needs 2 threads to start by hand. Start the nut while you draw the converter forward.',
    );
  });
  it('a stud inside the stack is a no, by the length that is missing', () => {
    const check = checkStud({ ...withStud({ projectionMm: 20.5 }, thick), pullForwardMm: 8 });
    expect([check.fits, check.reach.grade]).toEqual(['no', 'blind']);
    expect(check.findings.find((one) => one.id === 'reach')).toMatchObject({
      status: 'fail',
      sentence:
        'With the converter pushed back 8.00 mm, the stud end is 1.50 mm short of the engine side: the nut can’t be started.',
    });
  });
  it('a lower grade with every size at its worst is a caution', () => {
    // end − g − S − 2P = 0.2; worst case 0.25 + 0.1 less.
    const check = checkStud(
      withStud({ threadEndMm: 7.2 + 2 * P + 0.2 + 5 }, { ...EXAMPLE, pullForwardMm: 9 }),
    );
    expect(check.reach.grade).toBe('starts-by-hand');
    expect(check.findings.find((one) => one.id === 'reach')!.status).toBe('caution');
    expect([check.fits, check.decidedBy]).toEqual(['with-care', 'threadEndMm']);
    expect(check.byMm).toBeCloseTo(0.15, 9);
  });
  it('a prevailing-torque nut decides by itself', () => {
    const check = checkStud(withNut({ prevailing: true }));
    expect([check.fits, check.decidedBy, check.byMm]).toEqual(['with-care', 'prevailing', null]);
  });
  it('a tip that does not reach its hole before the pads meet is a no', () => {
    const check = checkStud({ ...EXAMPLE, pullForwardMm: 24 });
    const found = check.findings.find((one) => one.id === 'pilot-enters-hole')!;
    expect([found.status, found.value]).toEqual(['fail', -1]);
  });
});
