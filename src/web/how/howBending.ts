import { setImmediate as otherRequests } from 'node:timers/promises';
import { CHECKED, COVER } from '../../../data/examples/bentCover.ts';
import type {
  BentAtFineness,
  BentBeside,
  HowBendingProps,
} from '../../../views/parts/how/howBendingPart.tsx';
import { solveCover } from '../../calc/plate/solveCover.ts';
import { bend } from '../../shop/bending/bendings.ts';

const FINENESS = [0.5, 0.75, 1, 1.5, 2];
const ROUND = 96;

/** The example of the bending page: beside the requests, and the other meshes in pieces of a tenth of a second. */
export async function bendingExample(): Promise<Omit<HowBendingProps, 'unit'>> {
  const answers = await Promise.all(
    CHECKED.map(({ piston, trackWallMm, speedRpm }) => bend({ ...COVER, piston, trackWallMm, speedRpm })),
  );
  const rows = CHECKED.map((checked, i): BentBeside => {
    const { peakOverMean, rippleMm, bossDeflectionMm } = answers[i]!;
    return { checked, peak: peakOverMean, rippleUm: 1000 * rippleMm, bossMm: bossDeflectionMm };
  });
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
