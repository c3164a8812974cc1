import { afterEach, describe, expect, test } from 'vitest';
import { addEntry } from '../../src/records/catalogue.ts';
import { createJob } from '../../src/records/jobs/createJob.ts';
import { addReadings } from '../../src/records/jobs/readings.ts';
import { getJob } from '../../src/records/jobs/readJob.ts';
import { reviseJob } from '../../src/records/jobs/reviseJob.ts';
import { alder, as, decision, looked, received, wall } from '../records/samples.ts';
import { type Served, serve } from './program.ts';

let program: Served;
afterEach(() => program.close());

/** The shop at half past eleven in the evening, or half past midnight: the day there, and the instant in UTC. */
const HOURS: readonly [what: string, timeZone: string, at: string, day: string, printed: string][] = [
  [
    'an evening west of Greenwich',
    'America/Chicago',
    '2026-11-25T05:30:00Z',
    '2026-11-24',
    'Nov 24, 2026, 11:30 PM',
  ],
  [
    'an evening east of Greenwich',
    'Pacific/Auckland',
    '2026-11-24T10:30:00Z',
    '2026-11-24',
    'Nov 24, 2026, 11:30 PM',
  ],
  [
    'a night east of Greenwich',
    'Pacific/Auckland',
    '2026-11-23T11:30:00Z',
    '2026-11-24',
    'Nov 24, 2026, 12:30 AM',
  ],
  [
    'the evening of the day clocks went forward',
    'America/Chicago',
    '2026-03-09T04:30:00Z',
    '2026-03-08',
    'Mar 8, 2026, 11:30 PM',
  ],
  [
    'the evening of the day clocks went back',
    'America/Chicago',
    '2026-11-02T05:30:00Z',
    '2026-11-01',
    'Nov 1, 2026, 11:30 PM',
  ],
];

describe.each(HOURS)('on %s', (_what, timeZone, at, day, printed) => {
  const now = () => new Date(at);
  const open = async (demo: boolean) => {
    program = await serve({ demo, timeZone, now });
    return program.shop.db;
  };

  test('a new job is received on the day of the shop', async () => {
    await open(true);
    const { html } = await program.get('/jobs/new');
    const box = /<input[^>]*name="receivedOn"[^>]*>/.exec(html)?.[0] ?? '';
    expect(box).toContain(`value="${day}"`);
  });

  test('a quick check kept as a job is received and measured on the day of the shop', async () => {
    const db = await open(true);
    const kept = await program.post('/cover/keep', { family: '1125-4-plain', initials: 'AA', 'w.0': '4.9' });
    expect(kept.status).toBe(303);
    const job = await getJob(db, kept.location!.split('/').at(-1)!);
    expect(job?.sections.received?.body.receivedOn).toBe(day);
    const criteria = String(
      (await fetch(`${program.url}/api/jobs/${job!.number}`).then((one) => one.json())).criteria.revision,
    );
    const decided = await program.post(`/jobs/${job!.number}/decision`, {
      from: String(job!.revision),
      criteria,
      who: 'AA',
      decision: 'replace',
      reason: 'asked for',
    });
    expect(decided.status).toBe(303);
    expect((await getJob(db, job!.number))?.sections.decision?.body.input.measuredOn).toBe(day);
  });

  test('a gauge that was due the day before is past its date, and one due that day is not', async () => {
    await open(true);
    const dayBefore = new Date(Date.parse(`${day}T00:00:00Z`) - 1).toISOString().slice(0, 10);
    for (const [id, dueOn] of [
      ['due', day],
      ['past', dayBefore],
    ] as const) {
      await addEntry(program.shop.db, as('AA'), {
        kind: 'gauge',
        id,
        body: {
          name: `Micrometer ${id}`,
          gaugeKind: 'micrometer',
          resolutionMm: 0.01,
          calibrationUMm: 0.002,
          coverageFactor: 2,
          repeatabilityMm: null,
          dueOn,
          note: '',
        },
      });
    }
    const ask = (wallGauge: string) =>
      program.get(`/cover?${new URLSearchParams({ family: '1125-4-plain', wallGauge, 'w.0': '4.9' })}`);
    expect((await ask('past')).text).toContain('Calibration was overdue');
    expect((await ask('due')).text).not.toContain('Calibration was overdue');
  });

  test('an export and a slip carry the day of the shop', async () => {
    await open(true);
    const sent = await fetch(`${program.url}/records/export`, {
      method: 'POST',
      headers: { origin: program.url },
    });
    await sent.arrayBuffer();
    expect(sent.headers.get('content-disposition')).toContain(`coverwright-export-${day}`);
    const slip = await program.get('/stud/slip?stack=two-piece-four-3-8-24&stud=long-3-8-24');
    expect(slip.text).toContain(`Date ${printed.replace(/, [^,]*$/, '')}`);
  });

  test('a ring welded without a day said is welded on the day of the shop', async () => {
    const db = await open(false);
    const ctx = { who: 'AK', now };
    const job = await createJob(db, ctx, { received: received({ family: { ...alder, ringAllowed: true } }) });
    await reviseJob(db, ctx, { jobId: job.id, fromRevision: 1, what: 'looked', body: looked() });
    await addReadings(db, ctx, { jobId: job.id, readings: [wall('reading-1')] });
    await reviseJob(db, ctx, {
      jobId: job.id,
      fromRevision: 3,
      what: 'decision',
      body: { ...decision(3), decision: 'face-and-ring', reason: 'asked for' },
    });
    expect((await program.post(`/jobs/${job.number}/welded`, { from: '4', who: 'AK' })).status).toBe(303);
    expect((await getJob(db, job.number))?.sections.setup?.body.ringWelded?.on).toBe(day);
  });

  test('the sheet prints when it was decided by the clock of the shop', async () => {
    const db = await open(false);
    const ctx = { who: 'AK', now };
    const job = await createJob(db, ctx, { received: received() });
    await reviseJob(db, ctx, { jobId: job.id, fromRevision: 1, what: 'looked', body: looked() });
    await addReadings(db, ctx, { jobId: job.id, readings: [wall('reading-1')] });
    await reviseJob(db, ctx, {
      jobId: job.id,
      fromRevision: 3,
      what: 'decision',
      body: { ...decision(3), decision: 'replace', reason: 'asked for' },
    });
    const sheet = await program.get(`/jobs/${job.number}/sheet`);
    expect(sheet.text).toContain(`AK, ${printed}`);
    expect(sheet.text).toContain(`4, ${printed.replace(/, [^,]*$/, '')}`);
  });
});
