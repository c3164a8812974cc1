import type { LookItem } from './job.ts';

/** What a photo shows: the whole job, a place on the face, or a thing that was inspected. */
export type PhotoPlace =
  | { readonly spot: 'job' }
  | { readonly spot: 'station'; readonly angleDeg: number; readonly radiusMm: number }
  | { readonly spot: 'item'; readonly item: LookItem };

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
