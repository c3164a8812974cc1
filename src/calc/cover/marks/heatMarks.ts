import { type HeatMarkRow, patternsTold, strongestOf } from '../../../../shared/words/heatMarks.ts';
import { turned } from '../../../../shared/words/places.ts';
import { rings } from '../rings.ts';
import { type MarkedPlace, marksRound, meanRound } from './marksRound.ts';

/** Depths below this are none: sums of floats leave dust. */
const NO_DEPTH_MM = 1e-9;

/**
 * What the heat marks say, row by row: how much of their depth lies behind the studs, and how much on one side.
 *   stud share = c/d₀,   one-sided share s = √(a₁² + b₁²)/d₀ at atan2(b₁, a₁)
 *
 * d₀ mean depth of the row, c what is deeper behind the studs, a₁ and b₁ what is deeper toward 0° and 90° [mm]. A
 * mark between stations belongs to the nearest row, of two equally near the inner. Told from ±0.4 (stud share), 0.4
 * (one-sided) and a row’s mean more than twice another’s on.
 * Valid: rows with 2N places or more that tell the terms apart; else too few stations to tell, and the shares are null.
 * Advice: it changes no verdict.   Source: common practice, no source
 * Example: 0.2 mm behind each of four studs, 0.05 mm between → stud share 0.6, behind the studs (tests/calc/cover/marks/heatMarks.test.ts)
 */
export function heatMarks({
  stations,
  marks,
  studCount,
}: {
  readonly stations: readonly (MarkedPlace & { readonly radiusMm: number })[];
  readonly marks: readonly (MarkedPlace & { readonly radiusMm: number })[];
  readonly studCount: number;
}): readonly HeatMarkRow[] {
  const rows = rings(stations);
  const nearest = (radiusMm: number) => {
    const off = rows.map((row) => Math.abs(row.radiusMm - radiusMm));
    const least = Math.min(...off);
    return off.findIndex((one) => one <= least + 1e-9);
  };
  const shares = rows.map(({ radiusMm, stations: own }, index) =>
    sharesOf(
      radiusMm,
      [...own.map((i) => stations[i]!), ...marks.filter((mark) => nearest(mark.radiusMm) === index)],
      studCount,
    ),
  );
  const told = patternsTold(shares);
  return shares.map(({ told: _, ...one }, row) => ({ ...one, pattern: strongestOf(told, row) }));
}

function sharesOf(radiusMm: number, places: readonly MarkedPlace[], studCount: number) {
  const unknown = { radiusMm, oneSidedShare: null, oneSidedDeg: null, studShare: null };
  const round = places.length < 2 * studCount ? null : marksRound(places, studCount);
  if (round !== null && places.every(({ depthMm }) => depthMm <= NO_DEPTH_MM)) {
    return { ...unknown, meanMm: 0, told: true };
  }
  if (round === null || round.meanMm <= NO_DEPTH_MM) {
    return { ...unknown, meanMm: meanRound(places), told: false };
  }
  const [toward0, toward90] = round.towardMm;
  const oneSidedMm = Math.hypot(toward0, toward90);
  const even = oneSidedMm <= NO_DEPTH_MM;
  return {
    radiusMm,
    meanMm: round.meanMm,
    oneSidedShare: oneSidedMm / round.meanMm,
    oneSidedDeg: even ? null : turned((Math.atan2(toward90, toward0) * 180) / Math.PI),
    studShare: round.behindStudsMm / round.meanMm,
    told: true,
  };
}
