import type { CoverCheck, Verdict } from '../../../shared/words/cover.ts';
import { printCut } from '../../../shared/words/cut.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { type LengthUnit, printAgainst } from '../../../shared/words/print.ts';
import { VERDICT_WORD } from '../../../shared/words/verdicts.ts';
import type { CoverNumbers } from '../cover/coverNumbers.ts';
import { theMinimum, wallInWords } from './coverWords.ts';

/**
 * The verdict as a heading, and the one number that decided it. `toJudge` is a finding that decided nothing because its
 * numbers are not to be relied on. A cover to be replaced is told no depth of cut.
 */
export function coverReason(
  { verdict, decidedBy }: { readonly verdict: Verdict; readonly decidedBy: Finding | null },
  numbers: CoverNumbers,
  unit: LengthUnit,
  toJudge?: Finding,
): Pick<CoverCheck, 'headline' | 'because'> {
  const { least } = numbers;
  const cut = printCut(numbers.cut.dialledMm, unit);
  const leaves = `leaves ${wallInWords(least.wallMm, least.station, numbers, unit)}`;
  const decided = decidedBy?.sentence ?? '';
  const yours =
    toJudge === undefined
      ? ''
      : ` Check ${toJudge.title.toLowerCase()} yourself first: its figures can’t be relied on.`;
  const word = VERDICT_WORD[verdict];
  switch (verdict) {
    case 'face':
      return {
        headline: `${word}: ${cut}.`,
        because: `That cleans up the whole face and ${leaves}.${yours}`,
      };
    case 'face-if-sound':
      return {
        headline: `${word}: ${cut}.`,
        because: `That cleans up the whole face and ${leaves}. No crack test is recorded: do one first.${yours}`,
      };
    case 'face-and-ring':
      return {
        headline: `${word}.`,
        because: `${decided} Welding pulls the face: measure all of it again after.`,
      };
    case 'advice-only':
      return {
        headline: `${word}.`,
        because: `A cut of ${cut} ${leaves}. Set a minimum wall, the maker’s or the shop’s, to have it judged.`,
      };
    case 'replace':
      return { headline: `${word}.`, because: whyReplace(decidedBy, numbers, unit) };
    case 'measure-again':
    case 'plan-again':
      return {
        headline: `${word}.`,
        because: decidedBy?.id === 'dialled-in' ? `${asChucked(numbers, unit)} ${decided}` : decided,
      };
  }
}

/** "As chucked, cleaning up leaves only 4.250 mm, below the shop’s minimum of 4.300 mm." */
function asChucked(numbers: CoverNumbers, unit: LengthUnit): string {
  const left = printAgainst(numbers.cleanUp.leastWallMm, numbers.minimum!.mm, unit);
  return `As chucked, cleaning up leaves only ${left}, below ${theMinimum(numbers, unit)}.`;
}

/** What the least cut that cleans up would leave, told once; a wall is only given up once shimming was tried too. */
function whyReplace(decidedBy: Finding | null, numbers: CoverNumbers, unit: LengthUnit): string {
  if (!['wall-left', 'clean-up-cut'].includes(decidedBy?.id ?? '')) return decidedBy?.sentence ?? '';
  const { cleanUp, minimum, dialledIn } = numbers;
  const through = cleanUp.leastWallMm <= 0;
  const left = through
    ? 'Cleaning it up would cut through the cover.'
    : `Cleaning it up would leave ${wallInWords(cleanUp.leastWallMm, null, numbers, unit)}.`;
  if (dialledIn === null) return left;
  return `${left} Indicated in with shims, it would leave ${printAgainst(dialledIn.leastWallMm, minimum!.mm, unit)} at best.`;
}
