import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listEntries, reviseEntry } from '../../../src/records/catalogue.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { goMetric } from '../metric.ts';
import { type Served, serve } from '../program.ts';
import { rowsOf } from '../steps.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
  await goMetric(program.shop.db);
});
afterAll(() => program.close());

const WALLS = [
  '4.92',
  '4.90',
  '4.86',
  '4.83',
  '4.80',
  '4.81',
  '4.85',
  '4.90',
  '4.93',
  '4.86',
  '4.79',
  '4.85',
];
const walls = Object.fromEntries(WALLS.map((wall, i) => [`w.${i}`, wall]));

describe('gauges of the catalogue', () => {
  it('are added by form, changed as a revision, and refused with a sentence beside the field', async () => {
    const fields = {
      name: 'Micrometer X9',
      gaugeKind: 'micrometer',
      resolution: '0.001',
      calibration: '0.003',
      coverage: '2',
      repeatability: '2 um',
      due: '2027-03-01',
      who: 'AK',
    };
    expect((await program.post('/catalogue/gauge', fields)).location).toBe('/catalogue?shelf=gauge');
    const kept = (await listEntries(program.shop.db, 'gauge')).find((one) => one.name === 'Micrometer X9');
    expect(kept?.body).toMatchObject({ calibrationUMm: 0.003, repeatabilityMm: 0.002, dueOn: '2027-03-01' });
    const bad = await program.post('/catalogue/gauge', {
      ...fields,
      name: 'X10',
      due: '2027-02-30',
      coverage: '0',
    });
    expect(bad.status).toBe(422);
    expect(bad.text).toContain('must be a day of the calendar');
    expect(bad.text).toContain('The coverage factor k is 0; it must be at least 1 and at most 4');
    expect((await program.get('/catalogue?shelf=gauge')).text).toContain(
      'Micrometer X9 micrometer 0.001 0.003 0.002 Mar 1, 2027',
    );
  });

  it('chosen on the quick page say how sure the answer is, and that one is past its date', async () => {
    const ask = (more: Record<string, string>) =>
      program.get(
        `/cover?${new URLSearchParams({ family: 'metric-4', ...walls, crack: 'none-found', ...more })}`,
      );
    expect((await ask({})).text).toContain('Confidence is not worked out');
    const fine = await ask({ wallGauge: 'micrometer-m2' });
    expect(fine.text).toContain('In calibration: Micrometer M2, due May 31, 2027');
    expect(fine.text).not.toContain('Confidence is not worked out');
    const late = await ask({ wallGauge: 'caliper-c1' });
    expect(late.text).toContain('Calibration was overdue on Nov 24, 2026: Caliper C1, due Jun 30, 2026');
  });

  it('are named where a wall is in doubt and one of them would settle it', async () => {
    const level = Object.fromEntries(WALLS.map((_, i) => [`w.${i}`, '4.372']));
    const heights = Object.fromEntries(WALLS.map((_, i) => [`f.${i}`, '0']));
    const page = await program.get(
      `/cover?${new URLSearchParams({ family: 'metric-4', ...level, ...heights, crack: 'none-found', wallGauge: 'caliper-c1', cutU: '0.002' })}`,
    );
    expect(page.text).toContain('1 with Micrometer M2');
  });

  it('chosen for a job are kept with it as they were, and their figures are not typed over', async () => {
    const number = '1016';
    const job = await getJob(program.shop.db, number);
    const fields = {
      from: String(job!.revision),
      who: 'AK',
      gauge: '',
      chucking: '',
      through: 'bare',
      wallGauge: 'micrometer-m2',
      faceGauge: 'indicator-i1',
    };
    expect((await program.post(`/jobs/${number}/setup`, fields)).status).toBe(303);
    const setup = (await getJob(program.shop.db, number))!.sections.setup!.body;
    expect(setup.gauge).toBe('Micrometer M2');
    expect(setup.gauges?.map((one) => one.gauge.name)).toEqual(['Micrometer M2', 'Indicator I1']);
    expect(setup.gaugeFigures).toMatchObject({
      // Of the demo's M2: U 0.00015 in with k 2, steps and repeatability of 0.0001 in.
      standardUncertaintyMm: 0.001905,
      resolutionMm: 0.00254,
      repeatabilityMm: 0.00254,
    });
    const page = await program.get(`/jobs/${number}`);
    expect(page.html).toMatch(/name="gaugeU"[^>]*value(?:="")?[ /]/);
    expect(page.html).toMatch(/<option value="micrometer-m2" selected/);
  });
});

