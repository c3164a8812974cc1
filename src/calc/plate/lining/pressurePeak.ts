import type { StiffnessInput } from '../../../../shared/words/bending/stiffness.ts';
import type { CoverField } from '../field.ts';
import { CLOSEST } from '../model/coverMesh.ts';
import type { CoverModel } from '../model/coverModel.ts';

export interface PressurePeak {
  readonly peakMPa: number;
  /** Over the mean. */
  readonly peakOverMean: number;
  readonly radiusMm: number;
  readonly angleRad: number;
}

/** Circles looked at from one line of the mesh to the next: on thin walls the greatest lies between two lines. */
const CIRCLES = 4;

/**
 * Where the lining presses hardest: on every ray of the mesh, at its lines over the friction surface and at three circles between
 * each two.   peak ÷ mean, mean = F/(π·(r_o² − r_i²))
 *
 * F piston's force [N] · r_o, r_i friction surface radii [mm].
 * Valid: as the model.   Source: this program’s own model
 * Example: the example’s cover (tests/calc/plate/bendCover.test.ts)
 */
export function pressurePeak(
  input: Pick<StiffnessInput, 'rimDiameterMm' | 'trackInnerDiameterMm' | 'trackOuterDiameterMm'>,
  { mesh, forces }: CoverModel,
  field: CoverField,
): PressurePeak {
  // Of lines that nearly met one was kept: an edge of the track may lie so far off.
  const dust = (CLOSEST * input.rimDiameterMm) / 2;
  const lines = mesh.radiiMm.filter(
    (r) => r > input.trackInnerDiameterMm / 2 - dust && r < input.trackOuterDiameterMm / 2 + dust,
  );
  let [peakMPa, radiusMm, angleRad] = [-1, 0, 0];
  for (let i = 0; i <= CIRCLES * (lines.length - 1); i++) {
    const [line, part] = [Math.floor(i / CIRCLES), (i % CIRCLES) / CIRCLES];
    const r = part === 0 ? lines[line]! : (1 - part) * lines[line]! + part * lines[line + 1]!;
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
