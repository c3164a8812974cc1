import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { addEntry, getEntry, reviseEntry } from '../../src/records/catalogue.ts';
import { FILE_NAME, openShop } from '../../src/records/database/database.ts';
import { currentCriteria, saveCriteria } from '../../src/records/shopCriteria.ts';
import { limitsFor } from '../../src/shop/limitsFor.ts';
import { formsIn, type SeenForm, sentAsShown } from './boxes.ts';
import { demoFile } from './demoShop.ts';
import { type Served, serve } from './program.ts';

let program: Served;
const dataDir = mkdtempSync(join(tmpdir(), 'coverwright-begin-'));
const ctx = { who: 'TO', why: 'measured here', now: () => new Date('2026-11-24T10:00:00Z') };
beforeAll(async () => {
  writeFileSync(join(dataDir, FILE_NAME), await demoFile('in'));
  program = await serve({ demo: true, unit: 'in', open: async ({ now }) => openShop({ dataDir, now }) });
});
afterAll(async () => {
  await program.close();
  rmSync(dataDir, { recursive: true, force: true });
});

const DEMO = 'Demo: made-up data.';

it('the demo is named on what is made up, and on nothing else', async () => {
  for (const path of ['/', '/jobs', '/jobs/1001', '/catalogue/stud/long-3-8-24', '/criteria'])
    expect((await program.get(path)).text, path).toContain(DEMO);
  for (const path of ['/cover', '/catalogue/stud/new', '/jobs/new', '/stud/gap'])
    expect((await program.get(path)).text, path).not.toContain(DEMO);
});

it('a shop begins for real in one press: a backup first, the demo put away, its own things kept', async () => {
  const { db } = program.shop;
  expect((await program.get('/')).text).not.toContain('Done trying?');
  const own = { family: '1125-4-plain', receivedOn: '2026-11-24', customer: 'first of ours', who: 'TO' };
  expect((await program.post('/jobs', own)).status).toBe(303);
  const stud = (await getEntry(db, 'stud', 'long-3-8-24'))!;
  const changed = { ...stud.body, note: 'Ours, measured.' };
  await reviseEntry(db, ctx, { kind: 'stud', id: stud.id, fromRevision: 1, body: changed });
  const before = await currentCriteria(db);
  const limits = { ...before.body, minimumWallMm: 3.81 };
  await saveCriteria(db, ctx, { fromRevision: before.revision, body: limits });

  expect((await program.get('/')).text).toContain('Done trying?');
  // A job of the shop's own on a cover type whose figures the demo made up says so; on one of its own it does not.
  expect((await program.get('/jobs/1020')).text).toContain(DEMO);
  const type = await getEntry(db, 'family', '1125-4-plain');
  await addEntry(
    db,
    { ...ctx, why: 'ours' },
    { kind: 'family', id: 'ours', body: { ...type!.body, name: 'Ours' } },
  );
  expect((await program.post('/jobs', { ...own, family: 'ours', customer: 'ours' })).location).toContain(
    '/jobs/1021',
  );
  expect((await program.get('/jobs/1021')).text).not.toContain(DEMO);
  const offered = await program.get('/begin');
  expect(offered.text).toContain('19 demo jobs, 1001 to 1019');
  expect(offered.text).toContain('1125-4 stamped, plain wall, from the demo: job 1020 uses it');
  expect(offered.text).toContain('Long stud 3/8-24 UNF, from the demo: you changed it');
  expect((await program.post('/begin', { who: '' })).status).toBe(422);
  expect((await program.get('/jobs/1001')).status).toBe(200);

  const begun = await program.post('/begin', { who: 'TO' });
  expect(begun.text).toContain('The demo is put away.');
  expect(begun.html).toContain('<a href="/catalogue/family/1125-4-plain">Replace its made-up figures</a>');
  const folder = /is in the backup (\S+?)\s?\./.exec(begun.text)?.[1] ?? '';
  expect(existsSync(join(folder, FILE_NAME))).toBe(true);

  expect((await program.get('/jobs/1001')).status).toBe(404);
  const list = (await program.get('/jobs')).text;
  expect([list.includes('first of ours'), list.includes('Demo customer')]).toEqual([true, false]);
  // What stayed of the demo says so on itself, and why, and leads to no beginning that is over.
  const kept = await program.get('/jobs/1020');
  expect(kept.text).toContain('first of ours');
  expect(kept.text).toContain(DEMO);
  expect(kept.text).toContain("The figures of this cover type are the demo's, made up.");
  expect(kept.text).toContain('It was kept because you use it.');
  expect(kept.html).toContain(
    '<a href="/catalogue/family/1125-4-plain">Replace them with yours</a>, then save Receive again.',
  );
  expect(kept.html).not.toContain('href="/begin"');
  expect((await program.get('/jobs/1020/sheet')).text).toContain(
    'The figures of this cover type are the demo’s, made up.',
  );
  expect((await program.get('/jobs/1021/sheet')).text).not.toContain('made up');
  expect((await program.get('/catalogue/stud/long-3-8-24')).text).toContain(
    "These figures are the demo's, made up. This stud was kept because you use it or changed it.",
  );
  const records = (await program.get('/records')).text;
  expect(records).toContain('21 jobs (19 of the demo, put away), ');
  expect(records).toContain('before the demo was put away');
  const catalog = (
    await Promise.all(['family', 'stud'].map((shelf) => program.get(`/catalogue?shelf=${shelf}`)))
  )
    .map(({ text }) => text)
    .join(' ');
  expect(catalog).toContain('1125-4 stamped, plain wall');
  expect(catalog).toContain('Long stud 3/8-24 UNF');
  expect(catalog).not.toContain('1150-6 billet');
  expect((await currentCriteria(db)).body).toMatchObject({
    minimumWallMm: 3.81,
    lengthUnit: 'in',
    lathe: null,
    shopName: 'The shop',
  });
  expect((await program.get('/')).text).not.toContain(DEMO);
  // The number of a job put away is not given again.
  expect((await program.post('/jobs', { ...own, customer: 'second' })).location).toContain('/jobs/1022');
  expect((await program.post('/begin', { who: 'TO' })).text).toContain('There is no demo data in this shop.');
});

