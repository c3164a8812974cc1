import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true, unit: 'in' });
});
afterAll(() => program.close());

/** Each fold of the form by its head: open or not, and how many boxes are filled. */
function foldsOf(html: string): Record<string, string> {
  const form = html.slice(html.indexOf('id="setup-form"'), html.indexOf('id="setup-form-send"'));
  return Object.fromEntries(
    [
      ...form.matchAll(
        /<details class="folded-boxes"[^>]*?( open)?><summary><b>([^<]*)<\/b><span class="fold-count">([^<]*)</g,
      ),
    ].map(([, open, head, count]) => [head, `${open ? 'open' : 'folded'}, ${count}`]),
  );
}

describe('how a cover is measured: what few need is folded under when it is needed', () => {
  it('nothing of it entered: every subject is one line', async () => {
    const { html } = await program.get('/jobs/1008');
    expect(foldsOf(html)).toMatchObject({
      Chuck: 'folded, blank',
      Pads: 'folded, blank',
      'Pull-forward and impeller hub': 'folded, blank',
      'Crank pilot': 'folded, blank',
      'After opening and closing the converter': 'folded, blank',
    });
    expect(html).toContain('Needed where pads are resurfaced or shimmed');
  });

  it('a figure and what is refused are in sight', async () => {
    const { status, html } = await program.post('/jobs/1008/setup', {
      unit: 'in',
      from: '4',
      who: 'AA',
      'k.padThicknessMm': '.4',
      'k.crankPilotMm': 'wide',
      'k.endPlayMm': '2.1',
    });
    expect(status).toBe(422);
    expect(foldsOf(html)).toMatchObject({
      Chuck: 'folded, blank',
      Pads: 'open, 1 of 6 entered',
      'Crank pilot': 'open, 1 of 6 entered',
      'After opening and closing the converter': 'open, 1 of 9 entered',
    });
  });
});

it('a signed job has the form once it is asked for, filled with what is kept', async () => {
  const read = await program.get('/jobs/1001');
  expect(read.html).not.toContain('id="setup-form"');
  const href = /href="([^"]*again=setup)#setup-form"/.exec(read.html)?.[1];
  const { html } = await program.get(href!);
  const form = html.slice(html.indexOf('id="setup-form"'), html.indexOf('id="setup-form-send"'));
  expect(form).toMatch(/name="gauge"[^>]*value="tube micrometer/);
  expect(html).not.toContain('class="faults"');
});
