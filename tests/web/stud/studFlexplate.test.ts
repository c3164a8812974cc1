import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoStacks } from '../../../data/demo/stacks.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

const tell = (fields: Record<string, string>) =>
  program.get(`/stud/flexplate?${new URLSearchParams({ unit: 'mm', ...fields })}`);
const found = ({ html }: { html: string }) =>
  [...html.matchAll(/id="match-([\w-]+)"/g)].map((match) => match[1]);
const href = ({ html }: { html: string }, id: string) =>
  (new RegExp(`id="${id}"[^>]*href="([^"]*)"`).exec(html)?.[1] ?? '').replaceAll('&amp;', '&');

describe('the question which flexplate it is', () => {
  it.each(demoStacks.map(({ id, entry }) => [id, entry] as const))(
    'leads from what is measured on %s to that stack',
    async (id, { stack, nutThreadTyped }) => {
      const total = stack.layers.reduce((sum, layer) => sum + layer.thicknessMm, 0);
      const page = await tell({
        total: `${total + 0.2}`,
        nutThread: nutThreadTyped ?? '',
        style: stack.style,
      });
      expect(page.status).toBe(200);
      expect(found(page)).toEqual([id]);
      expect((await program.get(href(page, `match-${id}`))).status).toBe(200);
    },
  );

  it('names the nearest that is not the one, and by how much', async () => {
    const page = await tell({ total: '6', nutThread: '3/8-24' });
    expect(found(page)).toEqual([]);
    expect(page.text).toContain(
      'Not One-piece, four 3/8-24 on an 11.25 in bolt circle: it is 2.83 mm thinner.',
    );
  });

  /** Presses whatever is asked next, answering for one stack, until nothing is asked. */
  const asked = async (id: string, fields: Record<string, string>) => {
    const { stack, nutThreadTyped, nut } = demoStacks.find((one) => one.id === id)!.entry;
    const answer: Record<string, string> = {
      style: stack.style,
      holeCount: String(stack.holeCount),
      nutThread: nutThreadTyped!,
      nutHeight: String(nut!.heightMm),
      total: String(stack.layers.reduce((sum, layer) => sum + layer.thicknessMm, 0)),
    };
    const order: string[] = [];
    const left: number[] = [];
    let page = await tell(fields);
    for (let typed = { ...fields }; order.length < 6; page = await tell(typed)) {
      left.push(found(page).length);
      const form = /id="flexplate-ask"[\s\S]*?<\/form>/.exec(page.html)?.[0] ?? '';
      const box =
        /<button[^>]*name="(style|holeCount|nutThread)"/.exec(form)?.[1] ??
        /<input[^>]*name="(total|nutHeight)" type="text"/.exec(form)?.[1];
      if (box === undefined) break;
      order.push(box);
      typed = { ...typed, [box]: answer[box]! };
    }
    return { page, order, left: left.slice(1) };
  };

  it.each(demoStacks.map(({ id }) => id))('asks until %s is left, fewer with each answer', async (id) => {
    for (const onBench of ['0', '1']) {
      const { page, order, left } = await asked(id, { onBench });
      expect(found(page), order.join()).toEqual([id]);
      expect(order.length).toBeLessThanOrEqual(4);
      expect(left).toEqual([...left].sort((a, b) => b - a));
      expect(new Set(left).size).toBe(left.length);
      expect(page.html).toContain('id="use-stack"');
    }
  });

  it('asks in the car for what is seen there first, and for the thickness last', async () => {
    const { order } = await asked('two-piece-four-3-8-24', { onBench: '0' });
    expect(order.slice(0, 2).sort()).toEqual(['holeCount', 'style']);
    expect(order).not.toContain('total');
    const page = await tell({ onBench: '0', style: 'two-piece', holeCount: '4' });
    expect(page.text).toContain('3 of 12 flexplate stacks are left.');
    expect(page.text).toContain('What thread does the nut have? Take one nut off.');
  });

  it('on the bench asks what leaves fewest', async () => {
    const { order } = await asked('two-piece-four-3-8-24', { onBench: '1' });
    expect(order[0]).not.toBe('style');
    expect(order.length).toBeLessThanOrEqual(2);
  });

  it('takes "I can’t see it", which rules nothing out and is not asked again', async () => {
    const before = await tell({ onBench: '0' });
    const first = /id="cannot-see"/.test(before.html) && /name="skip" value="(\w+)"/.exec(before.html)?.[1];
    const page = await tell({ onBench: '0', skip: String(first) });
    expect(page.text).toContain('Which of 12 flexplate stacks is it?');
    expect(page.text).toContain('can’t be seen');
    expect(/name="skip" value="(\w+)"/.exec(page.html)?.[1]).not.toBe(first);
    const nothing = await tell({ onBench: '0', cannot: 'style,count,thread,nut,total' });
    expect([nothing.status, nothing.html.includes('id="use-stack"')]).toEqual([200, false]);
    expect(nothing.text).toContain('Measure plate and casting at a stud hole, layer by layer.');
  });

  it('never guesses: one left without its thickness is to be checked, none left says which answer rules most out', async () => {
    const one = await tell({ style: 'two-piece', nutThread: '3/8-24' });
    expect(one.text).toContain('One left: Two-piece, four 3/8-24');
    expect(one.text).toContain('pad face to the engine side is 12.70 mm at a stud hole');
    const none = await tell({ style: 'one-piece', nutThread: '7/16-20' });
    expect(none.text).toContain('No one-piece flexplate stack in the catalog is like that.');
    expect(none.text).toContain('Without the kind of flexplate : 1 stack is left.');
  });

  it('does not rule out a stack that lacks the figure asked for', async () => {
    const sent = await program.post('/catalogue/stack', {
      unit: 'mm',
      who: 'AB',
      why: 'new',
      name: 'Plate alone',
      'ln.0': 'plate',
      'lt.0': '3.2',
    });
    expect(sent.status).toBe(303);
    const page = await tell({ style: 'one-piece', holeCount: '4', nutThread: '3/8-24' });
    expect(found(page)).toHaveLength(2);
    expect(page.text).toContain('2 of 13 flexplate stacks are left.');
  });

  it('says so when what is seen and what is measured disagree', async () => {
    const page = await tell({ total: '12.9', style: 'one-piece' });
    expect(page.text).toContain('No one-piece flexplate stack in the catalog is that thick.');
    expect(page.text).toContain(
      'You saw a one-piece flexplate, but the thickness is that of this two-piece.',
    );
  });

  it('goes on with the whole thickness as one layer, typed as it was measured', async () => {
    const page = await tell({ total: '9/16 in', nutThread: '3/8-24', nutHeight: '8.3', style: 'two-piece' });
    const stud = await program.get(href(page, 'as-measured'));
    expect(stud.status).toBe(200);
    expect(stud.html).toMatch(/name="lt.0"[^>]*value="9\/16 in"/);
    expect(stud.text).toContain('Two-piece: from the pad face to the engine side 14.29, total 14.29 mm');
    expect(stud.text).toContain('Every stud, best first');
    const layers = await program.get(href(page, 'by-layers'));
    expect(layers.html).toMatch(/name="ln.1"[^>]*value="casting"/);
  });

  it.each([
    [
      'nothing for a thickness',
      { total: '0' },
      'The thickness from the pad face to the engine side is 0 mm; it must be more than 0 mm',
    ],
    ['a thread that is none', { total: '5', nutThread: 'zzz' }, '"zzz" is not a thread callout'],
    ['words', { total: 'thick' }, '"thick" is not a plain number'],
  ])('refuses %s', async (_what, fields, sentence) => {
    const page = await tell(fields);
    expect(page.status).toBe(422);
    expect(page.text).toContain(sentence);
  });
});