it('figures stay the demo’s until the shop has changed one, and on a job until it takes the new ones', async () => {
  const entry = '/catalogue/family/1125-4-plain';
  const send = async (page: string, changed: Record<string, string>, sent: (form: SeenForm) => boolean) => {
    const form = formsIn((await program.get(page)).html).find(sent)!;
    const fields = { ...sentAsShown(form), why: 'measured', who: 'TO', ...changed };
    const { status, text } = await program.post(form.action, fields);
    expect(status, text).toBe(303);
  };
  const save = (changed: Record<string, string>) => send(entry, changed, ({ action }) => action === entry);
  await save({ note: 'Ours, but not measured.' });
  expect((await program.get(entry)).text).toContain(DEMO);
  expect((await program.get('/jobs/1020')).text).toContain(DEMO);
  await save({ nominal: '0.2' });
  expect((await program.get(entry)).text).not.toContain(DEMO);
  expect((await program.get('/jobs/1020')).text).toContain(DEMO);
  await send('/jobs/1020', {}, ({ action }) => action.endsWith('/received'));
  expect((await program.get('/jobs/1020')).text).not.toContain(DEMO);
});

it('a minimum the demo made up never goes before the shop’s own', async () => {
  const family = (await getEntry(program.shop.db, 'family', '1125-4-plain'))!.body;
  const billet = (await getEntry(program.shop.db, 'family', '1150-6-billet'))!.body;
  const { body } = await currentCriteria(program.shop.db);
  const asked = (of: typeof family, minimumWallMm: number | null) =>
    limitsFor(of, { ...body, minimumWallMm }, []);
  expect(asked(family, 3.81).criteria!.minimumWallMm).toBe(3.81);
  expect(asked(family, null).criteria!.minimumWallMm).toBe(family.shopMinimumWallMm);
  expect(asked(billet, 3.81).makerMinimumWallMm).toBeNull();
  expect(asked(billet, null).makerMinimumWallMm).toBe(billet.makerMinimumWallMm);
  const ours = { ...family, shopMinimumWallSource: 'TO, Nov 24, 2026' };
  expect(asked(ours, 3.81).criteria!.minimumWallMm).toBe(family.shopMinimumWallMm);
});
