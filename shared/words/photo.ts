import { ITEM_WORD, LOOK_ITEMS, type LookItem } from './job.ts';

/** What a photo shows: the whole job, a place on the face, or a thing that was inspected. */
export type PhotoPlace =
  | { readonly spot: 'job' }
  | { readonly spot: 'station'; readonly angleDeg: number; readonly radiusMm: number }
  | { readonly spot: 'item'; readonly item: LookItem | ListItemName };

/** An item of an inspection list, by its name. */
export type ListItemName = `list:${string}`;
export const LIST_ITEM = 'list:';

/** "Welds", or the name of the item of an inspection list. */
export function photoItemWord(item: LookItem | ListItemName): string {
  return isLookItem(item) ? ITEM_WORD[item] : item.slice(LIST_ITEM.length);
}

function isLookItem(item: string): item is LookItem {
  return LOOK_ITEMS.some((one) => one === item);
}

export const PHOTO_KINDS = ['jpeg', 'png', 'webp'] as const;
export type PhotoKind = (typeof PHOTO_KINDS)[number];

/** One photo as it was sent. Never changed; the picture itself is a file named by its content. */
export interface Photo {
  /** Made by whoever sends it, so that sending it twice is harmless. */
  readonly id: string;
  readonly revision: number;
  readonly place: PhotoPlace;
  /** SHA-256 of the file as it was sent, in hexadecimal. */
  readonly hash: string;
  readonly kind: PhotoKind;
  readonly bytes: number;
  /** Size of the picture turned upright, as it is shown. */
  readonly width: number;
  readonly height: number;
  readonly note: string;
  readonly who: string;
  readonly at: string;
}

export type NewPhoto = Omit<Photo, 'revision' | 'who' | 'at'>;
