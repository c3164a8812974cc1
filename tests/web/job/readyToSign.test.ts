import { expect, it } from 'vitest';
import { findJobs } from '../../../src/records/jobs/findJobs.ts';
import { serve } from '../program.ts';

it('a job is shown as ready to sign exactly where a signature without a statement is taken', async () => {
  const program = await serve({ demo: true });
  try {
    const { jobs } = await findJobs(program.shop.db, { limit: 100, stage: 'to-sign' });
    const asked: [shownReady: boolean, taken: boolean][] = [];
    for (const { number } of jobs) {
      const path = `/jobs/${number}`;
      const page = (await program.get(path)).html;
      const from = /action="[^"]*\/signature"[\s\S]*?name="from" value="(\d+)"/.exec(page)![1]!;
      const signed = await program.post(`${path}/signature`, { from, who: 'AA', statement: '' });
      asked.push([page.includes('ready to sign'), signed.status === 303]);
    }
    expect(asked.map(([ready]) => ready)).toEqual(asked.map(([, taken]) => taken));
    // One of each, so that neither answer is for all.
    expect(new Set(asked.map(([ready]) => ready))).toEqual(new Set([true, false]));
  } finally {
    await program.close();
  }
});
