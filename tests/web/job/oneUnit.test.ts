import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '../../../shared/words/job.ts';
import { listEntries } from '../../../src/records/catalogue.ts';
import { findJobs } from '../../../src/records/jobs/findJobs.ts';
import { allReadings } from '../../../src/records/jobs/history.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
let jobs: readonly Job[] = [];
/** Notes and names of studs and stacks, as somebody typed them. */
let shelf: readonly string[] = [];
beforeAll(async () => {
  program = await serve({ demo: true });
  const { jobs: lines } = await findJobs(program.shop.db, { limit: 100 });
  const { db } = program.shop;
  const entries = [...(await listEntries(db, 'stud')), ...(await listEntries(db, 'stack'))];
  shelf = entries.flatMap(({ name, body }) => [name, body.note]);
  jobs = await Promise.all(lines.map(async ({ id }) => (await getJob(program.shop.db, id))!));
});
afterAll(() => program.close());

const WORDS = {
  mm: /\d\s?(mm|N·m|MPa|kN|m\/min)\b(?!\/)|\b(in|lengths in) mm\b/,
  in: /\d\s?(in|lb·ft|psi|ksi|lbf|ft\/min)\b(?! all)|\b(in|lengths in) inches\b/,
} as const;
/** What the page offers to change to, which names the other unit. */
const OFFER = /lengths in (mm|inches)|use (mm|inches)/g;

/** What people typed as text stands as they typed it. */
async function typedIn(job: Job): Promise<string[]> {
  const { received, looked, setup, decision, cuts, studs, signature } = job.sections;
  return [
    received?.body.note,
    received?.body.customerReference,
    received?.body.family.name,
    received?.body.family.shopMinimumWallSource,
    received?.body.family.makerMinimumWallSource,
    looked?.body.crackNote,
    ...(looked?.body.items ?? []).map(({ note }) => note),
    setup?.body.gauge,
    setup?.body.ringWelded?.note,
    decision?.body.reason,
    ...(cuts?.body.cuts ?? []).map(({ note }) => note),
    studs?.body.note,
    ...shelf,
    ...(studs?.body.replaced ?? []).map(({ note }) => note),
    studs?.body.retightening?.note,
    signature?.body.statement,
    ...(await allReadings(program.shop.db, job.id)).map(({ typed }) => `typed ${typed}`),
  ].filter((text): text is string => typeof text === 'string' && text.length > 3);
}

async function textIn(path: string, unit: 'mm' | 'in'): Promise<string> {
  const page = await fetch(program.url + path, { headers: { cookie: `unit=${unit}` } });
  expect(page.status).toBe(200);
  const html = (await page.text()).replaceAll('\u00a0', ' ');
  return (
    html
      .replace(/<(script|style|select)[\s\S]*?<\/\1>/g, ' ')
      // What a fold says is in its boxes stands there as it was typed, as in them.
      .replace(/<span class="fold-told">[^<]*<\/span>/g, ' ')
      // A formula with constants of its own is worked out in SI units, and says so.
      .replace(/<span class="numbers in-si">[\s\S]*?<\/small><\/span>/g, ' ')
      .replace(/<[^>]+>/g, ' ')
      .replace(/\s+/g, ' ')
  );
}

describe.each(['in', 'mm'] as const)('with lengths in %s', (unit) => {
  it.each(['', '/history', '/measure'])(
    'no page of a demo job under "%s" shows a figure in another unit',
    async (under) => {
      const found: string[] = [];
      for (const job of jobs) {
        let text = await textIn(`/jobs/${job.number}${under}`, unit);
        for (const typed of await typedIn(job)) text = text.replaceAll(typed, ' ');
        text = text.replace(OFFER, ' ');
        const wrong = new RegExp(`.{60}${`(${WORDS[unit === 'in' ? 'mm' : 'in'].source})`}.{20}`, 'g');
        for (const [all] of text.matchAll(wrong)) found.push(`${job.number}: ${all}`);
      }
      expect(found).toEqual([]);
    },
  );
});
