import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { getEntry, reviseEntry } from '../../../src/records/catalogue.ts';
import { masterChecksOf } from '../../../src/records/gauges/masterChecks.ts';
import { goMetric } from '../metric.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
let today = '2026-11-24';
/** Each question a second after the one before. */
let asked = 0;
beforeAll(async () => {
  program = await serve({
    demo: true,
    now: () => new Date(Date.parse(`${today}T12:00:00Z`) + 1000 * asked++),
  });
  await goMetric(program.shop.db);
});
afterAll(() => program.close());

const ID = 'micrometer-m2';
const AT = `/gauges/${ID}/checks`;
const check = (reading: string, more: Readonly<Record<string, string>> = {}) =>
  program.post(AT, { master: '5', reading, who: 'AK', unit: 'mm', ...more });
const kept = () => masterChecksOf(program.shop.db, [ID]);
const quick = (day: string) => {
  today = day;
  const walls = Object.fromEntries(Array.from({ length: 9 }, (_, i) => [`w.${i}`, '4.9']));
  return program.get(`/cover?${new URLSearchParams({ ...walls, wallGauge: ID, unit: 'mm' })}`);
};

describe('a gauge on its master', () => {
  it('is checked in one form, reached from the gauge, and drawn with its table', async () => {
    const page = await program.get(`/catalogue/gauge/${ID}`);
    expect(page.html).toContain(`href="${AT}"`);
    const answer = await check('5.001');
    expect(answer).toMatchObject({ status: 303, location: AT });
    expect(await kept()).toMatchObject([
      { masterMm: 5, readingMm: 5.001, day: '2026-11-24', who: 'AK', confirmed: false },
    ]);
    const shown = await program.get(AT);
    expect(shown.html).toContain('id="checks-drawn"');
    expect(shown.text).toContain('agreed with its master on Nov 24, 2026: 0.001 mm off');
    expect(shown.html).toContain('value="5"');
    expect((await program.get(`${AT}.csv`)).html).toContain('2026-11-24');
  });

  it('asks about a slip of ten, of the unit, and a reading far off; confirmed it is kept so', async () => {
    const before = (await kept()).length;
    for (const [reading, question] of [
      ['50.01', 'Did you mean 5.001'],
      ['0.1969', 'Did you mean 0.1969 in'],
      ['5.2', 'off the master. Is the master 5.000 mm'],
    ] as const) {
      const asked = await check(reading);
      expect(asked.status, reading).toBe(422);
      expect(asked.text, reading).toContain(question);
    }
    expect((await check('0.2', { master: '0.2' })).text).toContain('Did you mean 0.2 in');
    expect((await check('')).text).toContain('The gauge reads');
    expect((await check('5.001', { who: '' })).text).toContain('Enter your initials');
    expect(await kept()).toHaveLength(before);
    expect((await check('5.2', { 'ok.reading': '5.2' })).status).toBe(303);
    expect((await kept()).at(-1)).toMatchObject({ readingMm: 5.2, confirmed: true });
  });

  it('past its limit is a caution in an answer with this gauge, until the check is withdrawn', async () => {
    const cautioned = await quick('2026-11-24');
    expect(cautioned.text).toContain('over its master on Nov 24, 2026');
    const { id } = (await kept()).at(-1)!;
    const refused = await program.post(`${AT}/withdraw`, { id, why: '', who: 'AK' });
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('Enter why the check is withdrawn');
    expect((await program.post(`${AT}/withdraw`, { id, why: 'wrong block', who: 'AK' })).status).toBe(303);
    expect((await program.get(AT)).text).toContain('wrong block');
    expect((await quick('2026-11-24')).text).not.toContain('over its master');
    const again = await program.post(`${AT}/withdraw`, { id, why: 'again', who: 'AK' });
    expect(again.status).toBe(409);
  });

  it('overdue is a caution once the shop asks for an interval', async () => {
    expect((await quick('2026-12-20')).text).not.toContain('a check is due every');
    const { body, revision } = (await getEntry(program.shop.db, 'gauge', ID))!;
    await reviseEntry(
      program.shop.db,
      { who: 'AK', why: 'house rule', now: () => new Date('2026-11-24T12:00:00Z') },
      { kind: 'gauge', id: ID, fromRevision: revision, body: { ...body, checkEveryDays: 14 } },
    );
    expect((await quick('2026-12-08')).text).not.toContain('a check is due every');
    expect((await quick('2026-12-09')).text).toContain(
      'last checked on a master on Nov 24, 2026; a check is due every 14 days',
    );
  });

  it('drifting is a caution, with the line drawn', async () => {
    for (const [day, reading] of [
      ['2026-12-01', '5.0015'],
      ['2026-12-08', '5.002'],
      ['2026-12-15', '5.0025'],
      ['2026-12-22', '5.003'],
      ['2026-12-29', '5.0035'],
    ] as const) {
      today = day;
      expect((await check(reading)).status).toBe(303);
    }
    const shown = await program.get(AT);
    expect(shown.html).toContain('cut-line dash');
    expect(shown.text).toContain('Dashed: a drift of');
  });

  it('of a gauge that is not there is no page', async () => {
    expect((await program.get('/gauges/none/checks')).status).toBe(404);
  });
});
