import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listEntries } from '../../../src/records/catalogue.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { allReadings } from '../../../src/records/jobs/history.ts';
import { getJob, jobAtRevision } from '../../../src/records/jobs/readJob.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
import { currentCriteria } from '../../../src/records/shopCriteria.ts';
import { afterCut, passesOf } from '../../../src/shop/afterCut.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

async function decided(decision = 'face-and-ring'): Promise<string> {
  const family = (await listEntries(program.shop.db, 'family')).find((one) => one.body.ringAllowed)!;
  const received = {
    familyId: family.id,
    familyRevision: family.revision,
    family: family.body,
    customerReference: '',
    receivedOn: '2026-11-24',
    note: '',
  };
  const ctx = { who: 'AK', now: () => new Date('2026-11-24T12:00:00Z') };
  const { number } = await createJob(program.shop.db, ctx, { received });
  await send(number, 'looked', { crackTest: 'none-found', crackMethod: 'dye' });
  await measure(number);
  await send(number, 'decision', { decision, reason: 'it marks again and again' });
  return number;
}

async function send(number: string, section: string, fields: Record<string, string>) {
  const job = await getJob(program.shop.db, number);
  return program.post(`/jobs/${number}/${section}`, {
    from: String(job!.revision),
    criteria: '2',
    who: 'AK',
    ...fields,
  });
}

/** Every station of the family, at the wall when new. */
async function measure(number: string, pass = 'before', wall?: string): Promise<void> {
  const job = (await getJob(program.shop.db, number))!;
  const family = job.sections.received!.body.family;
  const page = await program.get(`/jobs/${number}`);
  const places = [...page.html.matchAll(/name="at\.(\d+)" value="([^"]+)"/g)].slice(0, 3 * family.studCount);
  const cells = places.flatMap(([, index, at]) => [
    [`at.${index}`, at!],
    [`w.${index}`, wall ?? String(family.nominalWallMm)],
    [`f.${index}`, '0'],
    [`ok.w.${index}`, wall ?? String(family.nominalWallMm)],
  ]);
  const sent = await send(number, 'readings', {
    pass,
    token: randomUUID(),
    unit: 'mm',
    ...Object.fromEntries(cells),
  });
  expect(sent.status).toBe(303);
}

