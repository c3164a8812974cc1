import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STUDY_READINGS } from '../../../data/examples/studyReadings.ts';
import { nextPlace } from '../../../shared/words/gauges/gaugeStudies.ts';
import { addEntry, getEntry } from '../../../src/records/catalogue.ts';
import { getStudy } from '../../../src/records/gauges/studies.ts';
import { goMetric } from '../metric.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
  await goMetric(program.shop.db);
  const { body } = (await getEntry(program.shop.db, 'gauge', 'micrometer-m2'))!;
  await addEntry(
    program.shop.db,
    { who: 'AK', now: () => new Date('2026-11-24T12:00:00Z') },
    { kind: 'gauge', id: 'dial', body: { ...body, name: 'Dial of the test', gaugeKind: 'indicator' } },
  );
});
afterAll(() => program.close());

const plan = { covers: '10', stations: '1', rounds: '3', people: 'AA, BB; CC', who: 'AK', unit: 'mm' };
const setUp = (change: Readonly<Record<string, string>> = {}, gauge = 'dial') =>
  program.post(`/gauges/${gauge}/studies`, { ...plan, ...change });
const begun = async (change: Readonly<Record<string, string>> = {}, gauge = 'dial') =>
  Number((await setUp(change, gauge)).location!.split('/').at(-1));
const read = (number: number, place: number, value: string, more: Readonly<Record<string, string>> = {}) =>
  program.post(`/studies/${number}`, { place: String(place), value, unit: 'mm', ...more });

/** Reads on in the order the study asks, as the example has it; up to so many readings. */
async function readOn(number: number, most = Number.POSITIVE_INFINITY): Promise<void> {
  for (let i = 0; i < most; i++) {
    const study = (await getStudy(program.shop.db, number))!;
    const place = nextPlace(study);
    if (place === null) return;
    const { station, person, round } = study.order[place]!;
    const value = String(STUDY_READINGS[station]![person]![round]!);
    const answer = await read(number, place, value, { 'ok.value': value });
    expect(answer.status).toBe(303);
  }
}

