import { setImmediate as otherRequests } from 'node:timers/promises';
import { CHECKED, COVER } from '../../../data/examples/bentCover.ts';
import { SOLID, SOLID_RINGS, type SolidFound, solidRing } from '../../../data/examples/solidCovers.ts';
import type { StiffnessAnswer, StiffnessInput } from '../../../shared/words/bending/stiffness.ts';
import type { Bent, BentAtFineness, BentBeside } from '../../../views/parts/how/bending/exampleTables.tsx';
import type { HowBendingProps } from '../../../views/parts/how/bending/howBendingPart.tsx';
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
    const { piston, trackWallMm, speedRpm } = checked;
    return { ...bentOf(answers[i]!), checked: { piston, trackWallMm, speedRpm, ...bentChecked(checked) } };
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
      rippleMm: Math.max(...round) - Math.min(...round),
      centerMm: pressed.w[model.boss]!,
    });
  }
  const { solid, rings } = await besideSolid();
  return { cover: COVER, rows, finer, full: answers[2]!, thin: answers[3]!, solid, rings };
}

function bentOf(answer: StiffnessAnswer): Bent {
  const { peakOverMean: peak, rippleMm, bossDeflectionMm: centerMm } = answer;
  return { peak, rippleMm, centerMm };
}

function bentChecked({ peak, rippleUm, bossMm }: SolidFound): Bent {
  return { peak, rippleMm: rippleUm / 1000, centerMm: bossMm };
}

/** Every cover of the solid model, new and cut, and its rings. */
async function besideSolid(): Promise<Pick<HowBendingProps, 'solid' | 'rings'>> {
  const bent = async (input: StiffnessInput) => bentOf(await bend(input));
  const solid = SOLID.flatMap(({ cover, cutMm, ...theirs }, i) =>
    (['fresh', 'cut'] as const).map(async (state) => {
      const trackWallMm = state === 'cut' ? cutMm : cover.wallMm;
      const found = await bent({ ...cover, trackWallMm });
      const name = `${i + 1}, ${state === 'cut' ? 'cut' : 'new'}`;
      return { name, studCount: cover.studCount, trackWallMm, found, solid: bentChecked(theirs[state]) };
    }),
  );
  const rings = SOLID_RINGS.map(async (theirs, i) => {
    const one = SOLID[i]!;
    const cut = { ...one.cover, trackWallMm: one.cutMm };
    const bare = await bent(cut);
    const shares = async (bonded: boolean) => {
      const found = await bent({ ...cut, ring: { ...solidRing(one), bonded, joinedToPads: true } });
      return {
        ripple: found.rippleMm / bare.rippleMm,
        center: found.centerMm / bare.centerMm,
        peak: found.peak / bare.peak,
      };
    };
    const named = ({ ripple, boss, peak }: typeof theirs.joined) => ({ ripple, center: boss, peak });
    return {
      name: String(i + 1),
      bonded: await shares(true),
      unbonded: await shares(false),
      joined: named(theirs.joined),
      apart: named(theirs.apart),
    };
  });
  return { solid: await Promise.all(solid), rings: await Promise.all(rings) };
}
