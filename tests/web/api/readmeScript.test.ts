import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { listEntries } from '../../../src/records/catalogue.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { issueToken } from '../../../src/records/people/tokens.ts';
import { type Lan, openLan } from '../lan.ts';

let lan: Lan;
beforeAll(async () => {
  lan = await openLan();
});
afterAll(() => lan.close());

/** The calls of the example for a shell, with their headers, as they stand in the README. */
function calls() {
  const text = readFileSync(new URL('../../../README.md', import.meta.url), 'utf8');
  return text
    .split('\n')
    .filter((line) => line.startsWith('curl '))
    .map((line) => ({
      path: /http:\/\/127\.0\.0\.1:4180(\S+)/.exec(line)?.[1] ?? '',
      headers: Object.fromEntries(
        [...line.matchAll(/-H (["'])(.+?): (.+?)\1/g)].map(([, , name, value]) => [
          name!.toLowerCase(),
          value!,
        ]),
      ),
      body: / -d '(.+)'$/.exec(line)?.[1] ?? null,
    }));
}

test('the example for scripts goes from a token to a received job and a reading', async () => {
  const { recorder } = lan.people;
  const token = await issueToken(
    lan.shop.db,
    { who: 'AK', now: () => lan.now },
    { name: 'the README', personId: recorder.id, role: 'recorder' },
  );
  const family = (await listEntries(lan.shop.db, 'family'))[0]!;
  let number = '';
  const said: number[] = [];
  for (const { path, headers, body } of calls()) {
    const answer = await lan.ask(path.replace('NUMBER', number), {
      headers: { ...headers, authorization: headers.authorization!.replace('$TOKEN', token) },
      ...(body !== null && { json: JSON.parse(body.replace('FAMILY', family.id)) }),
    });
    said.push(answer.status);
    if (path === '/api/catalogue/family') expect(answer.text).toContain(family.id);
    if (path === '/api/jobs') number = JSON.parse(answer.text).number;
  }
  expect(said).toEqual([200, 201, 200]);
  const job = await getJob(lan.shop.db, number);
  expect(job?.readings).toMatchObject([{ valueMm: 4.9, who: recorder.initials }]);
});
