import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true, unit: 'in' });
});
afterAll(() => program.close());

const plain = (href: string) => href.replaceAll('&amp;', '&');

/** The pages that the workings of one page lead to. */
async function ledTo(path: string) {
  const { html } = await program.get(path);
  const hrefs = [
    ...new Set([...html.matchAll(/href="(\/how\/formula\?[^"]+)"/g)].map(([, href]) => plain(href!))),
  ];
  return Promise.all(
    hrefs.map(async (href) => {
      const answer = await fetch(program.url + href, { headers: { cookie: 'unit=in' } });
      return {
        href,
        url: answer.url.slice(program.url.length),
        status: answer.status,
        html: await answer.text(),
      };
    }),
  );
}

describe('from a number to its formula, with the values it has there', () => {
  it.each(['1001', '1003', '1004', '1005', '1006', '1018'])('every working of job %s', async (number) => {
    const pages = await ledTo(`/jobs/${number}`);
    const { revision } = (await getJob(program.shop.db, number))!;
    expect(pages.length).toBeGreaterThanOrEqual(2);
    for (const { href, url, status, html } of pages) {
      expect([status, href], href).toEqual([200, href]);
      expect(url).toContain(`job=${number}&revision=${revision}`);
      expect(html, href).toContain(`Job ${number}, revision ${revision}`);
    }
  });

  it('the quick page and a stud, from what was typed there', async () => {
    const { url } = await fetch(`${program.url}/cover/example/1125-4-plain-bright`);
    const cover = url.slice(program.url.length);
    expect(cover).toContain('/cover?');
    for (const path of [
      cover,
      '/stud?unit=in&stack=two-piece-four-3-8-24&pull=0.16&torque=27&torqueFrom=maker&engine=300&kFrom=zinc&prevTorque=2',
    ]) {
      const pages = await ledTo(path);
      for (const { href, status, html } of pages) {
        expect(status, href).toBe(200);
        expect(html, href).toContain('id="here"');
      }
      expect(pages.length, path).toBeGreaterThan(2);
    }
  });

  it('shows a job as it was at a revision that is no longer its newest', async () => {
    const { revision } = (await getJob(program.shop.db, '1001'))!;
    const [first] = await ledTo('/jobs/1001');
    const before = first!.url.replace(`revision=${revision}`, `revision=${revision - 1}`);
    expect((await program.get(before)).html).toContain(`Job 1001, revision ${revision - 1}`);
  });

  it.each([
    ['job=none&revision=1'],
    ['job=1001&revision=99999'],
    ['job=1001&revision=x'],
    ['from=https://elsewhere.example/cover'],
    ['from=//elsewhere.example/cover?family=1125-4-plain%26w.0=0.19%26w.1=0.19'],
    ['from=/cover?w.0=abc'],
    ['from=%00'],
  ])('shows the example alone where %s names nothing worked out', async (query) => {
    const { status, html } = await program.get(`/how/cover/toolPlane?${query}`);
    expect([status, html.includes('id="here"')]).toEqual([200, false]);
    expect(html).toContain('Worked out here: ');
  });

  it('knows no step that is none', async () => {
    expect((await program.get('/how/formula?step=zzq')).status).toBe(404);
  });
});
