import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoStacks } from '../../data/demo/stacks.ts';
import { type Served, serve } from './program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

const ask = (fields: Record<string, string>) => program.get(`/stud?${new URLSearchParams(fields)}`);

describe('a stud for a stack', () => {
  it.each(demoStacks.map(({ id, entry }) => [id, entry.stack.style] as const))(
    'for %s the right length is first (common practice, no source: short for one piece, long for two)',
    async (id, style) => {
      const page = await ask({ stack: id });
      expect(page.status).toBe(200);
      const heading = /<h1[^>]*>([\s\S]*?)<\/h1>/.exec(page.html)?.[1] ?? '';
      expect(heading).toContain(style === 'one-piece' ? 'Short stud' : 'Long stud');
      expect(heading).toContain('it fits');
    },
  );

  it('says of the short stud in a two-piece stack which dimension fails and by how much', async () => {
    const page = await ask({ stack: 'two-piece-four-3-8-24', stud: 'short-3-8-24' });
    expect(page.text).toContain('the tip lies 0.50 mm inside the stack');
    expect(page.text).toContain('A stud more than 0.50 mm longer would show its pilot.');
  });

  it.each([
    ['no layers', { stack: 'own', 'lt.0': '' }, 'The stack has no layers'],
    [
      'zero thickness',
      { stack: 'own', 'lt.0': '0' },
      'The thickness of layer 1 is 0 mm; it must be more than 0 mm',
    ],
    [
      'a layer with a name only',
      { stack: 'own', 'ln.0': 'casting', 'lt.0': '' },
      'Thickness of casting is empty.',
    ],
    [
      'no thread at all',
      { stack: 'own', 'lt.0': '3.2', nutThread: 'zzz', nutHeight: '8' },
      '"zzz" is no thread callout',
    ],
    [
      'a nut without its height',
      { stack: 'own', 'lt.0': '3.2', nutThread: '3/8-24' },
      'Height of the nut is empty.',
    ],
    ['a gap below nothing', { stack: 'own', 'lt.0': '3.2', pull: '-3' }, 'The pull-forward gap is -3 mm'],
    ['words for a gap', { stack: 'one-piece-four-3-8-24', pull: 'many' }, '"many" is not a plain number'],
  ])('refuses %s with a sentence', async (_what, fields, sentence) => {
    const page = await ask(fields);
    expect(page.status).toBe(422);
    expect(page.text).toContain(sentence);
  });

  it('takes a stack in inches and fractions, and says the same as in millimetres', async () => {
    const nut = { nutThread: '3/8-24', pull: '4 mm' };
    const inch = await ask({
      stack: 'own',
      unit: 'in',
      'ln.0': 'plate',
      'lt.0': '1/8',
      nutHeight: '21/64',
      ...nut,
    });
    const mm = await ask({
      stack: 'own',
      unit: 'mm',
      'ln.0': 'plate',
      'lt.0': '3.175',
      nutHeight: '8.334375',
      ...nut,
    });
    const order = (html: string) =>
      [...html.matchAll(/id="stud-((?:short|long)-[\w-]+)"/g)].map((match) => match[1]);
    expect(order(inch.html).length).toBeGreaterThan(10);
    expect(order(inch.html)).toEqual(order(mm.html));
    expect(inch.text).toContain('One piece: plate 0.125, together 0.125 in');
  });

  it('prints a slip that says which stud, and why its neighbour does not do', async () => {
    const page = await program.get('/stud/slip?stack=two-piece-four-3-8-24&stud=long-3-8-24');
    expect(page.text).toContain('Long stud 3/8-24 UNF');
    expect(page.text).toMatch(/Not Short stud 3\/8-24 UNF: .*0\.50 mm/);
    expect(page.text).toContain(
      "Torque, gap and balance figures of the vehicle's and the parts' makers come first.",
    );
  });
});

describe('stacks for a stud', () => {
  const inHand = {
    stud: 'own',
    thread: '3/8-24',
    threadStart: '1',
    threadEnd: '23',
    projection: '24',
    pilot: '8',
  };
  const stacks = (fields: Record<string, string>) =>
    program.get(`/stud/stacks?${new URLSearchParams(fields)}`);

  it('finds what a stud in the hand suits, best first', async () => {
    const page = await stacks(inHand);
    expect(page.status).toBe(200);
    const first = /id="stack-([\w-]+)"/.exec(page.html)?.[1];
    expect(first).toBe('one-piece-four-3-8-24');
  });

  it.each([
    ['thread end before thread start', { threadStart: '23', threadEnd: '1' }],
    ['a tip inside the thread', { projection: '10' }],
    ['a tip below nothing', { projection: '-24' }],
    ['no thread', { thread: '' }],
  ])('refuses %s and keeps what was typed', async (_what, change) => {
    const page = await stacks({ ...inHand, ...change });
    expect(page.status).toBe(422);
    expect(page.html).toContain('class="faults"');
    expect(page.html).toMatch(/name="pilot"[^>]*value="8"/);
  });
});
