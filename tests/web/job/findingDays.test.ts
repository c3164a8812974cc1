import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Finding } from '../../../shared/words/finding.ts';
import { findJobs } from '../../../src/records/jobs/findJobs.ts';
import { coverInput } from '../../calc/cover/sets.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

/** Everything within an answer that is a finding. */
function findingsIn(value: unknown): Finding[] {
  if (typeof value !== 'object' || value === null) return [];
  const within = Object.values(value).flatMap(findingsIn);
  return 'sentence' in value && 'status' in value ? [value as Finding, ...within] : within;
}

const daysIn = (findings: readonly Finding[]): string[] =>
  findings.flatMap(({ title, sentence, source }) =>
    [title, sentence, source].filter((text) => /\b\d{4}-\d\d-\d\d\b/.test(text)),
  );

test('no finding of a job prints a day as 2026-10-08', async () => {
  const { jobs } = await findJobs(program.shop.db, { limit: 200 });
  const found: Finding[] = [];
  for (const { number } of jobs) {
    const answer = await fetch(`${program.url}/api/jobs/${number}`);
    found.push(...findingsIn(await answer.json()));
  }
  expect(found.length).toBeGreaterThan(300);
  expect(daysIn(found)).toEqual([]);
});

test.each([
  ['in time', '2026-10-08'],
  ['too late', '2026-10-09'],
])('no finding of gauges used %s prints one either', async (_, measuredOn) => {
  const gaugesUsed = [{ name: 'bench micrometer', dueOn: '2026-10-08' }];
  const answer = await fetch(`${program.url}/api/cover/check`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ ...coverInput(), gaugesUsed, measuredOn }),
  });
  const found = findingsIn(await answer.json());
  const due = found.find(({ id }) => id === 'gauge-due');
  expect(due?.sentence).toContain('Oct 8, 2026');
  expect(daysIn(found)).toEqual([]);
});
