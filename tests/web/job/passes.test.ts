import { afterAll, beforeAll, expect, it } from 'vitest';
import { allReadings } from '../../../src/records/jobs/history.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import type { Served } from '../program.ts';
import { confirmed, measured, PLACES, readingsForm, shopWith, step } from '../steps.ts';

let program: Served;
beforeAll(async () => {
  // Minimum 4.3, allowance 0.05; walls of 4.90, flat, no marks found before the cut.
  program = await shopWith({ minimumWallMm: 4.3, faceRunoutLimitMm: null });
  await measured(program);
  await step(program, 'plan', { cut: '0.3' });
  await step(program, 'decision', { decision: 'face', reason: 'as planned' });
});
afterAll(() => program.close());

const page = async () => (await (await fetch(`${program.url}/jobs/1001`)).text()).replaceAll('\u00a0', ' ');
const said = async () => /id="after-pass-head">([^<]*)</.exec(await page())?.[1];
const after = (token: string, wall: string, more: Record<string, string> = {}) =>
  program.post('/jobs/1001/readings', {
    ...readingsForm(
      'after',
      PLACES.map(() => wall),
    ),
    ...confirmed(PLACES.map(() => wall)),
    token,
    ...more,
  });

it('each pass of cut, look and plan is judged by what was seen and read after it, and earlier ones are kept', async () => {
  await step(program, 'cuts', { depth: '0.2' });
  expect(await said()).toBe('Look: is the heat mark gone?');

  // Looked at later: the same pass, no new one.
  await step(program, 'cuts', { seen: '1', look: 'dark' });
  expect(await said()).toBe('Heat mark remaining: cut 0.10 mm more.');
  const job = async () => (await getJob(program.shop.db, '1001'))!;
  expect((await job()).sections.cuts?.body.cuts).toHaveLength(1);

  await after('token-after-pass1', '4.70');
  await step(program, 'cuts', { depth: '0.1', look: 'dark' });
  // Read after the first pass: kept, and no longer what the wall is.
  expect((await job()).readings.filter((one) => one.pass === 'after')).toEqual([]);
  expect((await job()).earlierAfter).toHaveLength(PLACES.length);
  expect((await job()).stage).toBe('to-verify');
  expect(await said()).toBe('Heat mark remaining, and the decided cut is used up.');
  expect(await page()).toContain('At most 0.30 mm more can be cut');

  await after('token-after-pass2', '4.60', { 'd.2': '0.04' });
  expect(await said()).toBe('Heat mark remaining: it needs 0.09 mm more, which is more than was decided.');
  expect(/name="cut" value="([^"]*)"/.exec(await page())?.[1]).toBe('0.39');
  // There are readings after the cut, and still the cut comes next.
  expect((await job()).stage).toBe('to-sign');
  expect(await page()).toContain('job-section-next" id="cut"');

  await step(program, 'plan', { cut: '0.39' });
  expect((await job()).stage).toBe('to-decide');
  await step(program, 'decision', { decision: 'face', reason: 'darker than read' });
  expect(await said()).toBe('Heat mark remaining: cut 0.09 mm more.');
  await step(program, 'cuts', { depth: '0.09', look: 'gone' });
  expect(await said()).toBe('The heat mark is gone after 0.390 mm: measure again.');
  await after('token-after-pass3', '4.51');
  expect(await said()).toBe('The heat mark is gone after 0.390 mm.');
  expect((await job()).stage).toBe('to-sign');

  const table = (await page()).split('id="passes"')[1]!.split('</table>')[0]!;
  const rows = [...table.matchAll(/<tr><th scope="row".*?<\/tr>/g)];
  expect(rows.map(([row]) => row.replaceAll(/<[^>]*>/g, '|').replaceAll(/[| ]*\|[| ]*/g, '|'))).toEqual([
    '|1|heat mark remaining|0.200|0.200|4.700|—|',
    '|2|heat mark remaining|0.100|0.300|4.600|0.040|',
    '|3|heat mark gone|0.090|0.390|4.510|—|',
  ]);
  expect(
    (await allReadings(program.shop.db, (await job()).id)).filter((one) => one.pass === 'after'),
  ).toHaveLength(3 * PLACES.length + 1);
});

it('a reading of the pass before, sent by a tablet that did not know of the next, is refused and stays on the tablet', async () => {
  const reading = {
    id: 'm-00000000000000000001',
    pass: 'after',
    kind: 'wall',
    angleDeg: 0,
    radiusMm: 110,
    typed: '4.6',
    unit: 'mm',
    decimalSign: 'point',
    gauge: '',
    confirmed: false,
    replaces: null,
    weldedAt: 3,
  };
  const answer = await fetch(`${program.url}/jobs/1001/measure/kept?pass=after`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', Origin: program.url },
    body: JSON.stringify({ who: 'AK', why: '', readings: [reading] }),
  });
  const taken = (await answer.json()) as { added: unknown[]; refused: { message: string }[] };
  expect(taken.added).toEqual([]);
  expect(taken.refused[0]?.message).toContain('Another pass was recorded after this page was opened');
});

it('a cut deeper than decided, and walls that do not agree with it, are found', async () => {
  await step(program, 'cuts', { depth: '0.05', 'ok.depth': '0.05', look: 'gone' });
  await after('token-after-pass4', '4.38');
  const html = await page();
  expect(html).toContain('Cut 0.440 mm; 0.39 mm was decided. That is 0.050 mm too deep');
  expect(html).toContain('0.080 mm thinner than the cut should have left');
});
