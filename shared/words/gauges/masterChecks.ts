/** A gauge tried on a master: what it should read and what it read. */
export interface MasterCheck {
  /** Made by whoever sends it. */
  readonly id: string;
  readonly gaugeId: string;
  /** Of the shop, `2026-11-24`. */
  readonly day: string;
  /** UTC, ISO 8601. */
  readonly at: string;
  readonly who: string;
  readonly masterMm: number;
  readonly masterTyped: string;
  readonly readingMm: number;
  readonly readingTyped: string;
  /** Asked about, and confirmed. */
  readonly confirmed: boolean;
  /** The day its calibration was due then: a check under another calibration says nothing of a drift under this one. */
  readonly dueOn: string | null;
  /** A mistyped check is withdrawn with a reason, and stays readable. */
  readonly withdrawn: { readonly who: string; readonly at: string; readonly why: string } | null;
}

/** What the checks on a master say of a gauge on the day it was used. */
export interface MasterChecks {
  /** The shop’s days between checks; null where it asks for none. */
  readonly everyDays: number | null;
  /** The last check up to the day of use. */
  readonly lastOn: string | null;
  /** What the gauge read then, less the master. */
  readonly lastOffMm: number | null;
  /** The first check after the day of use. */
  readonly nextOn: string | null;
  readonly nextOffMm: number | null;
  /** How far off it may be; null where nothing is known of the gauge’s uncertainty. */
  readonly limitMm: number | null;
  /** The day by which a drift leads past the limit; null where there is none. */
  readonly driftsOutOn: string | null;
}
