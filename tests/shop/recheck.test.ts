import { afterEach, beforeEach, expect, test } from 'vitest';
import { getJob } from '../../src/records/jobs/readJob.ts';
import { reviseJob } from '../../src/records/jobs/reviseJob.ts';
import { recheckDecision, recheckStuds } from '../../src/shop/recheck.ts';
import { studs } from '../records/samples.ts';
import type { Served } from '../web/program.ts';
import { measured, shopWith, step } from '../web/steps.ts';

let program: Served;
beforeEach(async () => {
  program = await shopWith();
  await measured(program);
  await step(program, 'decision', { decision: 'face', who: 'BL' });
});
afterEach(() => program.close());

async function decided() {
  return (await getJob(program.shop.db, '1001'))!.sections.decision!.body;
}

test('a decision of today is answered the same today, and the page says nothing', async () => {
  expect(recheckDecision(await decided(), 'mm')).toBeNull();
  expect((await program.get('/jobs/1001')).html).not.toContain('id="answers-otherwise"');
});

test('a decision kept by an older calculation with another answer says so with both values, and stays as it was', async () => {
  const kept = await decided();
  const passed = kept.check.findings.find(({ status }) => status === 'pass')!;
  const job = (await getJob(program.shop.db, '1001'))!;
  const old = {
    ...kept,
    reason: 'older',
    workedOutAtRevision: job.revision,
    calcVersion: 'cover-0',
    check: {
      ...kept.check,
      because: 'As it was answered then.',
      leastWall: { ...kept.check.leastWall!, afterMm: 4.7 },
      stations: kept.check.stations.map((one, i) => (i === 0 ? { ...one, wallAfterMm: 4.7 } : one)),
      findings: kept.check.findings.map((one) =>
        one.id === passed.id
          ? { ...one, status: 'caution' as const, sentence: 'As it was found then.' }
          : one,
      ),
    },
  };
  await reviseJob(
    program.shop.db,
    { who: 'BL', now: () => new Date('2026-11-24T18:00:00Z') },
    { jobId: job.id, fromRevision: job.revision, what: 'decision', body: old },
  );
  const page = await program.get('/jobs/1001');
  expect(page.text).toContain('As it was answered then.');
  expect(page.text).toContain('The calculation has changed (cover-0 then, cover-');
  expect(page.text).toContain('least wall left 4.700 mm then and 4.850 mm now');
  expect(page.text).toContain('The decision stays as it was made');
  expect((await decided()).check.leastWall!.afterMm).toBe(4.7);
  const sheet = await program.get('/jobs/1001/sheet');
  expect(sheet.text).toContain('predicted 4.700 mm');
  expect(sheet.text).not.toContain('predicted 4.850 mm');
  expect(sheet.text).toContain('As it was found then.');
  expect(sheet.text).not.toContain(kept.check.because);
});

test('inputs today’s calculation no longer takes are told, not thrown', async () => {
  const kept = await decided();
  const unusable = { ...kept, input: { ...kept.input, stations: [] } };
  expect(recheckDecision(unusable, 'mm')).toContain('can’t use what this decision was made from');
});

test('studs kept without what was asked of them are left alone', () => {
  expect(recheckStuds(studs, 'mm')).toBeNull();
});
