import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

/** Jobs of the demo shop: one to measure, one to decide, one to cut, one with studs. */
const FORMS: readonly (readonly [what: string, path: string, box: string, more: Record<string, string>])[] = [
  [
    'the readings',
    '/jobs/1016/readings',
    'w.0',
    { pass: 'before', token: 'token-before-1', 'at.0': '0/115' },
  ],
  ['gauge and chucking', '/jobs/1016/setup', 'release', { through: 'bare' }],
  ['what the job changes elsewhere', '/jobs/1016/setup', 'k.padsResurfacedMm', { through: 'bare' }],
  ['another cut', '/jobs/1013/plan', 'cut', {}],
  ['a pass', '/jobs/1005/cuts', 'depth', {}],
  ['a replaced stud', '/jobs/1005/replaced', 'lean', { studNumber: '1' }],
  ['the shop limits', '/criteria', 'allowance', { why: 'x' }],
  ['a cover type', '/catalogue/family', 'nominal', {}],
  ['a gauge', '/catalogue/gauge', 'resolution', { name: 'x' }],
  ['a stack', '/catalogue/stack', 'lt.0', { name: 'x', 'ln.0': 'plate' }],
];

describe('a fraction in a box of millimeters is refused with a button for what was meant', () => {
  it.each(FORMS)('%s', async (_, path, box, more) => {
    const number = /^\/jobs\/(\d+)/.exec(path)?.[1];
    const from = number ? String((await getJob(program.shop.db, number))!.revision) : '0';
    const refused = await program.post(path, { unit: 'mm', who: 'AK', from, ...more, [box]: '3/16' });
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('only inches are read in fractions. Did you mean 3/16 in?');
    expect(refused.html).toMatch(
      new RegExp(`<button[^>]*name="set\\.${box.replaceAll('.', '\\.')}" value="3/16 in"`),
    );
    expect(refused.html).not.toMatch(
      new RegExp(`type="checkbox"[^>]*name="ok\\.${box.replaceAll('.', '\\.')}"`),
    );
  });

  it.each([
    ['the flexplate', '/stud?stack=two-piece-four-3-8-24&unit=mm', 'pull'],
    ['the pull-forward gap', '/stud/gap?unit=mm', 'depth'],
  ])('%s', async (_, path, box) => {
    const page = await program.get(`${path}&${box}=3/16`);
    expect(page.html).toMatch(new RegExp(`<button[^>]*name="set\\.${box}" value="3/16 in"`));
  });

  it('the quick page, where the other repeat stays as it was typed', async () => {
    const asked = { family: '1125-4-plain', unit: 'mm', 'w.0': '4.9; 3/16' };
    const page = await program.get(`/cover?${new URLSearchParams(asked)}`);
    expect(page.html).toMatch(/<button[^>]*name="fix" value="w\.0=4\.9; 3\/16 in"/);
    const fixed = await program.get(`/cover?${new URLSearchParams({ ...asked, fix: 'w.0=4.9; 3/16 in' })}`);
    expect(fixed.html).toMatch(/name="w\.0"[^>]*value="4\.9; 3\/16 in"/);
  });
});
