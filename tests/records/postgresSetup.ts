import pg from 'pg';
import type { TestProject } from 'vitest/node';
import { answers, type PostgresServer, postgresPrograms, startPostgres } from './postgresServer.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** The database for tests; '' where there is none. */
    postgresUrl: string;
    /** What the names of this run's schemas begin with. */
    postgresPrefix: string;
  }
}

/** Finds a PostgreSQL for all tests of a run; where there is none, the run says so in its last line. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const prefix = `coverwright_test_${process.pid}_`;
  project.provide('postgresPrefix', prefix);
  const given = process.env.TEST_DATABASE_URL ?? '';
  if (given !== '') {
    if (!(await answers(given)))
      throw new Error('The database that TEST_DATABASE_URL names does not answer.');
    project.provide('postgresUrl', given);
    return () => dropSchemas(given, prefix);
  }
  const { server, why } = await ownServer();
  project.provide('postgresUrl', server?.url ?? '');
  // On CI a run without it would pass, and mean less than it says.
  if (!server && process.env.CI) throw new Error(`PostgreSQL was not tried: ${why}`);
  return async () => {
    await server?.remove();
    if (!server) console.log(`\nPostgreSQL was not tried: ${why}`);
  };
}

async function ownServer(): Promise<{ server: PostgresServer | null; why: string }> {
  const programs = postgresPrograms();
  if (programs === null) {
    return {
      server: null,
      why: 'no server is installed here (Debian: apt-get install postgresql), and TEST_DATABASE_URL names none.',
    };
  }
  try {
    return { server: await startPostgres(programs), why: '' };
  } catch (error) {
    return { server: null, why: error instanceof Error ? error.message : String(error) };
  }
}

async function dropSchemas(url: string, prefix: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  const { rows } = await client.query('select nspname from pg_namespace where starts_with(nspname, $1)', [
    prefix,
  ]);
  for (const { nspname } of rows) await client.query(`drop schema ${nspname} cascade`);
  await client.end();
}
