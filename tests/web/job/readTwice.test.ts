import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Job, Reading } from '../../../shared/words/job.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { currentCriteria } from '../../../src/records/shopCriteria.ts';
import { afterCut } from '../../../src/shop/afterCut.ts';
import { jobInput } from '../../../src/shop/jobInput.ts';
import type { Served } from '../program.ts';
import { measured, PLACES, readingsForm, shopWith, step } from '../steps.ts';

let program: Served;
beforeAll(async () => {
  program = await shopWith();
  await measured(program);
  await step(program, 'decision', { decision: 'face' });
  await step(program, 'cuts', { depth: '0.05', look: 'gone' });
  await program.post('/jobs/1001/readings', {
    ...readingsForm(
      'after',
      PLACES.map(() => '4.85'),
    ),
    token: 'token-read-after-cut',
  });
});
afterAll(() => program.close());

const job = async () => (await getJob(program.shop.db, '1001'))!;
/** The job with readings more, as two tablets might have sent them. */
function withReadings(of: Job, more: readonly Partial<Reading>[]): Job {
  const like = of.readings[0]!;
  return {
    ...of,
    readings: [...of.readings, ...more.map((one, i) => ({ ...like, id: `more-${i}`, ...one }))],
  };
}

it('heights read twice are averaged and the deepest mark counts, whichever came last', async () => {
  const now = await job();
  const { angleDeg, radiusMm } = now.readings[0]!;
  const criteria = (await currentCriteria(program.shop.db)).body;
  const here = (kind: Reading['kind'], valueMm: number) => ({
    pass: 'before' as const,
    kind,
    valueMm,
    angleDeg,
    radiusMm,
  });
  const two = [here('face', 0.3), here('face', 0.06), here('mark', 0.25), here('mark', 0.1)];
  for (const order of [two, two.toReversed()]) {
    const { input, faults } = jobInput(withReadings(now, order), criteria, [], 'UTC');
    expect(faults).toEqual([]);
    const station = input!.stations.find((one) => one.angleDeg === angleDeg && one.radiusMm === radiusMm)!;
    // Beside the 0 that is kept of it already.
    expect(station.faceMm).toBeCloseTo(0.12, 12);
    expect(station.markDepthMm).toBe(0.25);
  }
});

it('a mark left between stations, and a reading in doubt, are found after the cut', async () => {
  const now = await job();
  const criteria = (await currentCriteria(program.shop.db)).body;
  const ids = (of: Job) => afterCut(of, criteria, 'mm').found.map(({ id, status }) => `${id} ${status}`);
  expect(ids(now).filter((one) => !one.endsWith('pass'))).toEqual(['after-runout not-checked']);
  const mark = { pass: 'after' as const, kind: 'mark' as const, angleDeg: 20, radiusMm: 118, valueMm: 0.2 };
  expect(ids(withReadings(now, [mark]))).toContain('after-marks caution');
  const slip = { pass: 'after' as const, kind: 'wall' as const, valueMm: 4.85, doubtful: true };
  expect(ids(withReadings(now, [slip]))).toContain('after-doubtful caution');
});

it('how sure the wall is after the cut, and a minimum raised since the decision, are told', async () => {
  const now = await job();
  const { body: criteria } = await currentCriteria(program.shop.db);
  const decision = now.sections.decision!;
  const gauge = {
    standardUncertaintyMm: 0.4,
    resolutionMm: 0,
    repeatabilityMm: 0,
    faceStandardUncertaintyMm: 0,
    cutSettingStandardUncertaintyMm: 0,
  };
  const coarse: Job = {
    ...now,
    sections: {
      ...now.sections,
      decision: { ...decision, body: { ...decision.body, input: { ...decision.body.input, gauge } } },
    },
  };
  const found = (of: Job, under = criteria) =>
    Object.fromEntries(afterCut(of, under, 'mm').found.map((one) => [one.id, one]));
  // Margin 0.55 of 0.4 common to all: Φ(1.375) = 0.9154 (normal table, from memory); the shop wants 95 %.
  expect(found(coarse)['after-sure']).toMatchObject({ status: 'caution', value: expect.closeTo(0.9154, 3) });
  expect(found(now)['after-sure']).toBeUndefined();
  expect(found(now, { ...criteria, minimumWallMm: 4.88 })['after-criteria']?.status).toBe('caution');
  expect(found(now)['after-criteria']).toBeUndefined();
});
