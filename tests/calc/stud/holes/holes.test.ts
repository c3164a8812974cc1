import { describe, expect, it } from 'vitest';
import type { StudCheckInput } from '../../../../shared/words/stud/stud.ts';
import { checkStud } from '../../../../src/calc/stud/checkStud.ts';
import { EXAMPLE, layer, withNut, withStack, withStud } from '../example.ts';

const finding = (input: StudCheckInput, id: string) => checkStud(input).findings.find((one) => one.id === id);

describe('holes', () => {
  it('the tightest hole decides, by name', () => {
    const input = withStack({
      layers: [layer(3.2), layer(2, { name: 'casting', holeDiameterMm: 9.4 })],
    });
    const check = checkStud(input);
    // 3/8-24 2A major max 0.3739 in = 9.49706 mm (ASME B1.1)
    expect([check.fits, check.decidedBy]).toEqual(['no', 'holeDiameterMm']);
    expect(check.byMm).toBeCloseTo(0.09706, 5);
    expect(check.headline).toBe('Does not fit: it does not go through the casting.');
  });
  it('a pilot thicker than the thread is what must pass', () => {
    const input = withStud({ pilotDiameterMm: 10.31 });
    expect(finding(input, 'holes')).toMatchObject({ status: 'fail' });
    expect(finding(input, 'holes')!.sentence).toContain('pilot');
  });
  it('a hole too small fails though another was not measured', () => {
    const input = withStack({
      layers: [layer(3, { holeDiameterMm: null }), layer(3, { holeDiameterMm: 9 })],
    });
    expect(finding(input, 'holes')!.status).toBe('fail');
  });
});

describe('hole circle and count', () => {
  it.each([
    [286, 'pass'],
    [286.5, 'pass'],
    [285.5, 'pass'],
    [286.6, 'fail'],
    [292, 'fail'],
  ])('a hole circle of Ø %f against the cover’s 286 is %s', (holeCircleDiameterMm, status) => {
    expect(finding(withStack({ holeCircleDiameterMm }), 'hole-circle')!.status).toBe(status);
  });
  it('a stack with another hole circle is a no, by the difference', () => {
    const check = checkStud(withStack({ holeCircleDiameterMm: 292 }));
    expect([check.fits, check.decidedBy, check.byMm]).toEqual(['no', 'holeCircleDiameterMm', 6]);
  });
  it('a stack with another number of holes is a no', () => {
    const check = checkStud(withStack({ holeCount: 4 }));
    expect([check.fits, check.decidedBy, check.byMm]).toEqual(['no', 'holeCount', null]);
  });
  it('the cover’s own figures come before the joint’s', () => {
    const input = { ...EXAMPLE, coverStudCircleDiameterMm: 240, coverStudCount: 3 };
    expect(finding(input, 'hole-circle')!.status).toBe('fail');
    expect(finding(input, 'hole-count')!.status).toBe('fail');
  });
  it('a difference of the circles uses up the position tolerance', () => {
    const input = withStack({ holeCircleDiameterMm: 286.5, layers: [layer(3.2, { holeDiameterMm: 9.9 })] });
    expect(finding(input, 'position')).toMatchObject({ status: 'caution' });
    expect(finding(withStack({ holeCircleDiameterMm: 286.5 }), 'position')!.status).toBe('pass');
  });
});

describe('fillet and chamfer', () => {
  const at = (filletMm: number | null, chamferMm: number | null) =>
    finding(withStud({ filletMm }, withStack({ layers: [layer(3.2, { chamferMm })] })), 'fillet');
  // hole 10.3, stud 9.525: 0.3875 between stud and edge
  it.each([
    [0.6, 0.5, 'pass'],
    [0.9, 0.5, 'fail'],
    [0.38, null, 'pass'],
    [0.6, null, 'not-checked'],
  ])('a fillet of %f with a chamfer of %s is %s', (filletMm, chamferMm, status) => {
    expect(at(filletMm, chamferMm)!.status).toBe(status);
  });
  it('the fillet clears by hole/2 + chamfer − (d/2 + fillet)', () => {
    expect(at(0.6, 0.5)!.value).toBeCloseTo(0.2875, 9);
  });
  it('the fillet is not checked when nobody gave one', () => {
    expect(at(null, 0.5)).toBeUndefined();
  });
});

describe('the nut’s seat', () => {
  it('the nut’s seat is (14 − 10.3)/2 wide all round', () =>
    expect(finding(EXAMPLE, 'nut-seat')!.value).toBeCloseTo(1.85, 9));
  it('a nut smaller than its hole is a no, and a washer covers it', () => {
    const big = withStack({ layers: [layer(3.2, { holeDiameterMm: 14.5 })] });
    expect(finding(big, 'nut-seat')!.status).toBe('fail');
    expect(checkStud(big).fits).toBe('no');
    expect(finding(withNut({ washerMm: 2 }, big), 'nut-seat')).toBeUndefined();
  });
});
