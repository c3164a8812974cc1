import { DIALLING_WORTH_MM } from '../../../shared/words/cover.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { type LengthUnit, listInWords, printLength, printNumber } from '../../../shared/words/print.ts';
import type { CoverNumbers } from '../cover/coverNumbers.ts';
import { MM, printCut, printRadius, wallInWords } from './coverWords.ts';

/** Whether shimming the cover square to its marks saves wall. A caution where the wall passes only so. */
export function dialledInFinding(numbers: CoverNumbers, unit: LengthUnit): Finding {
  const { dialledIn, minimum, cleanUp } = numbers;
  const base = { id: 'dialled-in', title: 'Dialled in', unit: MM, limit: minimum?.mm ?? null } as const;
  const source = minimum ? `${minimum.from}: ${minimum.source}` : 'no minimum wall is set';
  if (dialledIn === null) {
    return { ...base, status: 'not-checked', value: null, sentence: whyNot(numbers), source, answer: null };
  }
  const { leastWallMm, wallGainedMm, answer } = dialledIn;
  const found = { ...base, value: leastWallMm, source, answer };
  const below = (wallMm: number) => minimum !== null && wallMm < minimum.mm - 1e-9;
  const status =
    minimum === null
      ? 'not-checked'
      : below(leastWallMm)
        ? 'fail'
        : below(cleanUp.leastWallMm)
          ? 'caution'
          : 'pass';
  const gain =
    wallGainedMm > 0 ? `would save ${printLength(wallGainedMm, unit)} of wall` : 'would save no wall';
  if (status !== 'caution' && wallGainedMm < DIALLING_WORTH_MM) {
    return { ...found, status, sentence: `Dialling the cover in ${gain}: not worth it.` };
  }
  const passes = `Dialled in, ${setUp(numbers, unit)}; then ${printCut(dialledIn.dialledMm, unit)} cleans it and leaves ${wallInWords(leastWallMm, null, numbers, unit)}`;
  return {
    ...found,
    status,
    sentence: `${passes}. That saves ${printLength(wallGainedMm, unit)} of wall.`,
  };
}

/** A thinner one would print as nothing. */
const LEAST_SHIM_MM = { mm: 0.001, in: 0.00254 } as const;

/** "tilted 0.100 mm over Ø 264 mm toward 247°, with shims of 0.071 mm under stud 1 and 0.100 mm under stud 2". */
function setUp({ dialledIn, input }: CoverNumbers, unit: LengthUnit): string {
  const { tiltMm, tiltDirectionDeg, shimsMm } = dialledIn!;
  const toward = tiltDirectionDeg === null ? '' : ` toward ${printNumber(tiltDirectionDeg, 0)}°`;
  const shims = listInWords(
    shimsMm.flatMap((mm, pad) =>
      mm >= LEAST_SHIM_MM[unit] / 2 ? [`${printLength(mm, unit)} under stud ${pad + 1}`] : [],
    ),
  );
  return `tilted ${printLength(tiltMm, unit)} over Ø ${printRadius(input.cover.trackOuterDiameterMm, unit)}${toward}${shims === '' ? '' : `, with shims of ${shims}`}`;
}

function whyNot({ input, ways }: CoverNumbers): string {
  if (ways.length > 1) return 'Dialling in is not worked out: the face was not indicated.';
  if (input.chucking === 'side-wall-jaws') {
    return 'Dialling in is not offered: in side-wall jaws shims under the pads mean nothing.';
  }
  return 'Dialling in is not worked out: no limit is set on the runout left in the face after the cut.';
}
