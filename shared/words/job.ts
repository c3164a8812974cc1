import type { Bending } from './bending/bending.ts';
import type {
  CatalogueGauge,
  CatalogueStack,
  CatalogueStud,
  Chosen,
  Family,
  ShopCriteria,
} from './catalogue.ts';
import type { Chucking, CoverCheck, CoverCheckInput, CrackTest, Gauge, KnockOn } from './cover.ts';
import type { Finding } from './finding.ts';
import type { Inspected } from './inspection.ts';
import type { StudCheck, StudCheckInput } from './stud/stud.ts';

/** 1. Receive. The family is kept as it was on that day, so a later change of the catalog moves no job. */
export interface Received {
  readonly familyId: string;
  readonly familyRevision: number;
  readonly family: Family;
  readonly customerReference: string;
  /** A day, `2026-11-24`. */
  readonly receivedOn: string;
  readonly note: string;
  /** The number of the earlier job of this same cover, where it came back; older records do not say. */
  readonly comebackOf?: string | null;
  /** Scribed or tagged on the cover itself; '' or left out where it has none. */
  readonly coverNumber?: string;
}

export const LOOK_ITEMS = ['welds', 'pads', 'stud-threads', 'crank-pilot', 'earlier-repairs'] as const;
export type LookItem = (typeof LOOK_ITEMS)[number];
export const ITEM_WORD: Readonly<Record<LookItem, string>> = {
  welds: 'Welds',
  pads: 'Pads',
  'stud-threads': 'Stud threads',
  'crank-pilot': 'Crank pilot',
  'earlier-repairs': 'Earlier repairs',
};

/** 2. Look. A crack ends it: no number overrules a crack. */
export interface Looked {
  readonly crackTest: CrackTest;
  readonly crackMethod: 'by-eye' | 'dye' | 'magnetic-particle' | null;
  readonly crackNote: string;
  readonly items: readonly {
    readonly item: LookItem;
    readonly result: 'not-looked' | 'sound' | 'fault';
    /** The shop says nothing can mend this fault. */
    readonly final: boolean;
    readonly note: string;
  }[];
}

/** A gauge of the catalog, kept as it was when it was chosen. */
export interface ChosenGauge {
  readonly use: 'wall' | 'face';
  readonly id: string;
  readonly revision: number;
  readonly gauge: CatalogueGauge;
}

export interface RingWelded {
  /** A day. */
  readonly on: string;
  readonly note: string;
  /** Welded to the pads all round; null, or left out, where nobody recorded it. */
  readonly joinedToPads?: boolean | null | undefined;
}

/** 3. Measure: how, and where. The readings themselves are rows of their own. */
export interface MeasuringSetup {
  readonly gauge: string;
  /** Resolution, calibration and repeatability of the gauge; null when nothing is known. */
  readonly gaugeFigures: Gauge | null;
  /** The gauges of the catalog that were used; missing in older records. */
  readonly gauges?: readonly ChosenGauge[];
  readonly chucking: Chucking | null;
  readonly residualRunoutMm: number | null;
  readonly wallReadThrough: 'bare' | 'pad-subtracted' | 'ultrasound';
  readonly stations: readonly { readonly angleDeg: number; readonly radiusMm: number }[];
  /** What was measured round the face: chuck, pads, hub, pilot, heights. */
  readonly knockOn?: KnockOn | null;
  /** Lock-up clutch clearance before the cut. */
  readonly releaseClearanceMm?: number | null;
  /** Set once ring, pads and studs are welded. Readings before it are kept but no longer count: welding pulls the face. */
  readonly ringWelded?: RingWelded | null;
}

/** 4. The cut a person wants to try instead of the least that cleans up; null is the clean-up cut. */
export interface CutPlan {
  readonly plannedCutMm: number | null;
  readonly typed: string;
  /** Whose figures the passes are planned with; null, or left out: the shop's. */
  readonly lathe?: Chosen<'lathe'> | null;
}

export const DECISION_KINDS = ['face', 'face-and-ring', 'replace'] as const;
export type DecisionKind = (typeof DECISION_KINDS)[number];

