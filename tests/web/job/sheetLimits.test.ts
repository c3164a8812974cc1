import { afterEach, beforeEach, expect, test } from 'vitest';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { as, received } from '../../records/samples.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeEach(async () => {
  program = await serve({ demo: false });
});
afterEach(() => program.close());

test('the sheet prints every limit of the cover by its name, and nothing about how the shop writes', async () => {
  const { number } = await createJob(program.shop.db, as('MH'), { received: received() });
  const { text } = await program.get(`/jobs/${number}/sheet`);
  const printed = /Shop limits: (.*?)\.(?: |$)/.exec(text)?.[1] ?? '';
  const names = printed.split('; ').map((one) => one.replace(/ ([\d.]+ (mm|%)|none)$/, ''));
  expect(new Set(names)).toEqual(
    new Set(['clean-up allowance', 'runout allowed after the cut', 'typical cut', 'confidence required']),
  );
  expect(printed).toContain('confidence required 95 %');
});
