import type { Answer } from '../../../shared/words/answer.ts';
import type { CoverCheckInput, FitLimits, KnockOn, WithinLimits } from '../../../shared/words/cover.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { type LengthUnit, printAgainst, printLength } from '../../../shared/words/print.ts';
import { knockOnLengths } from '../cover/knockOnLengths.ts';

const TOLERANCE_MM = 1e-9;
const GIVEN = 'the limit given; the maker’s figure comes first';

/**
 * What the job changes elsewhere, each against its limit: pads, pull-forward gap, hub, crank pilot, heights, and how
 * far the chuck bent the face.   pads Δ = max hᵢ − min hᵢ,  pilot C = D_bore − d_pilot,  chuck |z_clamped − z_released|
 *
 * h pad heights, D_bore crank bore, d_pilot crank pilot, z height of one place on the face [mm].
 * Valid: what was not given is left out. Beyond a limit is a caution: none of these judges the wall.
 * Source: plain comparison (first principles); the limits are the shop's or the maker's
 * Example: pads at 0, 0.05 and 0.11 against 0.1 → caution (tests/calc/cover/knockOn.test.ts)
 */
export function knockOnFindings(
  { knockOn = null, familyLimits = null }: CoverCheckInput,
  allowanceMm: number,
  unit: LengthUnit,
): readonly Finding[] {
  if (knockOn === null) return [];
  const lengths = knockOnLengths(knockOn);
  const f = familyLimits ?? NONE;
  const one = (typedMm: number | null, familyMm: number | null): Limit | null =>
    typedMm !== null
      ? { mm: typedMm, source: GIVEN }
      : familyMm !== null && familyLimits !== null
        ? { mm: familyMm, source: familyLimits.source }
        : null;
  const limits = (least: number | null, most: number | null, of: Family = [null, null]): Limits => ({
    least: one(least, of[0]),
    most: one(most, of[1]),
  });
  const measured = (given: WithinLimits | null, of: Family) =>
    limits(given?.leastMm ?? null, given?.mostMm ?? null, of);
  const k = knockOn;
  return [
    ...chucked(k, allowanceMm, unit),
    ...within(
      'pad-thickness',
      'Pads',
      'The pads are left',
      lengths.padThickness,
      limits(k.leastPadThicknessMm, null, [f.leastPadThicknessMm, null]),
      unit,
    ),
    ...coplanar(k, limits(null, k.padsCoplanarWithinMm, [null, f.padsCoplanarWithinMm]), unit),
    ...within(
      'pull-forward',
      'Pull-forward gap',
      'The gap becomes',
      lengths.pullForward,
      limits(k.leastPullForwardMm, k.mostPullForwardMm, [f.leastPullForwardMm, f.mostPullForwardMm]),
      unit,
    ),
    ...within(
      'hub-engagement',
      'Hub in the pump',
      'Pulled forward the hub engages the pump by',
      lengths.hubEngagement,
      limits(k.leastHubEngagementMm, null, [f.leastHubEngagementMm, null]),
      unit,
    ),
    ...within(
      'pilot-engaged',
      'Crank pilot engaged',
      'The pilot stands in the crank by',
      lengths.pilotEngaged,
      {
        least: one(k.leastPilotEngagedMm, f.leastPilotEngagedMm),
        most: k.pilotRoomMm === null ? null : { mm: k.pilotRoomMm, source: 'the room measured in the crank' },
      },
      unit,
      'It must not bottom.',
    ),
    ...pilotClearance(k, limits(null, k.mostPilotClearanceMm, [null, f.mostPilotClearanceMm]), unit),
    ...asMeasured(
      'side-wall-height',
      'Side wall after parting',
      k.sideWallHeightMm,
      measured(k.sideWallHeightMm, [f.leastSideWallHeightMm, f.mostSideWallHeightMm]),
      unit,
    ),
    ...asMeasured(
      'overall-height',
      'Overall height',
      k.overallHeightMm,
      measured(k.overallHeightMm, [f.leastOverallHeightMm, f.mostOverallHeightMm]),
      unit,
    ),
    ...asMeasured(
      'end-play',
      'End play',
      k.endPlayMm,
      measured(k.endPlayMm, [f.leastEndPlayMm, f.mostEndPlayMm]),
      unit,
    ),
  ];
}

/** At least and at most, of the family. */
type Family = readonly [number | null, number | null];

interface Limit {
  readonly mm: number;
  readonly source: string;
}

interface Limits {
  readonly least: Limit | null;
  readonly most: Limit | null;
}

const NONE: Readonly<Record<Exclude<keyof FitLimits, 'source'>, null>> = {
  leastPadThicknessMm: null,
  padsCoplanarWithinMm: null,
  leastPullForwardMm: null,
  mostPullForwardMm: null,
  leastHubEngagementMm: null,
  mostPilotClearanceMm: null,
  leastPilotEngagedMm: null,
  leastSideWallHeightMm: null,
  mostSideWallHeightMm: null,
  leastOverallHeightMm: null,
  mostOverallHeightMm: null,
  leastEndPlayMm: null,
  mostEndPlayMm: null,
};

