import type { CoverShape } from '../../../shared/words/cover.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { stationAt } from '../../../shared/words/places.ts';
import {
  type LengthUnit,
  listInWords,
  printAgainst,
  printLength,
  printShare,
} from '../../../shared/words/print.ts';
import { tiltOverTrack } from '../cover/face/tiltOverTrack.ts';
import { placeName } from '../cover/placeNames.ts';
import { printSure } from './coverWords.ts';
import { DIAL_MM } from './nextPass.ts';

const TOLERANCE_MM = 1e-9;
const RAD = Math.PI / 180;

export interface StationAfter {
  readonly angleDeg: number;
  readonly radiusMm: number;
  /** Mean of the readings after the cut. */
  readonly wallMm: number;
  readonly faceMm: number | null;
  /** What the cut made should have left here; null where nothing was measured before it. */
  readonly cutWallMm: number | null;
}

export interface CutVerification {
  readonly cover: CoverShape;
  readonly stations: readonly StationAfter[];
  /** Read after the last pass, at stations and between them. */
  readonly marksLeft: readonly {
    readonly angleDeg: number;
    readonly radiusMm: number;
    readonly depthMm: number;
  }[];
  /** Readings after the cut that look like a slip and were not confirmed, as "wall behind stud 2". */
  readonly doubtful: readonly string[];
  /** Probability that the minimum is left everywhere, and what the shop wants; null where it cannot be told. */
  readonly sureness: { readonly share: number; readonly wanted: number } | null;
  /** Where it was measured before the cut. */
  readonly measuredBefore: readonly { readonly angleDeg: number; readonly radiusMm: number }[];
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
}

/**
 * After the cut: is enough wall left as measured, was more cut than decided, do the walls agree with the cut, is the
 * dark layer gone, does the new face run true, was it measured wherever it was before, and how sure does that make it.
 *
 *   margin = min tᵢ − t_min;   deviation = tᵢ − (wall the cut made leaves)ᵢ;   T = D·√(a² + b²) of the new face
 *
 * Lengths [mm]. A deviation above the clean-up allowance is a caution: the cut or a reading is not what was meant; so
 * is a cut deeper than decided by more than a step of the dial.
 * Valid: one station or more. Source: plain comparison; the allowance as the shop set it.
 * Example: the cut leaves 4.50 everywhere, measured 4.51, 4.50, 4.40, allowance 0.05 → caution, 0.10 at the third
 * (tests/calc/judge/verifyCut.test.ts)
 */
export function verifyCut(after: CutVerification, unit: LengthUnit): readonly Finding[] {
  return [
    wallAsMeasured(after, unit),
    ...underToday(after, unit),
    ...sureOfWall(after),
    ...inDoubt(after),
    asDecided(after, unit),
    asCut(after, unit),
    ...darkLayer(after, unit),
    ...newFace(after, unit),
    everywhere(after),
  ];
}

function finding(
  id: string,
  title: string,
  rest: Omit<Finding, 'id' | 'title' | 'unit' | 'answer'>,
): Finding {
  return { id, title, unit: 'mm', answer: null, ...rest };
}

function where(station: StationAfter, cover: CoverShape): string {
  return placeName(station.angleDeg, cover.studCount);
}

function wallAsMeasured({ stations, minimumWall, cover }: CutVerification, unit: LengthUnit): Finding {
  const thinnest = stations.reduce((a, b) => (b.wallMm < a.wallMm ? b : a));
  const place = where(thinnest, cover);
  if (minimumWall === null) {
    return finding('after-wall', 'Wall as measured after the cut', {
      status: 'not-checked',
      value: thinnest.wallMm,
      limit: null,
      sentence: `${printLength(thinnest.wallMm, unit)} where it is thinnest, ${place}. No minimum wall is set, so this is advice only.`,
      source: 'none set',
    });
  }
  const short = thinnest.wallMm < minimumWall.mm - TOLERANCE_MM;
  const wall = printAgainst(thinnest.wallMm, minimumWall.mm, unit);
  return finding('after-wall', 'Wall as measured after the cut', {
    status: short ? 'fail' : 'pass',
    value: thinnest.wallMm,
    limit: minimumWall.mm,
    sentence: short
      ? `${wall} where it is thinnest, ${place}: below the minimum of ${printLength(minimumWall.mm, unit)}. Do not use it; measure it again, and decide again.`
      : `${wall} where it is thinnest, ${place}; the minimum is ${printLength(minimumWall.mm, unit)}.`,
    source: minimumWall.source,
  });
}

