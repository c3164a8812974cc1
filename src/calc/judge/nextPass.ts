import type { NextPass } from '../../../shared/words/afterCut.ts';
import type { CoverCheckInput, MeasuredCheck, Station } from '../../../shared/words/cover.ts';
import { printCut, printRoom, printSure } from '../../../shared/words/cut.ts';
import { type Place, stationAt } from '../../../shared/words/places.ts';
import { type LengthUnit, printAgainst, printLength } from '../../../shared/words/print.ts';
import { checkCover } from '../cover/checkCover.ts';
import { wallsLeftBy } from '../cover/face/wallsLeftBy.ts';

const TOLERANCE_MM = 1e-9;
/** A cut is dialled to a thousandth of a millimeter, or a ten-thousandth of an inch. */
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
  readonly stands: MeasuredCheck;
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
  const now = asItIs(made, cut, unit);
  const { stands, roomMm } = now;
  if (roomMm !== null && roomMm < -TOLERANCE_MM) {
    return {
      ...nothingMore(now),
      state: 'stop',
      headline: stands.measured
        ? 'Stop: the wall is below the minimum.'
        : 'Stop and measure: the wall is expected below the minimum.',
      because: `${now.wall}. Do not cut any more.`,
    };
  }
  return now.dark ? stillDark(made, now, unit) : clean(made, now, unit);
}

/** What is known after the last pass, before anything is said of another. */
interface Now {
  readonly face: FaceNow;
  readonly check: MeasuredCheck;
  readonly dark: boolean;
  /** Whether the depth of what is still dark was read. */
  readonly darkRead: boolean;
  /** What is left of the decided cut; null where nothing is. */
  readonly restMm: number | null;
  readonly roomMm: number | null;
  readonly stands: Pick<NextPass, 'wallNowMm' | 'measured' | 'roomMm'>;
  /** "4.500 mm is measured at the thinnest station; the minimum is 4.300 mm". */
  readonly wall: string;
}

function asItIs(made: PassMade, cut: AsCut, unit: LengthUnit): Now {
  const { plannedMm, cutMm, look } = made;
  const face = faceNow(made, cut.wallsMm);
  const depths = [
    ...face.stations.map((one) => one.markDepthMm ?? 0),
    ...face.marks.map((one) => one.depthMm),
  ];
  const darkRead = depths.some((depthMm) => depthMm > TOLERANCE_MM);
  const check = cut.stands;
  const wallNowMm = check.leastWall.afterMm;
  const minimum = check.minimumWall;
  const roomMm = minimum && wallNowMm - minimum.mm;
  const measured = face.measured && face.wallRead[check.leastWall.station] === true;
  const wall = minimum ? printAgainst(wallNowMm, minimum.mm, unit) : printLength(wallNowMm, unit);
  const limit = minimum ? `the minimum is ${printLength(minimum.mm, unit)}` : 'no minimum is set';
  return {
    face,
    check,
    dark: darkRead || look === 'dark',
    darkRead,
    restMm: plannedMm - cutMm > DIAL_MM ? plannedMm - cutMm : null,
    roomMm,
    stands: { wallNowMm, measured, roomMm },
    wall: `${wall} is ${measured ? 'measured' : 'expected'} at the thinnest station; ${limit}`,
  };
}

function nothingMore({ check, stands }: Now) {
  return { nextMm: null, totalMm: null, check, ...stands };
}

/** Nothing dark was read or seen: either nobody looked yet, or the heat mark is gone. */
function clean({ plannedMm, cutMm, look }: PassMade, now: Now, unit: LengthUnit): NextPass {
  const { measured } = now.stands;
  if (look === null && !measured) {
    return {
      ...nothingMore(now),
      state: 'look',
      headline: 'Look: is the heat mark gone?',
      because: `${printLength(cutMm, unit)} of ${printCut(plannedMm, unit)} is cut. ${now.wall}.`,
    };
  }
  const spared =
    now.restMm === null
      ? ''
      : ` The remaining ${printLength(now.restMm, unit)} of the decided cut is not needed.`;
  return {
    ...nothingMore(now),
    state: 'gone',
    headline: `The heat mark is gone after ${printLength(cutMm, unit)}${measured ? '' : ': measure again'}.`,
    because: `${now.wall}${measured ? sureness(now.check) : ''}.${spared}`,
  };
}

function mayCut(room: string): string {
  return Number.parseFloat(room) > 0 ? `At most ${room} more can be cut.` : 'No more can be cut.';
}

