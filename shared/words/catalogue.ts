import type { BendingSettings, HeatSettings } from './bending/bending.ts';
import type { RingSize } from './bending/stiffness.ts';
import type { BalanceWanted, FitLimits } from './cover.ts';
import type { InspectionList } from './inspection.ts';
import type { Nut, Stack, Stud, StudCriteria } from './stud/stud.ts';
import type { WhatStops } from './whatStops.ts';

/** A cover family: what the shop knows of one kind of cover before it measures one. */
export interface Family {
  readonly name: string;
  readonly make: 'stamped' | 'from-solid';
  readonly sideWall: 'plain' | 'ribbed';
  readonly studCount: number;
  readonly studCircleDiameterMm: number;
  readonly trackInnerDiameterMm: number;
  readonly trackOuterDiameterMm: number;
  readonly nominalWallMm: number;
  readonly bossDiameterMm: number | null;
  readonly rimDiameterMm: number | null;
  readonly padDiameterMm: number | null;
  readonly padThicknessMm: number | null;
  /** Needed by the bending model only. null, or missing in older records: not given. */
  readonly sideWallMm?: number | null;
  readonly pistonSealDiameterMm?: number | null;
  readonly hubDiameterMm?: number | null;
  /** Used instead of the shop's figure. */
  readonly lockUpPressureMPa?: number | null;
  /** Yield of this cover's steel; used instead of the shop's figure. */
  readonly yieldMPa?: number | null;
  /** What it is made of, as the catalog had it when the type was saved. */
  readonly steel?: Chosen<'steel'> | null;
  /** What its lock-up clutch is lined with, likewise. */
  readonly lining?: Chosen<'lining'> | null;
  /** The ring that may be welded to it. */
  readonly ring?: RingSize | null;
  /** Limits on pads, hub, crank pilot, heights and end play. */
  readonly limits?: FitLimits | null;
  readonly makerMinimumWallMm: number | null;
  readonly makerMinimumWallSource: string | null;
  /** The shop's own figure for this family, used instead of the general one; who set it, and on which day. */
  readonly shopMinimumWallMm: number | null;
  readonly shopMinimumWallBy?: string | null;
  /** `2026-11-24`. */
  readonly shopMinimumWallOn?: string | null;
  /** Who set it and when in one text, as older records have it. */
  readonly shopMinimumWallSource: string | null;
  readonly ringAllowed: boolean;
  readonly note: string;
}

export interface CatalogueStud {
  readonly name: string;
  readonly stud: Stud;
  /** The thread as typed: '3/8-24 UNF-2A'. */
  readonly threadTyped: string;
  /** How many are on the shelf; null or missing where nobody counts. */
  readonly stock?: number | null;
  /** Which shelf they lie on, as "B3". */
  readonly shelf?: string;
  readonly note: string;
}

/** A nut on the shelf: it brings no washer with it. */
export type NutAlone = Omit<Nut, 'washerMm'>;

export interface CatalogueNut {
  readonly name: string;
  readonly nut: NutAlone;
  /** The thread as typed: '3/8-24 UNF-2B'. */
  readonly threadTyped: string;
  readonly stock?: number | null;
  readonly shelf?: string;
  readonly note: string;
}

/** A washer under a nut, or a shim under a pad. */
export interface CatalogueWasher {
  readonly name: string;
  readonly use: 'washer' | 'shim';
  readonly innerDiameterMm: number;
  readonly outerDiameterMm: number;
  readonly thicknessMm: number;
  /** ± on the thickness. */
  readonly toleranceMm: number;
  readonly stock?: number | null;
  readonly shelf?: string;
  readonly note: string;
}

export interface CatalogueStack {
  readonly name: string;
  readonly stack: Stack;
  readonly nut: Nut | null;
  readonly nutThreadTyped: string | null;
  /** Pull-forward gap that remains, when it is known for this application. */
  readonly pullForwardMm: number | null;
  /** What the vehicle maker tightens to, and the document it stands in; null or missing: look it up. */
  readonly makerTorqueNm?: number | null;
  readonly makerTorqueSource?: string | null;
  readonly note: string;
}

/** A steel, with the figures that bending and heat are worked out with. */
export interface CatalogueSteel {
  readonly name: string;
  readonly youngMPa: number;
  readonly poisson: number;
  readonly source: string;
  /** The day of the source's edition or certificate. */
  readonly sourceOn: string | null;
  readonly yieldMPa: number | null;
  /** All three of heat, or none. */
  readonly conductivityWPerMK: number | null;
  readonly densityKgPerM3: number | null;
  readonly specificHeatJPerKgK: number | null;
  readonly note: string;
}

/** A clutch lining, with the stiffness that bending is worked out with. */
export interface CatalogueLining {
  readonly name: string;
  /** Pressure for each mm the whole lining is squeezed. */
  readonly liningModulusMPaPerMm: number;
  readonly source: string;
  /** The day of the source's edition, certificate or measurement. */
  readonly sourceOn: string | null;
  readonly note: string;
}

