import type { TrendsShown } from '../../../shared/words/trends/trendsShown.ts';
import type { Frame } from '../../frame.ts';

/** What a part of the page needs of it. */
export interface TrendPart {
  readonly frame: Frame;
  readonly trends: TrendsShown;
  /** The address of its figures as CSV. */
  readonly csv: (part: string) => string;
}
