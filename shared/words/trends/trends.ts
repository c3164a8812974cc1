import { ITEM_WORD, LOOK_ITEMS, type LookItem } from '../job.ts';

/** Why a cover was replaced, as its decision was kept. */
export type ScrapReason =
  | 'crack'
  | `fault-${LookItem}`
  | 'thin-as-received'
  | 'thin-after-cut'
  | 'bends'
  | 'chosen';

export const SCRAP_WORD = {
  crack: 'Crack found',
  ...(Object.fromEntries(
    LOOK_ITEMS.map((item) => [`fault-${item}`, `${ITEM_WORD[item]}: beyond repair`]),
  ) as Record<`fault-${LookItem}`, string>),
  'thin-as-received': 'Too thin as received',
  'thin-after-cut': 'Too thin once cleaned up',
  bends: 'Bends too much',
  chosen: 'Replaced by choice',
} as const satisfies Readonly<Record<ScrapReason, string>>;

/** What a job can rest on, beside its own readings. */
export type RestsOn =
  | 'family'
  | 'gauge'
  | 'lathe'
  | 'criteria'
  | 'cover-calc'
  | 'plate-calc'
  | 'stack'
  | 'stud'
  | 'stud-calc';

/** An interval for a share, at the confidence it was worked out for. */
export interface ShareInterval {
  readonly share: number;
  readonly low: number;
  readonly high: number;
}