/** A lathe: the shop's figures for it, with where they are from. */
export interface CatalogueLathe extends LatheSettings {
  readonly name: string;
  readonly source: string;
  /** The day of the source, or when they were set. */
  readonly sourceOn: string | null;
  readonly note: string;
}

/** An entry of the catalog as it was when it was chosen. */
export type Chosen<K extends EntryKind> = { readonly id: string; readonly revision: number } & {
  readonly [Kind in K]: EntryBodies[Kind];
};

/** A gauge of the shop, with what its certificate says of it. */
export interface CatalogueGauge {
  readonly name: string;
  readonly gaugeKind: 'micrometer' | 'caliper' | 'indicator' | 'ultrasound';
  readonly resolutionMm: number | null;
  /** Expanded uncertainty of the calibration, and the factor k it was expanded with. */
  readonly calibrationUMm: number | null;
  readonly coverageFactor: number;
  /** Standard deviation of one reading. */
  readonly repeatabilityMm: number | null;
  /** A day, `2026-11-24`; after it the calibration counts as overdue. */
  readonly dueOn: string | null;
  /** Days between checks on a master; null, or left out, where the shop asks for none. */
  readonly checkEveryDays?: number | null;
  readonly note: string;
}

/** What the shop's lathe does, and how it is worked. */
export interface LatheSettings {
  readonly leastRpm: number;
  readonly mostRpm: number;
  readonly cuttingSpeedMPerMin: number;
  readonly noseRadiusMm: number;
  readonly roughingLimitMm: number;
  readonly finishingCutMm: number;
  readonly roughingFeedMm: number;
  readonly finishingFeedMm: number;
}

/** The shop's limits for a replaced stud; null where it has set none. */
export interface StudSettingLimits {
  /** Most it may lean, measured 25 mm above the pad. */
  readonly leanAt25Mm: number | null;
  /** Most its base may be off location. */
  readonly offMm: number | null;
  /** Torque it must hold, nut on a spacer. */
  readonly proofNm: number | null;
}

/** The shop's own limits and habits; a revision of its own, with who set it and when. */
export interface ShopCriteria extends StudCriteria {
  readonly shopName: string;
  readonly minimumWallMm: number | null;
  /** Worked out for each cover instead, with a decimal point: `max(0.165 in, 85 % of new wall)`. */
  readonly minimumWallFormula?: string | null;
  readonly cleanUpAllowanceMm: number;
  readonly faceRunoutLimitMm: number | null;
  readonly confidence: number;
  readonly typicalCutMm: number | null;
  readonly lengthUnit: 'mm' | 'in';
  readonly decimalSign: 'point' | 'comma';
  /** Whose days and times it goes by, as America/Chicago; null, or left out: the computer's. */
  readonly timeZone?: string | null;
  /** null, or missing in older records: not set. */
  readonly lathe?: LatheSettings | null;
  readonly balance?: BalanceWanted | null;
  readonly bending?: BendingSettings | null;
  readonly heat?: HeatSettings | null;
  readonly studSetting?: StudSettingLimits | null;
  /** Thicknesses of the shims in stock, for under the pads. */
  readonly shimsMm?: readonly number[];
  /** A job is signed only once its inspection list is done; left out in older records. */
  readonly inspectionStops?: boolean;
  /** What stops a cover and what warns; left out in older records: as usual. */
  readonly whatStops?: WhatStops;
  /** Days after which a manager is reminded that no backup has left this machine; null, or left out: never. */
  readonly backupAwayDays?: number | null;
}

/** What the catalog keeps, by kind. The shop's criteria are kept the same way, as one entry. */
export interface EntryBodies {
  readonly family: Family;
  readonly stud: CatalogueStud;
  readonly stack: CatalogueStack;
  readonly nut: CatalogueNut;
  readonly washer: CatalogueWasher;
  readonly gauge: CatalogueGauge;
  readonly steel: CatalogueSteel;
  readonly lining: CatalogueLining;
  readonly lathe: CatalogueLathe;
  readonly criteria: ShopCriteria;
  /** What is looked at and measured on covers of some types. */
  readonly checklist: InspectionList;
}
export type EntryKind = keyof EntryBodies;

/** What a person typed for a quantity, where that is not simply the number that is kept, or was confirmed. */
export interface AsTyped {
  /** Empty where it says no more than the number. */
  readonly text: string;
  /** The unit it was read in where none was typed; null where the text has its unit. */
  readonly bareUnit: string | null;
  /** It looked like a slip, was asked about, and is right all the same. */
  readonly confirmed?: true;
}

/** What was typed, by the quantity's path in the body: `nominalWallMm`, `stack.layers.0.thicknessMm`. */
export type TypedInEntry = Readonly<Record<string, AsTyped>>;

/** An entry as it stood at one revision: who made it so, when and why. */
export interface Entry<K extends EntryKind = EntryKind> {
  readonly kind: K;
  readonly id: string;
  readonly revision: number;
  /** UTC, ISO 8601. */
  readonly at: string;
  readonly who: string;
  readonly why: string;
  readonly name: string;
  readonly retired: boolean;
  readonly body: EntryBodies[K];
}