/** 6. Decide: kept with everything it was worked out from, as it was. */
export interface Decision {
  readonly decision: DecisionKind;
  /** Needed where the decision is not the verdict. */
  readonly reason: string;
  readonly input: CoverCheckInput;
  readonly criteria: ShopCriteria;
  /** Which revision of the shop's criteria that is, 0 before any was saved; older decisions do not say. */
  readonly criteriaRevision?: number;
  readonly check: CoverCheck;
  readonly calcVersion: string;
  /** How it bends and heats; null where that could not be worked out, missing in older decisions. */
  readonly bending?: Bending | null;
  /** The job's revision when this was worked out. */
  readonly workedOutAtRevision: number;
}

export interface CutMade {
  readonly depthMm: number;
  readonly typed: string;
  readonly note: string;
  /** The darkened layer as seen after this pass; null, or left out, where nobody looked. */
  readonly look?: 'gone' | 'dark' | null | undefined;
  /**
   * Whether the face was indicated after this pass with pads and crank pilot trued again and shims out: otherwise it
   * shows the lathe. null, or left out, where nobody said.
   */
  readonly truedAgain?: boolean | null | undefined;
}

/** 8. Cuts made, in order. */
export interface CutsMade {
  readonly cuts: readonly CutMade[];
}

export interface JointFrom {
  /** Whether the torque is the vehicle maker's; null where nobody said. */
  readonly torque: 'maker' | 'other' | null;
  /** "zinc plated (Shigley, 9th ed., table 8-15)", or that the figure was typed. */
  readonly nutFactor: string;
  readonly scatter: string;
  readonly friction: string;
}

export interface ReplacedStudAsked {
  /** Its number on the cover. */
  readonly stud: number;
  readonly how: 'welded' | 'pressed';
  /** How far it leans, measured at a height above the pad. */
  readonly leanMm: number | null;
  readonly leanAtMm: number | null;
  /** How far its base is from where it should be. */
  readonly offMm: number | null;
  readonly filletMm: number | null;
  /** Proof torque it was tested with, nut on a spacer. */
  readonly provedNm: number | null;
  readonly heldIt: boolean | null;
  readonly note: string;
}
/** A replaced stud, with what was found of it under the shop's limits of that day. */
export interface ReplacedStudKept extends ReplacedStudAsked {
  readonly findings: readonly Finding[];
}

export interface RetorqueAsked {
  /** A day. */
  readonly on: string;
  readonly torqueNm: number;
  readonly makerAllows: 'yes' | 'no' | 'not-said';
  readonly threadLocker: boolean;
  readonly note: string;
}
/** The nuts, re-torqued after the first heat cycle. */
export interface RetorqueKept extends RetorqueAsked {
  readonly findings: readonly Finding[];
}

/** 10. Studs chosen for a stack, with the check as it was. */
export interface StudsChosen {
  readonly stackId: string;
  readonly stack: CatalogueStack;
  readonly studId: string;
  readonly stud: CatalogueStud;
  /** Which revisions of the catalog and of the criteria those were; older choices do not say. */
  readonly revisions?: { readonly stack: number; readonly stud: number; readonly criteria: number };
  readonly pullForwardMm: number | null;
  /** Everything the check was worked out from, criteria included; missing in older choices. */
  readonly input?: StudCheckInput;
  readonly check: StudCheck;
  readonly calcVersion: string;
  readonly note: string;
  /** Where the joint's figures come from, in words; the joint itself is in the input. */
  readonly jointFrom?: JointFrom | null;
  /** Replaced studs by their number on the cover; of each the latest. */
  readonly replaced?: readonly ReplacedStudKept[];
  readonly retightening?: RetorqueKept | null;
}

/** 11. Record and release. */
export interface Signature {
  readonly statement: string;
  readonly signedRevision: number;
  /** What the cover measured after the cut, as it was found when it was signed. */
  readonly verified?: readonly Finding[];
}

/** A job received by mistake is closed, and nothing of it changes until it is opened again; the revision says why. */
export interface Closing {
  readonly closed: boolean;
}

export interface JobSections {
  readonly received: Received;
  readonly looked: Looked;
  readonly inspected: Inspected;
  readonly setup: MeasuringSetup;
  readonly plan: CutPlan;
  readonly decision: Decision;
  readonly cuts: CutsMade;
  readonly studs: StudsChosen;
  readonly signature: Signature;
  readonly closed: Closing;
}
export type SectionName = keyof JobSections;

