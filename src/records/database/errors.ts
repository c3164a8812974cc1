import type { EntryBodies, EntryKind } from '../../../shared/words/catalogue.ts';
import type { HistoryLine, JobSections, Kept, SectionName } from '../../../shared/words/job.ts';
import { Refusal } from '../../../shared/words/refusal.ts';

export type WillNotOpenCode =
  | 'damaged'
  | 'newer'
  | 'not-ours'
  | 'parted'
  | 'busy'
  | 'not-writable'
  | 'unreachable'
  | 'unfit';

/** The shop's records cannot be opened. Nothing was changed; the sentence says what to do. */
export class ShopWillNotOpen extends Error {
  readonly code: WillNotOpenCode;

  constructor(code: WillNotOpenCode, message: string, cause?: unknown) {
    super(message, { cause });
    this.name = 'ShopWillNotOpen';
    this.code = code;
  }
}

export type UnavailableCode = 'busy' | 'full' | 'disk' | 'lost' | 'unsure';

/** A change could not be kept: nothing of it was, unless `unsure`; trying again may work. */
export class RecordsUnavailable extends Error {
  readonly code: UnavailableCode;

  constructor(code: UnavailableCode, message: string, cause: unknown) {
    super(message, { cause });
    this.name = 'RecordsUnavailable';
    this.code = code;
  }
}

/** Asked for something the records do not have. */
export class NotInRecords extends Refusal {
  constructor(path: string, message: string) {
    super('not-found', [{ path, message }]);
    this.name = 'NotInRecords';
  }
}

/** One sentence about one field. */
export function refuse(code: string, path: string, message: string): Refusal {
  return new Refusal(code, [{ path, message }]);
}

type Bodies = JobSections & EntryBodies;

/** Somebody else changed it first. Nothing was written; the error carries their version. */
export class StaleEdit extends Error {
  readonly code = 'stale';
  /** What was being edited. */
  readonly section: SectionName | EntryKind;
  /** That section or entry as it is now; null when something else of the job changed. */
  readonly theirs: Kept<Bodies[SectionName | EntryKind]> | null;
  readonly currentRevision: number;
  /** What happened since the revision the edit started from, oldest first. */
  readonly since: readonly HistoryLine[];

  constructor(message: string, parts: Pick<StaleEdit, 'section' | 'theirs' | 'currentRevision' | 'since'>) {
    super(message);
    this.name = 'StaleEdit';
    this.section = parts.section;
    this.theirs = parts.theirs;
    this.currentRevision = parts.currentRevision;
    this.since = parts.since;
  }
}

export type BackupCode = 'no-shop' | 'not-ours' | 'not-read' | 'not-written' | 'not-sound';

/** No backup was made; the sentence says why. Earlier backups are as they were. */
export class BackupFailed extends Error {
  readonly code: BackupCode;

  constructor(code: BackupCode, message: string, cause?: unknown) {
    super(message, { cause });
    this.name = 'BackupFailed';
    this.code = code;
  }
}

export type MoveCode = 'no-shop' | 'not-ours' | 'older' | 'nowhere' | 'not-empty' | 'busy' | 'differs';

/** The shop was not moved: it is where it was, and nothing was kept where it should have gone. */
export class MoveFailed extends Error {
  readonly code: MoveCode;

  constructor(code: MoveCode, message: string) {
    super(message);
    this.name = 'MoveFailed';
    this.code = code;
  }
}

export type RestoreCode =
  | 'no-backup'
  | 'broken'
  | 'newer'
  | 'not-ours'
  | 'in-use'
  | 'not-empty'
  | 'not-confirmed'
  | 'not-written';

/** Nothing was restored; the sentence says why. The present records are as they were, or where it says. */
export class RestoreFailed extends Error {
  readonly code: RestoreCode;

  constructor(code: RestoreCode, message: string, cause?: unknown) {
    super(message, { cause });
    this.name = 'RestoreFailed';
    this.code = code;
  }
}

/** Nothing usable was exported; the sentence says why. The shop is as it was. */
export class ExportFailed extends Error {
  constructor(message: string, cause?: unknown) {
    super(message, { cause });
    this.name = 'ExportFailed';
  }
}

export type ImportCode = 'no-export' | 'version' | 'broken' | 'not-empty' | 'differs';

/** Nothing was imported; the sentence says why. */
export class ImportFailed extends Error {
  readonly code: ImportCode;

  constructor(code: ImportCode, message: string) {
    super(message);
    this.name = 'ImportFailed';
    this.code = code;
  }
}
