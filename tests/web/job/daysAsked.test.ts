import { afterAll, beforeAll, expect, it } from 'vitest';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

/** Jobs of the demo shop: one with its studs chosen, one with a ring to weld. */
const CASES = [
  ['received', '1017', 'receivedOn', { family: '1125-4-plain', customer: 'Demo customer 17' }],
  ['welded', '1004', 'weldedOn', { ringJoined: 'yes' }],
  ['retightened', '1005', 'againOn', { againTorque: '30', makerAllows: 'yes' }],
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
