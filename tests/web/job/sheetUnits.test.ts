import { afterAll, beforeAll, expect, test } from 'vitest';
import { findJobs } from '../../../src/records/jobs/findJobs.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

/** Names of flexplate stacks, which are text as a person typed it. */
const TYPED = /on an? [\d.]+ in bolt circle/g;

/** Every sheet of the demo shop as text, in the unit; what a person typed aside. */
async function sheetsIn(unit: 'mm' | 'in'): Promise<[string, string][]> {
  const { jobs } = await findJobs(program.shop.db, { limit: 200 });
  const sheets: [string, string][] = [];
  for (const { number } of jobs) {
    const response = await fetch(`${program.url}/jobs/${number}/sheet`, {
      headers: { cookie: `unit=${unit}` },
    });
    const html = (await response.text()).replaceAll('\u00a0', ' ');
    sheets.push([
      number,
      html
        .replace(/<header class="bar">[\s\S]*?<\/header>/, '')
        .replace(/<[^>]+>/g, ' ')
        .replace(TYPED, ''),
    ]);
  }
  return sheets;
}

const MILLIMETERS = /.{0,60}(?:\d (?:mm|µm|N·m|MPa|kN|m\/min|kg\/m³|g·mm)(?![\wµ·/])|\bmm\b).{0,20}/g;
const INCHES =
  /.{0,60}(?:\d (?:in|lb·ft|lb-ft|psi|ksi|lbf|ft\/min|oz·in)(?![\w·/-])|, in\b|\binches\b).{0,20}/g;

test.each([
  ['in', MILLIMETERS],
  ['mm', INCHES],
] as const)('no sheet of the demo shop printed in %s holds the other unit', async (unit, other) => {
  const found = (await sheetsIn(unit)).flatMap(([number, text]) =>
    [...text.matchAll(other)].map(([where]) => `${number}: ${where.replace(/\s+/g, ' ')}`),
  );
  expect(found).toEqual([]);
});
