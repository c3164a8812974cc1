import type { Finding } from './finding.ts';

/** What is printed of a job. */
export const PAPERS = ['sheet', 'tag'] as const;
export type Paper = (typeof PAPERS)[number];

/** Style or type that a paper is printed with. */
export interface PrintedPart {
  /** SHA-256 of the content; the paper asks for it by this. */
  readonly hash: string;
  readonly kind: 'css' | 'woff2';
  readonly base64: string;
}

/** Sheet and tag of one job as they are printed, and all that printing them again needs. */
export interface Prints {
  readonly html: Readonly<Record<Paper, string>>;
  readonly parts: readonly PrintedPart[];
}

/** A signature whose papers were kept. */
export interface SignedPrint {
  /** The signature's revision. */
  readonly revision: number;
  readonly who: string;
  readonly at: string;
}

/** Which row of stations, from the center; past three rows a radius says it better. */
export type Row = 'only' | 'inner' | 'middle' | 'outer' | 'of-many';

/** What so many rows are called, from the center. */
export function rowNames(count: number): readonly Row[] {
  const few: readonly (readonly Row[])[] = [[], ['only'], ['inner', 'outer'], ['inner', 'middle', 'outer']];
  return few[count] ?? Array.from({ length: count }, () => 'of-many' as const);
}

/** A station as the sheet tells it: before the cut, and what is left there. */
export interface PaperStation {
  readonly angleDeg: number;
  readonly radiusMm: number;
  readonly row: Row;
  /** "behind stud 1". */
  readonly place: string;
  readonly beforeMm: number | null;
  readonly faceMm: number | null;
  readonly markMm: number | null;
  /** Measured after the cut where anything was; predicted before the cut; null where neither is. */
  readonly afterMm: number | null;
}

/** What the walls left are: measured after the cut, predicted before it, or none, because nothing is to be cut. */
export type AfterIs = 'measured' | 'predicted' | 'none';

/** The wall that decides, by what it is. */
export const THINNEST_WORD: Readonly<Record<AfterIs, string>> = {
  measured: 'Thinnest wall, measured after the cut',
  predicted: 'Thinnest wall after the cut, predicted',
  none: 'Thinnest wall, as measured',
};

export interface PaperWalls {
  readonly stations: readonly PaperStation[];
  readonly after: AfterIs;
  /** Index of the thinnest: after the cut, else as it was measured; null where there are no stations. */
  readonly thinnest: number | null;
}

/** When it was found. */
export type FoundWhen = 'before' | 'list' | 'after' | 'studs';
export const FOUND_WHEN: readonly FoundWhen[] = ['before', 'list', 'after', 'studs'];

export interface PaperFinding {
  readonly when: FoundWhen;
  readonly finding: Finding;
  /** Who went on in spite of it, and the words that say why; null where nobody had to, or nobody has yet. */
  readonly overruled: { readonly who: string; readonly at: string; readonly why: string } | null;
}

export interface PaperFindings {
  /** Each with whoever overruled it. */
  readonly notOk: readonly PaperFinding[];
  /** Names of what is OK. */
  readonly ok: Readonly<Record<FoundWhen, readonly string[]>>;
}
