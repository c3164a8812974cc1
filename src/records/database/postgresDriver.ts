import {
  CompiledQuery,
  PostgresDialect,
  PostgresDriver,
  type PostgresPool,
  type PostgresPoolClient,
  type PostgresQueryResult,
  type TransactionSettings,
} from 'kysely';
import type pg from 'pg';
import { APPLICATION_ID } from './migrate.ts';
import { isLost, postgresCode, unavailablePostgres, unsure } from './postgresErrors.ts';
import { refuseNul } from './writing.ts';

/** A program that hangs in the middle of a change is cut off after this, so that others can go on. */
const LONGEST_IDLE_MS = 60_000;

/**
 * Begins a transaction whose writer is the only one of this shop, as BEGIN IMMEDIATE does on SQLite: the lock is the
 * first thing taken, it ends with the transaction, and it is named after the schema the shop lies in. Read committed,
 * whatever the server's default: then each question after the lock sees all that earlier writers kept, while a
 * stricter level would go on seeing the records as they were before it waited.
 */
export const beginWriting = (patienceMs: number): string => `
  begin isolation level read committed read write;
  set local lock_timeout = ${patienceMs};
  set local idle_in_transaction_session_timeout = ${LONGEST_IDLE_MS};
  set local synchronous_commit = on;
  select pg_advisory_xact_lock(${APPLICATION_ID}, hashtext(current_schema()));`;

/** Begins a look at everything as it is at one moment, which keeps nobody waiting. */
export const BEGIN_READING = 'begin isolation level repeatable read read only';

/** The same program and queries on PostgreSQL; only how a change begins and ends is written here. */
export class ShopPostgresDialect extends PostgresDialect {
  readonly #pool: pg.Pool;
  readonly #patienceMs: number;

  constructor(pool: pg.Pool, patienceMs: number) {
    super({ pool: inShopWords(pool) });
    this.#pool = pool;
    this.#patienceMs = patienceMs;
  }

  override createDriver(): PostgresDriver {
    return new ShopPostgresDriver(this.#pool, this.#patienceMs);
  }
}

type Connection = Parameters<PostgresDriver['rollbackTransaction']>[0];

class ShopPostgresDriver extends PostgresDriver {
  readonly #patienceMs: number;

  constructor(pool: pg.Pool, patienceMs: number) {
    super({ pool: inShopWords(pool) });
    this.#patienceMs = patienceMs;
  }

  override async beginTransaction(connection: Connection, settings: TransactionSettings): Promise<void> {
    const begin = settings.accessMode === 'read only' ? BEGIN_READING : beginWriting(this.#patienceMs);
    try {
      await connection.executeQuery(CompiledQuery.raw(begin));
    } catch (error) {
      // The transaction has begun all the same; its connection must not go back to the pool like that.
      await this.rollbackTransaction(connection);
      throw error;
    }
  }

  override async commitTransaction(connection: Connection): Promise<void> {
    try {
      await super.commitTransaction(connection);
    } catch (error) {
      const cause = error instanceof Error ? error.cause : undefined;
      throw isLost(postgresCode(cause)) ? unsure(cause) : error;
    }
  }

  override async rollbackTransaction(connection: Connection): Promise<void> {
    try {
      await super.rollbackTransaction(connection);
    } catch {
      // The connection is gone, so the server rolls back by itself; the first error says why.
    }
  }
}

/** The pool, with its errors as sentences for people. */
function inShopWords(pool: pg.Pool): PostgresPool {
  return {
    connect: async () => {
      try {
        return clientInShopWords(await pool.connect());
      } catch (error) {
        throw unavailablePostgres(error);
      }
    },
    end: () => pool.end(),
  };
}

function clientInShopWords(client: pg.PoolClient): PostgresPoolClient {
  const query = async <R>(text: string, parameters: readonly unknown[]): Promise<PostgresQueryResult<R>> => {
    for (const parameter of parameters) {
      // PostgreSQL refuses NUL in parameters of queries too.
      if (typeof parameter === 'string') refuseNul('', parameter);
    }
    try {
      const result: unknown = await client.query(text, [...parameters]);
      return result as PostgresQueryResult<R>;
    } catch (error) {
      throw unavailablePostgres(error);
    }
  };
  return { query: query as PostgresPoolClient['query'], release: (destroy) => client.release(destroy) };
}
