import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

const receive = (more: Readonly<Record<string, string>>) =>
  program.post('/jobs', { family: '1125-4-billet', receivedOn: '2026-11-24', who: 'AA', ...more });

describe('a cover’s own number', () => {
  it('ties its jobs together, however it is typed, and is found by search', async () => {
    expect((await receive({ number: 'first', coverNumber: 'KX 7' })).status).toBe(303);
    const alone = await program.get('/jobs/first');
    expect(alone.text).toContain('Cover’s own number KX 7');
    expect(alone.html).not.toContain('id="same-cover-jobs"');
    expect((await receive({ number: 'second', coverNumber: ' kx  7 ' })).status).toBe(303);
    expect((await receive({ number: 'third', coverNumber: 'KX-7' })).status).toBe(303);
    expect((await program.get('/jobs/third')).text).toContain('2 other jobs');
    const { text } = await program.get('/jobs/second');
    expect(text).toContain('2 other jobs');
    expect(text).toContain('Job first , Nov 24, 2026: 1125-4 billet.');
    const found = await program.get('/jobs?text=kx+7');
    expect(found.text).toContain('first');
    expect(found.text).toContain('second');
  });

  it('lists its earlier jobs at receipt, with what was typed kept', async () => {
    const shown = await receive({ coverNumber: 'KX 7', note: 'back again', lookUp: '1' });
    expect(shown.status).toBe(200);
    expect(shown.text).toContain('3 other jobs');
    expect(shown.html).toContain('back again');
    expect((await receive({ coverNumber: 'unknown', lookUp: '1' })).html).not.toContain(
      'id="same-cover-jobs"',
    );
  });

  it('too long is refused at its box', async () => {
    expect((await receive({ coverNumber: 'x'.repeat(41) })).status).toBe(422);
  });
});
