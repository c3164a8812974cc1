import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Box, formsIn } from '../boxes.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

type Typed = Readonly<Record<string, string>>;

const JOINT = { torque: '37', engine: '250', kFrom: 'zinc' };
/** Each stud page, with a form of it and what makes it whole. */
const PAGES: readonly (readonly [what: string, path: string, form: string, whole: Typed])[] = [
  ['a stack of the catalog', '/stud', 'stud-form', { stack: 'two-piece-four-3-8-24', pull: '4', ...JOINT }],
  [
    'a stack typed layer by layer',
    '/stud',
    'stud-form',
    {
      stack: 'own',
      'ln.0': 'plate',
      'lt.0': '3.2',
      'lh.0': '10.3',
      nutThread: '3/8-24',
      nutHeight: '8.3',
      pull: '4',
      holeCount: '4',
      holeCircle: '286',
      ...JOINT,
    },
  ],
  [
    'a stud in the hand',
    '/stud/stacks',
    'stacks-form',
    {
      stud: 'own',
      thread: '3/8-24',
      threadStart: '1',
      threadEnd: '23',
      projection: '24',
      pilot: '8',
      pull: '4',
      ...JOINT,
    },
  ],
  ['which flexplate', '/stud/flexplate', 'flexplate-form', { total: '12.7', nutThread: '3/8-24' }],
  ['the gap', '/stud/gap', 'gap-form', { depth: '28', standsOut: '22', hub: '20', shims: '0.8; 1.5' }],
];
const NAMES = ['ln.0', 'ln.1', 'ln.2'];
const isMeasured = ({ kind, name }: Box) => kind === 'text' && !NAMES.includes(name);

const ask = (path: string, typed: Typed) =>
  program.get(`${path}?${new URLSearchParams({ unit: 'mm', ...typed })}`);
const boxesOf = async (path: string, form: string, whole: Typed) => {
  const page = await ask(path, whole);
  return formsIn(page.html).find(({ id }) => id === form)?.boxes ?? [];
};

describe.each(PAGES)('%s', (_what, path, form, whole) => {
  it('is whole as it is', async () => {
    const page = await ask(path, whole);
    expect([page.status, page.text.slice(0, 600)]).toEqual([200, expect.anything()]);
    expect((await boxesOf(path, form, whole)).filter(isMeasured).length).toBeGreaterThan(4);
  });

  it.each([
    ['nonsense', 'abc'],
    ['a unit of something else', '5 psi·s'],
    ['half a number', '3//8'],
    ['below anything', '-900000'],
  ])('answers %s in any box with a sentence at that box, and no slip', async (_fault, typed) => {
    for (const box of (await boxesOf(path, form, whole)).filter(isMeasured)) {
      const page = await ask(path, { ...whole, [box.name]: typed });
      expect([box.name, page.status]).toEqual([box.name, 422]);
      expect(page.html, box.name).toMatch(/<section class="faults"[\s\S]*?<li>[\s\S]{15,}?<\/li>/);
      expect(page.html, box.name).not.toMatch(/id="(slip|slip-stack-[\w-]+)"/);
      expect(page.html, box.name).not.toContain('verdict fits-');
      if (path === '/stud') {
        const slip = await program.get(
          `/stud/slip?${new URLSearchParams({ unit: 'mm', ...whole, [box.name]: typed })}`,
        );
        expect([box.name, slip.status]).toEqual([box.name, 422]);
        expect(slip.html).not.toContain('class="slip"');
      }
    }
  });

  it('answers any box left blank with the rest of the answer or a sentence, never with a broken page', async () => {
    for (const box of (await boxesOf(path, form, whole)).filter(isMeasured)) {
      const page = await ask(path, { ...whole, [box.name]: '  ' });
      expect([200, 422], box.name).toContain(page.status);
      if (page.status === 422) expect(page.html, box.name).toContain('class="faults"');
    }
  });
});

describe('an address with what has left the catalog', () => {
  const slip = 'stack=two-piece-four-3-8-24&unit=in&pull=3/16';

  it.each([
    ['/stud?stack=gone', 'That flexplate is no longer in the catalog. Choose one from the list.'],
    ['/stud/slip?stack=gone', 'That flexplate is no longer in the catalog. Choose one from the list.'],
    [`/stud/slip?${slip}&stud=gone`, 'The stud asked for is no longer in this list.'],
    [`/stud/slip?${slip}&stud=long-3-8-24&onlyThread=none`, 'The stud asked for is no longer in this list.'],
  ])('gives a sentence, and no slip of another: %s', async (path, sentence) => {
    const page = await program.get(path);
    expect([page.status, page.text]).toEqual([422, expect.stringContaining(sentence)]);
    expect(page.html).not.toContain('class="slip"');
    expect(page.html).not.toMatch(/id="slip"/);
  });

  it('keeps no slip of another stud', async () => {
    const sent = await program.post('/slips', {
      ...Object.fromEntries(new URLSearchParams(slip)),
      stud: 'gone',
      who: 'BB',
    });
    expect([sent.status, sent.text]).toEqual([422, expect.stringContaining('no longer in this list')]);
  });
});
