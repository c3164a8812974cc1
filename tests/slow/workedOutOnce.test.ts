import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { currentCriteria, saveCriteria } from '../../src/records/shopCriteria.ts';
import type { Served } from '../web/program.ts';
import { measured, PLACES, readingsForm, revisionNow, shopWith, step } from '../web/steps.ts';

/** Every input a cover was worked out from, in turn. */
const runs = vi.hoisted(() => {
  // What the set-up of the tests has loaded already would not be counted.
  vi.resetModules();
  return [] as string[];
});
vi.mock('../../src/calc/cover/coverNumbers.ts', async (actual) => {
  const real = await actual<typeof import('../../src/calc/cover/coverNumbers.ts')>();
  const coverNumbers: typeof real.coverNumbers = (input) => {
    runs.push(JSON.stringify(input));
    return real.coverNumbers(input);
  };
  return { ...real, coverNumbers };
});

let program: Served;
/** A minimum of its own, so that no other test has worked out the same job. */
let minimumWallMm = 4.2;
beforeEach(async () => {
  minimumWallMm += 0.001;
  program = await shopWith({ minimumWallMm });
  await measured(program);
  runs.length = 0;
});
afterEach(() => program.close());

const api = async (path = '') => (await fetch(`${program.url}/api/jobs/1001${path}`)).json();
async function runsOf(attempt: () => Promise<unknown>): Promise<number> {
  runs.length = 0;
  await attempt();
  return runs.length;
}
const everyWay: readonly [string, () => Promise<unknown>][] = [
  ['page', () => program.get('/jobs/1001')],
  ['sheet', () => program.get('/jobs/1001/sheet')],
  ['JSON', () => api()],
  ['bending', () => program.get('/jobs/1001/bending')],
];

it.each(everyWay)(
  'the %s of a job works the cover out once, and what is asked after it not at all',
  async (_, first) => {
    expect(await runsOf(first)).toBe(1);
    for (const [, again] of everyWay) expect(await runsOf(again)).toBe(0);
  },
);

it('a job that is decided, cut and measured again works nothing out twice', async () => {
  await step(program, 'decision', { decision: 'face' });
  await step(program, 'cuts', { depth: '0.05', look: 'gone' });
  const walls = PLACES.map(() => '4.85');
  await program.post('/jobs/1001/readings', { ...readingsForm('after', walls), token: 'token-after-cut' });
  await runsOf(() => program.get('/jobs/1001'));
  // As it was measured since; as it was decided it is known.
  expect(runs).toHaveLength(1);
  for (const [, again] of everyWay) expect(await runsOf(again)).toBe(0);
  expect(await runsOf(() => step(program, 'signature', { statement: 'checked' }))).toBe(0);
  // A signed job is told anew, from the same numbers.
  for (const [, signed] of everyWay) expect(await runsOf(signed)).toBe(0);
});

it('a decision is made on the answer the page showed, and what is refused shows it again', async () => {
  await program.get('/jobs/1001');
  const refused = () => program.post('/jobs/1001/plan', { from: '3', who: 'AK', cut: 'deep' });
  expect(await runsOf(async () => expect((await refused()).status).toBe(422))).toBe(0);
  const stale = () =>
    program.post('/jobs/1001/decision', { from: '1', criteria: '1', who: 'AK', decision: 'face' });
  expect(await runsOf(async () => expect((await stale()).status).toBe(409))).toBe(0);
  expect(await runsOf(() => step(program, 'decision', { decision: 'face' }))).toBe(0);
});

it('changed limits, one reading more and a photograph of neither are told apart', async () => {
  const least = async () => (await api()).answer.check.minimumWall.mm;
  expect(await least()).toBe(minimumWallMm);
  const { revision, body } = await currentCriteria(program.shop.db);
  const ctx = { who: 'BL', why: 'raised', now: () => new Date('2026-11-25T08:00:00Z') };
  await saveCriteria(program.shop.db, ctx, { fromRevision: revision, body: { ...body, minimumWallMm: 4.6 } });
  expect(await runsOf(async () => expect(await least()).toBe(4.6))).toBe(1);
  await step(program, 'plan', { cut: '0.07' });
  expect(await runsOf(async () => expect((await api()).answer.check.cut.dialledMm).toBe(0.07))).toBe(1);
});

it('two shops whose job 1001 has the same revision and time, as after a restore, get each their own answer', async () => {
  const other = await shopWith({ minimumWallMm });
  await measured(other, '4.80');
  expect(await revisionNow(other)).toBe(await revisionNow(program));
  const before = async (of: Served) =>
    (await (await fetch(`${of.url}/api/jobs/1001`)).json()).answer.check.leastWall.beforeMm;
  expect([await before(program), await before(other)]).toEqual([4.9, 4.8]);
  await other.close();
});
