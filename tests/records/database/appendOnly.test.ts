import { sql } from 'kysely';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { addEntry } from '../../../src/records/catalogue.ts';
import type { Shop } from '../../../src/records/database/database.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { errorOf } from '../refusals.ts';
import { alder, as, signedJob } from '../samples.ts';
import { onEachDatabase } from '../shops.ts';

onEachDatabase((engine) => {
  let shop: Shop;
  beforeEach(async () => {
    shop = await engine.openEmpty();
    await addEntry(shop.db, as('AB'), { kind: 'family', body: alder });
    await signedJob(shop.db);
  });
  afterEach(() => shop.close());

  /** Shows that a statement is refused with these words, and that nothing came of it. */
  async function expectRefused(statement: string, refusal: string): Promise<void> {
    const before = JSON.stringify(await getJob(shop.db, 1));
    expect(await errorOf(sql.raw(statement).execute(shop.db))).toMatchObject({ message: refusal });
    expect(JSON.stringify(await getJob(shop.db, 1))).toBe(before);
  }

  /** A reading that could be added, but for its value. */
  const sized = (value: string) =>
    `INSERT INTO reading VALUES ('n', 1, 4, 9, 'before', 'wall', 0, 110, ${value}, '', '', 0, NULL, 'AB', '2026-03-02T08:00:00.000Z', NULL)`;

  describe('what was recorded is never changed or taken away, whoever asks', () => {
    test.each([
      ["UPDATE reading SET value_mm = 5.1 WHERE id = '1-w1'", 'reading is only ever added to'],
      ["DELETE FROM reading WHERE id = '1-w1'", 'reading is only ever added to'],
      [
        "INSERT INTO reading SELECT id, job_id, revision, place, pass, kind, angle_deg, radius_mm, 5.1, typed, gauge, doubtful, replaces, who, at, confirmed FROM reading WHERE id = '1-w1' ON CONFLICT (id) DO UPDATE SET value_mm = 5.1",
        'reading is only ever added to',
      ],
      ["UPDATE job_revision SET who = 'XY' WHERE revision = 2", 'job_revision is only ever added to'],
      ['DELETE FROM job_revision WHERE revision = 8', 'job_revision is only ever added to'],
      ["UPDATE entry_revision SET body = '{}'", 'entry_revision is only ever added to'],
      ['DELETE FROM entry_revision', 'entry_revision is only ever added to'],
      ['DELETE FROM entry', 'an entry is retired, never deleted'],
      ["UPDATE entry SET id = 'other'", 'an entry keeps its kind and id'],
      ['DELETE FROM job', 'a job is never deleted'],
      ["UPDATE job SET number = '7'", 'a job keeps its number'],
      ['UPDATE job SET revision = 7', 'a job never goes back'],
    ])('%s', expectRefused);

    if (engine.name === 'SQLite')
      test.each([
        [
          "INSERT OR REPLACE INTO reading SELECT id, job_id, revision, place, pass, kind, angle_deg, radius_mm, 5.1, typed, gauge, doubtful, replaces, who, at, confirmed FROM reading WHERE id = '1-w1'",
          'reading is only ever added to',
        ],
        [
          "INSERT OR REPLACE INTO job_revision VALUES (1, 8, '2026-03-02T08:00:00.000Z', 'XY', '', 'signature', '{}')",
          'revisions follow one another',
        ],
      ])('%s', expectRefused);
    else
      test.each([
        ['TRUNCATE reading', 'reading is only ever added to'],
        ['TRUNCATE entry, entry_revision', 'an entry is retired, never deleted'],
        ['TRUNCATE entry_revision CASCADE', 'entry_revision is only ever added to'],
        ['TRUNCATE job CASCADE', 'a job is never deleted'],
      ])('%s', expectRefused);

    test.each([
      [
        'a revision that leaves a gap',
        "INSERT INTO job_revision VALUES (1, 10, '2026-03-02T08:00:00.000Z', 'AB', '', 'plan', '{}')",
      ],
      [
        'a revision of no job',
        "INSERT INTO job_revision VALUES (9, 1, '2026-03-02T08:00:00.000Z', 'AB', '', 'plan', '{}')",
      ],
      [
        'a revision by nobody',
        "INSERT INTO job_revision VALUES (1, 9, '2026-03-02T08:00:00.000Z', '', '', 'plan', '{}')",
      ],
      [
        'a revision whose body is no JSON',
        "INSERT INTO job_revision VALUES (1, 9, '2026-03-02T08:00:00.000Z', 'AB', '', 'plan', '{')",
      ],
      [
        'a job without a revision',
        "INSERT INTO job SELECT 9, '9', '9', 9, demo, created_at, 1, changed_at, stage, outcome, family_id, family_name, customer_reference, received_on, search, 0, '' FROM job",
      ],
      [
        'a reading of a revision that is not there',
        "INSERT INTO reading VALUES ('n', 1, 99, 0, 'before', 'wall', 0, 110, 5, '', '', 0, NULL, 'AB', '2026-03-02T08:00:00.000Z', NULL)",
      ],
      [
        'a reading without a value that withdraws none',
        "INSERT INTO reading VALUES ('n', 1, 4, 9, 'before', 'wall', 0, 110, NULL, '', '', 0, NULL, 'AB', '2026-03-02T08:00:00.000Z', NULL)",
      ],
      ['a stage that is none', "UPDATE job SET stage = 'done'"],
    ])('the database refuses %s', async (_, statement) => {
      expect(await errorOf(sql.raw(statement).execute(shop.db))).toMatchObject({
        code: expect.stringMatching(engine.name === 'SQLite' ? /^SQLITE_CONSTRAINT/ : /^2[23]/),
      });
    });

    test.each(engine.name === 'SQLite' ? ['9e999', '-9e999'] : ["'Infinity'", "'-Infinity'", "'NaN'"])(
      'the database refuses a reading of size %s',
      async (value) => {
        expect(await errorOf(sql.raw(sized(value)).execute(shop.db))).toMatchObject({
          message: expect.stringMatching(/check constraint|CHECK constraint/),
        });
        await sql.raw(sized('4.9')).execute(shop.db);
      },
    );
  });
});
