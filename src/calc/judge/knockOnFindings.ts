import type { Answer } from '../../../shared/words/answer.ts';
import type { CoverCheckInput, FitLimits, KnockOn, WithinLimits } from '../../../shared/words/cover.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { type LengthUnit, printAgainst, printLength } from '../../../shared/words/print.ts';
import { knockOnLengths } from '../cover/knockOnLengths.ts';

const TOLERANCE_MM = 1e-9;
const GIVEN = 'the limit entered here; the maker’s figure comes first';

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
  { knockOn: k = null, familyLimits = null }: CoverCheckInput,
  allowanceMm: number,
  unit: LengthUnit,
): readonly Finding[] {
  if (k === null) return [];
  const lengths = knockOnLengths(k);
  const limits = limitsOf(k, familyLimits);
  const worked = (id: keyof typeof WORKED, answer: Answer | null) =>
    within(id, WORKED[id], answer, limits[id], unit);
  const measured = (id: keyof typeof MEASURED, given: WithinLimits | null) =>
    asMeasured(id, MEASURED[id], given, limits[id], unit);
  return [
    ...chucked(k, allowanceMm, unit),
    ...worked('pad-thickness', lengths.padThickness),
    ...worked('pads-coplanar', padsApart(k)),
    ...worked('pull-forward', lengths.pullForward),
    ...worked('hub-engagement', lengths.hubEngagement),
    ...worked('pilot-engaged', lengths.pilotEngaged),
    ...worked('pilot-clearance', pilotClearance(k)),
    ...measured('side-wall-height', k.sideWallHeightMm),
    ...measured('overall-height', k.overallHeightMm),
    ...measured('end-play', k.endPlayMm),
  ];
}

/** Title, and how the sentence begins. */
const WORKED = {
  'pad-thickness': ['Pad thickness', 'Pad thickness after resurfacing is'],
  'pads-coplanar': ['Pads in one plane', 'The pads differ in height by'],
  'pull-forward': ['Pull-forward gap', 'The pull-forward gap will be'],
  'hub-engagement': ['Impeller hub engagement', 'Pulled forward, the impeller hub engages the pump'],
  'pilot-engaged': ['Crank pilot engagement', 'The crank pilot engages'],
  'pilot-clearance': ['Crank pilot clearance', 'Crank pilot clearance is'],
} as const;
const MEASURED = {
  'side-wall-height': 'Side wall height',
  'overall-height': 'Overall height',
  'end-play': 'End play',
} as const;
type Judged = keyof typeof WORKED | keyof typeof MEASURED;

/** The limits of each: as typed with the measurement, else the family's. */
function limitsOf(k: KnockOn, family: FitLimits | null): Readonly<Record<Judged, Limits>> {
  const f = family ?? NONE;
  const one = (typedMm: number | null, familyMm: number | null): Limit | null =>
    typedMm !== null
      ? { mm: typedMm, source: GIVEN }
      : familyMm !== null && family !== null
        ? { mm: familyMm, source: family.source }
        : null;
  const atLeast = (typedMm: number | null, familyMm: number | null) => ({
    least: one(typedMm, familyMm),
    most: null,
  });
  const atMost = (typedMm: number | null, familyMm: number | null) => ({
    least: null,
    most: one(typedMm, familyMm),
  });
  const both = (given: WithinLimits | null, leastMm: number | null, mostMm: number | null) => ({
    least: one(given?.leastMm ?? null, leastMm),
    most: one(given?.mostMm ?? null, mostMm),
  });
  return {
    'pad-thickness': atLeast(k.leastPadThicknessMm, f.leastPadThicknessMm),
    'pads-coplanar': atMost(k.padsCoplanarWithinMm, f.padsCoplanarWithinMm),
    'pull-forward': {
      least: one(k.leastPullForwardMm, f.leastPullForwardMm),
      most: one(k.mostPullForwardMm, f.mostPullForwardMm),
    },
    'hub-engagement': atLeast(k.leastHubEngagementMm, f.leastHubEngagementMm),
    'pilot-engaged': {
      least: one(k.leastPilotEngagedMm, f.leastPilotEngagedMm),
      most: k.pilotRoomMm === null ? null : { mm: k.pilotRoomMm, source: 'the crank bore depth' },
    },
    'pilot-clearance': {
      least: interference(k),
      most: one(k.mostPilotClearanceMm, f.mostPilotClearanceMm),
    },
    'side-wall-height': both(k.sideWallHeightMm, f.leastSideWallHeightMm, f.mostSideWallHeightMm),
    'overall-height': both(k.overallHeightMm, f.leastOverallHeightMm, f.mostOverallHeightMm),
    'end-play': both(k.endPlayMm, f.leastEndPlayMm, f.mostEndPlayMm),
  };
}

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
  id: Judged,
  [title, says]: readonly [title: string, says: string],
  answer: Answer | null,
  { least, most }: Limits,
  unit: LengthUnit,
): readonly Finding[] {
  const value = answer?.value ?? null;
  if (value === null) return [];
  const short = least !== null && value < least.mm - TOLERANCE_MM ? least : null;
  const long = most !== null && value > most.mm + TOLERANCE_MM ? most : null;
  const limit = (long ?? short ?? least ?? most)?.mm ?? null;
  const beyond = long ?? short;
  const sentence = inWords(id, says, value, { short, long, limit }, unit);
  const sources = beyond ? [beyond.source] : [least, most].flatMap((one) => one?.source ?? []);
  return [
    {
      id,
      title,
      status: beyond ? 'caution' : limit === null ? 'not-checked' : 'pass',
      value,
      limit,
      unit: 'mm',
      sentence,
      source: limit === null ? 'none set' : [...new Set(sources)].join('; '),
      answer,
    },
  ];
}

