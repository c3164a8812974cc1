import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { as, received } from '../../records/samples.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeEach(async () => {
  program = await serve({ demo: false });
  await createJob(program.shop.db, as('MH'), {
    received: received({ customerReference: 'Demo customer 12' }),
  });
});
afterEach(() => program.close());

/** The sentence a query is refused with, by the page, the CSV and the JSON; null where it is not refused. */
async function refusals(query: string) {
  const page = await program.get(`/jobs?${query}`);
  const csv = await program.get(`/jobs.csv?${query}`);
  const json = await fetch(`${program.url}/api/jobs?${query}`);
  const { error } = (await json.json()) as { error?: { fields: { message: string }[] } };
  return { page, csv, json: { status: json.status, sentence: error?.fields[0]?.message ?? null } };
}

describe('the list of jobs is read by one rule as a page, as CSV and as JSON', () => {
  test.each([
    ['stage=foo', '"foo" is not a state'],
    ['outcome=scrap', '"scrap" is not a decision'],
    ['from=yesterday', '"yesterday" is not a day'],
    ['to=2026-02-30', '"2026-02-30" is not a day'],
    ['limit=0', '"0" is not a number of jobs'],
    ['limit=abc', '"abc" is not a number of jobs'],
    ['after=here', '"here" is not a place in the list'],
  ])('%s is refused by all three with one sentence', async (query, begins) => {
    const { page, csv, json } = await refusals(query);
    expect([page.status, csv.status, json.status]).toEqual([422, 422, 422]);
    expect(json.sentence).toContain(begins);
    expect(page.text).toContain(json.sentence);
    expect(csv.text).toContain(json.sentence);
    expect(page.text).not.toContain('Demo customer 12');
  });

  test('what can be used is taken by all three', async () => {
    const query = 'stage=to-look&from=2026-01-01&to=2026-12-31&text=demo&outcome=&after=&limit=5';
    const { page, csv, json } = await refusals(query);
    expect([page.status, csv.status, json.status]).toEqual([200, 200, 200]);
    expect(page.text).toContain('Demo customer 12');
    expect(csv.text).toContain('Demo customer 12');
  });

  test('a refused filter stays in its box, with its sentence beside it and in the part that a script swaps', async () => {
    const { html } = await program.get('/jobs?stage=foo&from=2026-02-30&text=van');
    expect(html).toMatch(/<option value="foo" selected[^>]*>/);
    expect(html).toContain('value="2026-02-30"');
    expect(html).toContain('value="van"');
    const found = html.slice(html.indexOf('id="found"'));
    expect(found).toContain('&quot;foo&quot; is not a state');
    expect(found).toContain('href="#f-from"');
  });
});
