import type { Answer, Warning } from '../../../shared/words/answer.ts';
import { BENDING_FORMULA } from '../../../shared/words/bending/bendingWorkings.ts';
import {
  OFF_SOLID,
  OFF_SOLID_DRAWN,
  offAtMost,
  offInWords,
  RING_WIDENED,
  ringNotJoined,
} from '../../../shared/words/bending/solid.ts';
import type {
  StiffeningRing,
  StiffnessAnswer,
  StiffnessInput,
} from '../../../shared/words/bending/stiffness.ts';
import { printNumber } from '../../../shared/words/print.ts';
import { greatestStress, type StressAt } from './greatestStress.ts';
import { flexuralRigidity } from './model/flexuralRigidity.ts';
import { sideWallSpring } from './model/sideWallSpring.ts';
import { padsOverTrack } from './padsOverTrack.ts';
import type { SolvedCover } from './solveCover.ts';
import type { WallForPeak } from './wallForPeak.ts';

const ROUND_MID_TRACK = 96;
const SECTION_POINTS = 60;
const MAP_RADII = 13;
const MAP_ANGLES = 33;
/** Thin-plate theory leaves out shear; above this share of the flat's width it is felt. */
const THIN = 0.1;
/** Of the wall; beyond, the plate also stretches, and is stiffer than a plate that only bends. */
const SMALL_DEFLECTION = 0.5;

const MODEL = 'thin-plate model of the cover: Bogner–Fox–Schmit elements, lining as springs that only push';

/** What the solved cover says, in numbers, with what they are worth. It gathers; the formulas are elsewhere. */
export function coverAnswers(
  input: StiffnessInput,
  { model, pressed, field, peak }: SolvedCover,
  wallForPeak: WallForPeak | null,
): StiffnessAnswer {
  const { mesh, forces, track } = model;
  const end = mesh.anglesRad.at(-1)!;
  const [from, to] = [input.trackInnerDiameterMm / 2, input.trackOuterDiameterMm / 2];
  const steps = (count: number, a: number, b: number) =>
    Array.from({ length: count }, (_, i) => a + ((b - a) * i) / (count - 1));

  const round = steps(ROUND_MID_TRACK + 1, 0, end).map((angle) => field.deflectionMm((from + to) / 2, angle));
  const rippleMm = Math.max(...round) - Math.min(...round);
  const bossDeflectionMm = pressed.w[model.boss]!;
  let touching = 0;
  for (const [i, area] of track.areaMm2.entries()) if (pressed.active[i] === 1) touching += area;
  const stress = greatestStress(model, pressed.w, {
    ...input,
    studRadiusMm: input.studCircleDiameterMm / 2,
  });
  const radii = steps(SECTION_POINTS + 1, input.bossDiameterMm / 2, input.rimDiameterMm / 2);
  const mapRadii = steps(MAP_RADII, from, to);
  const mapAngles = steps(MAP_ANGLES, 0, end);
  const numbers = {
    meanPressureMPa: forces.meanPressureMPa,
    peakOverMean: peak.peakOverMean,
    peakAt: { radiusMm: peak.radiusMm, angleDeg: degrees(peak.angleRad) },
    touchingShare: Math.min(1, touching / track.totalAreaMm2),
    rippleMm,
    bossDeflectionMm,
    greatestStressMPa: stress.stressMPa,
    greatestStressAt: { radiusMm: stress.radiusMm, angleDeg: degrees(stress.angleRad) },
    beyondYield: input.yieldMPa === null ? null : stress.stressMPa > input.yieldMPa,
    wallForPeakMm: wallForPeak?.wallMm ?? null,
  };
  return {
    ...numbers,
    section: {
      radiiMm: radii,
      behindStudMm: radii.map((r) => field.deflectionMm(r, 0)),
      betweenStudsMm: radii.map((r) => field.deflectionMm(r, end)),
    },
    pressureMap: {
      radiiMm: mapRadii,
      anglesDeg: mapAngles.map(degrees),
      pressureMPa: mapRadii.map((r) => mapAngles.map((angle) => field.pressureMPa(r, angle))),
    },
    warnings: [...worth(input, numbers, stress), ...(wallForPeak?.warnings ?? [])],
    answers: answersOf(input, numbers, stress, {
      unknowns: model.freedoms.size,
      rounds: pressed.rounds,
      liningN: forces.liningN,
    }),
  };
}

