import type { RingSize, StiffnessInput } from '../../shared/words/bending/stiffness.ts';

/** What the solid model finds of one cover. */
export interface SolidFound {
  readonly rippleUm: number;
  readonly bossMm: number;
  readonly peak: number;
}

export interface SolidCover {
  /** With the wall it had when new. */
  readonly cover: StiffnessInput;
  /** On the track, after the cut. */
  readonly cutMm: number;
  readonly fresh: SolidFound;
  readonly cut: SolidFound;
}

/** As shares of the same cut cover without a ring. */
interface SolidShares {
  readonly ripple: number;
  readonly boss: number;
  readonly peak: number;
}

const ROWS = [
  [
    [3, 90, 268, 168, 226, 244, 22, 11.7, 3.85, 3.09, 3.41, 56, 46, 0.52, 32],
    [11.94, 1.0138, 1.323],
    [15.72, 1.0453, 1.486],
  ],
  [
    [4, 76, 270, 164, 214, 242, 22, 11.5, 4.81, 3.64, 4.41, 62, 43, 0.59, 30],
    [6.93, 0.7757, 1.137],
    [9.86, 0.7903, 1.214],
  ],
  [
    [6, 72, 246, 142, 196, 218, 29, 11.0, 3.43, 2.85, 3.4, 48, 51, 0.33, 66],
    [11.11, 0.6116, 1.99],
    [13.3, 0.6294, 2.3],
  ],
  [
    [4, 110, 322, 236, 284, 302, 22, 15.5, 5.82, 4.72, 4.78, 80, 53, 0.6, 72],
    [4.27, 0.6218, 1.146],
    [5.73, 0.6319, 1.213],
  ],
  [
    [6, 96, 318, 206, 262, 292, 22, 9.6, 5.39, 4.76, 4.13, 74, 43, 0.85, 66],
    [5.57, 1.5301, 1.182],
    [6.62, 1.5418, 1.224],
  ],
] as const;

/**
 * Covers that a three-dimensional solid model was run on, conforming piston (an independent second implementation, not
 * published: 27-node elements, half a sector, round pads joined to the wall on the engine side, the side wall a cylinder
 * clamped at its foot, cut on the lining side). A mesh 1.4 times finer moves its ripple by less than 1 %, its center by
 * 0.2 %; a second program on the same meshes its center by 0.4 %, its ripple by 1 to 3 %.
 */
export const SOLID: readonly SolidCover[] = ROWS.map(([sizes, fresh, cut]) => {
  const [studCount, boss, rim, inner, outer, circle, pad, thick, wallMm, cutMm, side, seal, hub, p, k] =
    sizes;
  const found = ([rippleUm, bossMm, peak]: readonly [number, number, number]) => ({ rippleUm, bossMm, peak });
  return {
    cover: {
      studCount,
      bossDiameterMm: boss,
      rimDiameterMm: rim,
      trackInnerDiameterMm: inner,
      trackOuterDiameterMm: outer,
      studCircleDiameterMm: circle,
      padDiameterMm: pad,
      padThicknessMm: thick,
      wallMm,
      trackWallMm: wallMm,
      sideWallMm: side,
      pistonSealDiameterMm: seal,
      hubDiameterMm: hub,
      pressureMPa: p,
      liningModulusMPaPerMm: k,
      piston: 'conforming',
      youngMPa: 206_000,
      poisson: 0.29,
      speedRpm: null,
      yieldMPa: null,
      ring: null,
      padInsetWalls: null,
      peakLimit: null,
    },
    cutMm,
    fresh: found(fresh),
    cut: found(cut),
  };
});

/**
 * The first two of them cut, with a ring (the same solid model, with square pads of the same area): joined all over and
 * to the pads; and welded at its edges only, 3 mm wide, with 1 mm of air round the pads, where the ripple is reversed:
 * the track moves more behind the studs.
 */
export const SOLID_RINGS: readonly { readonly joined: SolidShares; readonly apart: SolidShares }[] = [
  { joined: { ripple: 0.51, boss: 0.67, peak: 0.88 }, apart: { ripple: 0.61, boss: 0.72, peak: 0.78 } },
  { joined: { ripple: 0.39, boss: 0.64, peak: 0.92 }, apart: { ripple: 1.09, boss: 0.71, peak: 0.92 } },
];

/** The ring of those: 6 mm, from 1 mm outside the track to 3 mm inside the rim. */
export function solidRing({ cover }: SolidCover): RingSize {
  return {
    innerDiameterMm: cover.trackOuterDiameterMm + 2,
    outerDiameterMm: cover.rimDiameterMm - 6,
    thicknessMm: 6,
  };
}
