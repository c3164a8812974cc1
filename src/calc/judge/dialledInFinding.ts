import { DIALLING_WORTH_MM } from '../../../shared/words/cover.ts';
import { printCut } from '../../../shared/words/cut.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { type LengthUnit, printLength, printNumber } from '../../../shared/words/print.ts';
import type { CoverNumbers } from '../cover/coverNumbers.ts';
import { MM, printRadius, wallInWords } from './coverWords.ts';

/** Whether indicating the cover in with shims saves wall. A caution where the wall passes only so. */
export function dialledInFinding(numbers: CoverNumbers, unit: LengthUnit): Finding {
  const { dialledIn, minimum, cleanUp } = numbers;
  const base = { id: 'dialled-in', title: 'Indicated in, with shims', unit: MM, limit: minimum?.mm ?? null };
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
  const saved = printLength(Math.max(wallGainedMm, 0), unit);
  if (status !== 'caution' && wallGainedMm < DIALLING_WORTH_MM) {
    const gain = wallGainedMm > 0 ? `only ${saved} of wall` : 'no wall';
    return { ...found, status, sentence: `Indicating it in with shims would save ${gain}: not worth it.` };
  }
  const left = wallInWords(leastWallMm, null, numbers, unit);
  return {
    ...found,
    status,
    sentence: `${setUp(numbers, unit)} Then cut ${printCut(dialledIn.dialledMm, unit)}: it leaves ${left}. The shims save ${saved} of wall.`,
  };
}

/** A thinner one would print as nothing. */
const LEAST_SHIM_MM = { mm: 0.001, in: 0.00254 } as const;

/** "Shims: 0.071 mm at stud 1; 0.100 mm at stud 2. Tilt: 0.100 mm over 264 mm, low side at 247°." */
function setUp({ dialledIn, input }: CoverNumbers, unit: LengthUnit): string {
  const { tiltMm, tiltDirectionDeg, shimsMm } = dialledIn!;
  const toward = tiltDirectionDeg === null ? '' : `, low side at ${printNumber(tiltDirectionDeg, 0)}°`;
  const shims = shimsMm.flatMap((mm, pad) =>
    mm >= LEAST_SHIM_MM[unit] / 2 ? [`${printLength(mm, unit)} at stud ${pad + 1}`] : [],
  );
  const tilt = `${printLength(tiltMm, unit)} over ${printRadius(input.cover.trackOuterDiameterMm, unit)}${toward}`;
  return shims.length === 0
    ? `Indicate it in with a tilt of ${tilt}.`
    : `Shims: ${shims.join('; ')}. Tilt: ${tilt}.`;
}

function whyNot({ input, ways }: CoverNumbers): string {
  if (ways.length > 1) return 'Shims are not worked out: there are no indicator readings.';
  if (input.chucking === 'side-wall-jaws') {
    return 'Shims are not worked out: in side-wall jaws, shims under the pads do nothing.';
  }
  return 'Shims are not worked out: no limit is set for face runout after the cut.';
}