const degrees = (rad: number) => (rad * 180) / Math.PI;

type Numbers = Omit<StiffnessAnswer, 'section' | 'pressureMap' | 'warnings' | 'answers'>;

/** What these numbers are worth, and what they leave out. */
function worth(input: StiffnessInput, numbers: Numbers, stress: StressAt): Warning[] {
  const warnings: Warning[] = [
    {
      code: 'advice',
      text: 'Advice, to compare one cover with another. It promises nothing, and it is no limit unless the shop makes it one.',
    },
    { code: 'thin-plate', text: besideSolid(input.padInsetWalls) },
    {
      code: 'piston-bound',
      text: `The piston is taken as ${input.piston === 'rigid' ? 'rigid, the stiffest one possible' : 'conforming, the most flexible one possible'}. A real piston is between a rigid and a conforming one: work out both.`,
    },
    {
      code: 'stress-mesh',
      text: 'The greatest stress is found more than one wall thickness from a pad’s edge, to about 5 %. Nearer the edge it is higher.',
    },
  ];
  if (input.speedRpm === null) {
    warnings.push({
      code: 'no-ballooning',
      text: 'Ballooning from the spinning oil is not included. Enter a speed to include it.',
    });
  }
  const { overlapMm, peakTooLow } = padsOverTrack(input);
  if (peakTooLow) {
    warnings.push({
      code: 'pads-over-track',
      text: `The pads reach ${printNumber(overlapMm, 2)} mm over the friction surface. The pressure peak can be 10 % higher than shown. Allow for it.`,
    });
  }
  if (input.ring !== null) warnings.push(ringWorth(input.ring));
  if (numbers.beyondYield) {
    warnings.push({
      code: 'beyond-yield',
      text: `The greatest stress, ${printNumber(stress.stressMPa, 0)} MPa, is above the yield strength of ${input.yieldMPa} MPa. The cover would bend for good; do not rely on these deflections.`,
    });
  }
  const flat = (input.rimDiameterMm - input.bossDiameterMm) / 2;
  const thickest = Math.max(input.wallMm, input.trackWallMm);
  if (thickest > THIN * flat) {
    warnings.push({
      code: 'thick-plate',
      text: `A wall of ${thickest} mm is more than a tenth of the flat’s width, ${printNumber(flat, 1)} mm. Shear is left out here, so the cover is softer than shown.`,
    });
  }
  const least = Math.min(input.wallMm, input.trackWallMm);
  if (Math.abs(numbers.bossDeflectionMm) > SMALL_DEFLECTION * least) {
    warnings.push({
      code: 'large-deflection',
      text: `The center of the cover moves ${printNumber(numbers.bossDeflectionMm, 2)} mm, more than half the wall. A plate bent so far also stretches, and moves less than shown.`,
    });
  }
  return warnings;
}

/** What a ring's figures are good for: in a solid model two were tried, joined to the pads and not. */
function ringWorth({ bonded, joinedToPads = null }: StiffeningRing): Warning {
  if (joinedToPads !== true) {
    return { code: 'ring-not-joined', text: `${ringNotJoined(joinedToPads)} These figures leave it out.` };
  }
  const percent = (factor: number) => `${printNumber(100 * (factor - 1), 0)} %`;
  return {
    code: 'ring-bound',
    text: `The ring is taken as ${bonded ? 'bonded, the stiffer of two bounds' : 'unbonded, the softer of two bounds'}. Widen both by ${percent(RING_WIDENED.ripple)} for waviness and ${percent(RING_WIDENED.peak)} for the pressure peak. The center of the cover is outside both.`,
  };
}

/** What was found beside the solid model, for the rule the pads were taken by. */
function besideSolid(padInsetWalls: number | null): string {
  if (padInsetWalls !== null && padInsetWalls !== 0) {
    return `The pads' stiff part begins ${padInsetWalls} walls within their edge. That was not compared with a solid model. Leave padInsetWalls out to use the rule that was.`;
  }
  const off = padInsetWalls === null ? OFF_SOLID : OFF_SOLID_DRAWN;
  const pads = padInsetWalls === null ? '' : ', pads as drawn';
  return `Five covers compared with a solid model${pads}: waviness ${offInWords(off.ripple)}, pressure peak ${offInWords(off.peak)}. The change from new to cut agreed within ${offAtMost(off.cutRipple)} for waviness and ${offAtMost(off.cutPeak)} for the pressure peak.`;
}

