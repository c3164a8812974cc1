import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { describe, inject } from 'vitest';
import { openShop, openShopInMemory, type Shop } from '../../src/records/database/database.ts';
import { openPostgres } from '../../src/records/database/postgres.ts';

/** A database the program runs on. */
interface Engine {
  readonly name: 'SQLite' | 'PostgreSQL';
  /** A new shop with nothing in it, that is forgotten when it is closed; give it a folder for its files. */
  openEmpty(options?: { readonly now?: () => Date; readonly dataDir?: string }): Promise<Shop>;
}

const sqlite: Engine = {
  name: 'SQLite',
  openEmpty: async ({ dataDir, ...options } = {}) =>
    dataDir === undefined ? openShopInMemory(options) : openShop({ dataDir, ...options }),
};

const postgres: Engine = {
  name: 'PostgreSQL',
  openEmpty: async (options = {}) => {
    const schema = spare.pop() ?? (await newSchema());
    const shop = await openPostgres({ url: urlOf(schema), dataDir: ':memory:', ...options });
    return {
      ...shop,
      close: async () => {
        await shop.close();
        await empty(schema);
      },
    };
  },
};

const serverUrl = inject('postgresUrl');
const engines: readonly Engine[] = serverUrl === '' ? [sqlite] : [sqlite, postgres];

/** Runs a file's tests on each database there is here: every question has to be answered alike by all. */
export const onEachDatabase = (tests: (engine: Engine) => void) =>
  describe.each(engines.map((engine) => [engine.name, engine] as const))('on %s', (_, engine) =>
    tests(engine),
  );

/** Tests of PostgreSQL alone; left out, and said so at the end of the run, where there is none. */
export const onPostgres = (name: string, tests: () => void) => describe.skipIf(serverUrl === '')(name, tests);

/** A place for one shop, with nothing in it. */
export async function placeOnPostgres(): Promise<{ url: string; remove: () => Promise<void> }> {
  const schema = await newSchema();
  return { url: urlOf(schema), remove: () => ask(`drop schema ${schema} cascade`) };
}

/** Emptied shops, ready for another test: making one takes longer than most tests. */
const spare: string[] = [];

async function newSchema(): Promise<string> {
  const schema = `${inject('postgresPrefix')}${randomUUID().replaceAll('-', '')}`;
  await ask(`create schema ${schema}`);
  return schema;
}

function urlOf(schema: string): string {
  return `${serverUrl}${serverUrl.includes('?') ? '&' : '?'}options=-c%20search_path%3D${schema}`;
}

/** As only the server's superuser can: nobody else gets past the triggers. */
async function empty(schema: string): Promise<void> {
  try {
    await ask(`
      set session_replication_role = replica;
      do $$ declare t text; begin
        for t in select tablename from pg_tables where schemaname = '${schema}' and tablename <> 'schema_migration'
        loop execute format('delete from ${schema}.%I', t); end loop;
      end $$`);
    spare.push(schema);
  } catch {
    await ask(`drop schema ${schema} cascade`);
  }
}

/** On a line of its own. */
async function ask(statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: serverUrl });
  await client.connect();
  try {
    await client.query(`set client_min_messages = warning; ${statement}`);
  } finally {
    await client.end();
  }
}