function inWords(
  id: Judged,
  says: string,
  valueMm: number,
  { short, long, limit }: { short: Limit | null; long: Limit | null; limit: number | null },
  unit: LengthUnit,
): string {
  const minimum = (mm: number) => printLength(mm, unit);
  if (id === 'pilot-clearance' && short !== null && short.mm === 0) {
    return `The crank pilot is ${minimum(-valueMm)} larger than its bore. It must clear: measure both again.`;
  }
  const told = `${says} ${limit === null ? minimum(valueMm) : printAgainst(valueMm, limit, unit)}`;
  if (short !== null) return `${told}, below the minimum of ${minimum(short.mm)}.`;
  if (long !== null) {
    const bottoms = id === 'pilot-engaged' ? ' It must not bottom.' : '';
    return `${told}, above the maximum of ${minimum(long.mm)}.${bottoms}`;
  }
  return limit === null ? `${told}. No limit is set, so it is not judged.` : `${told}, within limits.`;
}

function padsApart({ padHeightsMm }: KnockOn): Answer | null {
  if (padHeightsMm.length < 2) return null;
  const value = Math.max(...padHeightsMm) - Math.min(...padHeightsMm);
  return compared(
    'Δ',
    value,
    'Δ = max hᵢ − min hᵢ',
    `${padHeightsMm.length} pads: ${printLength(value, 'mm')}`,
  );
}

function pilotClearance({ crankPilotMm, crankBoreMm }: KnockOn): Answer | null {
  if (crankPilotMm === null || crankBoreMm === null) return null;
  const value = crankBoreMm - crankPilotMm;
  return compared(
    'C',
    value,
    'C = D_bore − d_pilot',
    `${printLength(crankBoreMm, 'mm')} − ${printLength(crankPilotMm, 'mm')} = ${printLength(value, 'mm')}`,
  );
}

/** A pilot larger than its bore does not go in, whatever limit is given; that it is smaller does not by itself mean that a limit is kept. */
function interference({ crankPilotMm, crankBoreMm }: KnockOn): Limit | null {
  if (crankPilotMm === null || crankBoreMm === null) return null;
  return crankBoreMm - crankPilotMm < -TOLERANCE_MM ? { mm: 0, source: 'first principles' } : null;
}

function compared(symbol: string, value: number, formula: string, numbers: string): Answer {
  const step = { formula, numbers, source: 'plain comparison' };
  return { symbol, value, unit: 'mm', how: [step], warnings: [] };
}

function asMeasured(
  id: Judged,
  title: string,
  given: WithinLimits | null,
  limits: Limits,
  unit: LengthUnit,
): readonly Finding[] {
  if (given === null) return [];
  const answer: Answer = { symbol: '', value: given.mm, unit: 'mm', how: [], warnings: [] };
  return within(id, [title, `${title} is`], answer, limits, unit).map((one) => ({
    ...one,
    answer: null,
  }));
}

/** The face read clamped and again released: the difference is how far the jaws bend the cover. */
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
      title: 'Chuck distortion',
      status: bent ? 'caution' : 'pass',
      value,
      limit: allowanceMm,
      unit: 'mm',
      sentence: bent
        ? `Released, the face reads ${printLength(value, unit)} different: the chuck bends the cover. Hold it another way and read it again.`
        : `Clamped and released, the face reads the same within ${printLength(value, unit)}.`,
      source: 'the clean-up allowance',
      answer: null,
    },
  ];
}
