import type { StiffnessInput } from '../../../../shared/words/bending/stiffness.ts';

const OIL_TONNE_PER_MM3 = 840e-12;

/** What presses on the cover, + toward the engine, for the whole cover. */
export interface CoverForces {
  /** Piston on lining. */
  readonly liningN: number;
  readonly meanPressureMPa: number;
  /** The turbine's thrust. */
  readonly bossN: number;
  readonly perPadN: number;
  /** Oil's head by rotation, at a radius. */
  readonly headMPa: (radiusMm: number) => number;
}

/**
 * The forces on the cover.
 *   lining F = p·π·(r_o² − r_seal²) · center p·π·r_seal² · each pad −p·π·r_hub²/N · head ½·ρ·ω²·(r² − r_hub²)
 *
 * p apply pressure [MPa] · r_o friction surface outer, r_seal piston seal, r_hub impeller hub radius [mm] · ρ 840 kg/m³.
 * With the apply pressure beyond the friction surface these come to p·π·(R² − r_hub²), which is what the impeller is pressed
 * back with and the side wall carries across: the converter floats, and its studs carry only the thrust.
 * Valid: lock-up applied; the clutch side of the piston at no pressure.   Source: equilibrium (first principles)
 * Example: the converter in equilibrium (tests/calc/plate/equilibrium.test.ts)
 */
export function coverForces(input: StiffnessInput): CoverForces {
  const [outer, inner] = [input.trackOuterDiameterMm / 2, input.trackInnerDiameterMm / 2];
  const [seal, hub] = [input.pistonSealDiameterMm / 2, input.hubDiameterMm / 2];
  const p = input.pressureMPa;
  const omega = ((input.speedRpm ?? 0) * Math.PI) / 30;
  const head = 0.5 * OIL_TONNE_PER_MM3 * omega * omega;
  return {
    liningN: p * Math.PI * (outer ** 2 - seal ** 2),
    meanPressureMPa: (p * (outer ** 2 - seal ** 2)) / (outer ** 2 - inner ** 2),
    bossN: p * Math.PI * seal ** 2,
    perPadN: (-p * Math.PI * hub ** 2) / input.studCount,
    headMPa: (radiusMm) => head * (radiusMm * radiusMm - hub * hub),
  };
}
