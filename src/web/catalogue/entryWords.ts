import type { Writing } from '../../../shared/quantity/fieldText.ts';
import type { Entry, EntryBodies, EntryKind, TypedInEntry } from '../../../shared/words/catalogue.ts';
import type { EntryRevisionTold, EntryStale } from '../../../views/parts/entryHistory.tsx';
import type { StaleEdit } from '../../records/database/errors.ts';
import { differences, sideBySide } from '../request/fieldLines.ts';
import { entryFields } from './entryFields.ts';
import { typedStanding } from './typedEntry.ts';

/** What every revision of an entry changed, field by field, oldest first. */
export function entryRevisionsInWords<K extends EntryKind>(
  kind: K,
  history: readonly Entry<K>[],
  typedIn: ReadonlyMap<number, TypedInEntry>,
  writing: Writing,
): EntryRevisionTold[] {
  const standing: TypedInEntry[] = [];
  return history.map(({ revision, who, at, why, retired, body }, i) => {
    const before = history[i - 1] ?? null;
    const typedBefore = standing[i - 1] ?? {};
    const typed = typedStanding(
      before && { body: before.body, typed: typedBefore },
      body,
      typedIn.get(revision) ?? null,
    );
    standing.push(typed);
    const was = before === null ? [] : entryFields(kind, before.body, { ...writing, typed: typedBefore });
    const is = entryFields(kind, body, { ...writing, typed });
    const use = retired === (before?.retired ?? false) ? '' : retired ? 'retired' : 'put back in use';
    return { revision, who, at, why, use, changes: differences(was, is) };
  });
}

/** A stale change of an entry with both versions; `yours` is null where only its use was to change. */
export function entryStale<K extends EntryKind>(
  kind: K,
  error: StaleEdit,
  yours: EntryBodies[K] | null,
  writing: Writing,
): EntryStale {
  const theirs = error.theirs;
  const stands = theirs === null ? [] : entryFields(kind, theirs.body as EntryBodies[K], writing);
  return {
    sentence: error.message,
    who: theirs?.who ?? 'Somebody',
    at: theirs?.at ?? '',
    compared: yours === null ? [] : sideBySide(stands, entryFields(kind, yours, writing)),
  };
}