describe('a gauge that is changed in the catalog while a form shows it', () => {
  const changed = async () => {
    const entry = (await listEntries(program.shop.db, 'gauge')).find(({ id }) => id === 'micrometer-m2')!;
    await reviseEntry(
      program.shop.db,
      { who: 'BL', why: 'new certificate', now: () => new Date('2026-11-24T11:00:00Z') },
      {
        kind: 'gauge',
        id: entry.id,
        fromRevision: entry.revision,
        body: { ...entry.body, resolutionMm: entry.body.resolutionMm! + 0.001 },
      },
    );
    return entry.revision;
  };

  it('of a job is answered 409 with both, and kept once it was seen; a job that keeps the older one says so', async () => {
    const number = '1013';
    const from = async () => String((await getJob(program.shop.db, number))!.revision);
    const seen = await changed();
    const sent = { who: 'AK', through: 'bare', wallGauge: 'micrometer-m2' };
    const send = async (revision: number) =>
      program.post(`/jobs/${number}/setup`, {
        ...sent,
        from: await from(),
        'gaugeRevision.micrometer-m2': String(revision),
      });
    const before = await from();
    const stale = await send(seen);
    expect(stale.status).toBe(409);
    expect(stale.text).toContain('BL changed the gauge');
    expect(rowsOf(stale.html).map(([label]) => label)).toEqual(['Resolution']);
    expect(await from()).toBe(before);
    expect(stale.html).toContain(`name="gaugeRevision.micrometer-m2" value="${seen + 1}"`);
    expect((await send(seen + 1)).status).toBe(303);
    expect((await program.get(`/jobs/${number}`)).text).not.toContain('has changed in the catalog since');
    await changed();
    expect((await program.get(`/jobs/${number}`)).text).toContain(
      'Micrometer M2 has changed in the catalog since. This job keeps it as it was',
    );
  });

  it('of the quick page is told with both before it is saved as a job', async () => {
    const seen = await changed();
    const sent = { family: 'metric-4', unit: 'mm', ...walls, initials: 'AK', wallGauge: 'micrometer-m2' };
    const stale = await program.post('/cover/keep', { ...sent, 'gaugeRevision.micrometer-m2': String(seen) });
    expect(stale.status).toBe(409);
    expect(stale.text).toMatch(/BL changed the gauge.*Resolution: [\d.]+ mm as you saw it, [\d.]+ mm now\./);
    const kept = await program.post('/cover/keep', {
      ...sent,
      'gaugeRevision.micrometer-m2': String(seen + 1),
    });
    expect(kept.status).toBe(303);
  });
});

describe('what the job changes elsewhere', () => {
  it('is typed with the set-up, judged with the answer, and told in the history', async () => {
    const number = '1014';
    const before = await getJob(program.shop.db, number);
    const setup = {
      from: String(before!.revision),
      who: 'AK',
      through: 'bare',
      release: '0.8',
      'k.padsResurfacedMm': '0.5',
      'k.pullForwardMm': '4',
      'k.mostPullForwardMm': '4.2',
      'k.padHeightsMm': '0; 0.02; 0.01',
      'k.endPlayMm': '0.4',
      'k.endPlayMm.most': '0.6',
    };
    expect((await program.post(`/jobs/${number}/setup`, setup)).status).toBe(303);
    const page = await program.get(`/jobs/${number}`);
    expect(page.text).toContain('The pull-forward gap will be 4.500 mm, above the maximum of 4.200 mm');
    expect(page.text).toContain('The pads differ in height by 0.020 mm');
    expect(page.text).toContain('End play is 0.400 mm, within limits');
    expect(page.text).toMatch(/release clearance grows to [\d.]+ mm\. A shim or lining [\d.]+ mm thicker/);
    expect(page.html).toContain('value="0; 0.02; 0.01"');
    expect((await program.get(`/jobs/${number}/history/${before!.revision + 1}`)).text).toContain(
      'Pull-forward gap — 4 mm',
    );
    const half = await program.post(`/jobs/${number}/setup`, {
      ...setup,
      from: String(before!.revision + 1),
      'k.endPlayMm': '',
    });
    expect([half.status, half.text.includes('End play is empty')]).toEqual([422, true]);
  });
});
