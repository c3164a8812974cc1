import type { CatalogueStack, CatalogueStud, EntryKind } from '../catalogue.ts';
import type { JointFrom } from '../job.ts';
import type { LengthUnit } from '../print.ts';
import type { Kit, KitTold } from './kit.ts';
import type { Fits, StudCheck, StudCheckInput } from './stud.ts';

/** What a counter slip says: what was asked, and what was answered. */
export interface CounterSlip {
  readonly stack: CatalogueStack;
  readonly stud: CatalogueStud;
  readonly input: StudCheckInput;
  readonly check: StudCheck;
  readonly kit: Kit;
  /** Whether somebody measured the gap for this caller, or it is the catalog's. */
  readonly gapMeasured: boolean;
  readonly torqueFrom: JointFrom['torque'];
  /** As marked: "Grade 5", "10.9"; null where the strength is of no known class. */
  readonly studClass: string | null;
  readonly nutClass: string | null;
  /** The stud of the same thread not to take by mistake, and why. */
  readonly notThis: { readonly name: string; readonly because: string } | null;
}

/** What was asked at the counter. */
export interface SlipAsked {
  /** Of the catalog; "own" where its layers were typed. */
  readonly stackId: string;
  readonly studId: string;
  /** Everything as it was typed. */
  readonly typed: Readonly<Record<string, string>>;
  /** Its sentences are in it. */
  readonly unit: LengthUnit;
}

/** A slip as it was saved: it never changes. */
export interface KeptSlip {
  readonly number: number;
  /** UTC, ISO 8601. */
  readonly at: string;
  /** The shop's day, `2026-11-24`. */
  readonly day: string;
  readonly who: string;
  readonly customerReference: string;
  readonly asked: SlipAsked;
  readonly answered: CounterSlip;
  readonly calcVersion: string;
}

/** A slip in a list. */
export interface SlipLine extends Pick<KeptSlip, 'number' | 'at' | 'day' | 'who' | 'customerReference'> {
  readonly stackName: string;
  readonly studName: string;
  readonly fits: Fits;
  /** Its parts were counted out of stock. */
  readonly counted: boolean;
}

/** A slip in a list, as the JSON interface tells it. */
export interface SlipLineTold extends Omit<SlipLine, 'number'> {
  /** "S-12". */
  readonly number: string;
}

/** A slip as the JSON interface tells it. */
export interface SlipTold
  extends Pick<KeptSlip, 'at' | 'day' | 'who' | 'customerReference' | 'calcVersion'>,
    Pick<CounterSlip, 'stack' | 'stud' | 'input' | 'check' | 'gapMeasured' | 'torqueFrom' | 'notThis'>,
    Pick<SlipAsked, 'stackId' | 'studId'> {
  /** "S-12". */
  readonly number: string;
  readonly kit: KitTold;
  /** To be handed over; null where nobody said how many. */
  readonly parts: readonly SlipPart[] | null;
  readonly counts: readonly SlipCount[];
  /** Numbers of the jobs begun from it. */
  readonly jobs: readonly string[];
}

/** Kinds of the catalog that are counted. */
export type StockedKind = Extract<EntryKind, 'stud' | 'nut' | 'washer'>;

/** What a slip takes off the shelf. */
export interface SlipPart {
  readonly kind: StockedKind;
  readonly id: string;
  readonly name: string;
  readonly shelf: string;
  /** How many. */
  readonly count: number;
}

/** A part as its stock was changed. */
export interface StockChanged extends SlipPart {
  readonly from: number;
  readonly to: number;
}

/** Once counted out of stock, or back. */
export interface SlipCount {
  readonly what: 'out' | 'back';
  readonly at: string;
  readonly who: string;
  readonly why: string;
  readonly lines: readonly StockChanged[];
}

export function slipName(number: number): string {
  return `S-${number}`;
}

/** "S-12", "s12", "slip 12" → 12; null where it is no number of a slip. */
export function slipNumber(text: string): number | null {
  const digits = /^\s*(?:slip\s*#?\s*)?(?:s\s*-?\s*)?(\d{1,9})\s*$/i.exec(text);
  return digits === null || /^\s*\d/.test(text) ? null : Number(digits[1]);
}

/** All of it that is to be handed over, stud first; null where nobody said how many. */
export function partsOf({
  asked,
  answered,
}: Pick<KeptSlip, 'asked' | 'answered'>): readonly SlipPart[] | null {
  const { stud, kit } = answered;
  const { count, nut, washer, shims } = kit;
  if (count === null) return null;
  const part = (
    kind: StockedKind,
    id: string,
    { name, shelf }: { name: string; shelf?: string },
  ): SlipPart => ({
    kind,
    id,
    name,
    shelf: shelf ?? '',
    count,
  });
  return [
    part('stud', asked.studId, stud),
    ...(nut ? [part('nut', nut.id, nut.entry)] : []),
    ...[...(washer ? [washer] : []), ...shims].map(({ id, entry }) => part('washer', id, entry)),
  ];
}
