import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CATALOGUE_KINDS } from '../../shared/words/terms.ts';
import { getJob } from '../../src/records/jobs/readJob.ts';
import { LEAST_ROLE } from '../../src/web/people/roles.ts';
import { type Served, serve } from './program.ts';

/** What each screen says where there is nothing, where nothing was found, and where a form was not taken. */

/** One heading; what happened and what to do; a way on. */
function expectHousePage(html: string, where: string): void {
  expect(html.match(/<h1\b/g), where).toHaveLength(1);
  const main = html.slice(html.indexOf('<main'), html.indexOf('</main>'));
  const words = main
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&quot;', '"')
    .replace(/\s+/g, ' ');
  expect(words, where).toMatch(/[a-z’\d"”)]{2,}[.?!]( |$)/);
  expect(main, `${where} leads on`).toMatch(/<a [^>]*href=|<button/);
}

const emptyStates = (html: string) => html.match(/<section class="empty"/g)?.length ?? 0;

describe('a shop with nothing in it yet', () => {
  let program: Served;
  beforeAll(async () => {
    program = await serve({ demo: false });
  });
  afterAll(() => program.close());

  test.each([
    ['/jobs', 'No jobs yet', '/jobs/new'] as const,
    ['/slips', 'No slips yet', '/stud'] as const,
    ...CATALOGUE_KINDS.map((kind) => [`/catalogue?shelf=${kind}`, 'yet', `/catalogue/${kind}/new`] as const),
  ])('%s says "%s" and leads to %s', async (path, says, leads) => {
    const page = await program.get(path);
    expect(page.status).toBe(200);
    expectHousePage(page.html, path);
    expect(emptyStates(page.html)).toBe(1);
    expect(page.text).toContain(says);
    expect(page.html).toContain(`href="${leads}"`);
  });

  const pages = Object.keys(LEAST_ROLE)
    .filter((route) => /^GET \/(?!api|assets|health|sign-in|first|account|people)[^:.]*$/.test(route))
    .map((route) => route.slice('GET '.length));
  test.each(pages)('%s opens, and says what to do', async (path) => {
    const page = await program.get(path);
    // Two are asked for with what they are to show.
    expect(/^\/(criteria\/jobs|how\/formula)$/.test(path) ? [404] : [200, 422]).toContain(page.status);
    expectHousePage(page.html, path);
  });
});

describe('in a shop with jobs', () => {
  let program: Served;
  beforeAll(async () => {
    program = await serve({ demo: true });
  });
  afterAll(() => program.close());

  test.each([
    ['/jobs?text=zzq', 'No jobs found', '/jobs'],
    ['/jobs?stage=closed', 'No jobs found', '/jobs'],
    ['/slips?text=zzq', 'No slips found', '/slips'],
    ['/catalogue?text=zzq', 'Nothing found', '/catalogue'],
    ['/trends?from=2020-01-01&to=2020-01-02', 'No jobs found', '/trends'],
  ])('%s says "%s", and leads back to everything', async (path, says, leads) => {
    const page = await program.get(path);
    expect(page.status).toBe(200);
    expectHousePage(page.html, path);
    expect(emptyStates(page.html)).toBe(1);
    expect(page.text).toContain(says);
    expect(page.html).toContain(`href="${leads}"`);
  });

  test.each(['/jobs?stage=lost', '/jobs?sort=colour', '/slips?from=someday', '/slips?sort=-colour'])(
    '%s is refused with a sentence, lists nothing, and still can be mended',
    async (path) => {
      const page = await program.get(path);
      expect(page.status).toBe(422);
      expectHousePage(page.html, path);
      expect(page.html).toContain('class="faults"');
      expect(page.html).toContain('id="find"');
    },
  );

  /** Nothing that is typed into it could be refused. */
  const ALWAYS_TAKEN =
    / \/(sign-in|sign-out|first|account|people|tokens|preferences|begin|records|import|gauges)(\/|$)|measure\/(order|kept)|\/ring-closed|slips$|\/welded|\/photos|limit\/stop/;
  const forms = Object.keys(LEAST_ROLE).filter(
    (route) => route.startsWith('POST /') && !route.startsWith('POST /api') && !ALWAYS_TAKEN.test(route),
  );
  const pathOf = (route: string) =>
    route
      .split(' ')[1]!
      .replace('/shelf/:number', '/shelf/1005')
      .replace('/slips/:number', '/slips/S-999999')
      .replace(':number', '1006')
      .replace(':kind/:id', 'stud/long-3-8-24')
      .replace(':kind', 'stud');

  test.each(forms)('%s sent with nothing in it is refused, says why, and changes nothing', async (route) => {
    const before = await getJob(program.shop.db, '1006');
    const page = await program.post(pathOf(route), {});
    expect([404, 409, 422]).toContain(page.status);
    expectHousePage(page.html, route);
    if (page.status !== 404) expect(page.html, 'what is wrong').toMatch(/role="alert"|class="faults/);
    expect((await getJob(program.shop.db, '1006'))?.revision).toBe(before?.revision);
  });
});
