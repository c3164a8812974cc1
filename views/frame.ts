import type { LengthUnit } from '../shared/words/print.ts';

/** What stands round every page: whose shop, which unit, who stands here. */
export interface Frame {
  readonly shopName: string;
  readonly demo: boolean;
  readonly lengthUnit: LengthUnit;
  readonly decimalSign: 'point' | 'comma';
  /** '' until somebody has said who they are. */
  readonly initials: string;
  /** This page's own address, to come back to. */
  readonly address: string;
}
