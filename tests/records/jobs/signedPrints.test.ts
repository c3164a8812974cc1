import { sql } from 'kysely';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Shop } from '../../../src/records/database/database.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
import {
  type PrintSigned,
  printedAt,
  printedPart,
  signedPrints,
} from '../../../src/records/jobs/signedPrints.ts';
import { errorOf } from '../refusals.ts';
import { as, finishedJob, prints, received, signedJob } from '../samples.ts';
import { onEachDatabase } from '../shops.ts';

onEachDatabase((engine) => {
  let shop: Shop;
  beforeEach(async () => {
    shop = await engine.openEmpty();
  });
  afterEach(() => shop.close());

  const sign = async (jobId: number, print: PrintSigned | null) => {
    const { revision } = (await getJob(shop.db, jobId))!;
    const body = { statement: 'Measured again.', signedRevision: revision };
    return reviseJob(shop.db, as('CD'), { jobId, fromRevision: revision, what: 'signature', body }, print);
  };
  const partsKept = async () => (await shop.db.selectFrom('printed_part').select('hash').execute()).length;

  test('a signature is kept with its sheet and its tag, as they are printed of the signed job', async () => {
    const { id, revision } = await finishedJob(shop.db);
    const seen: unknown[] = [];
    await sign(id, async (trx, signed) => {
      seen.push([signed.stage, signed.revision, signed.sections.signature?.who]);
      return prints(trx, signed);
    });
    expect(seen).toEqual([['signed', revision + 1, 'CD']]);
    expect(await signedPrints(shop.db, id)).toMatchObject([{ revision: revision + 1, who: 'CD' }]);
    const kept = (paper: 'sheet' | 'tag') => printedAt(shop.db, id, { paper, revision: revision + 1 });
    expect([await kept('sheet'), await kept('tag')]).toEqual(['<p>Sheet of 1001</p>', '<p>Tag of 1001</p>']);
    expect(await printedPart(shop.db, 'a'.repeat(64))).toMatchObject({ kind: 'css', base64: 'cHt9' });
    expect(await printedPart(shop.db, 'b'.repeat(64))).toBe(null);
  });

  test('a sheet that cannot be printed or kept signs nothing', async () => {
    const { id, revision } = await finishedJob(shop.db);
    const failing: readonly PrintSigned[] = [
      () => Promise.reject(new Error('no paper')),
      async (trx, job) => ({ ...(await prints(trx, job)), html: { sheet: '<p>', tag: '' } }),
      async (trx, job) => ({ ...(await prints(trx, job)), html: { sheet: '<p>\0', tag: '<p>' } }),
    ];
    for (const print of failing) {
      expect(await errorOf(sign(id, print))).toBeInstanceOf(Error);
      const job = (await getJob(shop.db, id))!;
      expect([job.stage, job.revision, job.sections.signature]).toEqual(['to-sign', revision, null]);
      expect([await signedPrints(shop.db, id), await partsKept()]).toEqual([[], 0]);
    }
    expect(await errorOf(sign(id, null))).toMatchObject({ message: expect.stringContaining('papers') });
    expect((await getJob(shop.db, id))!.stage).toBe('to-sign');
  });

  test('style and type are kept once for every sheet that is printed with them', async () => {
    const [one, two] = [await finishedJob(shop.db), await finishedJob(shop.db)];
    await sign(one.id, prints);
    await sign(two.id, prints);
    expect(await partsKept()).toBe(1);
  });

  test('each signature of a job keeps papers of its own', async () => {
    const { id, revision: first } = await signedJob(shop.db);
    const edit = { jobId: id, fromRevision: first, what: 'received' } as const;
    await reviseJob(shop.db, as('AB', 'the wrong van'), { ...edit, body: received({ note: 'van, red' }) });
    const { revision: second } = await sign(id, async (trx, job) => ({
      ...(await prints(trx, job)),
      html: { sheet: '<p>Second', tag: '<p>Second' },
    }));
    expect((await signedPrints(shop.db, id)).map(({ revision }) => revision)).toEqual([second, first]);
    expect(await printedAt(shop.db, id, { paper: 'sheet', revision: first })).toBe('<p>Sheet of 1001</p>');
    expect(await printedAt(shop.db, id, { paper: 'sheet', revision: second })).toBe('<p>Second');
  });

  test('no row of what was printed is ever changed or deleted', async () => {
    await signedJob(shop.db);
    for (const table of ['printed', 'printed_part']) {
      const column = table === 'printed' ? 'html' : 'base64';
      const change = sql`update ${sql.table(table)} set ${sql.ref(column)} = 'other'`.execute(shop.db);
      expect(await errorOf(change)).toBeInstanceOf(Error);
      expect(await errorOf(sql`delete from ${sql.table(table)}`.execute(shop.db))).toBeInstanceOf(Error);
    }
  });
});
