import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { type Served, serve } from '../program.ts';

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
const SEEN = {
  stackRevision: '1',
  'studRevision.long-3-8-24': '1',
  'studRevision.short-3-8-24': '1',
  criteria: '2',
};
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
    expect(page.text).toMatch(/Long stud 3\/8-24 UNF fits ?; joint holds/);
    expect(page.text).toContain('37.0 N·m is the vehicle maker’s figure: use it.');
    expect((await job()).revision).toBe(before);
  });

  it.each([
    ['a torque without an engine', { engine: '' }, 'Engine torque is empty.'],
    ['no finish', { kFrom: '' }, 'Nut factor K: choose a figure'],
    ['a spread of all of it', { scatterFrom: 'own', scatter: '100' }, 'The torque-wrench scatter is 1'],
    ['a gap below nothing', { pull: '-3' }, 'The pull-forward gap is −3 mm'],
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
    expect(now.calcVersion).toBe('stud-3');
    const page = await program.get(JOB);
    expect(page.text).toContain('Joint holds.');
    expect(page.text).toContain('Nut factor K: 0.2, zinc plated (Shigley, 9th ed., table 8-15)');
    expect(page.text).toContain('Calculation stud-3.');
    const sheet = await program.get(`${JOB}/sheet`);
    expect(sheet.text).toContain('Torque 37.0 N·m, the vehicle maker’s. Joint holds. Advice.');
    const told = await program.get(`${JOB}/history/${(await job()).revision}`);
    expect(told.text).toContain('Tightening torque — 37 N·m, the vehicle maker’s');
    expect(told.text).toContain('Surfaces of pad, flexplate and nut — smooth: ground or finely turned');
  });

  it('asks for a note where it does not hold', async () => {
    const weak = { ...STUDS, ...JOINT, engine: '900' };
    const sent = await send('studs', weak);
    expect(sent.status).toBe(422);
    expect(sent.text).toContain('Joint does not hold: At the lowest preload the joint slips at');
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

describe('studs set anew and nuts tightened again', () => {
  const anew = {
    studNumber: '2',
    setHow: 'welded',
    lean: '0.05',
    leanAt: '20',
    off: '0.05',
    fillet: '0.3',
    proved: '45 N·m',
    held: 'yes',
    setNote: 'torn off with the old flexplate',
  };

  it('are kept stud by stud, judged by the stack and the shop’s limits, on page, sheet and in the history', async () => {
    const sent = await send('replaced', anew);
    expect([sent.status, sent.status === 303 ? '' : sent.text]).toEqual([303, '']);
    const two = (await kept()).replaced!.find((one) => one.stud === 2)!;
    expect(two).toMatchObject({ leanMm: 0.05, leanAtMm: 20, provedNm: 45, heldIt: true });
    // 0.05 + 0.05 · 12.7/20 of (10.3 − 9.497)/4 (first principles).
    const standing = two.findings.find((one) => one.id === 'replaced-standing')!;
    expect([standing.status, standing.value]).toEqual(['pass', expect.closeTo(0.08175, 6)]);
    const page = await program.get(JOB);
    expect(page.text).toContain('Stud 2: How it was installed: welded in; Out of square: 0.05 mm');
    expect(page.text).toContain('Stud 3: How it was installed: welded in');
    expect((await program.get(`${JOB}/sheet`)).text).toContain(
      'Stud 2 Replaced. How it was installed: welded in; Out of square: 0.05 mm',
    );
    const told = await program.get(`${JOB}/history/${(await job()).revision}`);
    expect(told.text).toContain('Replaced stud 2 How it was installed: welded in; Out of square: 0.05 mm');
  });

  it('say what is beyond the limits, and are corrected by recording the stud again', async () => {
    await send('replaced', { ...anew, lean: '0.3', proved: '30 N·m' });
    const { replaced } = await kept();
    expect(replaced!.filter((one) => one.stud === 2)).toHaveLength(1);
    const failed = replaced!.find((one) => one.stud === 2)!.findings.filter((one) => one.status === 'fail');
    expect(failed.map((one) => one.id)).toEqual(['replaced-square', 'replaced-proof']);
    await send('replaced', { studNumber: '2', remove: '1' });
    expect((await kept()).replaced!.map((one) => one.stud)).toEqual([3]);
  });

  it('stay when the studs are chosen again, and are judged by the new stack', async () => {
    const before = (await kept()).replaced!;
    await send('studs', { stack: 'one-piece-four-3-8-24', stud: 'short-3-8-24', pull: '', note: '' });
    const [three] = (await kept()).replaced!;
    expect(three).toMatchObject({ ...before[0], findings: expect.anything() });
    const out = (list: typeof before) =>
      list[0]!.findings.find((one) => one.id === 'replaced-standing')!.value!;
    expect(out((await kept()).replaced!)).toBeLessThan(out(before));
  });

  it.each([
    ['replaced', 'a lean without its height', { ...anew, leanAt: '' }, 'Out of square needs the height'],
    ['replaced', 'a torque that was not said to hold', { ...anew, held: '' }, 'say whether the stud held it'],
    ['replaced', 'a stud the cover has not', { ...anew, studNumber: '9' }, 'There is no stud 9'],
    ['replaced', 'no stud', { ...anew, studNumber: '' }, 'Stud number is empty'],
    ['replaced', 'a lean below nothing', { ...anew, lean: '-0.1' }, 'must be at least 0 mm'],
    ['retightened', 'no torque', { makerAllows: 'yes' }, 'Torque when re-torqued is empty'],
    ['retightened', 'a torque of nothing', { againTorque: '0' }, 'more than 0'],
    [
      'retightened',
      'a day that is none',
      { againTorque: '37', againOn: '2026-02-30' },
      'day of the calendar',
    ],
  ])(
    'are refused by %s where they carry %s, and nothing is kept',
    async (section, _what, typed, sentence) => {
      const before = (await job()).revision;
      const sent = await send(section, typed);
      expect(sent.status).toBe(422);
      expect(sent.text).toContain(sentence);
      expect((await job()).revision).toBe(before);
    },
  );

  it('are kept, tightened again, with the maker’s leave and the torque of the first time', async () => {
    await send('studs', { ...STUDS, ...JOINT, note: '' });
    const sent = await send('retightened', {
      againTorque: '37',
      makerAllows: 'yes',
      againNote: 'after 30 km',
    });
    expect([sent.status, sent.status === 303 ? '' : sent.text]).toEqual([303, '']);
    const again = (await kept()).retightening!;
    expect(again).toMatchObject({ on: '2026-11-24', torqueNm: 37, makerAllows: 'yes', threadLocker: false });
    expect(again.findings.map((one) => one.status)).toEqual(['pass', 'pass', 'pass']);
    expect((await program.get(`${JOB}/sheet`)).text).toContain(
      'Re-torqued Torque when re-torqued: 37 N·m; Day of the re-torque: Nov 24, 2026',
    );
    await send('retightened', { againTorque: '30', 'ok.againTorque': '30', makerAllows: 'no', locker: '1' });
    expect((await kept()).retightening!.findings.map((one) => one.status)).toEqual([
      'fail',
      'fail',
      'caution',
    ]);
  });

  it('lose the half of the settling where the maker does not allow it, or thread-locker is on', async () => {
    const half = { ...STUDS, ...JOINT, retightened: '1', note: '' };
    await send('retightened', { againTorque: '37', makerAllows: 'yes' });
    await send('studs', half);
    const settled = async () => (await kept()).check.joint!.embeddingLossN!;
    const halved = await settled();
    await send('retightened', { againTorque: '37', makerAllows: 'no' });
    expect(await settled()).toBeCloseTo(2 * halved, 6);
    expect((await program.get(JOB)).text).toContain('so the full settling loss counts');
    await send('studs', half);
    expect(await settled()).toBeCloseTo(2 * halved, 6);
    await send('retightened', { againTorque: '37', makerAllows: 'yes', locker: '1' });
    expect(await settled()).toBeCloseTo(2 * halved, 6);
    await send('retightened', { againTorque: '37', makerAllows: 'yes' });
    await send('studs', half);
    expect(await settled()).toBeCloseTo(halved, 6);
  });

  it('are refused with a joint of another ring of studs than the cover’s, and nothing is kept', async () => {
    const before = (await job()).revision;
    const six = await send('studs', { ...STUDS, ...JOINT, jointStuds: '6', note: '' });
    expect([
      six.status,
      six.text.includes('The number of studs in the joint, 6, is not the cover’s, 4'),
    ]).toEqual([422, true]);
    const wide = await send('studs', { ...STUDS, ...JOINT, jointCircle: '292', note: '' });
    expect(wide.text).toContain('The bolt circle in the joint, 292.00 mm, is not the cover’s, 285.75 mm');
    expect((await job()).revision).toBe(before);
  });

  it('are asked about where the gap is in another unit, and kept once it is confirmed', async () => {
    const before = (await job()).revision;
    const asked = await send('studs', { ...STUDS, pull: '0.465', note: '' });
    expect([asked.status, asked.text.includes('Did you mean')]).toEqual([422, true]);
    expect((await job()).revision).toBe(before);
    await send('studs', { ...STUDS, pull: '0.465', 'ok.pull': '0.465', note: 'measured twice' });
    expect((await kept()).pullForwardMm).toBe(0.465);
  });

  it('tell the second of two tablets that the first changed them', async () => {
    const { revision } = await job();
    await send('replaced', { ...anew, studNumber: '1' });
    const late = await program.post(`${JOB}/replaced`, {
      ...anew,
      studNumber: '4',
      from: `${revision}`,
      who: 'AK',
    });
    expect(late.status).toBe(409);
    expect((await kept()).replaced!.map((one) => one.stud)).toEqual([1, 3]);
  });

  it('go over the JSON interface too', async () => {
    const { revision } = await job();
    const put = (replaced: unknown) =>
      fetch(`${program.url}/api/jobs/${NUMBER}/studs`, {
        method: 'PUT',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({
          fromRevision: revision,
          who: 'BL',
          studs: {
            stackId: STUDS.stack,
            studId: STUDS.stud,
            stackRevision: 1,
            studRevision: 1,
            criteriaRevision: 2,
            replaced,
          },
        }),
      });
    const one = { stud: 4, how: 'pressed', offMm: 0.1 };
    const twice = await (await put([one, one])).json();
    expect(twice.error.fields[0].path).toBe('studs.replaced.1.stud');
    const ninth = await (await put([{ ...one, stud: 9 }])).json();
    expect(ninth.error.fields[0].path).toBe('studs.replaced.0.stud');
    expect((await put([one])).status).toBe(200);
    expect((await kept()).replaced).toMatchObject([{ stud: 4, how: 'pressed', offMm: 0.1, leanMm: null }]);
  });
});

describe('the shims of the shop', () => {
  it('are a criterion, and what is recommended comes from them where none are typed', async () => {
    const measured = { depth: '28', standsOut: '22' };
    const page = await program.get(`/stud/gap?${new URLSearchParams(measured)}`);
    expect(page.text).toContain('Blank: the shop’s, 0.508; 0.762; 1.016; 1.524; 2.032; 2.54');
    expect(page.text).toContain('Recommended under every pad: 2.03 mm (gap 3.97 mm)');
    const criteria = await program.get('/criteria');
    expect(criteria.text).toContain('Shims in stock');
    expect(criteria.html).toContain('value="0.508; 0.762; 1.016; 1.524; 2.032; 2.54"');
  });
});
