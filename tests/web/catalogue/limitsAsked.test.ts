import { afterAll, beforeAll, expect, it } from 'vitest';
import { currentCriteria } from '../../../src/records/shopCriteria.ts';
import { type Served, serve } from '../program.ts';
import { saveLimits } from '../steps.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true, unit: 'in' });
});
afterAll(() => program.close());

it.each([
  ['minimum', '0.017', 'Minimum wall'],
  ['minimum', '1.7', 'Minimum wall'],
  ['runout', '0.05', 'Runout allowed'],
])(
  'a shop limit that can hardly be meant, %s %s in, is asked about and saved once confirmed',
  async (box, typed, label) => {
    const { revision } = await currentCriteria(program.shop.db);
    const form = {
      shopName: 'Demo shop',
      allowance: '0.002',
      confidence: '95',
      protrusion: '1',
      start: '2',
      lengthUnit: 'in',
      from: String(revision),
      who: 'TO',
      why: 'tried',
      [box]: typed,
    };
    const asked = await saveLimits(program, form);
    expect(asked.status).toBe(422);
    expect(asked.text).toContain(`${label}`);
    expect(asked.text).toContain('confirm it below');
    expect((await currentCriteria(program.shop.db)).revision).toBe(revision);
    const sure = await saveLimits(program, { ...form, [`ok.${box}`]: typed });
    expect([sure.status, (await currentCriteria(program.shop.db)).revision]).toEqual([303, revision + 1]);
  },
);