describe('the pull-forward gap', () => {
  const gap = (fields: Record<string, string>) =>
    program.get(`/stud/gap?${new URLSearchParams({ unit: 'mm', ...fields })}`);
  const measured = { depth: '28', standsOut: '22', hub: '20', hubLeast: '12', shims: '0.8; 1.5; 2' };

  it('shows gap, shims and hub together: 28 − 22 − 2 is 4; the hub keeps 20 − 4 (first principles)', async () => {
    const page = await gap(measured);
    expect(page.status).toBe(200);
    expect(page.text).toContain('Gap 4.00 mm with a 2.00 mm shim under every pad.');
    expect(page.text).toContain('Recommended under every pad: 2.00 mm (gap 4.00 mm).');
    expect(page.text).toContain('Drawn forward, the impeller hub stays 16.00 mm in the pump');
  });

  it('puts the same shims into the stack, and the gap that is left into the reach of the stud', async () => {
    const page = await gap({ ...measured, stack: 'one-piece-four-3-8-24' });
    expect(page.text).toContain('Short stud 3/8-24 UNF fits:');
    const stud = await program.get(href(page, 'all-studs'));
    expect(stud.status).toBe(200);
    expect(stud.text).toContain('One-piece: shim 2.00, plate 3.17, total 5.17 mm');
    expect(stud.text).toContain('Used: 4.00 mm');
  });

  it('recommends no shim that leaves the hub too short in the pump, and says where none keeps both', async () => {
    const shims = '1; 2; 2.5';
    const page = await gap({ ...measured, shims, hubLeast: '16.2' });
    expect(page.text).toContain('Gap 3.50 mm with a 2.50 mm shim under every pad.');
    expect(page.text).toContain('Recommended under every pad: 2.50 mm (gap 3.50 mm).');
    expect(page.text).toContain('Drawn forward, the impeller hub stays 16.50 mm in the pump');
    expect((await gap({ ...measured, shims: '1; 2', hubLeast: '16.2' })).text).toContain(
      'Needs 2.20 mm to 2.80 mm of shim under every pad, for the gap and for the impeller hub. No shim in stock gives that, alone or two together.',
    );
    expect((await gap({ ...measured, shims, hubLeast: '17' })).text).toContain(
      'No shim keeps both gap and hub: at the minimum gap the impeller hub is 0.20 mm short in the pump.',
    );
    expect((await gap({ ...measured, depth: '24', hubLeast: '19' })).text).toContain('no shim helps');
  });

  it('says what would do where none of the shims does, and when no shim can', async () => {
    expect((await gap({ ...measured, shims: '0.5' })).text).toContain('Needs 1.20 mm to 2.80 mm of shim');
    expect((await gap({ ...measured, depth: '24' })).text).toContain('no shim helps');
    expect((await gap({ ...measured, shim: '7' })).text).toContain('pushed 1.00 mm into the pump');
  });

  it("takes the maker's gap before the usual one", async () => {
    const page = await gap({ ...measured, gapLeast: '5', gapMost: '7' });
    expect(page.text).toContain('Gap 6.00 mm, no shims.');
  });

  it.each([
    ['one depth alone', { standsOut: '' }, 'Engine face to the flexplate is empty.'],
    ['half a maker’s gap', { gapLeast: '3' }, 'The maker’s gap needs its minimum and its maximum.'],
    [
      'a depth below nothing',
      { depth: '-1' },
      'The depth from the bell housing face to the pads is −1 mm; it must be at least 0 mm',
    ],
    ['a shim in words', { shims: '0.8; thin' }, '"thin" is not a plain number'],
  ])('refuses %s', async (_what, change, sentence) => {
    const page = await gap({ ...measured, ...change });
    expect(page.status).toBe(422);
    expect(page.text).toContain(sentence);
  });
});
