import type { CoverShape } from '../../../shared/words/cover.ts';
import { printCut, printRequired, printSure } from '../../../shared/words/cut.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { type Place, stationAt } from '../../../shared/words/places.ts';
import { type LengthUnit, listInWords, printAgainst, printLength } from '../../../shared/words/print.ts';
import type { WhatStops } from '../../../shared/words/whatStops.ts';
import { tiltOverTrack } from '../cover/face/tiltOverTrack.ts';
import { stationPlace } from './coverWords.ts';
import { DIAL_MM } from './nextPass.ts';
import { notConfirmed } from './readingFindings.ts';
import { weigh } from './weigh.ts';

const TOLERANCE_MM = 1e-9;
const RAD = Math.PI / 180;

export interface StationAfter extends Place {
  /** Mean of the readings after the cut. */
  readonly wallMm: number;
  /** What the cut made should have left here; null where nothing was measured before it. */
  readonly cutWallMm: number | null;
}

export interface CutVerification {
  readonly cover: CoverShape;
  readonly stations: readonly StationAfter[];
  /** Indicator readings after the last pass, whether a wall was read there or not. */
  readonly heights: readonly (Place & { readonly faceMm: number })[];
  /** Whether they were read with pads and crank pilot trued again and shims out; null where nobody said. */
  readonly truedAgain: boolean | null;
  /** Read after the last pass, at stations and between them. */
  readonly marksLeft: readonly (Place & { readonly depthMm: number })[];
  /** Readings after the cut that look like a slip and were not confirmed, as "wall behind stud 2". */
  readonly doubtful: readonly string[];
  /** Probability that the minimum is left everywhere, and what the shop wants; null where it cannot be told. */
  readonly sureness: { readonly share: number; readonly wanted: number } | null;
  /** Where it was measured before the cut. */
  readonly measuredBefore: readonly Place[];
  readonly minimumWall: { readonly mm: number; readonly source: string } | null;
  /** The shop's minimum of today; null where none is set. */
  readonly minimumTodayMm: number | null;
  readonly faceRunoutLimitMm: number | null;
  readonly cleanUpAllowanceMm: number;
  /** Sum of the passes made, and what was decided. */
  readonly dialledMm: number;
  readonly plannedMm: number;
  /** The darkened layer, as seen after the last pass. */
  readonly look: 'gone' | 'dark' | null;
  /** What stops and what warns, where the shop chose otherwise than usual. */
  readonly whatStops?: Partial<WhatStops> | null;
}

/**
 * After the cut: is enough wall left as measured, was more cut than decided, do the walls agree with the cut, is the
 * heat mark gone, does the new face run true, was it measured wherever it was before, and how sure does that make it.
 *
 *   margin = min tᵢ − t_min;   deviation = tᵢ − (wall the cut made leaves)ᵢ;   T = D·√(a² + b²) of the new face
 *
 * Lengths [mm]. A deviation above the clean-up allowance is a caution: the cut or a reading is not what was meant; so
 * is a cut deeper than decided by more than a step of the dial. The new face is judged only where it was indicated at every
 * station, with pads and crank pilot trued again: otherwise the reading shows the lathe.
 * Valid: one station or more. Source: plain comparison; the allowance as the shop set it.
 * Example: the cut leaves 4.50 everywhere, measured 4.51, 4.50, 4.40, allowance 0.05 → caution, 0.10 at the third
 * (tests/calc/judge/verifyCut.test.ts)
 */
export function verifyCut(after: CutVerification, unit: LengthUnit): readonly Finding[] {
  const found = [
    wallAsMeasured(after, unit),
    ...underToday(after, unit),
    ...sureOfWall(after),
    ...inDoubt(after),
    asDecided(after, unit),
    asCut(after, unit),
    ...darkLayer(after, unit),
    ...faceRunout(after, unit),
    everywhere(after),
  ];
  return weigh(found, after.whatStops);
}

function finding(
  id: string,
  title: string,
  rest: Omit<Finding, 'id' | 'title' | 'unit' | 'answer'>,
): Finding {
  return { id, title, unit: 'mm', answer: null, ...rest };
}

/** "behind stud 1 on the inner row", told apart from the other stations. */
function where<P extends Place>(station: P, stations: readonly P[], cover: CoverShape): string {
  return stationPlace(stations, stations.indexOf(station), cover.studCount);
}

/** "at the thinnest station, behind stud 1". */
function thinnestOf({ stations, cover }: CutVerification) {
  const thinnest = stations.reduce((a, b) => (b.wallMm < a.wallMm ? b : a));
  return { wallMm: thinnest.wallMm, where: `at the thinnest station, ${where(thinnest, stations, cover)}` };
}

