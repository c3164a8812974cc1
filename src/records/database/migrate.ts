import type { Database } from 'better-sqlite3';
import { ShopWillNotOpen } from './errors.ts';
import { first } from './migrations/001-first.ts';
import { people } from './migrations/002-people.ts';
import { photos } from './migrations/003-photos.ts';
import { sent } from './migrations/004-sent.ts';
import { gauges } from './migrations/005-gauges.ts';
import { typed } from './migrations/006-typed.ts';
import { ringClosed } from './migrations/007-ring-closed.ts';
import { printed } from './migrations/008-printed.ts';
import { nuts } from './migrations/009-nuts.ts';
import { slips } from './migrations/010-slips.ts';
import { confirmed } from './migrations/011-confirmed.ts';
import { closed } from './migrations/012-closed.ts';
import { words } from './migrations/013-words.ts';
import { masterChecks } from './migrations/014-master-checks.ts';
import { ringCredit } from './migrations/015-ring-credit.ts';
import { shelf } from './migrations/016-shelf.ts';
import { trends } from './migrations/017-trends.ts';
import { studies } from './migrations/018-studies.ts';
import { slipNames } from './migrations/019-slip-names.ts';
import { inspectionLists } from './migrations/020-inspection-lists.ts';
import { costs } from './migrations/021-costs.ts';
import { wrong } from './migrations/022-wrong.ts';
import { coverNumber } from './migrations/023-cover-number.ts';
import { sorted } from './migrations/024-sorted.ts';
import { coverKeys } from './migrations/025-cover-key.ts';
import { wrongRight } from './migrations/026-wrong-right.ts';
import { steels } from './migrations/027-steels.ts';
import { moreKinds } from './migrations/028-more-kinds.ts';
import type { Migration } from './migrations/migration.ts';

/** Forward only, in order. What has been released is never changed: a new migration follows it. */
export const MIGRATIONS: readonly Migration[] = [
  first,
  people,
  photos,
  sent,
  gauges,
  typed,
  ringClosed,
  printed,
  nuts,
  slips,
  confirmed,
  closed,
  words,
  masterChecks,
  ringCredit,
  shelf,
  trends,
  studies,
  slipNames,
  inspectionLists,
  costs,
  wrong,
  coverNumber,
  sorted,
  coverKeys,
  wrongRight,
  steels,
  moreKinds,
];

/** "Cvwr" in ASCII: marks a SQLite file as this program's. */
export const APPLICATION_ID = 0x43767772;

export interface Applied {
  readonly number: number;
  readonly name: string;
}

/** What has been applied to this file, in order; nothing for a new one. Only reads. */
function appliedTo(raw: Database): readonly Applied[] {
  const known = raw
    .prepare("SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = 'schema_migration'")
    .get();
  if (known === undefined) return [];
  return raw.prepare<[], Applied>('SELECT number, name FROM schema_migration ORDER BY number').all();
}

/** Refuses a database that a newer program has changed, or one whose history is not this program's. Only reads. */
export function refuseOthers(raw: Database, migrations: readonly Migration[] = MIGRATIONS): void {
  refuseUnknown(appliedTo(raw), migrations);
}

/** Refuses what a database says was applied to it, if a newer program did that, or one this program does not know. */
export function refuseUnknown(applied: readonly Applied[], migrations: readonly Migration[]): void {
  const newest = migrations.at(-1)?.number ?? 0;
  const version = applied.at(-1)?.number ?? 0;
  if (version > newest) {
    throw new ShopWillNotOpen(
      'newer',
      `This shop was last opened by a newer Coverwright (version ${version}; this is ${newest}). Start the newer one. Nothing was changed.`,
    );
  }
  const strange = applied.find((a, i) => migrations[i]?.number !== a.number || migrations[i].name !== a.name);
  if (strange) {
    throw new ShopWillNotOpen(
      'not-ours',
      `This shop was changed by another program (step ${strange.number}, "${strange.name}"). Restore a backup, or ask whoever changed it. Nothing was changed.`,
    );
  }
}

/** Applies what is missing: each migration and its bookkeeping in one transaction, so that half of one is never kept. */
export function migrate(raw: Database, now: () => Date, migrations: readonly Migration[] = MIGRATIONS): void {
  // A migration may have to rebuild a table; what refers to what is checked before it is kept.
  raw.pragma('foreign_keys = OFF');
  const apply = raw.transaction((migration: Migration) => {
    // Asked inside the transaction: another process may have started at the same time.
    refuseOthers(raw, migrations);
    if (appliedTo(raw).some((a) => a.number === migration.number)) return;
    raw.exec(
      'CREATE TABLE IF NOT EXISTS schema_migration (number INTEGER PRIMARY KEY, name TEXT NOT NULL, at TEXT NOT NULL) STRICT',
    );
    raw.exec(migration.sqlite);
    raw
      .prepare('INSERT INTO schema_migration (number, name, at) VALUES (?, ?, ?)')
      .run(migration.number, migration.name, now().toISOString());
    raw.pragma(`application_id = ${APPLICATION_ID}`);
    const loose = raw.prepare('PRAGMA foreign_key_check').all();
    if (loose.length > 0) throw new Error(`Migration ${migration.number} leaves rows that refer to nothing.`);
  });
  for (const migration of migrations) apply.immediate(migration);
  raw.pragma('foreign_keys = ON');
}
