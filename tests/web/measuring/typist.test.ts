import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { type Lan, openLan } from '../lan.ts';

let lan: Lan;
beforeAll(async () => {
  lan = await openLan();
});
afterAll(() => lan.close());

it('readings typed by one person and sent after another signed in carry the first one’s initials', async () => {
  const send = async (readings: readonly object[]) =>
    lan.askAs('keeper', '/jobs/1016/measure/kept?pass=before', {
      method: 'POST',
      json: { who: 'whoever', readings },
    });
  const { recorder, reader, keeper } = lan.people;
  const reading = (angleDeg: number, who: string) => ({
    id: randomUUID(),
    pass: 'before',
    kind: 'wall',
    angleDeg,
    radiusMm: 100,
    typed: '0.19 in',
    unit: 'in',
    decimalSign: 'point',
    gauge: '',
    who,
  });
  // A person of the shop who may measure; one who may not, somebody unknown, and nobody: then whoever is signed in.
  const sent = [recorder.initials, reader.initials, 'ZZ', ''].map((who, i) => reading(11 * i + 3, who));
  const answer = await send(sent);
  expect(answer.status).toBe(200);
  const { readings } = (await getJob(lan.shop.db, '1016'))!;
  expect(sent.map(({ id }) => readings.find((one) => one.id === id)?.who)).toEqual([
    recorder.initials,
    keeper.initials,
    keeper.initials,
    keeper.initials,
  ]);
});
