import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CoverCheckInput } from '../../../shared/words/cover.ts';
import type { JudgedTwice } from '../../../shared/words/trends/otherLimit.ts';
import { listEntries } from '../../../src/records/catalogue.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { currentCriteria } from '../../../src/records/shopCriteria.ts';
import { measuredJobs } from '../../../src/records/trends/trendFigures.ts';
import { gaugesAtHand } from '../../../src/shop/gauges.ts';
import { jobInput } from '../../../src/shop/jobInput.ts';
import { underOtherLimit, withMinimumMoved } from '../../../src/shop/trends/otherLimit.ts';
import { type Served, serve } from '../program.ts';

const WRITING = { lengthUnit: 'mm', timeZone: 'UTC' } as const;
const MOVED_MM = [-0.9, -0.3, 0.4];

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

const judged = (byMm: number, told: (done: number) => void = () => undefined) =>
  underOtherLimit(program.shop.db, byMm, WRITING, '2026-11-24T12:00:00.000Z', (_, done) => told(done));

/** What the interface answers of one cover, its readings sent as they stand. */
async function byHand(input: CoverCheckInput): Promise<{ verdict: string; confidence: number | null }> {
  const { criteria, ...rest } = input;
  const { minimumWallFormula: _f, minimumWallWorking: _w, ...limits } = criteria!;
  const places = rest.stations.flatMap(({ wallMm, faceMm, markDepthMm }, i) => [
    ...wallMm.map((_, n) => `stations.${i}.wallMm.${n}`),
    ...(faceMm === null ? [] : [`stations.${i}.faceMm`]),
    ...(markDepthMm === null ? [] : [`stations.${i}.markDepthMm`]),
  ]);
  const answer = await fetch(`${program.url}/api/cover/check`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ ...rest, criteria: limits, confirmed: places }),
  });
  const body = (await answer.json()) as { verdict: string; conformanceProbability: number | null };
  expect(answer.status, JSON.stringify(body).slice(0, 300)).toBe(200);
  return { verdict: body.verdict, confidence: body.conformanceProbability };
}

describe('what another minimum wall would have done', () => {
  it.each(MOVED_MM)('agrees with each job judged by hand through the interface: %d mm', async (byMm) => {
    const { db } = program.shop;
    const found = await judged(byMm);
    const changed = new Map(
      [...found.saved, ...found.lost, ...found.otherwise].map((one) => [one.number, one] as const),
    );
    const criteria = (await currentCriteria(db)).body;
    const atHand = gaugesAtHand(await listEntries(db, 'gauge'));
    let looked = 0;
    for (const id of await measuredJobs(db)) {
      const job = (await getJob(db, id))!;
      const { input } = jobInput(job, criteria, atHand, 'UTC');
      const then = input && withMinimumMoved(input, byMm);
      if (input === null || then === null) continue;
      looked += 1;
      const [before, after] = [await byHand(input), await byHand(then)];
      const one: JudgedTwice | undefined = changed.get(job.number);
      if (one === undefined) expect(after.verdict, job.number).toBe(before.verdict);
      else {
        expect([one.before, one.after], job.number).toEqual([before.verdict, after.verdict]);
        expect(one.confidence, job.number).toBe(after.confidence);
      }
    }
    expect(found.judged).toBe(looked);
    expect(changed.size).toBeGreaterThan(0);
  });

  it('less wall saves covers and loses none, more wall the other way round', async () => {
    const [less, more] = [await judged(-0.9), await judged(0.4)];
    expect(less.saved.length).toBeGreaterThan(0);
    expect(less.lost).toEqual([]);
    expect(more.saved).toEqual([]);
    expect(more.lost.length).toBeGreaterThan(0);
    expect(less.bands.reduce((sum, { saved }) => sum + saved, 0)).toBe(less.saved.length);
  });

  it('moves the shop’s figure alone, to the very figure: 0.17 in less 0.005 in is 0.165 in', async () => {
    const { db } = program.shop;
    const job = (await getJob(db, '1001'))!;
    const { input } = jobInput(job, (await currentCriteria(db)).body, [], 'UTC');
    const moved = withMinimumMoved(
      { ...input!, criteria: { ...input!.criteria!, minimumWallMm: 4.318 } },
      -0.127,
    )!;
    expect(moved.criteria!.minimumWallMm).toBe(4.191);
    expect(moved.makerMinimumWallMm).toBe(input!.makerMinimumWallMm);
    expect(withMinimumMoved(input!, -30)).toBeNull();
  });

  it('ends when it is stopped, at its next cover', async () => {
    await expect(
      judged(-0.3, () => {
        throw new Error('stop');
      }),
    ).rejects.toThrow('stop');
  });
});

describe('its page', () => {
  it('asks for a length and a way, keeps what was typed, and changes nothing', async () => {
    const page = await program.get('/trends/limit');
    expect(page.text).toContain('Nothing is changed.');
    for (const by of ['', 'soon', '0', '40 mm']) {
      const refused = await program.post('/trends/limit', { by, way: 'less', unit: 'in' });
      expect(refused.status, by).toBe(422);
      expect(refused.text, by).toContain('Move the shop’s minimum by');
    }
  });

  it('starts with one press and shows what was found, with its covers as CSV', async () => {
    const started = await program.post('/trends/limit', { by: '0.036', way: 'less', unit: 'in' });
    expect(started).toMatchObject({ status: 303, location: '/trends/limit' });
    let page = await program.get('/trends/limit');
    for (let i = 0; i < 2000 && page.html.includes('class="under-way"'); i++)
      page = await program.get('/trends/limit');
    expect(page.html).toContain('id="limit-found"');
    expect(page.text).toContain('would have been saved');
    expect((await program.get('/trends/limit/covers.csv')).html).toContain('saved');
    expect((await program.get('/trends/limit/bands.csv')).html).toContain('released before');
  });
});
