import type { Answer } from '../../../../shared/words/answer.ts';
import type { Finding } from '../../../../shared/words/finding.ts';
import { type LengthUnit, printLength, printNumber } from '../../../../shared/words/print.ts';
import { type Fault, Refusal } from '../../../../shared/words/refusal.ts';
import type { PullForward, PullForwardInput } from '../../../../shared/words/stud/gap.ts';

/** The usual pull-forward gap, about 1/8 to 3/16 in. */
export const USUAL_GAP_MM = { least: 3.2, most: 4.8 };
const USUAL = { in: '1/8 to 3/16 in', mm: '3.2 to 4.8 mm' } as const;
const usualSource = (unit: LengthUnit) =>
  `about ${USUAL[unit]}: common practice, no source (from memory); the maker’s figure comes first`;

/**
 * The pull-forward gap from measured depths, and what equal shims under the pads do to it.
 *   gap = depth + separator plate − stands out − shim      hub engagement after = engagement fully back − gap
 *   A shim takes its thickness from the gap, adds it to the stack the stud must pass, and leaves the hub that much deeper
 *   in the pump.   All lengths in mm.
 *   shims that do = bare gap − min(most gap, engagement fully back − its least) to bare gap − least gap, from 0
 *   Valid: converter fully home on the pump, depths along the axis, shims alike at every pad.
 *   Source: first principles; the usual gap is common practice, from memory, and gives way to the maker's
 *   Throws: a Refusal that names each length it cannot work with.
 *   Example: depth 28, stands out 22, shim 1.5 → gap 4.5; hub 20 → 15.5 (calc/stud/reach/pullForward.test.ts)
 */
export function pullForward(input: PullForwardInput, unit: LengthUnit = 'mm'): PullForward {
  refuse(input);
  const bareGapMm = input.padDepthMm + input.separatorPlateMm - input.flexplateStandsOutMm;
  const gapMm = bareGapMm - input.shimMm;
  const limits = input.makersGapMm ?? USUAL_GAP_MM;
  const source = input.makersGapMm ? 'the maker’s figure' : usualSource(unit);
  const p = (x: number) => printNumber(x, 2);
  const gap: Answer = {
    symbol: 'g',
    value: gapMm,
    unit: 'mm',
    how: [
      {
        formula: 'g = depth + separator − stands out − shim',
        numbers: `g = ${p(input.padDepthMm)} + ${p(input.separatorPlateMm)} − (${p(input.flexplateStandsOutMm)}) − ${p(input.shimMm)} = ${p(gapMm)} mm`,
        source: 'first principles',
      },
    ],
    warnings: [],
  };
  const hubAfter = input.hubEngagementMm === null ? null : input.hubEngagementMm - gapMm;
  const hub: Answer | null =
    hubAfter === null
      ? null
      : {
          symbol: 'e',
          value: hubAfter,
          unit: 'mm',
          how: [
            {
              formula: 'e = engagement fully back − g',
              numbers: `e = ${p(input.hubEngagementMm!)} − ${p(gapMm)} = ${p(hubAfter)} mm`,
              source: 'first principles',
            },
          ],
          warnings: [],
        };
  const { hubEngagementMm, hubEngagementLeastMm } = input;
  const hubAllowsGapMm =
    hubEngagementMm === null || hubEngagementLeastMm === null ? null : hubEngagementMm - hubEngagementLeastMm;
  const widestMm = Math.min(limits.most, hubAllowsGapMm ?? limits.most);
  const least = Math.max(0, bareGapMm - widestMm);
  const most = bareGapMm - limits.least;
  return {
    bareGapMm,
    gapMm,
    addedToStackMm: input.shimMm,
    hubEngagementAfterMm: hubAfter,
    gapLimitsMm: limits,
    hubAllowsGapMm,
    shimsMm: most < least - 1e-9 ? null : { least, most: Math.max(least, most) },
    findings: [gapFinding(gap, gapMm, limits, source, unit), hubFinding(hub, hubAfter, input, unit)],
    answers: { gapMm: gap, hubEngagementAfterMm: hub },
  };
}

function gapFinding(
  answer: Answer,
  gapMm: number,
  limits: { readonly least: number; readonly most: number },
  source: string,
  unit: LengthUnit,
): Finding {
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const low = gapMm < limits.least - 1e-9;
  const high = gapMm > limits.most + 1e-9;
  const none = gapMm <= 1e-9;
  const told = none
    ? 'Stop: closing the bell housing would push the converter into the pump'
    : low
      ? 'Too little room for the hot converter to grow without loading the pump'
      : 'The impeller hub is drawn too far out of the pump; put the same shim under every pad';
  return {
    id: 'pull-forward',
    title: 'Pull-forward gap',
    status: none ? 'fail' : low || high ? 'caution' : 'pass',
    value: gapMm,
    limit: high ? limits.most : limits.least,
    unit: 'mm',
    sentence: `The pull-forward gap is ${mm(gapMm)}; ${mm(limits.least)} to ${mm(limits.most)} is allowed.${low || high || none ? ` ${told}.` : ''}`,
    source,
    answer,
  };
}

function hubFinding(
  answer: Answer | null,
  afterMm: number | null,
  { hubEngagementLeastMm: least }: PullForwardInput,
  unit: LengthUnit,
): Finding {
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const known = afterMm !== null && least !== null;
  const enough = known && afterMm >= least - 1e-9;
  return {
    id: 'hub-engagement',
    title: 'Impeller hub in the pump',
    status: known ? (enough ? 'pass' : 'fail') : 'not-checked',
    value: afterMm,
    limit: least,
    unit: 'mm',
    sentence: known
      ? `Drawn forward, the impeller hub stays ${mm(afterMm)} in the pump; at least ${mm(least)} is needed.`
      : `How far the impeller hub stays in the pump can’t be checked: ${afterMm === null ? 'it is not measured' : 'no minimum is entered'}.`,
    source: least === null ? '' : 'as given',
    answer,
  };
}

function refuse(input: PullForwardInput): void {
  const faults: Fault[] = [];
  const length = (path: string, name: string, mm: number | null, least: number) => {
    if (mm === null || (Number.isFinite(mm) && mm >= least)) return;
    const message = Number.isFinite(mm)
      ? `${name} is ${mm} mm; it must be ${least} mm or more.`
      : `${name} is not a number; give it in mm.`;
    faults.push({ path, message });
  };
  length('padDepthMm', 'The depth to the pads', input.padDepthMm, 0);
  length('flexplateStandsOutMm', 'How far the flexplate stands out', input.flexplateStandsOutMm, -1000);
  length('separatorPlateMm', 'The separator plate', input.separatorPlateMm, 0);
  length('shimMm', 'The shim', input.shimMm, 0);
  length('hubEngagementMm', 'The impeller hub in the pump', input.hubEngagementMm, 0);
  length('hubEngagementLeastMm', 'The minimum impeller hub in the pump', input.hubEngagementLeastMm, 0);
  const gap = input.makersGapMm;
  if (gap) {
    length('makersGapMm.least', 'The maker’s minimum gap', gap.least, 0);
    length('makersGapMm.most', 'The maker’s maximum gap', gap.most, gap.least);
  }
  if (faults.length > 0) throw new Refusal('pull-forward-input', faults);
}
