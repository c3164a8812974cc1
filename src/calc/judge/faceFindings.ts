import type { Answer } from '../../../shared/words/answer.ts';
import type { CoverCheckInput } from '../../../shared/words/cover.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { type LengthUnit, printLength, printNumber } from '../../../shared/words/print.ts';
import { type CoverNumbers, USUAL } from '../cover/coverNumbers.ts';
import { permissibleUnbalance } from '../cover/permissibleUnbalance.ts';
import { placeName } from '../cover/placeNames.ts';
import { MM, printCut } from './coverWords.ts';

const FACING_MENDS = 'no limit before the cut: facing removes it';
const NO_HEIGHTS = 'no indicator readings of the face were given';

/** The face as it came in, how facing changes clearance and balance, and how many cuts are left. */
export function faceFindings(numbers: CoverNumbers, unit: LengthUnit): readonly Finding[] {
  return [
    cutsLeftFinding(numbers),
    release(numbers, unit),
    tilt(numbers, unit),
    flatness(numbers, unit),
    unbalanceFinding(numbers),
  ];
}

function whyNot(answer: Answer | null): string {
  return answer?.warnings[0]?.text ?? `It cannot be worked out: ${NO_HEIGHTS}.`;
}

function tilt({ runout, indicator }: CoverNumbers, unit: LengthUnit): Finding {
  const base = { id: 'tilt', title: 'Tilt', limit: null, unit: MM, source: FACING_MENDS, answer: runout };
  const value = runout?.value ?? null;
  if (value === null) {
    return { ...base, status: 'not-checked', value, sentence: `Tilt not worked out. ${whyNot(runout)}` };
  }
  return {
    ...base,
    status: 'pass',
    value,
    sentence: `As it came the face tilts ${printLength(value, unit)} over the track, and the indicator swings ${printLength(indicator!.value!, unit)}. Facing removes it.`,
  };
}

function flatness({ flatness: found }: CoverNumbers, unit: LengthUnit): Finding {
  const base = {
    id: 'flatness',
    title: 'Flatness',
    limit: null,
    unit: MM,
    source: FACING_MENDS,
    answer: found,
  };
  const value = found?.value ?? null;
  if (value === null) {
    return { ...base, status: 'not-checked', value, sentence: `Flatness not worked out. ${whyNot(found)}` };
  }
  return {
    ...base,
    status: 'pass',
    value,
    sentence: `Beyond its tilt the face is out of flat by ${printLength(value, unit)}. Facing removes it.`,
  };
}

function cutsLeftFinding({ cutsLeft, minimum }: CoverNumbers): Finding {
  const base = { id: 'cuts-left', title: 'Cuts left', limit: null, unit: 'cuts', answer: cutsLeft };
  if (cutsLeft === null) {
    const lacking = minimum === null ? 'no minimum wall is set' : 'the shop has set no typical cut';
    return {
      ...base,
      status: 'not-checked',
      value: null,
      sentence: `Cuts left not worked out: ${lacking}.`,
      source: lacking,
    };
  }
  const value = cutsLeft.value!;
  return {
    ...base,
    status: value > 0 ? 'pass' : 'caution',
    value,
    sentence:
      value > 0
        ? `After this cut there is wall for ${value} more of the shop’s usual depth.`
        : 'After this cut there is not wall enough for another of the shop’s usual depth.',
    source: 'the shop’s typical cut',
  };
}

function release({ releaseAfter, cut }: CoverNumbers, unit: LengthUnit): Finding {
  const grows = printCut(cut.dialledMm, unit);
  const base = {
    id: 'release-clearance',
    title: 'Release clearance',
    limit: null,
    unit: MM,
    answer: releaseAfter,
  };
  const source = 'no limit given: the maker’s figure comes first';
  if (releaseAfter === null) {
    return {
      ...base,
      status: 'not-checked',
      value: null,
      sentence: `The lock-up clutch’s release clearance grows by the cut, ${grows}; it was not given, so the new one is not known.`,
      source,
    };
  }
  return {
    ...base,
    status: 'caution',
    value: releaseAfter.value,
    sentence: `The lock-up clutch’s release clearance grows by ${grows} to ${printLength(releaseAfter.value!, unit)}; a shim or a lining thicker by ${grows} restores it.`,
    source,
  };
}

function unbalanceFinding({ unbalance, ways, usual, input }: CoverNumbers): Finding {
  const base = {
    id: 'unbalance',
    title: 'Unbalance',
    status: 'not-checked',
    limit: null,
    unit: 'g·mm',
  } as const;
  const source = 'no limit given: the maker’s figure comes first';
  const { heavySideDeg, ...answer } = unbalance;
  const { value } = answer;
  if (value === null) {
    return {
      ...base,
      value,
      sentence: `Unbalance not worked out. ${whyNot(answer)}`,
      source,
      answer,
    };
  }
  const density = usual.density ? ` Density taken as ${USUAL.densityKgPerM3} kg/m³, plain steel.` : '';
  const upTo = ways.length === 1 ? '' : 'up to ';
  const side = heavySideDeg === null ? '' : `, heavy toward ${printNumber(heavySideDeg, 0)}°`;
  const uneven = `The wall left on the track is uneven by ${upTo}${printNumber(value, 1)} g·mm${side}.`;
  const wanted = input.balance ?? null;
  if (wanted === null) {
    const sentence = `${uneven} No limit is given, so it is not judged.${density}`;
    return { ...base, value, sentence, source, answer };
  }
  const permitted = permissibleUnbalance(wanted);
  const limit = permitted.value!;
  const over = value > limit + 1e-9;
  return {
    ...base,
    status: over ? 'caution' : 'pass',
    value,
    limit,
    sentence: `${uneven} ${over ? 'More than' : 'Within'} ${printNumber(limit, 1)} g·mm, grade G ${wanted.gradeMmPerS} at ${wanted.speedRpm} rpm for ${wanted.massKg} kg.${over && heavySideDeg !== null ? correction(value, heavySideDeg, input.cover) : ''}${density}`,
    source: 'ISO 21940-11 at the grade and speed the shop works to; the maker’s figure comes first',
    answer: { ...answer, how: [...answer.how, ...permitted.how] },
  };
}

/** Where to take it off or put it on: at the stud circle, on or across from the heavy side. */
function correction(gmm: number, heavySideDeg: number, cover: CoverCheckInput['cover']): string {
  const radiusMm = cover.studCircleDiameterMm / 2;
  const grams = printNumber(gmm / radiusMm, 2);
  const light = (heavySideDeg + 180) % 360;
  return ` ${grams} g at the stud circle corrects it: taken off ${atClock(heavySideDeg, cover.studCount)}, or put on ${atClock(light, cover.studCount)}.`;
}

function atClock(angleDeg: number, studCount: number): string {
  const whole = Math.round(angleDeg) % 360;
  const name = placeName(whole, studCount);
  return name.startsWith('at ') ? name : `at ${whole}°, ${name}`;
}
