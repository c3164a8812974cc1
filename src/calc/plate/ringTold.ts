import type { Answer } from '../../../shared/words/answer.ts';
import type { RingTold } from '../../../shared/words/bending/bending.ts';
import type { RingSize } from '../../../shared/words/bending/stiffness.ts';
import type { BalanceWanted } from '../../../shared/words/cover.ts';
import { printNumber } from '../../../shared/words/print.ts';
import { USUAL } from '../cover/coverNumbers.ts';
import { permissibleUnbalance } from '../cover/permissibleUnbalance.ts';

/**
 * What a ring weighs, how far it may put the cover out of balance, and what room it leaves.
 *   m = ρ·π·(D² − d²)·t/4   U = m·e, e = runout/2   clearance = pad − t
 *
 * D, d outer and inner diameter, t thickness [mm] · ρ density [kg/m³] · runout total indicator reading round the rim
 * [mm]; m in kg, U in g·mm. Valid: at most; the openings for the pads are not taken off, welds not added; the
 * flexplate lies flat on the pads. Source: first principles
 * Example: Ø 236–296 × 6, 7870 kg/m³ → 1.184 kg; runout 0.3 → 177.6 g·mm; pad 10 → 4 mm (tests/calc/plate/ringTold.test.ts)
 */
export function ringTold({
  size,
  padThicknessMm,
  runoutMm,
  balance,
  densityKgPerM3 = USUAL.densityKgPerM3,
}: {
  readonly size: RingSize;
  readonly padThicknessMm: number;
  readonly runoutMm: number | null;
  readonly balance: BalanceWanted | null;
  readonly densityKgPerM3?: number;
}): RingTold {
  const { innerDiameterMm: d, outerDiameterMm: D, thicknessMm: t } = size;
  const massKg = (densityKgPerM3 * Math.PI * (D ** 2 - d ** 2) * t * 1e-9) / 4;
  const source = 'first principles';
  const answer = (
    symbol: string,
    value: number,
    unit: Answer['unit'],
    formula: string,
    numbers: string,
  ): Answer => ({ symbol, value, unit, how: [{ formula, numbers, source }], warnings: [] });
  return {
    size,
    massKg: answer(
      'm',
      massKg,
      'kg',
      'm = ρ·π·(D² − d²)·t/4',
      `m = ${densityKgPerM3} kg/m³ · π · (${D}² − ${d}²) mm² · ${t} mm/4 = ${printNumber(massKg, 3)} kg`,
    ),
    unbalanceGmm:
      runoutMm === null
        ? null
        : answer(
            'U',
            (1000 * massKg * runoutMm) / 2,
            'g·mm',
            'U = m·e, e = runout/2',
            `U = ${printNumber(1000 * massKg, 0)} g · ${runoutMm} mm/2 = ${printNumber((1000 * massKg * runoutMm) / 2, 1)} g·mm`,
          ),
    permissibleGmm: balance && permissibleUnbalance(balance),
    clearanceMm: answer(
      'c',
      padThicknessMm - t,
      'mm',
      'c = pad − ring',
      `c = ${padThicknessMm} mm − ${t} mm = ${printNumber(padThicknessMm - t, 2)} mm`,
    ),
  };
}
