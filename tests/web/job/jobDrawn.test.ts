import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Served, serve } from '../program.ts';

/** What is typed into a form of the job is drawn beside it, and nothing is saved by it. */
let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true, unit: 'in' });
});
afterAll(() => program.close());

const drawn = async (path: string) => {
  const { status, html, text } = await program.get(path);
  expect(status).toBe(200);
  return { text: text.replaceAll('\u00a0', ' '), sections: html.match(/class="wall-section"/g)?.length ?? 0 };
};

describe('the cut in the section through the thinnest station', () => {
  it('another pass is taken off the wall as it stands', async () => {
    const none = await drawn('/jobs/1005/pass-drawn?depth=');
    expect(none.text).toContain('Leaves 0.2051 in at the thinnest station; the minimum is 0.1890 in.');
    const more = await drawn('/jobs/1005/pass-drawn?depth=.008');
    expect(more.text).toContain('Leaves 0.1971 in at the thinnest station');
    expect(more.text).toContain('0.0080 in cut there');
    expect(more.sections).toBe(1);
    expect((await drawn('/jobs/1005/pass-drawn?depth=0.2032+mm')).text).toContain('Leaves 0.1971 in');
  });

  it('a planned cut is taken off the wall before the cut; blank, the least that cleans up', async () => {
    expect((await drawn('/jobs/1006/plan-drawn?cut=.02')).text).toContain('Leaves 0.1735 in');
    expect((await drawn('/jobs/1006/plan-drawn?cut=')).text).toMatch(/Leaves 0\.18\d\d in/);
  });

  it.each([
    ['/jobs/1005/pass-drawn?depth=deep', 'Depth of cut'],
    ['/jobs/1006/plan-drawn?cut=deep', 'Planned cut'],
    ['/jobs/1016/pass-drawn?depth=.01', 'Measure the wall first.'],
    ['/jobs/1016/plan-drawn?cut=.01', 'Measure the wall first.'],
  ])('%s is not drawn, and says why', async (path, why) => {
    const { text, sections } = await drawn(path);
    expect(sections).toBe(0);
    expect(text).toContain('The cut is not drawn.');
    expect(text).toContain(why);
  });
});

it('the stud that is chosen is drawn in its stack, the best where none is', async () => {
  const at = '/jobs/1005/stud-drawn?stack=two-piece-four-3-8-24';
  expect((await drawn(at)).text).toContain('Long stud 3/8-24 UNF: fits.');
  expect((await drawn(`${at}&stud=short-3-8-24`)).text).toContain('Short stud 3/8-24 UNF: fits with care.');
  expect((await drawn('/jobs/1005/stud-drawn')).text).toContain('Choose the flexplate stack first.');
});

it('the forms ask for their drawing at these addresses', async () => {
  const { html } = await program.get('/jobs/1005?stack=two-piece-four-3-8-24');
  for (const what of ['pass', 'plan', 'stud'])
    expect(html, what).toMatch(
      new RegExp(`hx-get="/jobs/1005/${what}-drawn"[^>]*hx-target="#${what}-drawn"`),
    );
});
