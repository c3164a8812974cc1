import { sql } from 'kysely';
import pg from 'pg';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openShopInMemory, type Shop, write } from '../../../src/records/database/database.ts';
import { RecordsUnavailable, ShopWillNotOpen } from '../../../src/records/database/errors.ts';
import { MIGRATIONS } from '../../../src/records/database/migrate.ts';
import { migratePostgres } from '../../../src/records/database/migratePostgres.ts';
import { openPostgres } from '../../../src/records/database/postgres.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { errorOf, refusalOf } from '../refusals.ts';
import { as, received } from '../samples.ts';
import { onPostgres, placeOnPostgres } from '../shops.ts';

const now = () => new Date('2026-03-02T17:04:05.678Z');

onPostgres('PostgreSQL', () => {
  let place: Awaited<ReturnType<typeof placeOnPostgres>>;
  const shops: Shop[] = [];
  beforeEach(async () => {
    place = await placeOnPostgres();
  });
  afterEach(async () => {
    for (const shop of shops.splice(0)) await shop.close();
    await place.remove();
  });

  async function open(url = place.url, patienceMs?: number): Promise<Shop> {
    const shop = await openPostgres({ url, dataDir: '', now, ...(patienceMs && { patienceMs }) });
    shops.push(shop);
    return shop;
  }

  /** The same place, with other settings for each line to it. */
  const withSetting = (name: string, value: string) =>
    `${place.url}%20-c%20${name}%3D${encodeURIComponent(value.replaceAll(' ', '\\ '))}`;

  /** On a line of its own, past the program. */
  async function ask<Row extends pg.QueryResultRow>(statement: string): Promise<Row[]> {
    const client = new pg.Client({ connectionString: place.url });
    await client.connect();
    try {
      return (await client.query<Row>(statement)).rows;
    } finally {
      await client.end();
    }
  }

  async function refusedToOpen(url = place.url): Promise<ShopWillNotOpen> {
    const error = await errorOf(openPostgres({ url, dataDir: '', now, patienceMs: 2000 }));
    if (!(error instanceof ShopWillNotOpen)) throw error;
    return error;
  }

  /** Everything in the schema, to see that it was left alone. */
  const everything = () =>
    ask(`select relname, relkind, n.xmin, c.xmin from pg_class c join pg_namespace n on n.oid = relnamespace
      where n.nspname = current_schema() order by 1`);

  const unavailable = async (promise: Promise<unknown>) => {
    const error = await errorOf(promise);
    if (!(error instanceof RecordsUnavailable)) throw error;
    return error;
  };

  describe('opening', () => {
    test('opening makes a shop where there is none, and finds it the next time', async () => {
      const shop = await open();
      expect(shop.where).toMatch(/^PostgreSQL at .+, port \d+, database .+$/);
      await createJob(shop.db, as('AB'), { received: received() });
      const again = await open();
      expect((await getJob(again.db, '1001'))?.sections.received?.body.customerReference).toBe('van, blue');
    });

    test('a shop opened by several at once is made once', async () => {
      const opened = await Promise.all([open(), open(), open()]);
      expect(opened.length).toBe(3);
      const applied = await ask<{ number: string }>('select number from schema_migration order by number');
      expect(applied.map((row) => Number(row.number))).toEqual(MIGRATIONS.map((one) => one.number));
    });

    test('a shop that is up to date waits for nobody', async () => {
      await open();
      const other = new pg.Client({ connectionString: place.url });
      await other.connect();
      await other.query('begin; lock table schema_migration in exclusive mode');
      await open(place.url, 200);
      await other.end();
    });

    test('a shop has the same tables, columns and empty places as on SQLite', async () => {
      await open();
      const here = await ask<{ name: string; column: string; empty: boolean; type: string }>(`
        select table_name as name, column_name as column, is_nullable = 'YES' as empty,
          case data_type when 'bigint' then 'INTEGER' when 'double precision' then 'REAL' when 'text' then 'TEXT'
            when 'bytea' then 'BLOB' else data_type end as type
        from information_schema.columns where table_schema = current_schema()
          and table_name in (select tablename from pg_tables where schemaname = current_schema()) order by 1, 2`);
      const sqlite = openShopInMemory();
      const there = await sql<(typeof here)[number]>`
        select t.name as name, c.name as "column", c."notnull" = 0 and c.pk = 0 as empty, c.type as type
        from pragma_table_list t, pragma_table_info(t.name) c
        where t.schema = 'main' and t.type = 'table' and t.name not like 'sqlite_%' order by 1, 2`.execute(
        sqlite.db,
      );
      await sqlite.close();
      expect(here).toEqual(there.rows.map((row) => ({ ...row, empty: Boolean(row.empty) })));
    });

    test('every text is compared by code point, whatever language the server speaks', async () => {
      await open();
      const others = await ask(`
        select table_name, column_name, collation_name from information_schema.columns
        where table_schema = current_schema() and data_type = 'text' and collation_name is distinct from 'C'`);
      expect(others).toEqual([]);
    });
  });

  describe('a database that is not opened', () => {
    test('a database of a newer program is left as it is', async () => {
      await open();
      await ask("insert into schema_migration values (99, 'later', '2027-01-01T00:00:00.000Z')");
      const before = await everything();
      const refused = await refusedToOpen();
      expect([refused.code, refused.message]).toEqual([
        'newer',
        `This shop was last opened by a newer Coverwright (version 99; this is ${MIGRATIONS.length}). Start the newer one. Nothing was changed.`,
      ]);
      expect(await everything()).toEqual(before);
    });

    test('a database with an unknown migration is left as it is', async () => {
      await open();
      await ask("update schema_migration set name = 'elsewhere' where number = 1");
      const before = await everything();
      expect((await refusedToOpen()).code).toBe('not-ours');
      expect(await everything()).toEqual(before);
    });

    test('a database of another program is left as it is', async () => {
      await ask('create table recipe (name text)');
      const before = await everything();
      const refused = await refusedToOpen();
      expect([refused.code, refused.message]).toEqual([
        'not-ours',
        expect.stringMatching(/^PostgreSQL at .+ has tables of another program\. .+ Nothing was changed\.$/),
      ]);
      expect(await everything()).toEqual(before);
    });

    test('a read-only database is refused', async () => {
      const refused = await refusedToOpen(withSetting('default_transaction_read_only', 'on'));
      expect([refused.code, await everything()]).toEqual(['not-writable', []]);
    });

    test('a database without a schema for tables is refused', async () => {
      expect((await refusedToOpen(withSetting('search_path', 'nowhere'))).message).toMatch(
        /no schema of its search_path exists\. Give the shop a database of its own/,
      );
    });

    test.each([
      ['where no server answers', (url: URL) => Object.assign(url, { port: '1' }), 'unreachable', /port 1,/],
      [
        'that is not there',
        (url: URL) => Object.assign(url, { pathname: '/nodb' }),
        'not-writable',
        /database nodb /,
      ],
      [
        'for an account that is not there',
        (url: URL) => Object.assign(url, { username: 'x' }),
        'not-writable',
        / /,
      ],
    ])('a database %s is refused, and its password is not shown', async (_, change, code, where) => {
      const url = new URL(place.url);
      url.password = 'quite-secret';
      const refused = await refusedToOpen(change(url).href);
      expect(refused.code).toBe(code);
      expect(refused.message).toMatch(where);
      expect(refused.message).toContain(`at ${url.hostname}, port `);
      expect(`${refused.message}${refused.stack}`).not.toContain('quite-secret');
    });
  });

  describe('migrations', () => {
    const next = MIGRATIONS.length + 1;
    const step = (name: string, postgres: string) => [
      ...MIGRATIONS,
      { number: next, name, sqlite: '', postgres },
    ];
    async function migrate(migrations: ReturnType<typeof step>): Promise<void> {
      const client = new pg.Client({ connectionString: place.url });
      await client.connect();
      try {
        await migratePostgres(client, now, 1000, migrations);
      } finally {
        await client.end();
      }
    }
    const shelf = () =>
      ask("select 1 from pg_tables where schemaname = current_schema() and tablename = 'shelf'");
    const newest = async () => (await ask('select max(number)::int as n from schema_migration'))[0]?.n;

    test('a migration that fails half way leaves nothing of itself, and earlier ones stay', async () => {
      const half = step('half', 'create table shelf (name text); insert into shelf values (1, 2)');
      expect(await errorOf(migrate(half))).toMatchObject({
        message: 'INSERT has more expressions than target columns',
      });
      expect([await shelf(), await newest()]).toEqual([[], MIGRATIONS.length]);
      await migrate(step('whole', 'create table shelf (name text)'));
      expect([(await shelf()).length, await newest()]).toEqual([1, next]);
    });

    test('each migration is applied once', async () => {
      const once = step('whole', "create table shelf (name text); insert into shelf values ('a')");
      for (let i = 0; i < 3; i++) await migrate(once);
      expect(await ask('select * from shelf')).toEqual([{ name: 'a' }]);
    });
  });

  describe('questions', () => {
    test('queries give numbers where they ask for numbers', async () => {
      const shop = await open();
      for (const number of ['7', '8']) await createJob(shop.db, as('AB'), { number, received: received() });
      const { rows } = await sql`
        select count(*) as count, sum(plain_number) as sum, max(plain_number) as max, avg(plain_number) as avg,
          1.5::double precision as double from job`.execute(shop.db);
      expect(rows).toEqual([{ count: 2, sum: 15, max: 8, avg: 7.5, double: 1.5 }]);
    });

    test('a query with a NUL character is refused in a sentence', async () => {
      const shop = await open();
      expect((await refusalOf(getJob(shop.db, 'a\0b'))).code).toBe('bad-text');
    });
  });

  describe('writing', () => {
    test.each(['read committed', 'repeatable read', 'serializable'])(
      'programs take turns and lose nothing, where the server starts with %s',
      async (level) => {
        const url = withSetting('default_transaction_isolation', level);
        const [a, b] = [await open(url), await open(url)];
        const shown = await sql<{ transaction_isolation: string }>`show transaction_isolation`.execute(a.db);
        expect(shown.rows[0]?.transaction_isolation).toBe(level);
        const made = await Promise.all(
          Array.from({ length: 30 }, (_, i) =>
            createJob((i % 2 ? a : b).db, as('AB'), { received: received() }),
          ),
        );
        expect(made.map((job) => Number(job.number)).sort()).toEqual(made.map((_, i) => 1001 + i));
        expect(made.map((job) => job.id).sort((x, y) => x - y)).toEqual(made.map((_, i) => 1 + i));
      },
    );

    test('a change is on the disk when it is said to be kept, even where the server would not wait for it', async () => {
      const shop = await open(withSetting('synchronous_commit', 'off'));
      const { rows } = await write(shop.db, (trx) =>
        sql<{ synchronous_commit: string }>`show synchronous_commit`.execute(trx),
      );
      expect(rows[0]?.synchronous_commit).toBe('on');
    });

    test('a writer that waits too long is told so in a sentence, and nothing is kept', async () => {
      const [shop, other] = [await open(place.url, 100), await open()];
      let release = () => {};
      const held = new Promise<void>((done) => {
        release = done;
      });
      let holds = () => {};
      const holding = new Promise<void>((done) => {
        holds = done;
      });
      const long = write(other.db, async () => {
        holds();
        await held;
      });
      await holding;
      const error = await unavailable(createJob(shop.db, as('AB'), { received: received() }));
      expect([error.code, error.message]).toEqual([
        'busy',
        'The shop is busy saving something else. This was not saved; try again.',
      ]);
      // Who only reads is not kept waiting.
      expect(await getJob(shop.db, '1001')).toBeNull();
      release();
      await long;
      expect((await createJob(shop.db, as('AB'), { received: received() })).number).toBe('1001');
    });

    test.each(['40001', '40P01'])('a collision (%s) is tried again, but not forever', async (code) => {
      const shop = await open();
      const collide = (times: number) => {
        let tries = 0;
        return write(shop.db, async (trx) => {
          const job = await createJob(trx, as('AB'), { received: received() });
          if (tries++ < times) {
            await sql.raw(`do $$ begin raise exception 'x' using errcode = '${code}'; end $$`).execute(trx);
          }
          return { number: job.number, tries };
        });
      };
      expect(await collide(3)).toEqual({ number: '1001', tries: 4 });
      expect((await unavailable(collide(4))).code).toBe('busy');
      expect(await getJob(shop.db, '1002')).toBeNull();
    });

    test.each([
      ['53100', 'full', 'The disk is full.'],
      ['25006', 'disk', 'This could not be saved (PostgreSQL 25006).'],
      ['58030', 'disk', 'This could not be saved (PostgreSQL 58030).'],
      ['XX001', 'disk', 'This could not be saved (PostgreSQL XX001).'],
      ['53300', 'busy', 'The shop is busy saving something else'],
      ['57014', 'busy', 'The shop is busy saving something else'],
      ['57P01', 'lost', "The database can't be reached (57P01)."],
    ])('the PostgreSQL error %s is told as "%s", and nothing is kept', async (code, told, sentence) => {
      const shop = await open();
      const error = await unavailable(
        write(shop.db, async (trx) => {
          await createJob(trx, as('AB'), { received: received() });
          await sql.raw(`do $$ begin raise exception 'x' using errcode = '${code}'; end $$`).execute(trx);
        }),
      );
      expect([error.code, error.message.startsWith(sentence)]).toEqual([told, true]);
      expect(error.message).toMatch(/This (was not|could not be) saved/);
      expect(await getJob(shop.db, '1001')).toBeNull();
    });

    test('a change found wrong only at commit is rolled back whole, and its connection can be used again', async () => {
      const shop = await open();
      const error = await errorOf(
        write(shop.db, async (trx) => {
          await createJob(trx, as('AB'), { received: received() });
          await trx.updateTable('job').set({ revision: 5 }).execute();
        }),
      );
      expect(error).toMatchObject({ code: '23503' });
      expect(await getJob(shop.db, '1001')).toBeNull();
      expect((await createJob(shop.db, as('AB'), { received: received() })).number).toBe('1001');
    });

    const LINE = 'select pg_terminate_backend(pg_backend_pid())';

    test('a connection that breaks in the middle keeps nothing and says so, and the next change works', async () => {
      const shop = await open();
      const error = await unavailable(
        write(shop.db, async (trx) => {
          await createJob(trx, as('AB'), { received: received() });
          await sql.raw(LINE).execute(trx);
        }),
      );
      expect([error.code, error.message]).toEqual([
        'lost',
        "The database can't be reached (57P01). This was not saved; check that its server is running and try again.",
      ]);
      expect((await createJob(shop.db, as('AB'), { received: received() })).number).toBe('1001');
    });

    test('a connection that breaks during commit says that the outcome is unknown', async () => {
      const shop = await open();
      await ask(`
        create function cut_off() returns trigger language plpgsql as $$ begin perform (${LINE}); return null; end $$;
        create constraint trigger cut_off after insert on job deferrable initially deferred
          for each row execute function cut_off()`);
      const error = await unavailable(createJob(shop.db, as('AB'), { received: received() }));
      expect([error.code, error.message]).toEqual([
        'unsure',
        'The connection broke during saving, so this may or may not be saved. Check before you send it again.',
      ]);
      await ask('drop trigger cut_off on job');
      expect((await createJob(shop.db, as('AB'), { received: received() })).number).toBe('1001');
    });
  });
});
