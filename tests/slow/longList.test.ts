import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { entryHistory, listEntries } from '../../src/records/catalogue.ts';
import { openShop } from '../../src/records/database/database.ts';
import { type Served, serve } from '../web/program.ts';

const ROWS = 5000;
const PATIENT = { timeout: 600_000 };

let program: Served;
let dataDir: string;
beforeAll(async () => {
  dataDir = mkdtempSync(join(tmpdir(), 'coverwright-list-'));
  program = await serve({ demo: false, open: async ({ now }) => openShop({ dataDir, now }) });
});
afterAll(async () => {
  await program.close();
  rmSync(dataDir, { recursive: true, force: true });
});

const HEADS =
  'name,number of studs,bolt circle diameter (mm),friction surface inner diameter (mm),friction surface outer diameter (mm),new wall (mm),stiffening ring may be welded on';

it(`${ROWS} cover types from a CSV file are saved to disk, each with who and why, and read back`, async () => {
  const wall = (i: number) => (4.5 + (i % 100) / 100).toFixed(2);
  const rows = Array.from({ length: ROWS }, (_, i) => `Type ${i},4,286,214,264,${wall(i)},no`);
  const form = new FormData();
  form.set('file', new Blob([[HEADS, ...rows].join('\r\n')]), 'list.csv');
  const sent = await fetch(`${program.url}/import/family`, {
    method: 'POST',
    body: form,
    redirect: 'manual',
    headers: { origin: program.url },
  });
  const path = sent.headers.get('location')!;
  let html = '';
  const over = async () => {
    html = (await program.get(path)).html;
    return !html.includes('hx-trigger="every 1s"');
  };
  await vi.waitUntil(over, PATIENT);
  expect(html).toContain('5000');
  const seen = /name="seen" value="(\w+)"/.exec(html)![1]!;
  expect((await program.post(path, { seen, who: 'AK', why: 'from the list' })).status).toBe(303);
  await vi.waitUntil(over, PATIENT);
  const kept = await listEntries(program.shop.db, 'family');
  expect(kept).toHaveLength(ROWS);
  const walls = new Map(kept.map(({ name, body }) => [name, body.nominalWallMm]));
  expect(Array.from({ length: ROWS }, (_, i) => walls.get(`Type ${i}`))).toEqual(
    Array.from({ length: ROWS }, (_, i) => Number(wall(i))),
  );
  const last = kept.find(({ name }) => name === `Type ${ROWS - 1}`)!;
  expect(await entryHistory(program.shop.db, 'family', last.id)).toMatchObject([{ who: 'AK', revision: 1 }]);
});