function stillDark(made: PassMade, now: Now, unit: LengthUnit): NextPass {
  const { plannedMm, cutMm } = made;
  const { roomMm, restMm, stands } = now;
  const room = roomMm === null ? '' : ` ${mayCut(printRoom(roomMm, unit))}`;
  const check = checkOfNext(made, now, unit);
  if (check === null) {
    return {
      ...nothingMore(now),
      state: 'plan-again',
      headline: 'Heat mark remaining, and the decided cut is used up.',
      because: `${now.wall}.${room} Measure the walls and the depth of the mark to see what is needed.`,
    };
  }
  const nextMm = now.darkRead ? check.cut.dialledMm : restMm!;
  const totalMm = cutMm + nextMm;
  const next = { nextMm, totalMm, check, ...stands };
  const minimum = now.check.minimumWall;
  const limit = minimum ? `; the minimum is ${printLength(minimum.mm, unit)}` : '';
  const leaves = `leaves ${printLength(check.leastWall.afterMm, unit)} at the thinnest station${limit}`;
  if (minimum && check.leastWall.afterMm < minimum.mm - TOLERANCE_MM) {
    return {
      ...next,
      state: 'stop',
      headline: 'Stop: heat mark remaining, and another pass would go below the minimum.',
      because: `The ${printCut(nextMm, unit)} it still needs ${leaves}.${room}`,
    };
  }
  if (check.verdict === 'measure-again') {
    return {
      ...next,
      state: 'measure-again',
      headline: 'Heat mark remaining: measure again before the next pass.',
      because: check.because,
    };
  }
  if (totalMm > plannedMm + DIAL_MM) {
    return {
      ...next,
      state: 'plan-again',
      headline: `Heat mark remaining: it needs ${printCut(nextMm, unit)} more, which is more than was decided.`,
      because: `That makes ${printCut(totalMm, unit)} in all; ${printCut(plannedMm, unit)} was decided. It ${leaves}${sureness(check)}. Change the cut and decide again first.`,
    };
  }
  return {
    ...next,
    state: 'cut-more',
    headline: `Heat mark remaining: cut ${printCut(nextMm, unit)} more.`,
    because: `That ${leaves}${sureness(check)}.`,
  };
}

/** The cover after another pass: down to what was read dark, else the rest of the decided cut; null with none left. */
function checkOfNext({ decided, cutMm }: PassMade, now: Now, unit: LengthUnit): MeasuredCheck | null {
  const { face, darkRead, restMm } = now;
  const next = (over: Partial<CoverCheckInput>) => checkCover({ ...decided, ...face.asInput, ...over }, unit);
  if (darkRead) return next({ plannedCutMm: null });
  if (restMm === null) return null;
  return face.measured
    ? next({ ...cleanFace(face, decided), plannedCutMm: restMm })
    : checkCover({ ...decided, plannedCutMm: cutMm + restMm }, unit);
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

/**
 * What the cover is worked out from as the passes so far left it, and whether every wall was read since.
 *
 * Lengths [mm]. Valid: a decision with a wall measured before the cut.
 * Source: calculations of this program, as `asCut`
 * Example: decided at 4.90, cut 0.25, read 4.66 everywhere since → stations of 4.66, nothing more to cut
 * (tests/calc/judge/nextPass.test.ts)
 */
export function inputAsItStands(made: PassMade): {
  readonly input: CoverCheckInput;
  readonly measured: boolean;
} {
  const face = faceNow(made, wallsLeftBy(made.decided.stations, made.cutMm));
  return { input: inputOf(made, face), measured: face.wallRead.every((read) => read) };
}

/** Its walls alone: nothing is left to clean. */
function cleanFace({ stations }: FaceNow, { criteria }: CoverCheckInput) {
  return { stations: bare(stations), marks: [], criteria: exactly(criteria) };
}

function asItStands(made: PassMade, face: FaceNow, unit: LengthUnit): MeasuredCheck {
  return checkCover(inputOf(made, face), unit);
}

function inputOf({ decided, cutMm }: PassMade, face: FaceNow): CoverCheckInput {
  if (!face.measured) return { ...decided, plannedCutMm: cutMm };
  const { gauge } = decided;
  // The uncertainty of a measured wall contains neither that of the cut's setting nor the indicator's.
  const ofWall = { cutSettingStandardUncertaintyMm: 0, faceStandardUncertaintyMm: 0 };
  return {
    ...decided,
    ...cleanFace(face, decided),
    gauge: gauge && face.wallRead.every((read) => read) ? { ...gauge, ...ofWall } : gauge,
    plannedCutMm: 0,
  };
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

function sureness({ conformanceProbability: share }: MeasuredCheck): string {
  if (share === null) return '';
  return `; ${printSure(share)} sure that no station is below it`;
}
