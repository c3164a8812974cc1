import type { NextPass } from '../../../shared/words/afterCut.ts';
import type { CoverCheck, CoverCheckInput, Station } from '../../../shared/words/cover.ts';
import { type Place, stationAt } from '../../../shared/words/places.ts';
import { type LengthUnit, printAgainst, printLength } from '../../../shared/words/print.ts';
import { checkCover } from '../cover/checkCover.ts';
import { wallsLeftBy } from '../cover/face/wallsLeftBy.ts';
import { printCut, printRoom, printSure } from './coverWords.ts';

const TOLERANCE_MM = 1e-9;
/** A cut is dialled to a thousandth of a millimetre, or a ten-thousandth of an inch. */
export const DIAL_MM = 0.003;

export interface PassMade {
  /** What the decision rested on, before any cut. */
  readonly decided: CoverCheckInput;
  readonly plannedMm: number;
  /** All passes together, from first touch. */
  readonly cutMm: number;
  /** The darkened layer as seen after the last pass. */
  readonly look: 'gone' | 'dark' | null;
  /** Read since the last pass, walls or none at a place; the depth of a mark is what is still dark. */
  readonly after: readonly Station[];
}

/** The cover as the passes so far left it. */
export interface AsCut {
  /** The wall the cut made should have left at each station of the decision. */
  readonly wallsMm: readonly number[];
  /** By the walls measured since where there are any, nothing more cut; else by those before the cut, less the cut. */
  readonly stands: CoverCheck;
}

/**
 * Cut, look, plan again: what a pass showed, and whether another still leaves the minimum. The depth of a darkened
 * layer is known only as it is cut, so after each pass it is worked out anew, from the walls measured since where there
 * are any, else from those before the cut less what was cut.
 *
 *   next = max dᵢ + ε where what is still dark was read, else what is left of the plan;   room = min tᵢ − t_min
 *
 * d depth still dark · ε clean-up allowance · t wall now, t_min minimum [mm].
 * Valid: the cover stays in the chuck it was cut in, so that the new face lies square to the axis (zᵢ = 0) where no
 * heights were read. Source: calculations of the clean-up cut, applied to what is left
 * Throws: a Refusal, as checkCover, of readings that cannot be worked with.
 * Example: walls 4.5, still dark by 0.08, allowance 0.05 → 0.13, leaves 4.37 (tests/calc/judge/nextPass.test.ts)
 */
export function nextPass(made: PassMade, unit: LengthUnit, cut: AsCut = asCut(made, unit)): NextPass {
  const { decided, plannedMm, cutMm, look } = made;
  const face = faceNow(made, cut.wallsMm);
  const depths = [
    ...face.stations.map((one) => one.markDepthMm ?? 0),
    ...face.marks.map((one) => one.depthMm),
  ];
  const known = depths.some((depthMm) => depthMm > TOLERANCE_MM);
  const dark = known || look === 'dark';
  const restMm = plannedMm - cutMm > DIAL_MM ? plannedMm - cutMm : null;
  const now = (over: Partial<CoverCheckInput>) => checkCover({ ...decided, ...face.asInput, ...over }, unit);
  const clean = cleanFace(face, decided);
  const still = cut.stands;
  const wallNowMm = still.leastWall.afterMm;
  const minimum = still.minimumWall;
  const roomMm = minimum && wallNowMm - minimum.mm;
  const measured = face.measured && face.wallRead[still.leastWall.station] === true;
  const stands = { wallNowMm, measured, roomMm };
  const wall = `${minimum ? printAgainst(wallNowMm, minimum.mm, unit) : printLength(wallNowMm, unit)} is ${measured ? 'measured' : 'reckoned'} where it is thinnest${minimum ? `; the minimum is ${printLength(minimum.mm, unit)}` : ', and no minimum is set'}`;
  const none = { nextMm: null, totalMm: null, check: still, ...stands };

  if (roomMm !== null && roomMm < -TOLERANCE_MM) {
    return {
      state: 'stop',
      headline: measured
        ? 'Stop: it is below the minimum.'
        : 'Stop, and measure: it should be below the minimum.',
      because: `${wall}. Do not cut further.`,
      ...none,
    };
  }
  if (!dark && look === null && !measured) {
    return {
      state: 'look',
      headline: 'Look: is the darkened layer gone?',
      because: `${printLength(cutMm, unit)} of ${printLength(plannedMm, unit)} is cut. ${wall}.`,
      ...none,
    };
  }
  if (!dark) {
    const spared =
      restMm === null
        ? ''
        : ` What is left of the plan, ${printLength(restMm, unit)}, need not be cut for it.`;
    return {
      state: 'gone',
      headline: `The darkened layer is gone after ${printLength(cutMm, unit)}${measured ? '' : ': measure it again'}.`,
      because: `${wall}${measured ? sureness(still) : ''}.${spared}`,
      ...none,
    };
  }

  const check = known
    ? now({ plannedCutMm: null })
    : restMm === null
      ? null
      : face.measured
        ? now({ ...clean, plannedCutMm: restMm })
        : checkCover({ ...decided, plannedCutMm: cutMm + restMm }, unit);
  const room = roomMm === null ? '' : ` Up to ${printRoom(roomMm, unit)} more would just leave the minimum.`;
  if (check === null) {
    return {
      state: 'plan-again',
      headline: 'Still dark, and the planned cut is used up.',
      because: `${wall}.${room} Read how deep it is still dark, and the walls, and what is needed is worked out here.`,
      ...none,
    };
  }
  const nextMm = known ? check.cut.dialledMm : restMm!;
  const totalMm = cutMm + nextMm;
  const next = { nextMm, totalMm, check, ...stands };
  const leaves = `leaves ${printLength(check.leastWall.afterMm, unit)} where it is thinnest${minimum ? `; the minimum is ${printLength(minimum.mm, unit)}` : ''}`;
  if (minimum && check.leastWall.afterMm < minimum.mm - TOLERANCE_MM) {
    return {
      state: 'stop',
      headline: 'Stop: still dark, and another pass would not leave the minimum.',
      because: `The ${printCut(nextMm, unit)} it still needs ${leaves}.${room}`,
      ...next,
    };
  }
  if (check.verdict === 'measure-again') {
    return {
      state: 'measure-again',
      headline: 'Still dark: measure again before the next pass.',
      because: check.because,
      ...next,
    };
  }
  if (totalMm > plannedMm + DIAL_MM) {
    return {
      state: 'plan-again',
      headline: `Still dark: it needs ${printCut(nextMm, unit)} more, and that is more than was decided.`,
      because: `${printCut(totalMm, unit)} in all; ${printCut(plannedMm, unit)} was decided. It ${leaves}${sureness(check)}. Plan that cut and decide again before it is made.`,
      ...next,
    };
  }
  return {
    state: 'cut-more',
    headline: `Still dark: cut ${printCut(nextMm, unit)} more.`,
    because: `That ${leaves}${sureness(check)}.`,
    ...next,
  };
}

