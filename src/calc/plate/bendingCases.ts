import type {
  BendingBase,
  BendingCase,
  BendingCaseId,
  HeatSettings,
  PistonRange,
} from '../../../shared/words/bending/bending.ts';
import type {
  RingSize,
  StiffeningRing,
  StiffnessAnswer,
  StiffnessInput,
} from '../../../shared/words/bending/stiffness.ts';
import { heatCover } from '../heat/heatCover.ts';
import { slipFlux } from '../heat/slipFlux.ts';
import { temperColour } from '../heat/temperColour.ts';

export interface CaseAsked {
  readonly id: BendingCaseId;
  readonly base: BendingBase;
  readonly trackWallMm: number;
  readonly ring: StiffeningRing | null;
}

/**
 * The cases a cover is shown in. The wall on the friction surface is taken as even, at the thinnest that was measured or that the
 * cut leaves: no station is thinner, so waviness and peak are not made less than they are. A ring counts only where it is
 * welded to the pads all around; any other may reverse the waviness, and the cover is taken without it.
 *
 * Valid: walls that differ little round the friction surface.   Source: this program’s own model (the thinnest wall everywhere,
 * to be on the safe side)
 * Example: tests/calc/plate/bendingCases.test.ts
 */
export function bendingCases({
  base,
  leastBeforeMm,
  leastAfterMm,
  ring,
  welded,
}: {
  readonly base: BendingBase;
  readonly leastBeforeMm: number;
  readonly leastAfterMm: number;
  readonly ring: RingSize | null;
  /** The ring is on already. */
  readonly welded: boolean;
}): CaseAsked[] {
  const joined = ring?.joinedToPads === true ? ring : null;
  const unbonded = joined && { ...joined, bonded: false };
  const bonded = joined && { ...joined, bonded: true };
  const on = welded ? unbonded : null;
  const one = (id: BendingCaseId, trackWallMm: number, withRing: StiffeningRing | null): CaseAsked => ({
    id,
    base,
    trackWallMm,
    ring: withRing,
  });
  return [
    one('new', base.wallMm, null),
    one('now', leastBeforeMm, on),
    one('after', leastAfterMm, on),
    ...(unbonded && !welded ? [one('ring-unbonded', leastAfterMm, unbonded)] : []),
    ...(bonded ? [one('ring-bonded', leastAfterMm, bonded)] : []),
  ];
}

export function caseInput(asked: CaseAsked, piston: StiffnessInput['piston']): StiffnessInput {
  const { base, trackWallMm, ring } = asked;
  return { ...base, trackWallMm, ring, piston, padInsetWalls: null, peakLimit: null };
}

/**
 * One case as it is shown: the numbers of both pistons side by side, and the heat that follows from its wall and peak.
 * Throws: a Refusal of heat settings no heat can be worked out from (refuseHeat.ts).
 */
export function bendingCase(
  asked: CaseAsked,
  answers: Readonly<Record<keyof PistonRange, StiffnessAnswer>>,
  heat: HeatSettings | null,
): BendingCase {
  const { rigid, conforming } = answers;
  const range = (of: (answer: StiffnessAnswer) => number): PistonRange => ({
    rigid: of(rigid),
    conforming: of(conforming),
  });
  const peakOverMean = range((answer) => answer.peakOverMean);
  return {
    id: asked.id,
    trackWallMm: asked.trackWallMm,
    ring: asked.ring,
    peakOverMean,
    rippleMm: range((answer) => answer.rippleMm),
    bossDeflectionMm: range((answer) => answer.bossDeflectionMm),
    greatestStressMPa: range((answer) => answer.greatestStressMPa),
    beyondYield: rigid.beyondYield === null ? null : rigid.beyondYield || conforming.beyondYield === true,
    largeDeflection: [rigid, conforming].some(({ warnings }) =>
      warnings.some(({ code }) => code === 'large-deflection'),
    ),
    heat: heat && heatOf(asked, heat, peakOverMean),
  };
}

function heatOf({ base, trackWallMm }: CaseAsked, heat: HeatSettings, peak: PistonRange) {
  const { trackInnerDiameterMm, trackOuterDiameterMm } = base;
  const { peakRiseK } = heatCover({
    fluxWPerM2: slipFlux({ ...heat, trackInnerDiameterMm, trackOuterDiameterMm }),
    slipTimeS: heat.slipTimeS,
    thicknessMm: trackWallMm,
    conductivityWPerMK: heat.conductivityWPerMK,
    densityKgPerM3: heat.densityKgPerM3,
    specificHeatJPerKgK: heat.specificHeatJPerKgK,
    pressurePeak: null,
    startTemperatureC: null,
  });
  const behindStudRiseK = { rigid: peakRiseK * peak.rigid, conforming: peakRiseK * peak.conforming };
  const { startTemperatureC: before } = heat;
  if (before === null) return { peakRiseK, behindStudRiseK, behindStudC: null, temperColour: null };
  const { rigid, conforming } = behindStudRiseK;
  const behindStudC = { rigid: before + rigid, conforming: before + conforming };
  const hottestC = Math.max(behindStudC.rigid, behindStudC.conforming);
  return { peakRiseK, behindStudRiseK, behindStudC, temperColour: temperColour(hottestC) };
}
