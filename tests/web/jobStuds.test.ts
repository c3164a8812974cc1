import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { getJob } from '../../src/records/jobs.ts';
import { type Served, serve } from './program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

/** A job of the demonstration that is looked over, cut and measured, and has studs. */
const NUMBER = '1005';
const JOB = `/jobs/${NUMBER}`;
const job = async () => (await getJob(program.shop.db, NUMBER))!;
const kept = async () => (await job()).sections.studs!.body;
const STUDS = { stack: 'two-piece-four-3-8-24', stud: 'long-3-8-24', pull: '' };
const JOINT = { torque: '37', torqueFrom: 'maker', engine: '250', kFrom: 'zinc', surface: 'rz-under-10' };
/** The demonstration's stack, stud and criteria as they stand. */
const SEEN = { stackRevision: '1', 'studRevision.long-3-8-24': '1', criteria: '2' };
const send = async (section: string, typed: Record<string, string>) =>
  program.post(`${JOB}/${section}`, {
    from: `${(await job()).revision}`,
    ...SEEN,
    who: 'BL',
    ...typed,
  });

describe('the joint of a job', () => {
  it('is worked out before anything is kept, beside every stud', async () => {
    const before = (await job()).revision;
    const page = await program.get(`${JOB}?${new URLSearchParams({ ...STUDS, ...JOINT })}`);
    expect(page.status).toBe(200);
    expect(page.text).toMatch(/Long stud 3\/8-24 UNF with care ?; it holds/);
    expect(page.text).toContain("37.0 N·m is the vehicle maker's figure: tighten to it.");
    expect((await job()).revision).toBe(before);
  });

  it.each([
    ['a torque without an engine', { engine: '' }, 'Engine torque is empty.'],
    ['no finish', { kFrom: '' }, 'Nut factor is not chosen.'],
    ['a spread of all of it', { scatterFrom: 'own', scatter: '100' }, 'The scatter of the preload is 1'],
    ['a gap below nothing', { pull: '-3' }, 'The pull-forward gap is -3 mm'],
  ])('refuses %s with a sentence, looked at or kept, and keeps nothing', async (_what, change, sentence) => {
    const before = (await job()).revision;
    const typed = { ...STUDS, ...JOINT, note: 'as ordered', ...change };
    const looked = await program.get(`${JOB}?${new URLSearchParams(typed)}`);
    expect(looked.text).toContain(sentence);
    const sent = await send('studs', typed);
    expect(sent.status).toBe(422);
    expect(sent.text).toContain(sentence);
    expect(sent.html).toContain('value="as ordered"');
    expect((await job()).revision).toBe(before);
  });

  it('is kept with the studs, its answer and where each figure is from; told on page, sheet and history', async () => {
    const sent = await send('studs', { ...STUDS, ...JOINT, note: 'as ordered' });
    expect([sent.status, sent.status === 303 ? '' : sent.text]).toEqual([303, '']);
    const now = await kept();
    expect(now.input?.joint).toMatchObject({
      torqueNm: 37,
      engineTorqueNm: 250,
      nutFactor: 0.2,
      serviceFactor: 2,
      studCount: 4,
      surface: 'rz-under-10',
    });
    expect(now.jointFrom).toMatchObject({
      torque: 'maker',
      nutFactor: 'zinc plated (Shigley, 9th ed., table 8-15)',
    });
    expect(now.check.holds).toBe('yes');
    // 37 N·m / (0.2 · 9.525 mm), first principles.
    expect(now.check.joint?.preloadN.nominal).toBeCloseTo(37 / (0.2 * 0.009525), 6);
    expect(now.calcVersion).toBe('stud-1');
    const page = await program.get(JOB);
    expect(page.text).toContain('It holds.');
    expect(page.text).toContain('nut factor 0.2: zinc plated (Shigley, 9th ed., table 8-15)');
    expect(page.text).toContain('Worked out by stud-1.');
    const sheet = await program.get(`${JOB}/sheet`);
    expect(sheet.text).toMatch(/It holds , tightened to 37\.0 N·m \(the vehicle maker's figure\)/);
    expect(sheet.text).toContain("the vehicle maker's torque comes first");
    const told = await program.get(`${JOB}/history/${(await job()).revision}`);
    expect(told.text).toContain("Tightening torque — 37.0 N·m, the vehicle maker's");
    expect(told.text).toContain('Surfaces — Rz under 10 µm');
  });

  it('asks for a note where it does not hold', async () => {
    const weak = { ...STUDS, ...JOINT, engine: '900' };
    const sent = await send('studs', weak);
    expect(sent.status).toBe(422);
    expect(sent.text).toContain('The joint does not hold: At its least preload the joint holds');
    expect((await send('studs', { ...weak, note: 'only to park it' })).status).toBe(303);
    expect((await kept()).check.holds).toBe('no');
  });

  it('leads back to what was kept, figure by figure', async () => {
    await send('studs', { ...STUDS, ...JOINT, torque: '27 lb-ft', kFrom: 'own', k: '0.21', note: '' });
    const before = await kept();
    const page = await program.get(JOB);
    const href = /href="([^"]*)" id="studs-again"/.exec(page.html)?.[1]?.replaceAll('&amp;', '&');
    const query = Object.fromEntries(new URL(href!, 'http://shop').searchParams);
    expect((await program.get(href!.replace('#studs', ''))).status).toBe(200);
    const sent = await send('studs', query);
    expect([sent.status, sent.status === 303 ? '' : sent.text]).toEqual([303, '']);
    const { joint } = (await kept()).input!;
    expect(joint).toEqual({
      ...before.input!.joint,
      torqueNm: expect.closeTo(before.input!.joint!.torqueNm, 9),
    });
  });
});

describe('the same over the JSON interface', () => {
  const put = async (studs: unknown) => {
    const { revision } = await job();
    const response = await fetch(`${program.url}/api/jobs/${NUMBER}/studs`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ fromRevision: revision, who: 'BL', studs }),
    });
    return { status: response.status, body: await response.json() };
  };
  const joint = {
    torqueNm: 37,
    nutFactor: 0.2,
    scatter: 0.25,
    friction: 0.15,
    engineTorqueNm: 250,
    serviceFactor: 2,
    studCount: 4,
    studCircleDiameterMm: 286,
  };
  const studs = {
    stackId: STUDS.stack,
    studId: STUDS.stud,
    stackRevision: 1,
    studRevision: 1,
    criteriaRevision: 2,
    torqueFrom: 'other',
  };

  it('keeps the joint and whose torque it is', async () => {
    expect((await put({ ...studs, joint })).status).toBe(200);
    const now = await kept();
    expect([now.check.holds, now.jointFrom?.torque, now.input?.joint?.surface]).toEqual([
      'yes',
      'other',
      'rz-10-to-40',
    ]);
  });

  it.each([
    ['a spread of all of it', { scatter: 1 }, 'studs.joint.scatter'],
    ['a nut that takes all the torque only to turn', { prevailingNm: 40 }, 'studs.joint.prevailingNm'],
    ['a surface nobody knows', { surface: 'shiny' }, 'studs.joint.surface'],
    ['an engine that is too strong, without a note', { engineTorqueNm: 900 }, 'studs.note'],
  ])('refuses %s at its path', async (_what, change, path) => {
    const { status, body } = await put({ ...studs, joint: { ...joint, ...change } });
    expect([status, body.error.fields[0].path]).toEqual([422, path]);
  });
});
