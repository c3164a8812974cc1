import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

/** Where the plain figures of a page lead. */
const leads = (html: string) =>
  [...html.matchAll(/<a class="how-figure" href="([^"]+)"/g)].map(([, href]) =>
    href!.replaceAll('&amp;', '&'),
  );

describe('a plain figure', () => {
  it('leads to its formula in one press, with the values of the job it stands on', async () => {
    const { html } = await program.get('/jobs/1008');
    const found = leads(html);
    expect(found.length).toBeGreaterThan(6);
    let here = 0;
    for (const href of found) {
      const page = await fetch(program.url + href);
      expect([href, page.status, page.url.includes('/how/')]).toEqual([href, 200, true]);
      if ((await page.text()).includes('Job 1008')) here += 1;
    }
    expect(here).toBeGreaterThan(3);
  });

  it('of the bending and the cut plan too, on the quick page', async () => {
    const asked = await fetch(`${program.url}/cover/example/1125-4-plain-bright`);
    const html = (await asked.text()).replaceAll('\u00a0', ' ');
    for (const figure of ['peak ÷ mean', 'center moves', 'rpm'])
      expect(html).toMatch(new RegExp(`<a class="how-figure"[^>]*>[^<]*${figure}`));
    for (const href of leads(html)) expect((await fetch(program.url + href)).status).toBe(200);
  });
});