/**
 * The cover as the passes so far left it: as the cut should have left it, and as it was measured since.
 * Throws: a Refusal, as checkCover, of readings that cannot be worked with.
 */
export function asCut(made: PassMade, unit: LengthUnit): AsCut {
  const wallsMm = wallsLeftBy(made.decided.stations, made.cutMm);
  return { wallsMm, stands: asItStands(made, faceNow(made, wallsMm), unit) };
}

type FaceNow = ReturnType<typeof faceNow>;

/** Its walls alone: nothing is left to clean. */
function cleanFace({ stations }: FaceNow, { criteria }: CoverCheckInput) {
  return { stations: bare(stations), marks: [], criteria: exactly(criteria) };
}

function asItStands({ decided, cutMm }: PassMade, face: FaceNow, unit: LengthUnit): CoverCheck {
  if (!face.measured) return checkCover({ ...decided, plannedCutMm: cutMm }, unit);
  const { gauge } = decided;
  // The uncertainty of a measured wall contains neither that of the cut's setting nor the indicator's.
  const ofWall = { cutSettingStandardUncertaintyMm: 0, faceStandardUncertaintyMm: 0 };
  return checkCover(
    {
      ...decided,
      ...cleanFace(face, decided),
      gauge: gauge && face.wallRead.every((read) => read) ? { ...gauge, ...ofWall } : gauge,
      plannedCutMm: 0,
    },
    unit,
  );
}

/**
 * The face as it now is: what was read since the pass, and where a wall was not read what the cut should have left. It
 * is square to the axis it was turned about, unless heights were read everywhere.
 */
function faceNow({ after, decided }: PassMade, wallsMm: readonly number[]) {
  const here = (place: Place) => stationAt(after, place);
  const elsewhere = after.filter((one) => stationAt(decided.stations, one) === undefined);
  const more = elsewhere.filter((one) => one.wallMm.length > 0);
  const heights = [...decided.stations.map(here), ...more].every((one) => (one?.faceMm ?? null) !== null);
  const read = decided.stations.map((place, i) => {
    const found = here(place);
    return {
      angleDeg: place.angleDeg,
      radiusMm: place.radiusMm,
      wallMm: found && found.wallMm.length > 0 ? found.wallMm : [wallsMm[i]!],
      faceMm: heights ? found!.faceMm : 0,
      markDepthMm: found?.markDepthMm ?? null,
    };
  });
  const stations = [...read, ...more.map((one) => ({ ...one, faceMm: heights ? one.faceMm : 0 }))];
  const marks = elsewhere.flatMap(({ angleDeg, radiusMm, wallMm, markDepthMm }) =>
    wallMm.length === 0 && markDepthMm !== null ? [{ angleDeg, radiusMm, depthMm: markDepthMm }] : [],
  );
  return {
    stations,
    marks,
    asInput: { stations, marks },
    measured: after.some((one) => one.wallMm.length > 0),
    wallRead: [
      ...decided.stations.map((place) => (here(place)?.wallMm.length ?? 0) > 0),
      ...more.map(() => true),
    ],
  };
}

function bare(stations: readonly Station[]): readonly Station[] {
  return stations.map((station) => ({ ...station, faceMm: 0, markDepthMm: null }));
}

/** Nothing more is cut, so nothing is to be cleaned. */
function exactly(criteria: CoverCheckInput['criteria']): CoverCheckInput['criteria'] {
  const none = {
    minimumWallMm: null,
    minimumWallSource: null,
    faceRunoutLimitMm: null,
    confidence: null,
    typicalCutMm: null,
  };
  return { ...none, ...criteria, cleanUpAllowanceMm: 0 };
}

function sureness({ conformanceProbability: share }: CoverCheck): string {
  if (share === null) return '';
  return `, ${printSure(share)} sure of it everywhere`;
}