function asDecided({ dialledMm, plannedMm }: CutVerification, unit: LengthUnit): Finding {
  const by = dialledMm - plannedMm;
  const deeper = by > DIAL_MM;
  const apart = deeper
    ? `, ${printLength(by, unit)} deeper than decided: decide again on what is left before signing.`
    : by < -DIAL_MM
      ? `; ${printLength(-by, unit)} of it was not needed.`
      : '.';
  return finding('after-depth', 'Cut made', {
    status: deeper ? 'caution' : 'pass',
    value: dialledMm,
    limit: plannedMm,
    sentence: `Decided ${printLength(plannedMm, unit)}, cut ${printLength(dialledMm, unit)}${apart}`,
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
  if (worst === null) {
    return finding('after-planned', title, {
      status: 'not-checked',
      value: null,
      limit: cleanUpAllowanceMm,
      sentence: 'No station was measured both before and after the cut, so the walls cannot be compared.',
      source: 'the clean-up allowance',
    });
  }
  const apart = Math.abs(worst.by) > cleanUpAllowanceMm + TOLERANCE_MM;
  const amount = printLength(Math.abs(worst.by), unit);
  return finding('after-planned', title, {
    status: apart ? 'caution' : 'pass',
    value: worst.by,
    limit: cleanUpAllowanceMm,
    sentence: apart
      ? `The wall ${where(worst.station, cover)} is ${amount} ${worst.by < 0 ? 'thinner' : 'thicker'} than the cut made should have left, more than the clean-up allowance of ${printLength(cleanUpAllowanceMm, unit)}: the cut or a reading is not what was meant. Measure there again.`
      : `No wall is more than ${amount} from what the cut should have left.`,
    source: 'the clean-up allowance',
  });
}

/** A minimum raised since the decision does not undo it, but what is signed below it is signed knowingly. */
function underToday(
  { stations, minimumWall, minimumTodayMm, cover }: CutVerification,
  unit: LengthUnit,
): readonly Finding[] {
  const thinnest = stations.reduce((a, b) => (b.wallMm < a.wallMm ? b : a));
  if (minimumTodayMm === null || minimumTodayMm <= (minimumWall?.mm ?? 0) + TOLERANCE_MM) return [];
  if (thinnest.wallMm >= minimumTodayMm - TOLERANCE_MM) return [];
  const then = minimumWall === null ? 'there was none' : `it was ${printLength(minimumWall.mm, unit)}`;
  return [
    finding('after-criteria', 'The minimum wall of today', {
      status: 'caution',
      value: thinnest.wallMm,
      limit: minimumTodayMm,
      sentence: `The shop’s minimum wall is ${printLength(minimumTodayMm, unit)} today; at the decision ${then}. ${printAgainst(thinnest.wallMm, minimumTodayMm, unit)} is left where it is thinnest, ${where(thinnest, cover)}. Decide again under today’s.`,
      source: "the shop's criteria",
    }),
  ];
}

/** The rule of the decision, applied to the walls measured after the cut. */
function sureOfWall({ sureness, minimumWall }: CutVerification): readonly Finding[] {
  if (sureness === null || minimumWall === null) return [];
  const { share, wanted } = sureness;
  const sure = share >= wanted;
  return [
    {
      ...finding('after-sure', 'How sure after the cut', {
        status: sure ? 'pass' : 'caution',
        value: share,
        limit: wanted,
        sentence: `By what was measured after the cut it is ${printSure(share)} sure that the minimum is left everywhere; the shop wants ${printShare(wanted)}.${sure ? '' : ' Measure it again.'}`,
        source: "the shop's criteria; JCGM 106:2012",
      }),
      unit: '',
    },
  ];
}

function inDoubt({ doubtful }: CutVerification): readonly Finding[] {
  if (doubtful.length === 0) return [];
  return [
    {
      ...finding('after-doubtful', 'Readings in doubt after the cut', {
        status: 'caution',
        value: doubtful.length,
        limit: 0,
        sentence: `It looks like a slip and was not confirmed: ${listInWords(doubtful)}. Measure there again.`,
        source: 'what the family leads one to expect',
      }),
      unit: '',
    },
  ];
}

function darkLayer({ marksLeft, cover, look }: CutVerification, unit: LengthUnit): readonly Finding[] {
  const left = marksLeft.filter(({ depthMm }) => depthMm > TOLERANCE_MM);
  if (left.length === 0 && look !== 'dark') return [];
  if (left.length === 0) {
    return [
      finding('after-marks', 'Marks left', {
        status: 'caution',
        value: null,
        limit: 0,
        sentence: 'It was still dark after the last pass. Plan the cut again before signing.',
        source: 'the face has to be clean',
      }),
    ];
  }
  const deepest = Math.max(...left.map(({ depthMm }) => depthMm));
  return [
    finding('after-marks', 'Marks left', {
      status: 'caution',
      value: deepest,
      limit: 0,
      sentence: `A mark of up to ${printLength(deepest, unit)} is left ${listInWords([...new Set(left.map((mark) => placeName(mark.angleDeg, cover.studCount)))])}. Plan the cut again before signing.`,
      source: 'the face has to be clean',
    }),
  ];
}

function newFace(
  { stations, cover, faceRunoutLimitMm }: CutVerification,
  unit: LengthUnit,
): readonly Finding[] {
  const points = stations.flatMap((station) =>
    station.faceMm === null
      ? []
      : [
          {
            xMm: station.radiusMm * Math.cos(station.angleDeg * RAD),
            yMm: station.radiusMm * Math.sin(station.angleDeg * RAD),
            zMm: station.faceMm,
          },
        ],
  );
  if (points.length === 0) return [];
  const tilt = tiltOverTrack(points, cover.trackOuterDiameterMm);
  const title = 'Runout of the new face';
  if (tilt.value === null || faceRunoutLimitMm === null) {
    return [
      {
        ...finding('after-runout', title, {
          status: 'not-checked',
          value: tilt.value,
          limit: faceRunoutLimitMm,
          sentence:
            tilt.value === null
              ? 'Three heights that do not lie on one line are needed to tell how the new face runs.'
              : `The new face runs out ${printLength(tilt.value, unit)} over the track. No limit is set for it.`,
          source: 'none set',
        }),
        answer: tilt,
      },
    ];
  }
  const over = tilt.value > faceRunoutLimitMm + TOLERANCE_MM;
  return [
    {
      ...finding('after-runout', title, {
        status: over ? 'fail' : 'pass',
        value: tilt.value,
        limit: faceRunoutLimitMm,
        sentence: `The new face runs out ${printAgainst(tilt.value, faceRunoutLimitMm, unit)} over the track; ${over ? 'more than' : 'at most'} ${printLength(faceRunoutLimitMm, unit)} is allowed.`,
        source: "the shop's criteria",
      }),
      answer: tilt,
    },
  ];
}

function everywhere({ stations, measuredBefore, cover }: CutVerification): Finding {
  const missing = measuredBefore.filter((place) => stationAt(stations, place) === undefined);
  const names = [...new Set(missing.map((place) => placeName(place.angleDeg, cover.studCount)))];
  return {
    ...finding('after-coverage', 'Measured wherever it was before', {
      status: missing.length === 0 ? 'pass' : 'caution',
      value: missing.length,
      limit: 0,
      sentence:
        missing.length === 0
          ? 'Every station measured before the cut was measured after it.'
          : `${missing.length === 1 ? 'One station was' : `${missing.length} stations were`} measured before the cut and not after it: ${listInWords(names)}.`,
      source: 'the stations measured before the cut',
    }),
    unit: '',
  };
}
