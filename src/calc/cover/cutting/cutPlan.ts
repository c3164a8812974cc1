import type { Answer, Warning } from '../../../../shared/words/answer.ts';
import type { CutPass, CutPlanAnswer, CutPlanInput } from '../../../../shared/words/cover.ts';
import { printNumber } from '../../../../shared/words/print.ts';
import { type Fault, Refusal } from '../../../../shared/words/refusal.ts';
import { facingTime } from './facingTime.ts';
import { spindleSpeed } from './spindleSpeed.ts';
import { theoreticalRoughness } from './theoreticalRoughness.ts';

/** A roughing limit that needs more passes than this is a slipped decimal. */
const MOST_PASSES = 200;

/**
 * The passes that make a facing cut: roughing of equal depth, none deeper than the limit, then one finishing pass.
 *   n = ⌈(k − k_f)/k_r⌉ roughing passes of (k − k_f)/n
 *
 * k whole cut [mm] · k_f finishing pass [mm] · k_r deepest roughing pass [mm]. A cut no deeper than k_f is one
 * finishing pass. Advice: the lathe, the tool and its operator come first.
 * Valid: facing from the friction surface's outer to its inner diameter at one spindle speed.   Source: arithmetic
 * Throws: a Refusal that names each figure of the cut or the lathe it cannot work with.
 * Example: 0.42, finishing 0.10, roughing limit 0.20 → 0.16, 0.16, 0.10 (tests/calc/cover/cutting/cutPlan.test.ts)
 */
export function cutPlan(input: CutPlanInput): CutPlanAnswer {
  refuseImpossible(input);
  const { totalCutMm, finishingCutMm, roughingLimitMm, trackInnerDiameterMm, trackOuterDiameterMm } = input;
  const speed = spindleSpeed({
    cuttingSpeedMPerMin: input.cuttingSpeedMPerMin,
    diameterMm: trackOuterDiameterMm,
    leastRpm: input.leastRpm,
    mostRpm: input.mostRpm,
  });
  const spindleRpm = speed.value!;
  const time = (feedMm: number) =>
    facingTime({ trackInnerDiameterMm, trackOuterDiameterMm, feedMm, spindleRpm });

  const roughing = Math.max(0, totalCutMm - finishingCutMm);
  const count = Math.ceil(roughing / roughingLimitMm - 1e-9);
  const depths = [
    ...Array.from({ length: count }, () => ({ kind: 'roughing' as const, depthMm: roughing / count })),
    { kind: 'finishing' as const, depthMm: totalCutMm - (count > 0 ? roughing : 0) },
  ];
  let totalMm = 0;
  const passes: CutPass[] = depths.map(({ kind, depthMm }) => {
    totalMm += depthMm;
    const feedMm = kind === 'roughing' ? input.roughingFeedMm : input.finishingFeedMm;
    return { kind, depthMm, totalMm, feedMm, timeS: time(feedMm).value! };
  });
  const finish = theoreticalRoughness({ feedMm: input.finishingFeedMm, noseRadiusMm: input.noseRadiusMm });
  const timeS = passes.reduce((sum, pass) => sum + pass.timeS, 0);
  const warnings: Warning[] = [...speed.warnings];
  const answers: Record<string, Answer> = {
    spindleRpm: speed,
    finishingTimeS: time(input.finishingFeedMm),
    finishRtUm: finish.rt,
    finishRaUm: finish.ra,
  };
  return {
    passes,
    spindleRpm,
    cuttingSpeedMPerMin: (Math.PI * trackOuterDiameterMm * spindleRpm) / 1000,
    timeS,
    finishRtUm: finish.rt.value!,
    finishRaUm: finish.ra.value!,
    warnings,
    answers,
  };
}

const NAMES = [
  ['totalCutMm', 'The cut', 'mm'],
  ['trackInnerDiameterMm', 'The friction surface inner diameter', 'mm'],
  ['trackOuterDiameterMm', 'The friction surface outer diameter', 'mm'],
  ['roughingLimitMm', 'The roughing limit', 'mm'],
  ['finishingCutMm', 'The finishing cut', 'mm'],
  ['roughingFeedMm', 'The roughing feed', 'mm'],
  ['finishingFeedMm', 'The finishing feed', 'mm'],
  ['cuttingSpeedMPerMin', 'The cutting speed', 'm/min'],
  ['noseRadiusMm', 'The nose radius', 'mm'],
  ['leastRpm', 'The minimum rpm', 'rpm'],
  ['mostRpm', 'The maximum rpm', 'rpm'],
] as const;

function refuseImpossible(input: CutPlanInput): void {
  const faults: Fault[] = [];
  for (const [path, name, unit] of NAMES) {
    const value = input[path];
    const mayBeNone = path === 'trackInnerDiameterMm' || path === 'finishingCutMm';
    if (Number.isFinite(value) && (value > 0 || (mayBeNone && value === 0))) continue;
    faults.push({ path, message: `${name} is ${value} ${unit}; it must be a number more than 0.` });
  }
  if (faults.length === 0) {
    if (input.trackInnerDiameterMm >= input.trackOuterDiameterMm) {
      faults.push({
        path: 'trackInnerDiameterMm',
        message: `The friction surface inner diameter is ${input.trackInnerDiameterMm} mm; it must be less than the outer, ${input.trackOuterDiameterMm} mm.`,
      });
    }
    if (input.leastRpm > input.mostRpm) {
      faults.push({
        path: 'leastRpm',
        message: `The minimum rpm, ${printNumber(input.leastRpm, 0)}, is above the maximum, ${printNumber(input.mostRpm, 0)}.`,
      });
    }
    if ((input.totalCutMm - input.finishingCutMm) / input.roughingLimitMm > MOST_PASSES) {
      faults.push({
        path: 'roughingLimitMm',
        message: `A roughing pass of ${input.roughingLimitMm} mm needs more than ${MOST_PASSES} passes. Enter a deeper one.`,
      });
    }
  }
  if (faults.length > 0) throw new Refusal('cut-plan-input', faults);
}
