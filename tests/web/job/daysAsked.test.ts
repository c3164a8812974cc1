import { afterAll, beforeAll, expect, it } from 'vitest';
import { getEntry } from '../../../src/records/catalogue.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { currentCriteria } from '../../../src/records/shopCriteria.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

/** Jobs of the demo shop: one with its studs chosen, one with a ring to weld. */
it('by JSON the days of a weld and of re-torquing are refused until they are confirmed', async () => {
  const put = async (number: string, section: string, body: object) => {
    const job = (await getJob(program.shop.db, number))!;
    const answer = await fetch(`${program.url}/api/jobs/${number}/${section}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ fromRevision: job.revision, who: 'AK', why: 'for the test', ...body }),
    });
    return { status: answer.status, text: await answer.text() };
  };
  const setup = {
    gauge: '',
    wallReadThrough: 'bare',
    stations: [],
    ringWelded: { on: '2027-11-24', note: '' },
  };
  const late = await put('1006', 'setup', { setup });
  expect(late.status).toBe(422);
  expect(late.text).toContain('"path":"setup.ringWelded.on"');
  expect(late.text).toContain('Nov 24, 2027');
  const confirmed = ['setup.ringWelded.on'];
  expect(await put('1006', 'setup', { setup, confirmed })).toMatchObject({ status: 200 });
  // As it stands it is not asked about again.
  expect(await put('1006', 'setup', { setup: { ...setup, gauge: 'mic' } })).toMatchObject({ status: 200 });

  const chosen = (await getJob(program.shop.db, '1005'))!.sections.studs!.body;
  const { db } = program.shop;
  const studs = {
    stackId: chosen.stackId,
    studId: chosen.studId,
    stackRevision: (await getEntry(db, 'stack', chosen.stackId))!.revision,
    studRevision: (await getEntry(db, 'stud', chosen.studId))!.revision,
    criteriaRevision: (await currentCriteria(db)).revision,
    pullForwardMm: chosen.pullForwardMm,
    note: 'as before',
    retightening: { on: '2027-11-24', torqueNm: 40, makerAllows: 'yes', threadLocker: false, note: '' },
  };
  const asked = await put('1005', 'studs', { studs });
  expect([asked.status, asked.text.includes('"path":"studs.retightening.on"')]).toEqual([422, true]);
  expect(await put('1005', 'studs', { studs, confirmed: ['studs.retightening.on'] })).toMatchObject({
    status: 200,
  });
});

const CASES = [
  ['received', '1017', 'receivedOn', { family: '1125-4-plain', customer: 'Demo customer 17' }],
  ['welded', '1004', 'weldedOn', { ringJoined: 'yes' }],
  ['retightened', '1005', 'againOn', { againTorque: '42', makerAllows: 'yes' }],
] as const;

it.each(CASES)(
  '%s: a day later than tomorrow is asked about, and kept once confirmed',
  async (form, number, box, more) => {
    const job = async () => (await getJob(program.shop.db, number))!;
    const before = (await job()).revision;
    const send = (fields: Record<string, string>) =>
      program.post(`/jobs/${number}/${form}`, { ...more, ...fields, who: 'AK', from: String(before) });
    const asked = await send({ [box]: '2027-11-24' });
    expect(asked.status).toBe(422);
    expect(asked.text).toContain(
      'is Nov 24, 2027, and today is Nov 24, 2026. Check the year, or confirm it.',
    );
    expect(asked.html).toContain(`name="ok.${box}" value="2027-11-24"`);
    expect((await job()).revision).toBe(before);
    const other = await send({ [box]: '2028-11-24', [`ok.${box}`]: '2027-11-24' });
    expect(other.status).toBe(422);
    const kept = await send({ [box]: '2027-11-24', [`ok.${box}`]: '2027-11-24' });
    expect(kept.status).toBe(303);
    expect((await job()).revision).toBe(before + 1);
  },
);
