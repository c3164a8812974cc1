/**
 * Heat into the cover at the start of the slip.   q₀ = share·T·ω/A,  ω = π·n/30,  A = π·(D_o² − D_i²)/4
 *
 * share of the heat that goes into the cover · T torque of the clutch [N·m] · n slip speed at the start [rpm] ·
 * A area of the friction surface [m²]; q₀ in W/m².
 * Valid: all slip on one face.   Source: power of friction; this program’s own model (first principles)
 * Example: half of 300 N·m at 1000 rpm on Ø 214–264 → 0.837 MW/m² (tests/calc/heat/heatCover.test.ts)
 */
export function slipFlux({
  share,
  torqueNm,
  slipRpm,
  trackInnerDiameterMm,
  trackOuterDiameterMm,
}: {
  readonly share: number;
  readonly torqueNm: number;
  readonly slipRpm: number;
  readonly trackInnerDiameterMm: number;
  readonly trackOuterDiameterMm: number;
}): number {
  const areaM2 = (Math.PI / 4) * (trackOuterDiameterMm ** 2 - trackInnerDiameterMm ** 2) * 1e-6;
  return (share * torqueNm * ((Math.PI * slipRpm) / 30)) / areaM2;
}