function wallAsMeasured(after: CutVerification, unit: LengthUnit): Finding {
  const { minimumWall } = after;
  const thinnest = thinnestOf(after);
  const base = { value: thinnest.wallMm, limit: minimumWall?.mm ?? null };
  const title = 'Wall after the cut';
  if (minimumWall === null) {
    return finding('after-wall', title, {
      ...base,
      status: 'not-checked',
      sentence: `Measured ${printLength(thinnest.wallMm, unit)} ${thinnest.where}. No minimum wall is set: advice only.`,
      source: 'none set',
    });
  }
  const short = thinnest.wallMm < minimumWall.mm - TOLERANCE_MM;
  const wall = `Measured ${printAgainst(thinnest.wallMm, minimumWall.mm, unit)} ${thinnest.where}`;
  const minimum = printLength(minimumWall.mm, unit);
  return finding('after-wall', title, {
    ...base,
    status: short ? 'fail' : 'pass',
    sentence: short
      ? `${wall}: below the minimum of ${minimum}. Do not use the cover; measure again, then decide again.`
      : `${wall}; the minimum is ${minimum}.`,
    source: minimumWall.source,
  });
}

function asDecided({ dialledMm, plannedMm }: CutVerification, unit: LengthUnit): Finding {
  const by = dialledMm - plannedMm;
  const deeper = by > DIAL_MM;
  const decided = `Cut ${printLength(dialledMm, unit)}; ${printCut(plannedMm, unit)} was decided`;
  const apart = deeper
    ? `. That is ${printLength(by, unit)} too deep: decide again on what is left before signing.`
    : by < -DIAL_MM
      ? `, and ${printLength(-by, unit)} of it was not needed.`
      : '.';
  return finding('after-depth', 'Depth of cut', {
    status: deeper ? 'caution' : 'pass',
    value: dialledMm,
    limit: plannedMm,
    sentence: `${decided}${apart}`,
    source: 'the decision',
  });
}

function asCut({ stations, cleanUpAllowanceMm, cover }: CutVerification, unit: LengthUnit): Finding {
  const off = stations.flatMap((station) =>
    station.cutWallMm === null ? [] : [{ station, by: station.wallMm - station.cutWallMm }],
  );
  const worst = off.reduce<(typeof off)[number] | null>(
    (a, b) => (a === null || Math.abs(b.by) > Math.abs(a.by) ? b : a),
    null,
  );
  const title = 'Walls against the cut';
  const base = { limit: cleanUpAllowanceMm, source: 'the clean-up allowance' };
  if (worst === null) {
    const sentence = 'No station was measured both before and after the cut, so walls can’t be compared.';
    return finding('after-planned', title, { ...base, status: 'not-checked', value: null, sentence });
  }
  const apart = Math.abs(worst.by) > cleanUpAllowanceMm + TOLERANCE_MM;
  const amount = printLength(Math.abs(worst.by), unit);
  return finding('after-planned', title, {
    ...base,
    status: apart ? 'caution' : 'pass',
    value: worst.by,
    sentence: apart
      ? `The wall ${where(worst.station, stations, cover)} is ${amount} ${worst.by < 0 ? 'thinner' : 'thicker'} than the cut should have left; ${printLength(cleanUpAllowanceMm, unit)} is allowed. Measure it again.`
      : `Every wall is within ${amount} of what the cut should have left.`,
  });
}

/** A minimum raised since the decision does not undo it, but what is signed below it is signed knowingly. */
function underToday(after: CutVerification, unit: LengthUnit): readonly Finding[] {
  const { minimumWall, minimumTodayMm } = after;
  const thinnest = thinnestOf(after);
  if (minimumTodayMm === null || minimumTodayMm <= (minimumWall?.mm ?? 0) + TOLERANCE_MM) return [];
  if (thinnest.wallMm >= minimumTodayMm - TOLERANCE_MM) return [];
  const then = minimumWall === null ? 'none was set' : `it was ${printLength(minimumWall.mm, unit)}`;
  return [
    finding('after-criteria', 'Minimum wall today', {
      status: 'caution',
      value: thinnest.wallMm,
      limit: minimumTodayMm,
      sentence: `Measured ${printAgainst(thinnest.wallMm, minimumTodayMm, unit)} ${thinnest.where}. The shop’s minimum is ${printLength(minimumTodayMm, unit)} today; when decided, ${then}. Decide again.`,
      source: 'shop limits',
    }),
  ];
}

