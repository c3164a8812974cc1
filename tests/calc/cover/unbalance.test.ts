import { describe, expect, it } from 'vitest';
import { checkCover } from '../../../src/calc/cover/checkCover.ts';
import { unbalance } from '../../../src/calc/cover/unbalance.ts';
import { coverInput, SET_ONE } from './sets.ts';

/** A wall thicker toward `thickDeg` by `wedgeMm` over Ø 264, at eight places. */
const wedge = (wedgeMm: number, thickDeg: number) =>
  Array.from({ length: 8 }, (_, i) => {
    const angle = (i * Math.PI) / 4;
    const toward = Math.cos(angle - (thickDeg * Math.PI) / 180);
    return {
      xMm: 120 * Math.cos(angle),
      yMm: 120 * Math.sin(angle),
      zMm: 4.5 + (wedgeMm / 264) * 120 * toward,
    };
  });
const of = (wedgeMm: number, thickDeg: number) =>
  unbalance({
    walls: wedge(wedgeMm, thickDeg),
    trackInnerDiameterMm: 214,
    trackOuterDiameterMm: 264,
    densityKgPerM3: 7870,
  });

describe('unbalance of an uneven wall', () => {
  it('unbalance is 80.78 g·mm for 0.02 mm over Ø 264 (independent second implementation, not published)', () => {
    expect(of(0.02, 0).value).toBeCloseTo(80.78, 2);
  });
  it('the heavy side is where the wall is thick', () => {
    expect(of(0.02, 90).heavySideDeg).toBeCloseTo(90, 6);
    expect(of(0.02, 247).heavySideDeg).toBeCloseTo(247, 6);
  });
  it('unbalance is the first moment of the wall, summed over the ring in small pieces (first principles)', () => {
    let moment = 0;
    const [dr, dTheta] = [0.5, Math.PI / 180];
    for (let r = 107 + dr / 2; r < 132; r += dr) {
      for (let k = 0; k < 360; k++) {
        const x = r * Math.cos((k + 0.5) * dTheta);
        moment += 7.87e-3 * (0.02 / 264) * x * x * r * dr * dTheta;
      }
    }
    expect(of(0.02, 0).value).toBeCloseTo(moment, 2);
  });
  it('an even wall has no unbalance and no heavy side', () =>
    expect(of(0, 0)).toMatchObject({ value: 0, heavySideDeg: null }));
  it('unbalance grows with the density given', () => {
    const heavier = checkCover(coverInput({ cover: { ...coverInput().cover, densityKgPerM3: 15740 } }));
    expect(heavier.unbalance!.gmm).toBeCloseTo(2 * checkCover(coverInput()).unbalance!.gmm, 6);
  });
  it('unbalance is the worse of both ways where the face was not indicated', () => {
    const stations = SET_ONE.map((s) => ({ ...s, faceMm: null }));
    const flat = SET_ONE.map((s) => ({ ...s, faceMm: 0 }));
    const unread = checkCover(coverInput({ stations })).unbalance!;
    expect(unread.gmm).toBeCloseTo(checkCover(coverInput({ stations: flat })).unbalance!.gmm, 9);
  });
});
