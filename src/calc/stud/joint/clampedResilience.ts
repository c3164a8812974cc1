import type { Step } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';

/** tan φ of the clamp cone; large for short grips, where the cone has little height to open. */
const TAN_PHI = 0.6;

/**
 * How far the clamped parts give for each newton, in a cone that opens from the nut's bearing face to the pad.
 *   per slice: δ = ln[(D₂ − d_h)(D₁ + d_h)/((D₂ + d_h)(D₁ − d_h))]/(π E d_h tan φ),   D₂ = D₁ + 2 tan φ · thickness
 *   D₁, D₂ cone's diameter at its two faces, starting at the bearing diameter · d_h the slice's hole [mm] · E [MPa]
 *   Valid: bearing face wider than every hole; parts wide enough for the cone.
 *   Source: VDI 2230:2003, 5.1.2, screwed-in joint (one cone), taken slice by slice where holes differ (from memory)
 *   Example: bearing Ø 14, one plate 3.2 with hole 10.3, E 205 000 → 1.42e-7 mm/N (calc/stud/joint/joint.test.ts)
 */
export function clampedResilience({
  bearingOuterDiameterMm,
  slices,
  youngMPa: E,
  tanPhi = TAN_PHI,
}: {
  bearingOuterDiameterMm: number;
  /** From the nut to the pad. */
  slices: readonly { readonly thicknessMm: number; readonly holeDiameterMm: number }[];
  youngMPa: number;
  tanPhi?: number;
}): { readonly mmPerN: number; readonly step: Step } | null {
  let mmPerN = 0;
  let D1 = bearingOuterDiameterMm;
  for (const { thicknessMm, holeDiameterMm: dh } of slices) {
    if (D1 <= dh + 1e-9) return null;
    const D2 = D1 + 2 * tanPhi * thicknessMm;
    mmPerN += Math.log(((D2 - dh) * (D1 + dh)) / ((D2 + dh) * (D1 - dh))) / (Math.PI * E * dh * tanPhi);
    D1 = D2;
  }
  const said = slices
    .map((slice) => `${printNumber(slice.thicknessMm, 2)} with hole ${printNumber(slice.holeDiameterMm, 2)}`)
    .join(', ');
  return {
    mmPerN,
    step: {
      formula: 'δ_P = Σ ln[(D₂ − d_h)(D₁ + d_h)/((D₂ + d_h)(D₁ − d_h))]/(π E d_h tan φ)',
      numbers: `cone from ${printNumber(bearingOuterDiameterMm, 2)} to ${printNumber(D1, 2)} mm through ${said}: δ_P = ${mmPerN.toExponential(3)} mm/N`,
      source: 'VDI 2230:2003, 5.1.2',
    },
  };
}
