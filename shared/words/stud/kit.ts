import type { CatalogueNut, CatalogueWasher } from '../catalogue.ts';
import type { Fits, StudCheckInput, StudMatch } from './stud.ts';

/** Something on the shelf that goes with the stud. */
export interface KitPart<Body> {
  readonly id: string;
  readonly entry: Body;
}

/** A nut of the catalog, held against the stud in its stack, and why it suits or not. */
export interface NutChoice extends KitPart<CatalogueNut> {
  readonly fits: Fits;
  /** A sentence. */
  readonly because: string;
  /** Its thread does not go on the stud. */
  readonly otherThread: boolean;
}

/** All that goes out with a stud. */
export interface Kit {
  /** How many of each; null where neither the stack nor the joint says. */
  readonly count: number | null;
  /** The one to take; null where none is in the catalog, or none suits. */
  readonly nut: NutChoice | null;
  /** Best first. */
  readonly nuts: readonly NutChoice[];
  /** Under the nut, where the stack has one. */
  readonly washer: KitPart<CatalogueWasher> | null;
  /** Under the pads, where the stack has any. */
  readonly shims: readonly KitPart<CatalogueWasher>[];
  /** What the stack wants and the shelf has not, a sentence each. */
  readonly missing: readonly string[];
  /** What the stud is checked with when the nut is the one of the kit. */
  readonly input: StudCheckInput;
}

interface Named {
  readonly id: string;
  readonly name: string;
}

/** A kit as the JSON interface tells it. */
export interface KitTold extends Pick<Kit, 'count' | 'missing'> {
  readonly nut: Named | null;
  readonly nuts: readonly (Named & Pick<NutChoice, 'fits' | 'because'>)[];
  readonly washer: Named | null;
  readonly shims: readonly (Named & Pick<CatalogueWasher, 'thicknessMm'>)[];
}

/** `kit` is null where the stud does not fit. */
export interface StudMatchedWithKit extends StudMatch {
  readonly kit: KitTold | null;
}
