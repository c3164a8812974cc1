import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import type { StiffnessInput } from '../../shared/words/bending/stiffness.ts';
import { bendCover } from '../../src/calc/plate/bendCover.ts';
import { coverAnswers } from '../../src/calc/plate/coverAnswers.ts';
import { factor, solveFactored } from '../../src/calc/plate/elements/skyline.ts';
import { coverModel } from '../../src/calc/plate/model/coverModel.ts';
import { type SolvedCover, solveCover } from '../../src/calc/plate/solveCover.ts';
import { denseOf } from '../calc/plate/elements/dense.ts';
import { COVER } from '../calc/plate/example.ts';
import { quickest } from './quickest.ts';

/**
 * How long one bending answer takes, in ms and against a dense Cholesky of the same matrix by a general library
 * (ml-matrix) in the same run; how far it is from a mesh three times as fine; how time grows with the unknowns.
 */
const WANTED_SHARE = 0.1;
const WANTED_SLOPE = 1.7;
const FINENESSES = [1, 1.5, 2, 3, 4];

/** Least-squares slope of log y over log x. */
function slope(points: readonly (readonly [number, number])[]): number {
  const logs = points.map(([x, y]) => [Math.log(x), Math.log(y)] as const);
  const [mx, my] = [0, 1].map((k) => logs.reduce((sum, one) => sum + one[k]!, 0) / logs.length) as [
    number,
    number,
  ];
  const over = logs.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0);
  return over / logs.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
}

const boss = ({ model, pressed }: SolvedCover) => pressed.w[model.boss]!;
const percent = (found: number, wanted: number) => `${(100 * (found / wanted - 1)).toFixed(2)} %`;

for (const piston of ['rigid', 'conforming'] as const) {
  const input: StiffnessInput = { ...COVER, piston, trackWallMm: 4 };
  const { stiffness, load } = coverModel(input);
  const dense = denseOf(stiffness);
  const answerMs = await quickest(30, () => bendCover(input));
  const denseMs = await quickest(5, () => new CholeskyDecomposition(dense).solve(Matrix.columnVector(load)));
  const skylineMs = await quickest(30, () => {
    const copy = { ...stiffness, values: stiffness.values.slice() };
    factor(copy);
    solveFactored(copy, load.slice());
  });
  const found = solveCover(input);
  const fine = solveCover(input, 3);
  console.log(`\n${piston} piston, ${load.length} unknowns, contact in ${found.pressed.rounds} rounds`);
  console.log(`  one answer           ${answerMs.toFixed(1)} ms`);
  console.log(
    `  dense Cholesky       ${denseMs.toFixed(1)} ms; one answer is ${(answerMs / denseMs).toFixed(3)} of it (wanted: ${WANTED_SHARE} or less)`,
  );
  console.log(`  skyline Cholesky     ${skylineMs.toFixed(2)} ms, ${(skylineMs / denseMs).toFixed(4)} of it`);
  console.log(
    `  from a mesh 3 × as fine: peak ${percent(found.peak.peakOverMean, fine.peak.peakOverMean)}, boss ${percent(boss(found), boss(fine))}`,
  );
  const grown: (readonly [number, number])[] = [];
  for (const fineness of FINENESSES) {
    const size = coverModel(input, fineness).freedoms.size;
    const tries = fineness > 2 ? 3 : 8;
    grown.push([size, await quickest(tries, () => coverAnswers(input, solveCover(input, fineness), null))]);
  }
  for (const [size, ms] of grown)
    console.log(`    ${String(size).padStart(6)} unknowns ${ms.toFixed(1).padStart(8)} ms`);
  console.log(
    `  grows with unknowns to the power ${slope(grown).toFixed(2)} (wanted: under ${WANTED_SLOPE})`,
  );
}