describe('a study of a gauge', () => {
  it('is reached from the gauge and set up by a manager', async () => {
    expect((await program.get('/catalogue/gauge/dial')).html).toContain('href="/gauges/dial/studies"');
    for (const [change, said] of [
      [{ covers: '' }, 'Covers is empty'],
      [{ covers: '1' }, 'The covers'],
      [{ rounds: '11' }, 'The rounds'],
      [{ people: 'AA' }, 'enter the initials of 2 to 6 people'],
      [{ people: 'AA, aa' }, 'aa is entered twice'],
      [{ people: 'AA, LONGERTHAN8' }, 'not 1 to 8 plain characters'],
      [{ who: '' }, 'Enter your initials'],
    ] as const) {
      const refused = await setUp(change);
      expect(refused.status, JSON.stringify(change)).toBe(422);
      expect(refused.text, JSON.stringify(change)).toContain(said);
    }
    expect((await program.get('/gauges/dial/studies')).text).not.toContain('Study 1');
  });

  it('leads through every reading and then prints the figures of the published example', async () => {
    // Measurement Systems Analysis reference manual, 4th ed., from memory: ten parts, three people, three trials.
    const number = await begun();
    await readOn(number);
    const { text, html } = await program.get(`/studies/${number}`);
    for (const figure of [
      '3.16726',
      '88.36193',
      '0.35898',
      '2.75893',
      '94.64711',
      '0.199933',
      '0.226838',
      // The manual prints 0.302373; 0.3023715 in exact fractions.
      '0.302372',
      '1.042327',
      '1.085300',
      '27.86 %',
      'counted with the repeats',
    ])
      expect(text, figure).toContain(figure);
    expect(text).toMatch(/Sizes told apart\s+4/);
    expect(html).toContain('id="by-person-title"');
    const csv = (await program.get(`/studies/${number}/readings.csv`)).html.trim().split('\r\n');
    expect(csv).toHaveLength(91);
  });

  it('shows nothing that was read while it goes on, on no page', async () => {
    const number = await begun({ covers: '2', rounds: '2', people: 'AA BB' }, 'micrometer-m2');
    await read(number, 0, '4.9137');
    for (const path of [`/studies/${number}`, '/gauges/micrometer-m2/studies'])
      expect((await program.get(path)).html, path).not.toContain('9137');
    expect((await program.get(`/studies/${number}/readings.csv`)).status).toBe(404);
    const page = await program.get(`/studies/${number}`);
    expect(page.text).toContain('1 of 8 readings saved');
    expect(page.text).toMatch(/Cover \d (AA|BB)’s turn/);
  });

  it('keeps each reading at once and once, also when sent twice or from two tablets', async () => {
    const number = await begun({ covers: '2', rounds: '2', people: 'AA BB' }, 'micrometer-m2');
    const sentId = 'a-reading-of-this-test';
    for (let i = 0; i < 2; i++) expect((await read(number, 0, '4.91', { sentId })).status).toBe(303);
    const other = await read(number, 0, '4.95');
    expect(other.status).toBe(409);
    expect(other.text).toContain('This station was read already');
    expect((await read(number, 99, '4.95')).status).toBe(422);
    const study = (await getStudy(program.shop.db, number))!;
    expect(study.readings.map(({ valueMm }) => valueMm)).toEqual([4.91]);
    expect(study.readings[0]!.who).toBe(study.plan.people[study.order[0]!.person]);
  });

  it('asks about a slip, and what was typed stays in its box', async () => {
    const number = await begun({ covers: '2', rounds: '2', people: 'AA BB' }, 'micrometer-m2');
    for (const [value, said] of [
      ['', 'Reading is empty'],
      ['zz', 'zz'],
      ['-4.9', 'a wall must be more than 0'],
      ['49.1', 'Did you mean 4.91'],
      ['0.193', 'Did you mean 0.193 in'],
    ] as const) {
      const asked = await read(number, 0, value);
      expect(asked.status, value).toBe(422);
      expect(asked.text, value).toContain(said);
      expect(asked.html, value).toContain(value === '' ? 'name="value"' : `value="${value}"`);
    }
    expect((await read(number, 0, '49.1', { 'ok.value': '49.1' })).status).toBe(303);
    expect((await getStudy(program.shop.db, number))!.readings[0]).toMatchObject({ confirmed: true });
  });

  it('takes a mistyped reading back with a reason, and reads its station again', async () => {
    const number = await begun({ covers: '2', rounds: '2', people: 'AA BB' }, 'micrometer-m2');
    await read(number, 0, '4.91');
    await read(number, 1, '4.93');
    const { id } = (await getStudy(program.shop.db, number))!.readings[0]!;
    const withdraw = (why: string) => program.post(`/studies/${number}/withdraw`, { id, why, who: 'AK' });
    expect((await withdraw('')).text).toContain('Enter why the reading is withdrawn');
    expect((await withdraw('slipped')).status).toBe(303);
    expect((await withdraw('again')).status).toBe(409);
    expect(nextPlace((await getStudy(program.shop.db, number))!)).toBe(0);
    expect((await read(number, 0, '4.92')).status).toBe(303);
    expect(nextPlace((await getStudy(program.shop.db, number))!)).toBe(2);
  });

  it('stopped early says what whole rounds say, and takes no more', async () => {
    const number = await begun();
    await readOn(number, 65);
    const stop = (why: string) => program.post(`/studies/${number}/stop`, { why, who: 'AK' });
    expect((await stop('')).text).toContain('Enter why the study is stopped');
    expect((await stop('cover 4 was needed')).status).toBe(303);
    expect((await stop('again')).status).toBe(409);
    const { text } = await program.get(`/studies/${number}`);
    expect(text).toContain('Stopped early by AK');
    expect(text).toContain('cover 4 was needed. 2 whole rounds were read; 5 readings beyond are saved');
    expect(text).toContain('Analysis of variance');
    expect((await read(number, 65, '0.1')).status).toBe(409);
    expect((await program.get('/gauges/dial/studies')).text).toContain('Stopped early');
  });

  it('stopped within the second round has repeatability alone, and before any repeat nothing', async () => {
    const some = await begun();
    await readOn(some, 33);
    await program.post(`/studies/${some}/stop`, { why: 'enough', who: 'AK' });
    const repeats = await program.get(`/studies/${some}`);
    expect(repeats.text).toContain('How people differ is not known');
    expect(repeats.text).toContain('3 degrees of freedom');
    const none = await begun();
    await readOn(none, 5);
    await program.post(`/studies/${none}/stop`, { why: 'enough', who: 'AK' });
    expect((await program.get(`/studies/${none}`)).text).toContain('nothing is known of the gauge');
  });

  it('ordinary jobs give repeatability alone, and the page says so', async () => {
    const page = await program.get('/gauges/dial/studies');
    expect(page.text).toContain('No station was read twice in one job with this gauge');
    expect(page.text).toContain('Only a study tells them apart');
  });

  it('of a gauge or a number that is not there is no page', async () => {
    expect((await program.get('/gauges/none/studies')).status).toBe(404);
    expect((await program.get('/studies/999')).status).toBe(404);
    expect((await program.get('/studies/x')).status).toBe(404);
  });
});
