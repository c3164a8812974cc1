import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listEntries } from '../../../src/records/catalogue.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { allReadings, revisionsOf } from '../../../src/records/jobs/history.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { goMetric } from '../metric.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
  await goMetric(program.shop.db);
});
afterAll(() => program.close());

async function newJob(): Promise<string> {
  const family = (await listEntries(program.shop.db, 'family')).find((one) => one.id === 'metric-4')!;
  const received = {
    familyId: family.id,
    familyRevision: family.revision,
    family: family.body,
    customerReference: '',
    receivedOn: '2026-11-24',
    note: '',
  };
  const ctx = { who: 'AK', now: () => new Date('2026-11-24T12:00:00Z') };
  return (await createJob(program.shop.db, ctx, { received })).number;
}

const reading = (more: object = {}) => ({
  id: randomUUID(),
  pass: 'before',
  kind: 'wall',
  angleDeg: 0,
  radiusMm: 110,
  typed: '4.92',
  unit: 'mm',
  decimalSign: 'point',
  gauge: '',
  confirmed: false,
  replaces: null,
  ...more,
});

interface Taken {
  added: string[];
  already: string[];
  refused: { id: string; message: string }[];
  beside: { id: string; message: string }[];
  standing: { id: string; shown: string }[];
  error?: { code: string; message: string };
}

async function send(
  number: string,
  readings: readonly object[],
  who = 'AK',
): Promise<{ status: number; body: Taken }> {
  const answer = await fetch(`${program.url}/jobs/${number}/measure/kept?pass=before`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: program.url },
    body: JSON.stringify({ who, readings }),
  });
  return { status: answer.status, body: (await answer.json()) as Taken };
}

async function kept(number: string) {
  const job = await getJob(program.shop.db, number);
  return allReadings(program.shop.db, job!.id);
}

describe('readings that a tablet kept', () => {
  it('are added in order, and once however often they are sent', async () => {
    const number = await newJob();
    const three = [
      reading({ typed: '4.92' }),
      reading({ typed: '3/16 in' }),
      reading({ typed: '4.90', unit: 'in', confirmed: true }),
    ];
    const first = await send(number, three);
    expect(first.body.added).toEqual(three.map((one) => one.id));
    const second = await send(number, three);
    expect([second.body.added, second.body.already]).toEqual([[], three.map((one) => one.id)]);
    expect((await kept(number)).map((one) => [one.typed, one.valueMm])).toEqual([
      ['4.92', 4.92],
      ['3/16 in', 4.7625],
      ['4.90', 124.46],
    ]);
  });

  it('are signed by whoever typed them, and say who sent them; where nobody had said, by the sender', async () => {
    const number = await newJob();
    const typed = [
      reading({ who: 'TO' }),
      reading({ who: 'TO', angleDeg: 45 }),
      reading({ angleDeg: 90 }),
      reading({ who: 'BB', angleDeg: 135 }),
    ];
    const { body } = await send(number, typed, 'BB');
    expect(body.added).toEqual(typed.map((one) => one.id));
    expect((await kept(number)).map((one) => one.who)).toEqual(['TO', 'TO', 'BB', 'BB']);
    const job = await getJob(program.shop.db, number);
    const why = (await revisionsOf(program.shop.db, job!.id)).map((one) => one.why);
    expect(why).toContain('waited on the tablet, sent by BB');
  });

  it('that cannot be used hold up no other, and each says why', async () => {
    const number = await newJob();
    const bad = [
      reading({ typed: '4,92' }),
      reading({ typed: '-4.92' }),
      reading({ kind: 'depth' }),
      reading({ radiusMm: 0 }),
    ];
    const good = reading({ typed: '4.86' });
    const { body } = await send(number, [bad[0]!, bad[1]!, good, bad[2]!, bad[3]!]);
    expect(body.added).toEqual([good.id]);
    expect(new Set(body.refused.map((one) => one.id))).toEqual(new Set(bad.map((one) => one.id)));
    expect(body.refused.find((one) => one.id === bad[0]!.id)?.message).toContain('Did you mean 4.92?');
    expect((await kept(number)).map((one) => one.typed)).toEqual(['4.86']);
  });

  it('that correct what somebody else corrected first are kept beside it, and only once', async () => {
    const number = await newJob();
    const was = reading({ typed: '4.29' });
    await send(number, [was]);
    const theirs = reading({ typed: '4.92', replaces: was.id });
    const mine = reading({ typed: '4.91', replaces: was.id });
    await send(number, [theirs], 'BW');
    const late = await send(number, [mine]);
    expect(late.body.added).toEqual([mine.id]);
    expect(late.body.beside.map((one) => one.id)).toEqual([mine.id]);
    const again = await send(number, [mine]);
    expect([again.body.added, again.body.already, again.body.refused]).toEqual([[], [mine.id], []]);
    expect(again.body.standing.map((one) => one.shown)).toEqual(['4.92', '4.91']);
    expect((await kept(number)).length).toBe(3);
  });

  it('with an id that is on record for something else are refused, and nothing is changed', async () => {
    const number = await newJob();
    const first = reading({ typed: '4.92' });
    await send(number, [first]);
    const { body } = await send(number, [{ ...first, typed: '4.82' }]);
    expect(body.refused[0]?.message).toContain('already recorded with other values');
    const other = await newJob();
    expect((await send(other, [first])).body.refused.length).toBe(1);
    expect((await kept(number)).map((one) => one.typed)).toEqual(['4.92']);
  });

  it('in doubt and not confirmed are kept as doubtful', async () => {
    const number = await newJob();
    await send(number, [reading({ typed: '0.492' }), reading({ typed: '0.491', confirmed: true })]);
    expect((await kept(number)).map((one) => one.doubtful)).toEqual([true, false]);
  });

  it('without initials are refused as a whole, so that the tablet goes on keeping them', async () => {
    const number = await newJob();
    const { status, body } = await send(number, [reading()], '');
    expect([status, body.error?.code]).toEqual([422, 'who-needed']);
    expect(await kept(number)).toEqual([]);
  });
});