function within(
  id: string,
  title: string,
  says: string,
  answer: Answer | null,
  { least, most }: Limits,
  unit: LengthUnit,
  beyond = '',
): readonly Finding[] {
  const value = answer?.value ?? null;
  if (value === null) return [];
  const short = least !== null && value < least.mm - TOLERANCE_MM ? least : null;
  const long = most !== null && value > most.mm + TOLERANCE_MM ? most : null;
  const limit = (long ?? short ?? least ?? most)?.mm ?? null;
  const told = limit === null ? printLength(value, unit) : printAgainst(value, limit, unit);
  const against = short
    ? `, less than the ${printLength(short.mm, unit)} wanted`
    : long
      ? `, more than the ${printLength(long.mm, unit)} there may be. ${beyond}`.trimEnd().replace(/\.$/, '')
      : limit === null
        ? '; no limit is given, so it is not judged'
        : ', within its limits';
  const beyondOne = long ?? short;
  const sources = beyondOne ? [beyondOne.source] : [least, most].flatMap((one) => one?.source ?? []);
  return [
    {
      id,
      title,
      status: beyondOne ? 'caution' : limit === null ? 'not-checked' : 'pass',
      value,
      limit,
      unit: 'mm',
      sentence: `${says} ${told}${against}.`,
      source: limit === null ? 'none given' : [...new Set(sources)].join('; '),
      answer,
    },
  ];
}

function coplanar({ padHeightsMm }: KnockOn, limits: Limits, unit: LengthUnit): readonly Finding[] {
  if (padHeightsMm.length < 2) return [];
  const value = Math.max(...padHeightsMm) - Math.min(...padHeightsMm);
  const answer: Answer = {
    symbol: 'Δ',
    value,
    unit: 'mm',
    how: [
      {
        formula: 'Δ = max hᵢ − min hᵢ',
        numbers: `${padHeightsMm.length} pads: ${printLength(value, 'mm')}`,
        source: 'plain comparison',
      },
    ],
    warnings: [],
  };
  return within('pads-coplanar', 'Pads in one plane', 'The pads differ by', answer, limits, unit);
}

function pilotClearance(
  { crankPilotMm, crankBoreMm }: KnockOn,
  limits: Limits,
  unit: LengthUnit,
): readonly Finding[] {
  if (crankPilotMm === null || crankBoreMm === null) return [];
  const value = crankBoreMm - crankPilotMm;
  const answer: Answer = {
    symbol: 'C',
    value,
    unit: 'mm',
    how: [
      {
        formula: 'C = D_bore − d_pilot',
        numbers: `${printLength(crankBoreMm, 'mm')} − ${printLength(crankPilotMm, 'mm')} = ${printLength(value, 'mm')}`,
        source: 'plain comparison',
      },
    ],
    warnings: [],
  };
  // A pilot larger than its bore does not go in, whatever limit is given; smaller alone is not yet a limit kept.
  const least = value < -TOLERANCE_MM ? { mm: 0, source: 'first principles' } : null;
  const held = { ...limits, least };
  return within('pilot-clearance', 'Crank pilot clearance', 'The pilot has', answer, held, unit);
}

function asMeasured(
  id: string,
  title: string,
  given: WithinLimits | null,
  limits: Limits,
  unit: LengthUnit,
): readonly Finding[] {
  if (given === null) return [];
  const answer: Answer = { symbol: '', value: given.mm, unit: 'mm', how: [], warnings: [] };
  return within(id, title, 'It measures', answer, limits, unit).map((one) => ({
    ...one,
    answer: null,
  }));
}

/** The face read clamped, and again released: what the jaws bent is no part of the cover. */
function chucked(
  { clampedFaceMm, releasedFaceMm }: KnockOn,
  allowanceMm: number,
  unit: LengthUnit,
): readonly Finding[] {
  if (clampedFaceMm === null || releasedFaceMm === null) return [];
  const value = Math.abs(clampedFaceMm - releasedFaceMm);
  const bent = value > allowanceMm + TOLERANCE_MM;
  return [
    {
      id: 'chucking-difference',
      title: 'Clamped and released',
      status: bent ? 'caution' : 'pass',
      value,
      limit: allowanceMm,
      unit: 'mm',
      sentence: bent
        ? `The face reads ${printLength(value, unit)} otherwise once it is released, more than the clean-up allowance of ${printLength(allowanceMm, unit)}: the chuck bends the cover. Hold it otherwise and read it again.`
        : `The face reads the same clamped and released to within ${printLength(value, unit)}.`,
      source: 'the clean-up allowance',
      answer: null,
    },
  ];
}
