import { setImmediate as otherRequests } from 'node:timers/promises';
import { CHECKED, COVER } from '../../data/examples/bentCover.ts';
import type { StiffnessAnswer } from '../../shared/words/stiffness.ts';
import type { BentAtFineness, BentBeside, HowBendingProps } from '../../views/parts/howBending.tsx';
import { bendCover } from '../calc/plate/bendCover.ts';
import { solveCover } from '../calc/plate/solveCover.ts';

const FINENESS = [0.5, 0.75, 1, 1.5, 2];
const ROUND = 96;

/** The example of the bending page, worked out in pieces of a tenth of a second, so that nobody else waits for it. */
export async function bendingExample(): Promise<Omit<HowBendingProps, 'unit'>> {
  const rows: BentBeside[] = [];
  const answers: StiffnessAnswer[] = [];
  for (const checked of CHECKED) {
    await otherRequests();
    const { piston, trackWallMm, speedRpm } = checked;
    const found = bendCover({ ...COVER, piston, trackWallMm, speedRpm });
    answers.push(found);
    rows.push({
      checked,
      peak: found.peakOverMean,
      rippleUm: 1000 * found.rippleMm,
      bossMm: found.bossDeflectionMm,
    });
  }
  const finer: BentAtFineness[] = [];
  for (const fineness of FINENESS) {
    await otherRequests();
    const { model, pressed, field, peak } = solveCover({ ...COVER, piston: 'conforming' }, fineness);
    const middleMm = (COVER.trackInnerDiameterMm + COVER.trackOuterDiameterMm) / 4;
    const round = Array.from({ length: ROUND + 1 }, (_, i) =>
      field.deflectionMm(middleMm, (Math.PI / COVER.studCount) * (i / ROUND)),
    );
    finer.push({
      fineness,
      unknowns: model.freedoms.size,
      peak: peak.peakOverMean,
      rippleUm: 1000 * (Math.max(...round) - Math.min(...round)),
      bossMm: pressed.w[model.boss]!,
    });
  }
  return { cover: COVER, rows, finer, full: answers[2]!, thin: answers[3]! };
}
