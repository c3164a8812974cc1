import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { currentCriteria, saveCriteria } from '../../../src/records/shopCriteria.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

describe('the jobs that each revision of the shop limits judged', () => {
  it('are counted beside it and listed with links', async () => {
    const page = await program.get('/criteria');
    const [, count] = /href="\/criteria\/jobs\?revision=1">(\d+) jobs decided under it/.exec(page.html)!;
    const list = await program.get('/criteria/jobs?revision=1');
    expect(list.status).toBe(200);
    expect(list.text).toContain(`${count} jobs, by the decision as it stands now`);
    const links = [...list.html.matchAll(/href="\/jobs\/(\d+)"/g)];
    expect(links).toHaveLength(Number(count));
    const [, number] = links[0]!;
    expect((await program.get(`/jobs/${number}`)).status).toBe(200);
  });

  it('of a new revision are none yet, and of one that was never saved there is no page', async () => {
    const { body, revision } = await currentCriteria(program.shop.db);
    const ctx = { who: 'AK', why: 'tried', now: () => new Date('2026-11-24T12:00:00Z') };
    await saveCriteria(program.shop.db, ctx, {
      fromRevision: revision,
      body: { ...body, typicalCutMm: 0.2 },
    });
    expect((await program.get('/criteria')).text).toContain('tried. No job decided under it');
    const none = await program.get(`/criteria/jobs?revision=${revision + 1}`);
    expect(none.text).toContain('No job was decided under it');
    expect((await program.get(`/criteria/jobs?revision=${revision + 2}`)).status).toBe(404);
    expect((await program.get('/criteria/jobs?revision=zz')).status).toBe(404);
  });
});
