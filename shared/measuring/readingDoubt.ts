import { asking, type Doubt, doubt } from '../quantity/doubt.ts';
import { asTyped, lengthText, meantBetween, meantNear, type TypedLength } from '../quantity/slip.ts';
import type { ReadingKind } from '../words/job.ts';
import { type Place, RING_WIDTH_MM, samePlace, stationAt, turnApart } from '../words/places.ts';
import { rowFit } from './rowFit.ts';

/** A reading that counts: of one pass, neither replaced nor withdrawn. */
export interface ReadBefore extends Place {
  readonly kind: ReadingKind;
  readonly valueMm: number;
}

/** A reading as it was typed, to be held against what else was read. */
export type ReadingInDoubt = ReadBefore & TypedLength;

/** What a reading is held against, beside the other readings. */
export interface Expected {
  /** 0 where it is not known. */
  readonly nominalWallMm: number;
  /** Of the gauge: the standard deviation of one reading, and its step; null where nobody gave them. */
  readonly repeatabilityMm: number | null;
  readonly resolutionMm: number | null;
  /** After a cut: the wall before it, and what the cut made should have left, where both are known. */
  readonly cut: {
    readonly walls: readonly (Place & { readonly beforeMm: number; readonly leftMm: number })[];
    readonly allowanceMm: number;
  } | null;
}

export const NOTHING_KNOWN = { repeatabilityMm: null, resolutionMm: null, cut: null } as const;

/** Readings of one wall further apart than this are asked about (all three: common practice, no source). */
const REPEATS = { repeatabilities: 5, steps: 3, leastMm: 0.01 } as const;
/** The same where the gauge is not described: no workshop gauge scatters so much (common practice, no source). */
const REPEATS_UNKNOWN_MM = 0.1;
/** An indicator reading this far, and three times as far as any other, from the tilt of its row. */
const OFF_TILT = { leastMm: 0.03, residuals: 3 } as const;
/** No face comes in with more runout than this (common practice, no source). */
const MOST_HEIGHT_MM = 1;
const MARK = { timesDeepest: 3, fromMm: 0.25, shareOfWall: 0.1 } as const;
/** A wall measured this much thicker after a cut than before it is no scatter of the gauge. */
const THICKER_MM = 0.01;

/**
 * Asks about a reading that looks like a slip: first against what stands at its station and beside it, then against the
 * cover type, then against what such things measure at all. null where there is nothing to ask. It never changes a
 * value: the person confirms or corrects.
 */
export function readingDoubt(
  reading: ReadingInDoubt,
  others: readonly ReadBefore[],
  expected: Expected,
): Doubt | null {
  switch (reading.kind) {
    case 'wall':
      return wallDoubt(reading, ofKind(others, 'wall'), expected);
    case 'face':
      return faceDoubt(reading, ofKind(others, 'face'));
    case 'mark':
      return markDoubt(reading, others, expected);
  }
}

function ofKind(readings: readonly ReadBefore[], kind: ReadingKind): readonly ReadBefore[] {
  return readings.filter((one) => one.kind === kind);
}

function wallDoubt(reading: ReadingInDoubt, walls: readonly ReadBefore[], expected: Expected): Doubt | null {
  const { nominalWallMm } = expected;
  const inLine = walls.filter((one) => inLineWith(nominalWallMm, one));
  const here = inLine.filter((one) => samePlace(one, reading));
  const beside = here.length > 0 ? here : neighbors(reading, inLine);
  const expectedMm = beside.length > 0 ? mean(beside) : nominalWallMm;
  return (
    doubt({ ...reading, expectedMm }) ??
    repeatDoubt(reading, here, expected) ??
    (expected.cut && cutDoubt(reading, expected.cut))
  );
}

/** A wall that is itself far off says nothing of another reading. */
function inLineWith(nominalWallMm: number, { valueMm }: ReadBefore): boolean {
  return !(nominalWallMm > 0) || (valueMm >= nominalWallMm / 2 && valueMm <= 1.5 * nominalWallMm);
}