/** The rule of the decision, applied to the walls measured after the cut. */
function sureOfWall({ sureness, minimumWall }: CutVerification): readonly Finding[] {
  if (sureness === null || minimumWall === null) return [];
  const { share, wanted } = sureness;
  const sure = share >= wanted;
  const said = printSure(share);
  return [
    {
      ...finding('after-sure', 'Confidence after the cut', {
        status: sure ? 'pass' : 'caution',
        value: share,
        limit: wanted,
        sentence: `${said.charAt(0).toUpperCase()}${said.slice(1)} sure that no station is below the minimum after the cut; ${printRequired(wanted)} is required.${sure ? '' : ' Measure again.'}`,
        source: 'shop limits; JCGM 106:2012',
      }),
      unit: '',
    },
  ];
}

function inDoubt({ doubtful }: CutVerification): readonly Finding[] {
  if (doubtful.length === 0) return [];
  return [
    {
      ...finding('after-doubtful', 'Readings confirmed after the cut', {
        status: 'caution',
        value: doubtful.length,
        limit: 0,
        sentence: notConfirmed(doubtful),
        source: 'compared with what was expected there',
      }),
      unit: '',
    },
  ];
}

function darkLayer({ marksLeft, cover, look }: CutVerification, unit: LengthUnit): readonly Finding[] {
  const left = marksLeft.filter(({ depthMm }) => depthMm > TOLERANCE_MM);
  if (left.length === 0 && look !== 'dark') return [];
  const deepest = left.length === 0 ? null : Math.max(...left.map(({ depthMm }) => depthMm));
  const places = listInWords([...new Set(left.map((mark) => where(mark, left, cover)))]);
  const what =
    deepest === null
      ? 'Heat mark remaining after the last pass'
      : `Heat mark remaining, up to ${printLength(deepest, unit)} deep ${places}`;
  return [
    finding('after-marks', 'Heat marks after the cut', {
      status: 'caution',
      value: deepest,
      limit: 0,
      sentence: `${what}. Change the cut before signing.`,
      source: 'the face must be clean',
    }),
  ];
}

/**
 * Runout of the new face: tilt of the least-squares plane × outer diameter of the friction surface. Nothing is found
 * where the shop has no limit and nobody read the face; with a limit, an unread face is not checked.
 */
function faceRunout(after: CutVerification, unit: LengthUnit): readonly Finding[] {
  const { heights, cover, faceRunoutLimitMm: limit, measuredBefore, truedAgain } = after;
  if (limit === null && heights.length === 0) return [];
  const tilt = tiltOverTrack(
    heights.map(({ angleDeg, radiusMm, faceMm }) => ({
      xMm: radiusMm * Math.cos(angleDeg * RAD),
      yMm: radiusMm * Math.sin(angleDeg * RAD),
      zMm: faceMm,
    })),
    cover.trackOuterDiameterMm,
  );
  const { value } = tilt;
  const found = (status: Finding['status'], sentence: string): readonly Finding[] => [
    {
      ...finding('after-runout', 'Runout after the cut', {
        status,
        value,
        limit,
        sentence,
        source: limit === null ? 'none set' : 'shop limits',
      }),
      answer: heights.length === 0 ? null : tilt,
    },
  ];
  const indicate = 'Take shims out, true pads and crank pilot again, and indicate every station.';
  if (value === null) {
    return found('not-checked', `Runout after the cut is not known. ${indicate}`);
  }
  const runs = `The new face runs out ${printAgainst(value, limit ?? value, unit)}`;
  if (limit === null) return found('not-checked', `${runs}. No limit is set, so it is not judged.`);
  const missing = measuredBefore.filter((place) => stationAt(heights, place) === undefined).length;
  if (missing > 0) {
    const said = missing === 1 ? '1 station is' : `${missing} stations are`;
    return found('not-checked', `${said} not indicated after the cut. ${indicate}`);
  }
  if (truedAgain !== true) {
    const sentence = `${runs}, but pads and crank pilot were not trued again, so that shows the lathe. ${indicate}`;
    return found('not-checked', sentence);
  }
  return value > limit + TOLERANCE_MM
    ? found('fail', `${runs}; ${printLength(limit, unit)} is allowed. Face it again.`)
    : found('pass', `${runs}; ${printLength(limit, unit)} is allowed.`);
}

function everywhere({ stations, measuredBefore, cover }: CutVerification): Finding {
  const missing = measuredBefore.filter((place) => stationAt(stations, place) === undefined);
  const names = [...new Set(missing.map((place) => where(place, measuredBefore, cover)))];
  return {
    ...finding('after-coverage', 'Stations measured after the cut', {
      status: missing.length === 0 ? 'pass' : 'caution',
      value: missing.length,
      limit: 0,
      sentence:
        missing.length === 0
          ? 'Every station measured before the cut was measured again after it.'
          : `${missing.length === 1 ? '1 station is' : `${missing.length} stations are`} not measured after the cut: ${listInWords(names)}.`,
      source: 'the stations measured before the cut',
    }),
    unit: '',
  };
}
