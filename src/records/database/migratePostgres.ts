import type { ClientBase } from 'pg';
import { type Applied, MIGRATIONS, refuseUnknown } from './migrate.ts';
import type { Migration } from './migrations/migration.ts';
import { beginWriting } from './postgresDriver.ts';

/** What has been applied in this schema, in order; nothing in a new one. Only reads. */
export async function appliedIn(client: ClientBase): Promise<readonly Applied[]> {
  // Read from the catalog: to_regclass may still say no from before this line waited for the lock.
  const known = await client.query(
    "select 1 from pg_tables where schemaname = current_schema() and tablename = 'schema_migration'",
  );
  if (known.rows.length === 0) return [];
  const { rows } = await client.query('select number::int as number, name from schema_migration order by 1');
  return rows;
}

/** Applies what is missing: each migration and its bookkeeping in one transaction, so that half of one is never kept. */
export async function migratePostgres(
  client: ClientBase,
  now: () => Date,
  patienceMs: number,
  migrations: readonly Migration[] = MIGRATIONS,
): Promise<void> {
  const applied = await appliedIn(client);
  refuseUnknown(applied, migrations);
  // Nothing to apply: nothing is written and no lock is taken.
  for (const migration of migrations.slice(applied.length)) {
    await client.query(beginWriting(patienceMs));
    try {
      await apply(client, migration, now, migrations);
      await client.query('commit');
    } catch (error) {
      await client.query('rollback').catch(() => undefined);
      throw error;
    }
  }
}

async function apply(
  client: ClientBase,
  migration: Migration,
  now: () => Date,
  migrations: readonly Migration[],
): Promise<void> {
  // Asked inside the transaction: another program may have started at the same time.
  const applied = await appliedIn(client);
  refuseUnknown(applied, migrations);
  if (applied.some((a) => a.number === migration.number)) return;
  await client.query(
    'create table if not exists schema_migration (number bigint primary key, name text collate "C" not null, at text collate "C" not null)',
  );
  await client.query(migration.postgres);
  await client.query('insert into schema_migration (number, name, at) values ($1, $2, $3)', [
    migration.number,
    migration.name,
    now().toISOString(),
  ]);
}