/** A section as it now stands, and the revision of the job that made it so. */
export interface Kept<Body> {
  readonly revision: number;
  /** UTC, ISO 8601. */
  readonly at: string;
  readonly who: string;
  readonly why: string;
  readonly body: Body;
}

export type ReadingKind = 'wall' | 'face' | 'mark';
/** Before the cut, or after it. */
export type Pass = 'before' | 'after';

/** One reading as it was taken. Never changed: a correction is a new reading that names the one it replaces. */
export interface Reading {
  /** Made by whoever sends it, so that sending it twice is harmless. */
  readonly id: string;
  readonly revision: number;
  readonly pass: Pass;
  readonly kind: ReadingKind;
  readonly angleDeg: number;
  readonly radiusMm: number;
  /** null withdraws the reading it replaces. */
  readonly valueMm: number | null;
  readonly typed: string;
  readonly gauge: string;
  /** True when the value was doubted (a slipped decimal?) and the person has not confirmed it. */
  readonly doubtful: boolean;
  /** The person was asked about the value and said it is right; null where nobody kept whether. */
  readonly confirmed?: boolean | null;
  readonly replaces: string | null;
  readonly who: string;
  readonly at: string;
}

export const STAGES = [
  'to-look',
  'to-measure',
  'to-decide',
  'to-cut',
  'to-verify',
  'to-sign',
  'signed',
  'closed',
] as const;
export type Stage = (typeof STAGES)[number];
/** There is still something to do. */
export const OPEN_STAGES: readonly Stage[] = STAGES.filter(
  (stage) => stage !== 'signed' && stage !== 'closed',
);

/** The steps of a job in their order. */
export const STEP_NAMES = ['receive', 'look', 'measure', 'decide', 'cut', 'verify', 'studs', 'sign'] as const;
export type StepName = (typeof STEP_NAMES)[number];
/**
 * `open`: asked for and not there; `partly`: begun, and not all that it is for is there; `spared`: not there, and nothing
 * asks for it.
 */
export type StepStands = 'done' | 'partly' | 'open' | 'spared';
export type JobSteps = Readonly<Record<StepName, StepStands>>;
/** As a page shows it. `missing`: needed before the next can be done; `later`: its turn has not come. */
export type StepState = 'done' | 'partly' | 'next' | 'missing' | 'later';

export interface Job {
  readonly id: number;
  readonly number: string;
  /** Goes up by one with every change. */
  readonly revision: number;
  readonly createdAt: string;
  readonly changedAt: string;
  readonly stage: Stage;
  readonly steps: JobSteps;
  readonly outcome: DecisionKind | null;
  readonly demo: boolean;
  readonly sections: { readonly [S in SectionName]: Kept<JobSections[S]> | null };
  /** Readings that count: corrected and withdrawn ones are in the history only. */
  readonly readings: readonly Reading[];
  /** The revision at which its ring was welded on; 0, or left out, while none is. Readings up to it are void. */
  readonly weldedAt?: number;
  /** The revision at which each pass of the cut was recorded. */
  readonly passesAt?: readonly number[];
  /** Readings taken after an earlier pass: kept, but they no longer count since the next pass. */
  readonly earlierAfter?: readonly Reading[];
}

export interface HistoryLine {
  readonly revision: number;
  readonly at: string;
  readonly who: string;
  readonly why: string;
  readonly what: SectionName | 'reading' | 'photo';
}

/** A reading on its way into the records, which add the revision, who and when. */
export type NewReading = Omit<Reading, 'revision' | 'who' | 'at'>;

/** One job in a list. */
export interface JobLine {
  readonly id: number;
  readonly number: string;
  readonly revision: number;
  readonly createdAt: string;
  readonly changedAt: string;
  readonly stage: Stage;
  /** The decision that counts; null while none does. */
  readonly outcome: DecisionKind | null;
  readonly familyId: string;
  readonly familyName: string;
  readonly customerReference: string;
  readonly receivedOn: string;
  readonly demo: boolean;
}

/** One revision with what it said: a section's body, or the readings it added. */
export type RevisionShown = HistoryLine & {
  readonly body: JobSections[SectionName] | readonly Reading[];
};
