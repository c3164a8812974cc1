import type { CoverCheck, Verdict } from '../../../shared/words/cover.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { type LengthUnit, printAgainst } from '../../../shared/words/print.ts';
import type { CoverNumbers } from '../cover/coverNumbers.ts';
import { printCut, wallInWords } from './coverWords.ts';

/**
 * The verdict as a heading, and the one number that decided it. `toJudge` is a finding that decided nothing because its
 * numbers are not to be relied on.
 */
export function coverReason(
  { verdict, decidedBy }: { readonly verdict: Verdict; readonly decidedBy: Finding | null },
  numbers: CoverNumbers,
  unit: LengthUnit,
  toJudge?: Finding,
): Pick<CoverCheck, 'headline' | 'because'> {
  const cut = printCut(numbers.cut.dialledMm, unit);
  const { least } = numbers;
  const leaves = `leaves ${wallInWords(least.wallMm, least.station, numbers, unit)}`;
  const decided = decidedBy?.sentence ?? '';
  const yours =
    toJudge === undefined
      ? ''
      : ` ${toJudge.title} is left for you to judge first: its numbers are not to be relied on.`;
  switch (verdict) {
    case 'face':
      return { headline: `Face it: ${cut}.`, because: `That cleans every mark and ${leaves}.${yours}` };
    case 'face-if-sound':
      return {
        headline: `Face it, if it is sound: ${cut}.`,
        because: `That cleans every mark and ${leaves}. No crack test is recorded: test it first.${yours}`,
      };
    case 'face-and-ring':
      return {
        headline: `Weld a ring to it, measure again, then face it: ${cut} as it now stands.`,
        because: `${decided} Welding pulls the face, so every wall and height is measured again after it.`,
      };
    case 'advice-only':
      return {
        headline: 'Advice only: no minimum wall is set.',
        because: `A cut of ${cut} ${leaves}. Whether that is enough nobody has said: set a minimum wall, the maker’s or the shop’s.`,
      };
    case 'replace':
      return { headline: 'Replace it.', because: `${decided}${norDialledIn(decidedBy, numbers, unit)}` };
    case 'measure-again':
      return { headline: 'Measure again.', because: decided };
    case 'plan-again':
      return {
        headline: 'Plan the cut again.',
        because:
          decidedBy?.id === 'dialled-in'
            ? `As chucked, the least cut that cleans up, ${printCut(numbers.cleanUp.dialledMm, unit)}, leaves ${wallInWords(numbers.cleanUp.leastWallMm, null, numbers, unit)}. ${decided}`
            : decided,
      };
  }
}

/** A wall too thin as chucked is only given up once dialling in has been tried too. */
function norDialledIn(
  decidedBy: Finding | null,
  { dialledIn, minimum }: CoverNumbers,
  unit: LengthUnit,
): string {
  if (dialledIn === null || !['wall-left', 'clean-up-cut'].includes(decidedBy?.id ?? '')) return '';
  return ` Dialled in it would leave ${printAgainst(dialledIn.leastWallMm, minimum!.mm, unit)} at best.`;
}
