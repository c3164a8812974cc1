import type { Answer } from '../../../shared/words/answer.ts';
import type { CoverCheckInput } from '../../../shared/words/cover.ts';
import { printCut } from '../../../shared/words/cut.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import {
  DENSITY,
  type LengthUnit,
  MASS,
  printAs,
  printLength,
  printNumber,
  SMALL_MASS,
  UNBALANCE,
} from '../../../shared/words/print.ts';
import { type CoverNumbers, USUAL } from '../cover/coverNumbers.ts';
import { permissibleUnbalance } from '../cover/permissibleUnbalance.ts';
import { placeName } from '../cover/placeNames.ts';
import { MM } from './coverWords.ts';

const FACING_MENDS = 'no limit before the cut: facing removes it';
const MAKER_FIRST = 'no limit set; the maker’s figure comes first';

/** The face as it came in, how facing changes clearance and balance, and how many cuts are left. */
export function faceFindings(numbers: CoverNumbers, unit: LengthUnit): readonly Finding[] {
  return [
    cutsLeftFinding(numbers),
    release(numbers, unit),
    tilt(numbers, unit),
    flatness(numbers, unit),
    unbalanceFinding(numbers, unit),
  ];
}

function whyNot(answer: Answer | null): string {
  return answer?.warnings[0]?.text ?? 'There are no indicator readings.';
}

function tilt({ runout, indicator }: CoverNumbers, unit: LengthUnit): Finding {
  const base = {
    id: 'tilt',
    title: 'Runout before the cut',
    limit: null,
    unit: MM,
    source: FACING_MENDS,
    answer: runout,
  };
  const value = runout?.value ?? null;
  if (value === null) {
    const sentence = `Runout before the cut is not worked out. ${whyNot(runout)}`;
    return { ...base, status: 'not-checked', value, sentence };
  }
  return {
    ...base,
    status: 'pass',
    value,
    sentence: `Before the cut the face tilts ${printLength(value, unit)} across the friction surface; total indicator reading ${printLength(indicator!.value!, unit)}. Facing removes it.`,
  };
}

function flatness({ flatness: found }: CoverNumbers, unit: LengthUnit): Finding {
  const base = {
    id: 'flatness',
    title: 'Flatness before the cut',
    limit: null,
    unit: MM,
    source: FACING_MENDS,
    answer: found,
  };
  const value = found?.value ?? null;
  if (value === null) {
    const sentence = `Flatness is not worked out. ${whyNot(found)}`;
    return { ...base, status: 'not-checked', value, sentence };
  }
  return {
    ...base,
    status: 'pass',
    value,
    sentence: `Apart from its tilt, the face is out of flat by ${printLength(value, unit)}. Facing removes it.`,
  };
}

function cutsLeftFinding({ cutsLeft, minimum }: CoverNumbers): Finding {
  const base = { id: 'cuts-left', title: 'Cuts left', limit: null, unit: 'cuts', answer: cutsLeft };
  if (cutsLeft === null) {
    const lacking = minimum === null ? 'no minimum wall is set' : 'the shop has set no typical cut';
    const sentence = `Cuts left are not worked out: ${lacking}.`;
    return { ...base, status: 'not-checked', value: null, sentence, source: lacking };
  }
  const value = cutsLeft.value!;
  const more = value === 1 ? '1 more cut' : `${value} more cuts`;
  return {
    ...base,
    status: value > 0 ? 'pass' : 'caution',
    value,
    sentence:
      value > 0
        ? `After this cut there is wall for ${more} of the shop’s typical depth.`
        : 'After this cut no wall is left for another of the shop’s typical depth.',
    source: 'the shop’s typical cut',
  };
}

function release({ releaseAfter, cut }: CoverNumbers, unit: LengthUnit): Finding {
  const depth = printCut(cut.dialledMm, unit);
  const base = {
    id: 'release-clearance',
    title: 'Lock-up release clearance',
    limit: null,
    unit: MM,
    source: MAKER_FIRST,
    answer: releaseAfter,
  };
  if (releaseAfter === null) {
    const sentence = `The lock-up release clearance grows by the cut, ${depth}. Enter the clearance before the cut to see the new one.`;
    return { ...base, status: 'not-checked', value: null, sentence };
  }
  return {
    ...base,
    status: 'caution',
    value: releaseAfter.value,
    sentence: `The lock-up release clearance grows to ${printLength(releaseAfter.value!, unit)}. A shim or lining ${depth} thicker restores it.`,
  };
}

function unbalanceFinding(numbers: CoverNumbers, unit: LengthUnit): Finding {
  const { unbalance, input } = numbers;
  const { heavySideDeg, ...answer } = unbalance;
  const { value } = answer;
  const base = {
    id: 'unbalance',
    title: 'Balance',
    status: 'not-checked' as const,
    value,
    limit: null,
    unit: 'g·mm',
    source: MAKER_FIRST,
    answer,
  };
  if (value === null) return { ...base, sentence: `Balance is not worked out. ${whyNot(answer)}` };
  const uneven = unevenInWords(numbers, value, unit);
  const density = densityTaken(numbers, unit);
  const wanted = input.balance ?? null;
  if (wanted === null) {
    return { ...base, sentence: `${uneven} No limit is set, so it is not judged.${density}` };
  }
  const permitted = permissibleUnbalance(wanted);
  const limit = permitted.value!;
  const over = value > limit + 1e-9;
  const mend = over && heavySideDeg !== null ? correction(value, heavySideDeg, input.cover, unit) : '';
  return {
    ...base,
    status: over ? 'caution' : 'pass',
    limit,
    sentence: `${uneven} ${over ? 'The limit is' : 'That is within the limit of'} ${printAs(limit, UNBALANCE[unit])}.${mend}${density}`,
    source: `ISO 21940-11, grade G ${wanted.gradeMmPerS} at ${wanted.speedRpm} rpm for ${printAs(wanted.massKg, MASS[unit])}; the maker’s figure comes first`,
    answer: { ...answer, how: [...answer.how, ...permitted.how] },
  };
}

/** "The wall left is out of balance by 80.8 g·mm, heavy at 45°." */
function unevenInWords({ unbalance, ways }: CoverNumbers, value: number, unit: LengthUnit): string {
  const upTo = ways.length === 1 ? '' : 'up to ';
  const { heavySideDeg } = unbalance;
  const side = heavySideDeg === null ? '' : `, heavy at ${printNumber(heavySideDeg, 0)}°`;
  return `The wall left is out of balance by ${upTo}${printAs(value, UNBALANCE[unit])}${side}.`;
}

function densityTaken({ usual }: CoverNumbers, unit: LengthUnit): string {
  return usual.density ? ` Plain steel is assumed, ${printAs(USUAL.densityKgPerM3, DENSITY[unit])}.` : '';
}

/** Where to take it off or put it on: at the bolt circle, on or across from the heavy side. */
function correction(
  gmm: number,
  heavySideDeg: number,
  cover: CoverCheckInput['cover'],
  unit: LengthUnit,
): string {
  const radiusMm = cover.studCircleDiameterMm / 2;
  const mass = printAs(gmm / radiusMm, SMALL_MASS[unit]);
  const light = (heavySideDeg + 180) % 360;
  return ` To correct it, take ${mass} off at the bolt circle, ${atAngle(heavySideDeg, cover.studCount)}. Or add it on the opposite side, ${atAngle(light, cover.studCount)}.`;
}

function atAngle(angleDeg: number, studCount: number): string {
  const whole = Math.round(angleDeg) % 360;
  const name = placeName(whole, studCount);
  return name.startsWith('at ') ? name : `at ${whole}°, ${name}`;
}
