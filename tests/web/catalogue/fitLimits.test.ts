import { afterAll, beforeAll, expect, it } from 'vitest';
import { getEntry } from '../../../src/records/catalogue.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

/** The form of an entry as the page has it, to be sent back changed. */
async function formOf(path: string): Promise<Record<string, string>> {
  const { html } = await program.get(path);
  const inputs = [...html.matchAll(/<input[^>]*name="([^"]+)"[^>]*?(?: value="([^"]*)")?[^>]*>/g)];
  return Object.fromEntries(
    inputs
      .filter(([whole]) => !/type="(checkbox|radio)"/.test(whole) || / checked/.test(whole))
      .map(([whole, name]) => [name!, / value="([^"]*)"/.exec(whole)?.[1] ?? '']),
  );
}

it('a family’s figures are kept with their source, and a job of it is held against them', async () => {
  const path = '/catalogue/family/1050-4-ribbed';
  const form = {
    ...(await formOf(path)),
    make: 'stamped',
    sideWall: 'ribbed',
    who: 'BL',
    why: 'drawing found',
  };
  const unsourced = await program.post(path, { ...form, 'lim.mostEndPlayMm': '0.6' });
  expect(unsourced.status).toBe(422);
  expect(unsourced.text).toContain('Source of these figures is empty');
  const swapped = {
    'lim.leastEndPlayMm': '0.8',
    'lim.mostEndPlayMm': '0.6',
    'lim.source': 'drawing, note 3',
  };
  expect((await program.post(path, { ...form, ...swapped })).text).toContain('one of the two is wrong');
  const kept = await program.post(path, { ...form, ...swapped, 'lim.leastEndPlayMm': '0.3' });
  expect(kept.status).toBe(303);
  const family = (await getEntry(program.shop.db, 'family', '1050-4-ribbed'))!.body;
  expect(family.limits).toMatchObject({ leastEndPlayMm: 0.3, mostEndPlayMm: 0.6, source: 'drawing, note 3' });
  expect((await program.get(path)).html).toMatch(/name="lim\.mostEndPlayMm"[^>]*value="0\.6"/);

  // A job received before keeps the family it came in with; the quick page takes today's.
  const stations = Object.fromEntries(Array.from({ length: 12 }, (_, i) => [`w.${i}`, '4.6']));
  const asked = new URLSearchParams({ family: '1050-4-ribbed', ...stations, 'k.endPlayMm': '0.7' });
  const page = await program.get(`/cover?${asked}`);
  expect(page.text).toContain('End play is 0.700 mm, above the maximum of 0.600 mm');
  expect(page.text).toContain('drawing, note 3');
  expect((await getJob(program.shop.db, '1007'))?.sections.received?.body.family.limits ?? null).toBeNull();
});