/** The nearest of its row on either side. */
function neighbors(place: Place, walls: readonly ReadBefore[]): readonly ReadBefore[] {
  const row = walls.filter((one) => Math.abs(one.radiusMm - place.radiusMm) <= RING_WIDTH_MM);
  let nearest: { readonly one: ReadBefore; readonly apart: number }[] = [];
  for (const one of row) {
    const apart = turnApart(one.angleDeg, place.angleDeg);
    if (nearest.length === 2 && apart >= nearest[1]!.apart) continue;
    nearest = [...nearest, { one, apart }].sort((a, b) => a.apart - b.apart).slice(0, 2);
  }
  return nearest.map(({ one }) => one);
}

function repeatDoubt(
  reading: ReadingInDoubt,
  here: readonly ReadBefore[],
  { repeatabilityMm, resolutionMm }: Expected,
): Doubt | null {
  if (here.length === 0) return null;
  const mostMm =
    repeatabilityMm === null
      ? Math.max(REPEATS_UNKNOWN_MM, REPEATS.steps * (resolutionMm ?? 0))
      : Math.max(
          REPEATS.repeatabilities * repeatabilityMm,
          REPEATS.steps * (resolutionMm ?? 0),
          REPEATS.leastMm,
        );
  const farthest = here.reduce((a, b) =>
    Math.abs(b.valueMm - reading.valueMm) > Math.abs(a.valueMm - reading.valueMm) ? b : a,
  );
  const apartMm = Math.abs(farthest.valueMm - reading.valueMm);
  if (apartMm <= mostMm + 1e-9) return null;
  const text = (mm: number) => roundText(mm, reading);
  return asking(
    `${asTyped(reading)}, and ${text(farthest.valueMm)} at the same station? They differ by ${text(apartMm)}.`,
    meantNear(reading, mean(here), mostMm),
  );
}

function cutDoubt(
  reading: ReadingInDoubt,
  { walls, allowanceMm }: NonNullable<Expected['cut']>,
): Doubt | null {
  const at = stationAt(walls, reading);
  if (at === undefined) return null;
  const text = (mm: number) => roundText(mm, reading);
  const meant = meantNear(reading, at.leftMm, allowanceMm);
  if (reading.valueMm > at.beforeMm + THICKER_MM) {
    return asking(
      `${asTyped(reading)} after the cut? Before it, ${text(at.beforeMm)} was measured here.`,
      meant,
    );
  }
  if (Math.abs(reading.valueMm - at.leftMm) <= allowanceMm + 1e-9) return null;
  return asking(`${asTyped(reading)}? The cut should have left about ${text(at.leftMm)} here.`, meant);
}

function faceDoubt(reading: ReadingInDoubt, heights: readonly ReadBefore[]): Doubt | null {
  const elsewhere = heights.filter((one) => !samePlace(one, reading));
  const row = elsewhere.filter((one) => Math.abs(one.radiusMm - reading.radiusMm) <= RING_WIDTH_MM);
  // A row of few stations is held against the whole face, which tilts as one.
  const fit = rowFit(row) ?? rowFit(elsewhere);
  if (fit === null) {
    if (Math.abs(reading.valueMm) <= MOST_HEIGHT_MM) return null;
    return asking(
      `${asTyped(reading)} on the indicator?`,
      meantBetween(reading, -MOST_HEIGHT_MM / 3, MOST_HEIGHT_MM / 3),
    );
  }
  const expectedMm = fit.at(reading.angleDeg);
  const reachMm = Math.max(OFF_TILT.leastMm, OFF_TILT.residuals * fit.worstMm);
  if (Math.abs(reading.valueMm - expectedMm) <= reachMm + 1e-9) return null;
  const about = roundText(expectedMm, reading);
  return asking(
    `${asTyped(reading)} on the indicator? The other readings lead to about ${about} here.`,
    meantNear(reading, expectedMm, reachMm),
  );
}

