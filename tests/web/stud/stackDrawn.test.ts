import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listEntries } from '../../../src/records/catalogue.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

const STACK = {
  unit: 'mm',
  'ln.0': 'plate',
  'lt.0': '3.2',
  'lh.0': '10.3',
  'ln.1': 'casting',
  'lt.1': '11.1',
  'lh.1': '10.7',
  nutThread: '3/8-24',
  nutHeight: '8.3',
  pull: '4',
};
const query = (fields: Record<string, string>) => `${new URLSearchParams({ ...STACK, ...fields })}`;
const drawn = (fields: Record<string, string> = {}) => program.get(`/stud/drawn?${query(fields)}`);
/** The part a form takes. */
const partOf = (html: string) =>
  /<figure class="drawing" id="stack-drawn">[\s\S]*?<\/figure>/.exec(html)?.[0] ?? '';
const figuresIn = (html: string) =>
  [...partOf(html).matchAll(/dim-figure[^>]*>([^<]+)</g)].map(([, one]) => one);

describe('a stack drawn as it is typed', () => {
  it('has each length in the unit of the reader, whatever unit was typed', async () => {
    const page = await drawn();
    expect(page.status).toBe(200);
    expect(figuresIn(page.html).sort()).toEqual(['11.10', '14.30', '3.20', '4.00', '8.30']);
    expect(page.text).not.toContain('left out');
    const inches = await drawn({
      unit: 'in',
      'lt.0': '1/8',
      'lt.1': '7/16',
      'lh.0': '13/32',
      'lh.1': '',
      nutHeight: '21/64',
      pull: '4 mm',
    });
    expect(figuresIn(inches.html).sort()).toEqual(['0.125', '0.157', '0.328', '0.438', '0.563']);
    expect(inches.text).toContain('Lengths in inches.');
    expect(inches.text).toContain('Dashed: the hole diameter is not entered.');
  });

  it.each([
    ['no thickness', { 'lt.1': '' }, 'Layer 2 is not drawn. Thickness of casting is empty. Enter it.'],
    [
      'no number',
      { 'lt.1': 'abc' },
      'Layer 2 is not drawn. Thickness of casting: "abc" is not a plain number.',
    ],
    [
      'nothing thick',
      { 'lt.1': '0' },
      'Layer 2 is not drawn. The thickness is 0 mm; it must be more than 0 mm',
    ],
    ['a hole that is none', { 'lh.1': '1o' }, 'Layer 2 is not drawn. Hole diameter of casting: '],
    [
      'another unit',
      { 'lt.1': '.437' },
      'Layer 2 is not drawn. Thickness of casting: .437 mm? Did you mean 0.437 in?',
    ],
    [
      'a hole in inches',
      { 'lh.1': '.421' },
      'Layer 2 is not drawn. Hole diameter of casting: .421 mm? Did you mean 0.421 in?',
    ],
    [
      'too wide a tolerance',
      { 'lo.1': '12' },
      'Layer 2 is not drawn. The tolerance of casting is 12 mm; it must be less',
    ],
    [
      'a kind that is none',
      { 'lk.1': 'wood' },
      'Layer 2 is not drawn. Kind of casting: choose one from the list.',
    ],
  ])('leaves a layer out and says why, with %s', async (_, fields: Record<string, string>, sentence) => {
    const page = await drawn(fields);
    expect(page.status).toBe(200);
    expect(page.text).toContain(sentence);
    expect(page.text).not.toContain('confirm it below');
    expect(figuresIn(page.html).sort()).toEqual(['3.20', '4.00', '8.30']);
  });

  it('leaves nut or gap out and says why, and draws what is left', async () => {
    const nut = await drawn({ nutHeight: '' });
    expect(nut.text).toContain('The nut is not drawn. Nut height is empty. Enter it.');
    expect(figuresIn(nut.html)).not.toContain('8.30');
    expect((await drawn({ nutThread: '' })).text).toContain(
      'The nut is not drawn. Nut thread is empty. Enter it.',
    );
    expect((await drawn({ nutHeight: '.328' })).text).toContain('The nut is not drawn. Nut height: .328 mm?');
    const gap = await drawn({ pull: '-3' });
    expect(gap.text).toContain('The gap is not drawn. The pull-forward gap is −3 mm');
    expect(figuresIn(gap.html).sort()).toEqual(['11.10', '14.30', '3.20', '8.30']);
    const bare = await program.get('/stud/drawn');
    expect([bare.status, bare.text.includes('as its layers are entered')]).toEqual([200, true]);
  });

  it('is in the page of the form itself, where a button sends what is typed without a script', async () => {
    const page = await program.get(
      `/stud?stack=own&${query({ 'lt.1': 'abc', 'ln.1': 'cast ring' })}&add=drawing`,
    );
    expect(page.status).toBe(422);
    expect(page.html).toMatch(/<noscript><button[^>]*name="add" value="drawing"/);
    expect(figuresIn(page.html).sort()).toEqual(['3.20', '4.00', '8.30']);
    expect(partOf(page.html)).toContain('Layer 2 is not drawn.');
    expect(page.html).toContain('value="cast ring"');
    const whole = await program.get(`/stud?stack=own&${query({})}`);
    expect(partOf(whole.html)).toBe(partOf((await drawn()).html));
  });

  it('is drawn on the form of the catalog, and nothing is kept by looking', async () => {
    const before = (await listEntries(program.shop.db, 'stack')).length;
    const tried = await program.post('/catalogue/stack', {
      ...STACK,
      name: 'Bench stack',
      add: 'drawing',
      'lt.1': '12',
    });
    expect(tried.status).toBe(200);
    expect(figuresIn(tried.html)).toContain('12.00');
    expect(tried.html).toContain('value="Bench stack"');
    expect(tried.html).not.toContain('field-error');
    expect((await listEntries(program.shop.db, 'stack')).length).toBe(before);
    expect(partOf((await program.get('/catalogue/stack/new')).html)).toContain('as its layers are entered');
  });

  it('does not ask about what the entry keeps', async () => {
    const odd = { ...STACK, name: 'Odd stack', who: 'AB', 'lt.1': '.437', 'ok.lt.1': '.437' };
    const saved = await program.post('/catalogue/stack', odd);
    expect(saved.status).toBe(303);
    const entry = (await listEntries(program.shop.db, 'stack')).find(({ name }) => name === 'Odd stack');
    const page = await program.get(`/catalogue/stack/${entry?.id}`);
    expect(partOf(page.html)).not.toContain('left out');
    expect(page.html).toContain(`hx-vals="{&quot;entry&quot;:&quot;${entry?.id}&quot;}"`);
    const again = { 'lt.1': '0.437', entry: entry?.id ?? '' };
    expect((await drawn(again)).text).not.toContain('left out');
    expect((await drawn({ ...again, 'lt.1': '0.438' })).text).toContain('Layer 2 is not drawn.');
  });
});
