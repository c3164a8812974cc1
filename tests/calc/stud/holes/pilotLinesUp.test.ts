import { describe, expect, it } from 'vitest';
import type { Layer } from '../../../../shared/words/stud/stud.ts';
import { checkStud } from '../../../../src/calc/stud/checkStud.ts';
import { EXAMPLE, layer, withStack, withStud } from '../example.ts';

const casting = (thicknessMm: number) => layer(thicknessMm, { name: 'casting', kind: 'casting' });
const check = (projectionMm: number, layers: readonly Layer[], gapMm = 4) =>
  checkStud({ ...withStack({ layers }, withStud({ threadEndMm: 20, projectionMm })), pullForwardMm: gapMm });
const lining = (projectionMm: number, layers: readonly Layer[], gapMm = 4) => {
  const found = check(projectionMm, layers, gapMm);
  return { ...found.findings.find(({ id }) => id === 'pilot-lines-up')!, pilot: found.pilot! };
};

/** A second way: the housing closes by steps of 0.001 mm; where is the stud's end when its thread is at the first piece? */
function intoLastWhenThreadEnters(projectionMm: number, layers: readonly Layer[], gapMm: number): number {
  const h = layers.filter(({ kind }) => kind === 'shim').reduce((sum, one) => sum + one.thicknessMm, 0);
  const pieces = layers.filter(({ kind }) => kind !== 'shim');
  const lastFrom = pieces.slice(0, -1).reduce((sum, one) => sum + one.thicknessMm, 0);
  for (let apart = 60; apart > -60; apart -= 0.001) {
    // Places from the first piece's converter-side face; with the housing closed the pad is one gap and the shims back.
    const pad = -apart - gapMm - h;
    if (pad + 20 >= 0) return pad + projectionMm - lastFrom;
  }
  throw new Error('never');
}

describe('the stud pilot lines up the pieces of a flexplate (page 3, 3.3, by hand and by closing the housing)', () => {
  it.each([
    [27.35, [layer(3.2), casting(9.5)], 4, 4.15, 'pass'],
    [21, [layer(3.2), casting(9.5)], 4, -2.2, 'caution'],
    // 1.2 into it at nominal, 0.6 at its worst: met as drawn, not always.
    [24.4, [layer(3.2), casting(9.5)], 4, 1.2, 'caution'],
    [27.35, [layer(3.2), casting(9.5)], 12, 4.15, 'pass'],
    [27.35, [layer(1.5, { name: 'spacer', kind: 'shim' }), layer(3.2), casting(9.5)], 4, 4.15, 'pass'],
    [31, [layer(3.2), layer(2), casting(9.5)], 4, 5.8, 'pass'],
  ] as const)('a stud of %d mm in %j with a gap of %d mm', (projectionMm, layers, gapMm, into, status) => {
    const found = lining(projectionMm, layers, gapMm);
    expect(found.status).toBe(status);
    expect(found.value).toBeCloseTo(into, 9);
    expect(found.value).toBeCloseTo(intoLastWhenThreadEnters(projectionMm, layers, gapMm), 2);
    expect(found.pilot.intoLastPieceMm!.nominal).toBeCloseTo(into, 9);
  });

  it('is 2 × 0.25 of the stud and 0.1 of the plate less at its worst', () => {
    expect(lining(27.35, [layer(3.2), casting(9.5)]).pilot.intoLastPieceMm!.least).toBeCloseTo(3.55, 9);
  });

  it('with one piece passes, shims or none; a two-piece typed as one layer is not checked and counts', () => {
    expect(lining(21, [layer(3.2)]).status).toBe('pass');
    expect(lining(21, [layer(1, { name: 'shim' }), layer(3.2)]).status).toBe('pass');
    const whole = checkStud(
      withStack(
        { style: 'two-piece', layers: [layer(12.7)] },
        withStud({ threadEndMm: 23, projectionMm: 27 }),
      ),
    );
    expect(whole.findings.find(({ id }) => id === 'pilot-lines-up')!.status).toBe('not-checked');
    expect([whole.fits, whole.because]).toEqual(['with-care', expect.stringContaining('plate and casting')]);
  });

  it('never fails: it is with care, and says how much longer the pilot has to be', () => {
    const input = withStack(
      { style: 'two-piece', layers: [layer(3.2), casting(6)] },
      withStud({ threadEndMm: 20, projectionMm: 21 }),
    );
    expect(checkStud(input)).toMatchObject({ fits: 'with-care', decidedBy: 'projectionMm' });
    expect(checkStud(input).because).toContain(
      'The stud pilot is 2.20 mm short of the casting when the thread comes to the ',
    );
    // m −2.2, wanted 1.0, tolerances 0.6: 3.8.
    expect(checkStud(input).because).toContain('Needs a stud pilot at least 3.80 mm longer.');
    expect(checkStud(input).byMm).toBeCloseTo(3.8, 9);
  });

  it('how far the holes may be out of line: pilot 8.0 in two 10.3 holes 2.3, thread entering 1.55, seated 0.80', () => {
    const { outOfLineMm } = lining(27.35, [layer(3.2), casting(9.5)]).pilot;
    expect(outOfLineMm!.pilot).toBeCloseTo(2.3, 9);
    // 3/8-24 2A is at most 9.4970 mm (ASME B1.1).
    expect(outOfLineMm!.entering).toBeCloseTo((10.3 - 9.497) / 2 + (10.3 - 8) / 2, 3);
    expect(outOfLineMm!.seated).toBeCloseTo(10.3 - 9.497, 3);
    expect(lining(21, [layer(3.2), casting(9.5)]).pilot.outOfLineMm!.pilot).toBeNull();
  });

  it('a longer lead asked of the shop decides', () => {
    const input = { ...withStack({ layers: [layer(3.2), casting(9.5)] }, withStud({ projectionMm: 27.35 })) };
    const strict = { ...input, criteria: { ...EXAMPLE.criteria, pilotLeadMm: 5 } };
    expect(checkStud(strict).findings.find(({ id }) => id === 'pilot-lines-up')!.status).toBe('caution');
  });
});
