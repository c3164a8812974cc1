import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { costHistory } from '../../../src/records/trends/costs.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

const AT = '/criteria/costs';
const ENTERED = { facing: '120', ring: '80', newCover: '350', comeback: '900', facedBack: '5', who: 'AK' };
const save = (more: Readonly<Record<string, string>>) => program.post(AT, { ...ENTERED, ...more });

describe('what each way costs', () => {
  it('is left out of a job while nothing is entered', async () => {
    expect((await program.get('/jobs/1006')).html).not.toContain('id="way-costs"');
  });

  it('is entered as a revision, and stands beside the verdict: 120 and 5 % of 900 is $165', async () => {
    expect(await save({ from: '0' })).toMatchObject({ status: 303, location: `${AT}?saved=1` });
    const page = await program.get('/jobs/1006');
    expect(page.html).toContain('id="way-costs"');
    expect(page.text).toContain('$165, at 5');
    expect(page.text).toMatch(/A new cover \$350/);
    expect(page.text).toMatch(/\$120 to \$\d+, 0 of 1 came back: too few to tell/);
  });

  it('needs a reason to change, and refuses a stale one with both versions', async () => {
    const refused = await save({ from: '1', facing: '140' });
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('Enter why the costs change.');
    expect((await save({ from: '1', facing: '140', why: 'spring' })).status).toBe(303);
    const stale = await save({ from: '1', facing: '130', why: 'mine' });
    expect(stale.status).toBe(409);
    expect(stale.text).toContain('saved now');
    expect((await costHistory(program.shop.db)).map(({ body }) => body.facing)).toEqual([120, 140]);
  });

  it('takes no cost below nothing, and no share above all', async () => {
    const wrong = await save({ from: '2', why: 'x', comeback: '-5', facedBack: '120' });
    expect(wrong.status).toBe(422);
    expect(wrong.text).toContain('A comeback: enter a figure from $0 to $100,000.');
    expect(wrong.text).toContain('A faced cover: enter a figure from 0 to 100 %.');
    expect(wrong.html).toContain('value="-5"');
    expect(await costHistory(program.shop.db)).toHaveLength(2);
  });
});
