import type { Duplex } from 'node:stream';
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
  readonly #limits: Limits;

  constructor(pool: pg.Pool, limits: Limits) {
    super({ pool: inShopWords(pool, limits) });
    this.#pool = pool;
    this.#limits = limits;
  }

  override createDriver(): PostgresDriver {
    return new ShopPostgresDriver(this.#pool, this.#limits);
  }
}

interface Limits {
  /** How long a change waits while another program is changing something. */
  readonly patienceMs: number;
  /** How long one statement may take, waiting included. */
  readonly deadlineMs: number;
}

type Connection = Parameters<PostgresDriver['rollbackTransaction']>[0];

class ShopPostgresDriver extends PostgresDriver {
  readonly #patienceMs: number;

  constructor(pool: pg.Pool, limits: Limits) {
    super({ pool: inShopWords(pool, limits) });
    this.#patienceMs = limits.patienceMs;
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
function inShopWords(pool: pg.Pool, limits: Limits): PostgresPool {
  return {
    connect: async () => {
      try {
        return clientInShopWords(await pool.connect(), limits);
      } catch (error) {
        throw unavailablePostgres(error);
      }
    },
    end: () => pool.end(),
  };
}

function clientInShopWords(client: pg.PoolClient, { deadlineMs }: Limits): PostgresPoolClient {
  const query = async <R>(text: string, parameters: readonly unknown[]): Promise<PostgresQueryResult<R>> => {
    for (const parameter of parameters) {
      // PostgreSQL refuses NUL in parameters of queries too.
      if (typeof parameter === 'string') refuseNul('', parameter);
    }
    const deadline = setTimeout(() => giveUp(client), deadlineMs);
    try {
      const result: unknown = await client.query(text, [...parameters]);
      return result as PostgresQueryResult<R>;
    } catch (error) {
      throw unavailablePostgres(error);
    } finally {
      clearTimeout(deadline);
    }
  };
  return { query: query as PostgresPoolClient['query'], release: (destroy) => client.release(destroy) };
}

/**
 * Breaks the connection of a server that does not answer: what was asked of it fails as when a line is cut, and the
 * pool drops the connection. The driver's own time limit would leave it in the pool, still waiting.
 */
function giveUp(client: pg.PoolClient): void {
  const { connection } = client as unknown as { connection: { stream: Duplex } };
  connection.stream.destroy();
}
