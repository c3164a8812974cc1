import type { Generated } from 'kysely';
import type { EntryKind } from '../../../shared/words/catalogue.ts';
import type { MarkPattern } from '../../../shared/words/heatMarks.ts';
import type {
  DecisionKind,
  HistoryLine,
  LookItem,
  Pass,
  ReadingKind,
  Stage,
} from '../../../shared/words/job.ts';
import type { Paper, PrintedPart } from '../../../shared/words/paper.ts';
import type { PersonChange, Role } from '../../../shared/words/people.ts';
import type { ListItemName, PhotoKind, PhotoPlace } from '../../../shared/words/photo.ts';
import type { ShelfWhat } from '../../../shared/words/shelf.ts';
import type { Fits } from '../../../shared/words/stud/stud.ts';
import type { RestsOn, ScrapReason } from '../../../shared/words/trends/trends.ts';

/** The rows as they lie in the database: 0 and 1 for no and yes, JSON as text, units in the names. */
export interface Tables {
  schema_migration: { number: number; name: string; at: string };
  entry: {
    kind: EntryKind;
    id: string;
    revision: number;
    name: string;
    name_key: string;
    retired: number;
  };
  entry_revision: {
    kind: EntryKind;
    id: string;
    revision: number;
    at: string;
    who: string;
    why: string;
    retired: number;
    body: string;
    /** What was typed for its quantities, by their path in the body; null where the body says it all. */
    typed: string | null;
  };
  job: {
    id: Generated<number>;
    number: string;
    number_key: string;
    plain_number: number | null;
    demo: number;
    created_at: string;
    revision: number;
    changed_at: string;
    stage: Stage;
    outcome: DecisionKind | null;
    family_id: string;
    family_name: string;
    customer_reference: string;
    received_on: string;
    search: string;
    /** The cover's own number as it is compared; '' where nobody typed one. */
    cover_key: string;
    /** 1: its decision counts on a ring not recorded as joined to the pads; of a job from before, that it may. */
    ring_credit: Generated<number>;
  };
  /** The job that a sender's own id made. */
  job_sent: { id: string; job_id: number };
  job_revision: {
    job_id: number;
    revision: number;
    at: string;
    who: string;
    why: string;
    what: HistoryLine['what'];
    body: string;
  };
  reading: {
    id: string;
    job_id: number;
    revision: number;
    /** Its position among the readings added with it, from 0. */
    place: number;
    pass: Pass;
    kind: ReadingKind;
    angle_deg: number;
    radius_mm: number;
    value_mm: number | null;
    typed: string;
    gauge: string;
    doubtful: number;
    /** NULL for readings from before this was kept. */
    confirmed: number | null;
    replaces: string | null;
    who: string;
    at: string;
  };
  /** The word that closed a signed decision whose ring is not recorded as joined; `revision` is the decision’s. */
  ring_closed: { job_id: number; revision: number; word: string; who: string; at: string };
  /** Style and type that papers are printed with, by the SHA-256 of the content. */
  printed_part: { hash: string; kind: PrintedPart['kind']; base64: string };
  /** A paper as it was printed at signing; `revision` is the signature’s. */
  printed: { job_id: number; revision: number; paper: Paper; html: string };
  /** A counter slip: what was asked and answered, and the paper it was printed on. */
  slip: {
    number: number;
    sent_id: string;
    at: string;
    day: string;
    who: string;
    customer_reference: string;
    stack_name: string;
    stud_name: string;
    fits: Fits;
    search: string;
    calc_version: string;
    asked: string;
    answered: string;
    html: string;
  };
  /** Its parts counted out of stock, or back; the newest says how it stands. */
  slip_count: {
    slip_number: number;
    place: number;
    what: 'out' | 'back';
    at: string;
    who: string;
    why: string;
    body: string;
  };
  /** A gauge tried on a master; `due_on` is when its calibration was due then. */
  master_check: {
    id: string;
    gauge_id: string;
    day: string;
    at: string;
    who: string;
    master_mm: number;
    master_typed: string;
    reading_mm: number;
    reading_typed: string;
    confirmed: number;
    due_on: string | null;
  };
  master_check_withdrawn: { check_id: string; at: string; who: string; why: string };
  /** A copy of the records that left this machine, as somebody said. */
  copy_away: { number: number; at: string; who: string; whither: string };
  /** A cover's stay on the shelf; the newest of a job says how it stands. */
  shelf_change: {
    job_id: number;
    place: number;
    what: ShelfWhat;
    at: string;
    who: string;
    why: string;
    lies: string;
    for_job_id: number | null;
    facts: string;
  };
  /** What the trends count of a job, made from the job with each change of it; lengths in whole nanometers. */
  job_trend: {
    job_id: number;
    /** Of the rule it was made by: a row of another is made anew. */
    version: number;
    demo: number;
    stage: Stage;
    outcome: DecisionKind | null;
    family_id: string;
    received_on: string;
    /** When it was first signed. */
    signed_at: string | null;
    days_to_sign: number | null;
    scrap_reason: ScrapReason | null;
    /** Thinnest station before the cut. */
    wall_nm: number | null;
    /** All passes that count. */
    cut_nm: number | null;
    /** Thinnest station after the cut: measured, else as it was decided. */
    left_nm: number | null;
    /** Peak lining pressure after the cut compared with the new cover, as decided. */
    peak_over_new: number | null;
    pattern: MarkPattern | null;
    comeback_of: number | null;
  };
  /** What a job as it stands was worked out from, and since when; made from the job with each change of it. */
  job_rests: { job_id: number; what: RestsOn; id: string; revision: number; since: string };
  /** A study of a gauge; `body` holds who reads what, and in which order. */
  study: {
    number: number;
    sent_id: string;
    gauge_id: string;
    at: string;
    day: string;
    who: string;
    body: string;
  };
  /** Read in a study at a place of its order; `nth` counts the study’s readings as they were saved. */
  study_reading: {
    id: string;
    study_number: number;
    nth: number;
    place: number;
    at: string;
    who: string;
    value_mm: number;
    typed: string;
    confirmed: number;
  };
  study_reading_withdrawn: { reading_id: string; at: string; who: string; why: string };
  study_stopped: { study_number: number; at: string; who: string; why: string };
  cost_revision: { revision: number; at: string; who: string; why: string; body: string };
  /** Something found to be wrong from a day on. */
  wrong: {
    number: number;
    at: string;
    who: string;
    what: RestsOn;
    id: string;
    name: string;
    since: string;
    reason: string;
    /** The one revision that was wrong; null: each. */
    revision: number | null;
    /** What is right of a gauge. */
    bias_mm: number | null;
    u_mm: number | null;
  };
  /** A slip that was gone through because of it. */
  wrong_slip_closed: { wrong_number: number; slip_number: number; at: string; who: string; word: string };
  /** A job that was gone through because of it. */
  wrong_closed: { wrong_number: number; job_id: number; at: string; who: string; word: string };
  /** The slip a job was begun from. */
  slip_job: { job_id: number; slip_number: number };
  photo: {
    id: string;
    job_id: number;
    revision: number;
    spot: PhotoPlace['spot'];
    angle_deg: number | null;
    radius_mm: number | null;
    item: LookItem | ListItemName | null;
    hash: string;
    kind: PhotoKind;
    bytes: number;
    width: number;
    height: number;
    note: string;
    who: string;
    at: string;
  };
  person: {
    id: Generated<number>;
    revision: number;
    name: string;
    name_key: string;
    initials: string;
    initials_key: string;
    role: Role;
    retired: number;
  };
  person_revision: {
    person_id: number;
    revision: number;
    at: string;
    who: string;
    why: string;
    what: PersonChange;
    body: string;
  };
  person_password: {
    person_id: number;
    hash: string;
    /** 1 for a password somebody else gave out, to be replaced by the person's own. */
    start: number;
    set_at: string;
  };
  session: {
    token_hash: string;
    person_id: number;
    device: string;
    began_at: string;
    used_at: string;
  };
  api_token: {
    id: Generated<number>;
    token_hash: string;
    name: string;
    person_id: number;
    role: Role;
    who: string;
    at: string;
    used_at: string | null;
    withdrawn_at: string | null;
    withdrawn_by: string | null;
  };
}
