import type { StiffnessInput } from '../../../shared/words/stiffness.ts';
import { CLOSEST } from './coverMesh.ts';
import type { CoverModel } from './coverModel.ts';
import type { CoverField } from './field.ts';

export interface PressurePeak {
  readonly peakMPa: number;
  /** Over the mean. */
  readonly peakOverMean: number;
  readonly radiusMm: number;
  readonly angleRad: number;
}

/**
 * Where the lining presses hardest, at mesh nodes of the track.   peak ÷ mean, mean = F/(π·(r_o² − r_i²))
 *
 * F piston's force [N] · r_o, r_i track radii [mm].
 * Valid: as the model.   Source: this program’s own model
 * Example: the cover of data/examples/bentCover.ts (tests/calc/plate/bendCover.test.ts)
 */
export function pressurePeak(
  input: Pick<StiffnessInput, 'rimDiameterMm' | 'trackInnerDiameterMm' | 'trackOuterDiameterMm'>,
  { mesh, forces }: CoverModel,
  field: CoverField,
): PressurePeak {
  // Lines that nearly met were made one.
  const dust = CLOSEST * input.rimDiameterMm;
  let [peakMPa, radiusMm, angleRad] = [-1, 0, 0];
  for (const r of mesh.radiiMm) {
    if (r < input.trackInnerDiameterMm / 2 - dust || r > input.trackOuterDiameterMm / 2 + dust) continue;
    for (const angle of mesh.anglesRad) {
      const here = field.pressureMPa(r, angle);
      if (here <= peakMPa) continue;
      peakMPa = here;
      radiusMm = r;
      angleRad = angle;
    }
  }
  return { peakMPa, peakOverMean: peakMPa / forces.meanPressureMPa, radiusMm, angleRad };
}