interface SolvedIn {
  readonly unknowns: number;
  readonly rounds: number;
  readonly liningN: number;
}

/** The two steps that others begin with: the mean pressure, and the plate solved. */
function firstSteps(input: StiffnessInput, meanPressureMPa: number, solvedIn: SolvedIn) {
  const { youngMPa, poisson } = input;
  const { unknowns, rounds, liningN } = solvedIn;
  const [outer, inner, seal] = [
    input.trackOuterDiameterMm / 2,
    input.trackInnerDiameterMm / 2,
    input.pistonSealDiameterMm / 2,
  ];
  const rigidity = flexuralRigidity({ youngMPa, poisson, thicknessMm: input.trackWallMm });
  const { betaPerMm, springN } = sideWallSpring({
    rimRadiusMm: input.rimDiameterMm / 2,
    sideWallMm: input.sideWallMm,
    youngMPa,
    poisson,
  });
  return {
    mean: {
      formula: 'p_m = F/(π·(r_o² − r_i²)), F = p·π·(r_o² − r_seal²)',
      numbers: `p_m = ${printNumber(liningN / 1000, 3)} kN/(π·(${outer}² − ${inner}²) mm²) = ${printNumber(meanPressureMPa, 4)} MPa, with p = ${input.pressureMPa} MPa and r_seal = ${seal} mm`,
      source: 'equilibrium of the piston',
    },
    solved: {
      formula:
        'K·w = f: least energy of ½·D·[κ_r² + κ_θ² + 2ν·κ_r·κ_θ + 2(1 − ν)·κ_rθ²], D = E·t³/(12(1 − ν²))',
      numbers: `D = ${printNumber(rigidity / 1000, 0)} N·m on the friction surface; rim held by k = 2βD_s = ${printNumber(springN / 1000, 1)} kN, β = ${printNumber(betaPerMm, 4)}/mm; ${unknowns} unknowns, contact settled in ${rounds} ${rounds === 1 ? 'round' : 'rounds'}`,
      source: MODEL,
    },
  };
}

function answersOf(
  input: StiffnessInput,
  numbers: Numbers,
  stress: StressAt,
  solvedIn: SolvedIn,
): Readonly<Record<string, Answer>> {
  const { mean, solved } = firstSteps(input, numbers.meanPressureMPa, solvedIn);
  const place = (at: { readonly radiusMm: number; readonly angleDeg: number }) =>
    `at radius ${printNumber(at.radiusMm, 1)} mm, ${printNumber(at.angleDeg, 1)}° from a stud`;
  const answer = (symbol: string, value: number, unit: Answer['unit'], how: Answer['how']): Answer => ({
    symbol,
    value,
    unit,
    how,
    warnings: [],
  });
  const middleMm = (input.trackInnerDiameterMm + input.trackOuterDiameterMm) / 4;
  const [peak, ripple, center] = [numbers.peakOverMean, numbers.rippleMm, numbers.bossDeflectionMm];
  return {
    meanPressureMPa: answer('p_m', numbers.meanPressureMPa, 'MPa', [mean]),
    peakOverMean: answer('p_max/p_m', peak, '', [
      mean,
      solved,
      {
        formula: BENDING_FORMULA.peak,
        numbers: `p_max/p_m = ${printNumber(peak, 3)} ${place(numbers.peakAt)}`,
        source: MODEL,
      },
    ]),
    rippleMm: answer('Δw', ripple, 'mm', [
      solved,
      {
        formula: 'Δw = max w − min w around the middle of the friction surface',
        numbers: `Δw = ${printNumber(1000 * ripple, 2)} µm at radius ${printNumber(middleMm, 2)} mm`,
        source: MODEL,
      },
    ]),
    bossDeflectionMm: answer('w_c', center, 'mm', [
      solved,
      {
        formula: 'w_c = w at the center of the cover',
        numbers: `w_c = ${printNumber(center, 4)} mm`,
        source: MODEL,
      },
    ]),
    greatestStressMPa: answer('σ', stress.stressMPa, 'MPa', [
      solved,
      {
        formula: 'σ = √(σ_r² − σ_r·σ_θ + σ_θ² + 3τ²) at the surface',
        numbers: `σ = ${printNumber(stress.stressMPa, 1)} MPa ${place(numbers.greatestStressAt)}`,
        source: 'von Mises’ condition for plane stress',
      },
    ]),
  };
}