describe('a ring welded first', () => {
  it('sends the job back to measuring; what was measured before is kept and void', async () => {
    const number = await decided();
    expect((await getJob(program.shop.db, number))?.stage).toBe('to-cut');
    const early = await send(number, 'cuts', { depth: '0.05' });
    expect(early.status).toBe(422);
    expect(early.text).toContain('the ring is not welded yet');

    const before = (await getJob(program.shop.db, number))!;
    expect((await send(number, 'welded', { weldedOn: '2026-11-24', weldNote: 'six tacks' })).status).toBe(
      303,
    );
    const welded = (await getJob(program.shop.db, number))!;
    expect([welded.stage, welded.outcome, welded.readings.length]).toEqual(['to-measure', null, 0]);
    expect((await allReadings(program.shop.db, welded.id)).length).toBe(before.readings.length);
    const page = await program.get(`/jobs/${number}`);
    expect(page.text).toContain(
      'Stiffening ring welded on Nov 24, 2026: six tacks. Readings before it no longer count',
    );
    // As it was, it still says what it said.
    const asItWas = await jobAtRevision(program.shop.db, welded.id, before.revision);
    expect([asItWas.stage, asItWas.readings.length]).toEqual(['to-cut', before.readings.length]);

    await measure(number);
    const again = await send(number, 'decision', { decision: 'face', reason: 'ring is on' });
    expect(again.status).toBe(303);
    expect((await send(number, 'cuts', { depth: '0.05' })).status).toBe(303);
    expect((await getJob(program.shop.db, number))?.stage).toBe('to-verify');
  });

  it('keeps the passes made before it, and adds them to none made after', async () => {
    const number = await decided('face');
    await send(number, 'cuts', { depth: '0.04', look: 'dark' });
    await send(number, 'decision', { decision: 'face-and-ring', reason: 'it marks again and again' });
    await send(number, 'welded', {});
    await measure(number);
    await send(number, 'decision', { decision: 'face', reason: 'ring is on' });
    const page = await program.get(`/jobs/${number}`);
    expect(page.text).toContain('before the ring');
    await send(number, 'cuts', { depth: '0.05', look: 'gone' });
    const job = (await getJob(program.shop.db, number))!;
    await measure(number, 'after', String(job.sections.received!.body.family.nominalWallMm - 0.05));
    const done = (await getJob(program.shop.db, number))!;
    const { body: criteria } = await currentCriteria(program.shop.db);
    const found = Object.fromEntries(afterCut(done, criteria, 'mm').found.map((one) => [one.id, one]));
    expect([found['after-depth']!.status, found['after-depth']!.value]).toEqual(['pass', 0.05]);
    expect(found['after-planned']!.status).toBe('pass');
    expect(passesOf(done).map(({ totalMm, beforeRing }) => [totalMm, beforeRing])).toEqual([
      [0.04, true],
      [0.05, false],
    ]);
    expect((await program.get(`/jobs/${number}/sheet`)).text).toContain(
      'One pass was made before the ring was welded on.',
    );
  });

  it('with a day that cannot be used is shown again as it was typed, the fault beside the day', async () => {
    const number = await decided();
    const sent = { weldedOn: 'last Tuesday', weldNote: 'six tacks', ringJoined: 'yes' };
    const refused = await send(number, 'welded', sent);
    expect(refused.status).toBe(422);
    const form = refused.html.split('id="welded-form"')[1]!.split('</form>')[0]!;
    expect(/<input[^>]*name="weldedOn"[^>]*>/.exec(form)?.[0]).toContain('aria-invalid="true"');
    expect(form).toContain('value="six tacks"');
    expect(form).toMatch(/<option[^>]*value="yes"[^>]*selected/);
    expect((await getJob(program.shop.db, number))!.weldedAt).toBe(0);
  });

  it('is recorded once, and a later change of the set-up voids nothing', async () => {
    const number = await decided();
    await send(number, 'welded', {});
    const once = (await getJob(program.shop.db, number))!;
    await send(number, 'welded', { weldNote: 'again' });
    expect((await getJob(program.shop.db, number))?.revision).toBe(once.revision);
    await measure(number);
    const measured = (await getJob(program.shop.db, number))!.readings.length;
    await send(number, 'setup', { gauge: 'M9', chucking: '', through: 'bare' });
    const changed = (await getJob(program.shop.db, number))!;
    expect(changed.sections.setup?.body.ringWelded?.on).toBe('2026-11-24');
    expect(changed.readings.length).toBe(measured);
    const { ringWelded: _, ...without } = changed.sections.setup!.body;
    const off = { jobId: changed.id, fromRevision: changed.revision, what: 'setup', body: without } as const;
    const ctx = { who: 'AK', now: () => new Date('2026-11-24T12:00:00Z') };
    await expect(reviseJob(program.shop.db, ctx, off)).rejects.toThrow('this leaves it out');
    const back = await reviseJob(program.shop.db, ctx, { ...off, why: 'the wrong job' });
    expect(back.weldedAt).toBe(0);
  });

  it('voids what was measured and cut before it, as the first did, where it is a second one', async () => {
    const number = await decided();
    await send(number, 'welded', { weldedOn: '2026-11-24' });
    await measure(number);
    await send(number, 'decision', { decision: 'face', reason: 'ring is on' });
    await send(number, 'cuts', { depth: '0.04', look: 'gone' });
    const setup = { gauge: 'M9', chucking: '', through: 'bare' };

    // How it is joined, and an earlier day, put right: nothing is void.
    await send(number, 'setup', { ...setup, weldedOn: '2026-11-23', ringJoined: 'no' });
    const right = (await getJob(program.shop.db, number))!;
    expect(right.sections.setup?.body.ringWelded).toMatchObject({ on: '2026-11-23', joinedToPads: false });
    expect(right.readings.length).toBeGreaterThan(0);

    await send(number, 'setup', { ...setup, weldedOn: '2026-11-25', ringJoined: 'yes' });
    const again = (await getJob(program.shop.db, number))!;
    expect(again.sections.setup?.body.ringWelded).toMatchObject({ on: '2026-11-25', joinedToPads: true });
    expect([again.stage, again.readings.length, again.weldedAt]).toEqual(['to-measure', 0, again.revision]);
    expect((await allReadings(program.shop.db, again.id)).length).toBeGreaterThan(right.readings.length);
    await measure(number);
    await send(number, 'decision', { decision: 'face', reason: 'both rings are on' });
    expect((await getJob(program.shop.db, number))?.stage).toBe('to-cut');
    expect((await send(number, 'setup', { ...setup, weldedOn: 'soon' })).status).toBe(422);
  });

  it('takes no reading that a tablet typed before the ring was on', async () => {
    const number = await decided();
    await send(number, 'welded', {});
    const job = (await getJob(program.shop.db, number))!;
    const reading = (weldedAt: number) => ({
      id: randomUUID(),
      pass: 'before',
      kind: 'wall',
      angleDeg: 0,
      radiusMm: 110,
      typed: String(job.sections.received!.body.family.nominalWallMm),
      unit: 'mm',
      decimalSign: 'point',
      gauge: '',
      replaces: null,
      weldedAt,
    });
    const answer = await fetch(`${program.url}/jobs/${number}/measure/kept?pass=before`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', origin: program.url },
      body: JSON.stringify({ who: 'AK', readings: [reading(0), reading(job.weldedAt!)] }),
    });
    const taken = (await answer.json()) as { added: string[]; refused: { message: string }[] };
    expect([taken.added.length, taken.refused.map((one) => one.message)]).toEqual([
      1,
      ['The ring was welded on after this was entered, so it does not count. Measure there again.'],
    ]);
  });
});
