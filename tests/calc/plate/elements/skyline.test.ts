import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../../shared/words/refusal.ts';
import { emptySkyline, factor, solveFactored, times } from '../../../../src/calc/plate/elements/skyline.ts';
import { coverModel } from '../../../../src/calc/plate/model/coverModel.ts';
import { COVER } from '../example.ts';
import { denseOf } from './dense.ts';

describe('skyline Cholesky', () => {
  it('the skyline solver solves a small system with an uneven profile (by hand: A·[1, 2, 3, 4])', () => {
    const a = emptySkyline(Int32Array.of(0, 0, 2, 1));
    // 4 1 . . / 1 5 . 2 / . . 6 1 / . 2 1 7
    a.values.set([4, 1, 5, 6, 2, 1, 7]);
    expect([...times(a, Float64Array.of(1, 2, 3, 4))]).toEqual([6, 19, 22, 35]);
    const x = Float64Array.of(6, 19, 22, 35);
    factor(a);
    solveFactored(a, x);
    expect([...x].map((one) => Number(one.toFixed(12)))).toEqual([1, 2, 3, 4]);
  });

  it('the skyline solver agrees with a general library’s dense factor on the cover’s own matrix', () => {
    const model = coverModel(COVER);
    const dense = new CholeskyDecomposition(denseOf(model.stiffness));
    const there = dense.solve(Matrix.columnVector(model.load)).to1DArray();
    const here = model.load.slice();
    factor(model.stiffness);
    solveFactored(model.stiffness, here);
    const most = Math.max(...there.map(Math.abs));
    const off = Math.max(...there.map((one, i) => Math.abs(one - here[i]!)));
    expect(off / most).toBeLessThan(1e-7);
  });

  it('the skyline solver factors the last rows again as if from the start', () => {
    const model = coverModel(COVER);
    const { stiffness } = model;
    const from = model.track.firstUnknown;
    const tail = stiffness.start[from]! + stiffness.first[from]!;
    const again = { ...stiffness, values: stiffness.values.slice() };
    factor(again);
    again.values.set(stiffness.values.subarray(tail), tail);
    again.values[again.start[from]! + from]! += 1e6;
    factor(again, from);
    stiffness.values[stiffness.start[from]! + from]! += 1e6;
    factor(stiffness);
    expect(again.values).toEqual(stiffness.values);
  });

  it('a plate that may float away is refused with a sentence, not solved', () => {
    const a = emptySkyline(Int32Array.of(0, 0));
    a.values.set([1, -1, 1]);
    expect(() => factor(a)).toThrow(Refusal);
    a.values.set([1, -1, 1]);
    expect(() => factor(a)).toThrow(/gives way without resistance at unknown 2 of 2/);
  });
});
