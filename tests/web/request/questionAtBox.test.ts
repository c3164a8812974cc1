import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true, unit: 'in' });
});
afterAll(() => program.close());

/** What stands from one box to the next one a person types in. */
function atBox(html: string, name: string): string {
  const from = html.indexOf(`name="${name}"`);
  expect(from).toBeGreaterThan(0);
  const next = html.slice(from + 1).search(/<(input [^>]*type="text"|select|textarea)/);
  return html.slice(from, from + 1 + next);
}

const STUD = {
  name: 'Test stud',
  thread: '3/8-24',
  threadStart: '.04',
  threadEnd: '.905',
  projection: '1.195',
  who: 'AA',
  unit: 'in',
};

describe('a question stands at its box, with the buttons that answer it', () => {
  it('of the catalog: the value meant, or right as typed, and one summary that leads to it', async () => {
    const { status, html } = await program.post('/catalogue/stud', { ...STUD, projection: '30.4' });
    expect(status).toBe(422);
    const box = atBox(html, 'projection');
    expect(box).toContain('Length from pad: 30.4 in? Did you mean 30.4 mm?');
    expect(box).toMatch(/name="set\.projection" value="30\.4 mm"/);
    expect(box).toMatch(/type="checkbox"[^>]*name="ok\.projection" value="30\.4"/);
    expect(html.match(/name="ok\.projection"/g)).toHaveLength(1);
    expect(html).toMatch(/id="faults"[\s\S]*href="#f-projection"/);
    expect(atBox(html, 'threadEnd')).not.toContain('name="ok.');
  });

  it('what was confirmed is not asked again while something else is wrong, and is sent along once', async () => {
    const { html } = await program.post('/catalogue/stud', {
      ...STUD,
      thread: '3/8-25',
      'ok.thread': '3/8-25',
      who: '',
    });
    expect(html).toMatch(/type="hidden" name="ok\.thread" value="3\/8-25"/);
    expect(html.match(/name="ok\.thread"/g)).toHaveLength(1);
  });

  it('in a row of layers', async () => {
    const { html } = await program.post('/catalogue/stack', {
      name: 'Test stack',
      'ln.0': 'plate',
      'lt.0': '3.2',
      unit: 'in',
      who: 'AA',
    });
    expect(atBox(html, 'lt.0')).toMatch(/name="set\.lt\.0" value="3\.2 mm"/);
  });

  it('of the shop limits', async () => {
    const { html } = await program.post('/criteria', { minimum: '4.1', unit: 'in', from: '2', who: 'AA' });
    expect(atBox(html, 'minimum')).toMatch(/name="set\.minimum" value="4\.1 mm"/);
  });

  it('of a job: how it is measured', async () => {
    const { html } = await program.post('/jobs/1008/setup', {
      release: '1.2',
      unit: 'in',
      from: '4',
      who: 'AA',
    });
    expect(atBox(html, 'release')).toMatch(/name="set\.release" value="1\.2 mm"/);
  });
});