describe('the measuring page', () => {
  it.each([
    ['numbered', 'kind', 'Wall between studs 1 and 2'],
    ['clockwise', 'kind', 'Wall behind stud 1'],
    ['anticlockwise', 'station', 'Indicator reading behind stud 1'],
    ['across', 'kind', 'Wall behind stud 3'],
  ])('asks for stations %s, by %s', async (round, by, next) => {
    const number = await newJob();
    const asked = {
      pass: 'before',
      round,
      by,
      asks: 'wfm',
      kind: 'w',
      place: '0/110',
      value: '4.92',
      who: 'AK',
      unit: 'mm',
    };
    const kept = await program.post(`/jobs/${number}/measure`, { ...asked, id: randomUUID() });
    expect(kept.status).toBe(303);
    const page = await program.get(kept.location!);
    expect(page.text).toContain(next);
    expect(page.text).toContain('1 of 36 measured');
  });

  it('keeps one reading of the plain form once, however often it is sent, and refuses another under its id', async () => {
    const number = await newJob();
    const fields = {
      pass: 'before',
      kind: 'w',
      place: '0/110',
      value: '4.92',
      who: 'AK',
      unit: 'mm',
      id: randomUUID(),
    };
    for (const _ of [1, 2]) expect((await program.post(`/jobs/${number}/measure`, fields)).status).toBe(303);
    expect((await kept(number)).length).toBe(1);
    const other = await program.post(`/jobs/${number}/measure`, { ...fields, value: '4.82' });
    expect(other.status).toBe(409);
    expect(other.html).toContain('value="4.82"');
    expect((await kept(number)).length).toBe(1);
  });
});

it('initials typed before the first reading stay when the order of measuring is set', async () => {
  const number = await newJob();
  const answer = await fetch(`${program.url}/jobs/${number}/measure/order`, {
    method: 'POST',
    redirect: 'manual',
    headers: { origin: program.url, 'content-type': 'application/x-www-form-urlencoded' },
    body: new URLSearchParams({ pass: 'before', asks: 'w', who: 'TO' }),
  });
  const cookie = answer.headers
    .getSetCookie()
    .map((one) => one.split(';')[0])
    .join('; ');
  const page = await fetch(program.url + answer.headers.get('location')!, { headers: { cookie } });
  const html = (await page.text()).replaceAll('\u00a0', ' ');
  expect(html).toMatch(/name="who"[^>]*value="TO"/);
  // They go along because the order is set from the form of the reading.
  expect(html).toMatch(/<button[^>]*id="set-order" form="reading-form"/);
});