function markDoubt(
  reading: ReadingInDoubt,
  others: readonly ReadBefore[],
  { nominalWallMm }: Expected,
): Doubt | null {
  const { valueMm } = reading;
  const marks = ofKind(others, 'mark').filter((one) => !samePlace(one, reading));
  const deepestMm = Math.max(0, ...marks.map((one) => one.valueMm));
  const walls = ofKind(others, 'wall').filter((one) => inLineWith(nominalWallMm, one));
  const wallMm = stationAt(walls, reading)?.valueMm ?? nominalWallMm;
  const timesDeepest = deepestMm > 0 && valueMm > MARK.timesDeepest * deepestMm && valueMm > MARK.fromMm;
  const throughWall = wallMm > 0 && valueMm > MARK.shareOfWall * wallMm;
  if (!timesDeepest && !throughWall) return null;
  const why = timesDeepest
    ? `The deepest other mark is ${roundText(deepestMm, reading)}.`
    : `The wall here is ${roundText(wallMm, reading)}.`;
  const mostMm = Math.min(
    wallMm > 0 ? MARK.shareOfWall * wallMm : Number.POSITIVE_INFINITY,
    deepestMm > 0 ? Math.max(MARK.timesDeepest * deepestMm, MARK.fromMm) : Number.POSITIVE_INFINITY,
  );
  return asking(`${asTyped(reading)} deep? ${why}`, meantBetween(reading, mostMm / 50, mostMm));
}

/** To a thousandth of a millimeter, or a ten-thousandth of an inch: no more than a gauge shows. */
function roundText(mm: number, { unit, decimalSign }: TypedLength): string {
  const perUnit = unit === 'in' ? 25.4 : 1;
  const step = unit === 'in' ? 1e4 : 1e3;
  return lengthText((Math.round((mm / perUnit) * step) / step) * perUnit, unit, decimalSign);
}

function mean(readings: readonly ReadBefore[]): number {
  return readings.reduce((sum, { valueMm }) => sum + valueMm, 0) / readings.length;
}

/**
 * Asks about all readings of a cover at once, each against the others; those confirmed are held to be right. Of
 * indicator readings only the worst is asked about at a time, because one slip pulls the fit of its neighbors.
 */
export function doubtsAmong(
  readings: readonly ReadingInDoubt[],
  expected: Expected,
  confirmed: (index: number) => boolean = () => false,
): readonly { readonly index: number; readonly doubt: Doubt }[] {
  const found = readings.flatMap((reading, index) => {
    if (confirmed(index) || reading.kind === 'face') return [];
    // Of two repeats that differ, the one typed later is asked about.
    const others = readings.filter(
      (one, i) =>
        i !== index &&
        (one.kind === 'wall' || one.kind === reading.kind) &&
        (i < index || one.kind !== reading.kind || !samePlace(one, reading)),
    );
    const doubted = readingDoubt(reading, others, expected);
    return doubted === null ? [] : [{ index, doubt: doubted }];
  });
  return [...found, ...facesAmong(readings, expected, confirmed)].sort((a, b) => a.index - b.index);
}

function facesAmong(
  readings: readonly ReadingInDoubt[],
  expected: Expected,
  confirmed: (index: number) => boolean,
): { readonly index: number; readonly doubt: Doubt }[] {
  const out: { readonly index: number; readonly doubt: Doubt }[] = [];
  const kept = new Set(readings.keys());
  for (;;) {
    const standing = [...kept].filter((i) => readings[i]!.kind === 'face');
    const asked = standing.flatMap((index) => {
      if (confirmed(index)) return [];
      const others = standing.filter((i) => i !== index).map((i) => readings[i]!);
      const doubted = readingDoubt(readings[index]!, others, expected);
      return doubted === null ? [] : [{ index, doubt: doubted, without: spreadOf(others) }];
    });
    const worst = asked.sort((a, b) => a.without - b.without)[0];
    if (worst === undefined) return out;
    kept.delete(worst.index);
    out.push({ index: worst.index, doubt: worst.doubt });
  }
}

/** How far readings are from the tilt that fits them best; the slip is the one without which this is least. */
function spreadOf(heights: readonly ReadBefore[]): number {
  const fit = rowFit(heights);
  return fit === null ? Math.max(0, ...heights.map(({ valueMm }) => Math.abs(valueMm))) : fit.worstMm;
}
