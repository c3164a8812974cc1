import type { Answer } from '../../../../shared/words/answer.ts';
import { turned } from '../../../../shared/words/places.ts';
import { printNumber } from '../../../../shared/words/print.ts';
import { type Limit, linearProgramme } from '../../measure/linearProgramme.ts';
import { placeOnFace } from '../measuredStations.ts';

/** A place the cut must clean; `wallMm` null for a mark between stations, which only limits the tool plane. */
export interface FacePlace {
  readonly xMm: number;
  readonly yMm: number;
  readonly heightMm: number;
  readonly depthMm: number;
  readonly wallMm: number | null;
}

export interface DialledIn {
  readonly wallGainedMm: number;
  readonly leastWallMm: number;
  readonly tiltMm: number;
  readonly tiltDirectionDeg: number | null;
  readonly shimsMm: readonly number[];
  readonly dialledMm: number;
  readonly answer: Answer;
}

/** The limit on tilt is a circle; a polygon with so many sides inside it uses at worst 0.12 % less tilt. */
const SIDES = 64;
/** Least walls this near to the best count as equal, and the smallest tilt among them is taken. */
const AS_GOOD_MM = 1e-7;

/**
 * The tilt of the cover on its pads that leaves most wall when the face is just cleaned.
 *   most w with  w ≤ tᵢ − zᵢ + a xᵢ + b yᵢ + c,  a x + b y + c ≤ z − d − ε,  √(a² + b²) ≤ τ/D;  then least √(a² + b²)
 *
 * a, b slopes and c height of the tool plane on the cover · t wall, z height, d mark depth, ε allowance [mm] ·
 * τ runout allowed in the face after the cut, over D, the friction surface's outer diameter [mm].
 * Shim under pad p: max over pads of (a x + b y) − (a x_p + b y_p), pads on the bolt circle.
 * Valid: pads and pilot trued in the chuck, face indicated, small tilts. The direction is where the tool plane is
 * highest on the cover.   Source: first principles; a linear program (ISO 12781-1 uses the same for flatness)
 * Example: design set two, τ 0.10 → 0.084 gained toward 247.5° (tests/calc/cover/face/dialledIn.test.ts)
 */
export function dialledIn({
  places,
  allowanceMm,
  runoutLimitMm,
  trackOuterDiameterMm,
  studCount,
  studCircleDiameterMm,
}: {
  readonly places: readonly FacePlace[];
  readonly allowanceMm: number;
  readonly runoutLimitMm: number;
  readonly trackOuterDiameterMm: number;
  readonly studCount: number;
  readonly studCircleDiameterMm: number;
}): DialledIn {
  const cleaned = (a: number, b: number) => leftBy({ places, allowanceMm, a, b });
  const chucked = cleaned(0, 0);
  const steepest = runoutLimitMm / trackOuterDiameterMm;
  let [a, b] = bestTilt(places, allowanceMm, steepest);
  if (!(cleaned(a, b).leastWallMm - chucked.leastWallMm > 2 * AS_GOOD_MM)) [a, b] = [0, 0];

  const best = cleaned(a, b);
  const slope = Math.hypot(a, b);
  const pads = Array.from({ length: studCount }, (_, i) => {
    const { xMm, yMm } = placeOnFace((360 * i) / studCount, studCircleDiameterMm / 2);
    return a * xMm + b * yMm;
  });
  const [tiltMm, gained] = [slope * trackOuterDiameterMm, best.leastWallMm - chucked.leastWallMm];
  const direction = slope === 0 ? null : turned((Math.atan2(b, a) * 180) / Math.PI);
  const mm = (x: number) => printNumber(x, 4);
  return {
    wallGainedMm: gained,
    leastWallMm: best.leastWallMm,
    tiltMm,
    tiltDirectionDeg: direction,
    shimsMm: pads.map((pad) => Math.max(...pads) - pad),
    dialledMm: best.dialledMm,
    answer: {
      symbol: 'Δt',
      value: gained,
      unit: 'mm',
      how: [
        {
          formula: 'most min(tᵢ − zᵢ + a·xᵢ + b·yᵢ + c), cleaned everywhere, √(a² + b²) ≤ τ/D',
          numbers: `tilt ${mm(tiltMm)} mm of ${mm(runoutLimitMm)} mm allowed${direction === null ? '' : `, toward ${printNumber(direction, 1)}°`}: ${mm(best.leastWallMm)} − ${mm(chucked.leastWallMm)} = ${mm(gained)} mm`,
          source: 'first principles; solved as a linear program',
        },
      ],
      warnings: [],
    },
  };
}

/** With the tilt fixed, the tool plane just cleans the deepest mark: what that leaves, and the cut to dial. */
function leftBy({
  places,
  allowanceMm,
  a,
  b,
}: {
  readonly places: readonly FacePlace[];
  readonly allowanceMm: number;
  readonly a: number;
  readonly b: number;
}) {
  const over = (p: FacePlace) => p.heightMm - a * p.xMm - b * p.yMm;
  const c = Math.min(...places.map((p) => over(p) - p.depthMm)) - allowanceMm;
  const stations = places.filter((p) => p.wallMm !== null);
  return {
    leastWallMm: Math.min(...stations.map((p) => p.wallMm! - over(p) + c)),
    dialledMm: Math.max(...stations.map(over)) - c,
  };
}

function bestTilt(places: readonly FacePlace[], allowanceMm: number, steepest: number): [number, number] {
  if (steepest === 0) return [0, 0];
  // Scaled for the solver: slopes by the steepest allowed, heights and walls by what that slope does over the face.
  const reach = steepest * Math.max(...places.map((p) => Math.hypot(p.xMm, p.yMm)));
  const wall0 = Math.min(...places.flatMap((p) => (p.wallMm === null ? [] : [p.wallMm - p.heightMm])));
  const clean0 = Math.min(...places.map((p) => p.heightMm - p.depthMm - allowanceMm));
  const plane = (p: FacePlace, sign: number) => ({
    a: (sign * steepest * p.xMm) / reach,
    b: (sign * steepest * p.yMm) / reach,
    c: sign,
  });
  const face: Limit[] = places.flatMap((p) => [
    { of: plane(p, 1), atMost: (p.heightMm - p.depthMm - allowanceMm - clean0) / reach },
    ...(p.wallMm === null
      ? []
      : [{ of: { ...plane(p, -1), w: 1 }, atMost: (p.wallMm - p.heightMm - wall0) / reach }]),
  ]);
  const inside = Math.cos(Math.PI / SIDES);
  const round = (limit: Limit): Limit[] =>
    Array.from({ length: SIDES }, (_, k) => {
      const angle = ((2 * k + 1) * Math.PI) / SIDES;
      return { ...limit, of: { ...limit.of, a: Math.cos(angle), b: Math.sin(angle) } };
    });
  const most = linearProgramme({
    goal: { w: 1 },
    direction: 'maximize',
    limits: [...face, ...round({ of: {}, atMost: inside })],
  });
  if (most === null) return [0, 0];
  const least = linearProgramme({
    goal: { tilt: 1 },
    direction: 'minimize',
    limits: [
      ...face,
      ...round({ of: { tilt: -inside }, atMost: 0 }),
      { of: { tilt: 1 }, atMost: 1 },
      { of: { w: 1 }, atLeast: most.w! - AS_GOOD_MM / reach },
    ],
  });
  const { a, b } = least ?? most;
  return [a! * steepest, b! * steepest];
}
