import type { CoverCheck, CoverCheckInput } from '../../../shared/words/cover.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { checkWhatIsThere } from '../../calc/cover/checkCover.ts';

export interface Answered {
  readonly before: CoverCheck['verdict'];
  readonly after: CoverCheck;
  readonly makers: boolean;
}

/** Some covers, each judged under two limits; null for one that cannot be worked out. */
export function judgedUnderBoth(
  pairs: readonly (readonly [CoverCheckInput, CoverCheckInput])[],
): readonly (Answered | null)[] {
  return pairs.map(([now, then]) => {
    try {
      const before = checkWhatIsThere(now);
      const after = checkWhatIsThere(then);
      const makers = [before, after].every(({ minimumWall }) => minimumWall?.from === 'maker');
      return { before: before.verdict, after, makers };
    } catch (error) {
      if (error instanceof Refusal) return null;
      throw error;
    }
  });
}
