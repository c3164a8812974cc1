import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoStacks } from '../../../data/demo/stacks.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

const ask = (fields: Record<string, string>) => program.get(`/stud?${new URLSearchParams(fields)}`);

describe('a stud for a stack', () => {
  it.each(demoStacks.map(({ id, entry }) => [id, entry.stack.style] as const))(
    'is of the right length for %s (common practice, no source: short for one piece, long for two)',
    async (id, style) => {
      const page = await ask({ stack: id });
      expect(page.status).toBe(200);
      const heading = /<h1[^>]*>([\s\S]*?)<\/h1>/.exec(page.html)?.[1] ?? '';
      expect(heading).toContain(style === 'one-piece' ? 'Short stud' : 'Long stud');
      expect(heading).toContain(' fits');
    },
  );

  /** Of the other length: too long for the one-piece, its stud pilot too short for the two-piece. */
  it.each(demoStacks.map(({ id, entry }) => [id, entry.stack.style] as const))(
    'of the other length is not the first for %s, and one sentence says which dimension decides, and by how much',
    async (id, style) => {
      const page = await ask({ stack: id, unit: 'mm' });
      const other = style === 'one-piece' ? 'long' : 'short';
      const thread = id.replace(/^(one|two)-piece-(three|four|six)-/, '');
      const row = new RegExp(`id="stud-${other}-${thread}"[\\s\\S]*?<span class="row-line">(.*?)</span>`);
      const because = row.exec(page.html)?.[1] ?? '';
      const word = style === 'one-piece' ? 'does not fit' : 'fits with care';
      expect(page.html).toMatch(new RegExp(`id="stud-${other}-${thread}"[\\s\\S]{0,600}${word}`));
      const decides =
        style === 'one-piece'
          ? /The stud is (\d+\.\d\d) mm too long: its end hits the engine side/
          : /The stud pilot is (\d+\.\d\d) mm short of the casting/;
      const byMm = Number(decides.exec(because)?.[1]);
      expect(byMm, because).toBeGreaterThan(0);
      const wanted = /Needs a stud(?: pilot)? at least (\d+\.\d\d) mm (shorter|longer)/.exec(because);
      expect(wanted?.[2]).toBe(style === 'one-piece' ? 'shorter' : 'longer');
      expect(Number(wanted?.[1])).toBeGreaterThanOrEqual(byMm);
    },
  );

  it('asks about a gap or a layer in another unit, and answers once it is confirmed', async () => {
    const gap = '/stud?stack=two-piece-four-3-8-24&pull=0.16';
    const asked = await program.get(gap);
    expect(asked.status).toBe(422);
    expect(asked.text).toContain('Pull-forward gap: 0.16 mm? Did you mean 0.16 in?');
    expect(asked.html).not.toContain(`id="slip"`);
    expect(asked.text).toContain('Pull-forward gap is 0.16 mm, as typed');
    const sure = await program.get(`${gap}&ok.pull=0.16`);
    expect([sure.status, sure.html.includes('name="ok.pull" value="0.16"')]).toEqual([200, true]);
    const own = '/stud?stack=own&ln.0=plate&lt.0=0.126&lh.0=10.3&nutThread=3/8-24&nutHeight=8.3&pull=4';
    expect((await program.get(own)).text).toContain('Thickness of plate: 0.126 mm? Did you mean 0.126 in?');
    expect((await program.get(own.replace('plate', 'shim'))).status).toBe(200);
    expect((await program.get(`${own}&ok.lt.0=0.126`)).status).toBe(200);
  });

  it('asks about a torque in another unit, of tightening and of the engine, and gives no slip', async () => {
    const two = 'stack=two-piece-four-3-8-24&unit=mm&kFrom=zinc';
    for (const [typed, box, meant] of [
      ['torque=27&engine=250', 'torque', '27 lb·ft'],
      ['torque=37&engine=2500', 'engine', '2500 lb·in'],
      ['torque=27 lb-ft&engine=250', 'engine', '250 lb·ft'],
    ] as const) {
      const page = await program.get(`/stud?${two}&${typed}`);
      expect([page.status, page.html.includes(`name="set.${box}" value="${meant}"`)]).toEqual([422, true]);
      expect(page.html).not.toContain('verdict fits-');
      expect((await program.get(`/stud/slip?${two}&${typed}`)).status).toBe(422);
    }
    expect((await program.get(`/stud?${two}&torque=27&engine=250&ok.torque=27`)).status).toBe(200);
    expect((await program.get(`/stud?${two}&torque=27&engine=250&set.torque=27 lb·ft`)).status).toBe(422);
  });

  it('says nothing of the cover where none was given, though a joint needs a ring of studs', async () => {
    const joint = '/stud?stack=one-piece-four-3-8-24&torque=37&engine=250&kFrom=zinc';
    const bare = (await program.get(joint)).text;
    expect(bare).toContain('The number of holes can’t be checked: the cover’s number of studs is missing.');
    expect(bare).not.toContain('holes, the cover');
    expect((await program.get(`${joint}&jointStuds=4`)).text).toContain(
      'The flexplate has 4 holes, the cover 4 studs.',
    );
    const own =
      '/stud?stack=own&ln.0=plate&lt.0=3.2&lh.0=10.3&nutThread=3/8-24&nutHeight=8.3&pull=4&jointStuds=6&jointCircle=286';
    expect((await program.get(`${own}&torque=37&engine=250&kFrom=zinc`)).text).toContain(
      'the flexplate’s number of holes is missing',
    );
  });

  it('draws each stud whose thread goes on the nut, to scale', async () => {
    const page = await ask({ stack: 'two-piece-four-3-8-24' });
    expect(page.text).toContain('Drawing of Short stud 3/8-24 UNF, to scale');
    expect(page.html.match(/class="more-findings row-drawing"/g)).toHaveLength(1);
  });

  it('takes the proof stress of a marked nut: class 8, M10, 50.5 kN (ISO 898-2)', async () => {
    const own = {
      stack: 'own',
      'lt.0': '3.2',
      'lh.0': '11',
      nutThread: 'M10',
      nutHeight: '8.2',
      nutBearing: '14.6',
      holeCount: '6',
      holeCircle: '292',
      torque: '50',
      engine: '300',
      kFrom: 'zinc',
    };
    expect((await ask({ ...own, nutClass: '8' })).text).toContain('the nut’s proof load is 50.5 kN');
    expect((await ask({ ...own, nutClass: '8', nutProof: '500' })).text).toContain(
      'the nut’s proof load is 29.0 kN',
    );
    const odd = await ask({ ...own, nutClass: '8', nutThread: 'M20' });
    expect([odd.status, odd.text]).toEqual([422, expect.stringContaining('There is no proof stress for 8')]);
  });

  it('counts no shim as a piece of the flexplate, on the page and on the slip', async () => {
    const own = (...layers: readonly [string, string][]) => ({
      stack: 'own',
      nutThread: '3/8-24',
      nutHeight: '8.3',
      ...Object.fromEntries(
        layers.flatMap(([name, mm], i) => [
          [`ln.${i}`, name],
          [`lt.${i}`, mm],
        ]),
      ),
    });
    const shimmed = own(['shim 1', '1'], ['plate', '3.2']);
    expect((await ask(shimmed)).text).toContain('One-piece: shim 1 1.00, plate 3.20, total 4.20 mm');
    const slip = await program.get(`/stud/slip?${new URLSearchParams({ ...shimmed, stud: 'short-3-8-24' })}`);
    expect(slip.text).toContain('One-piece: shim 1 1.00 mm + plate 3.20 mm = 4.20 mm');
    const two = own(['2 mm Shim', '2'], ['plate', '3.2'], ['casting', '8']);
    expect((await ask(two)).text).toContain('Two-piece: 2 mm Shim 2.00');
    expect((await ask(own(['Shim', '1'], ['shim2', '1'], ['plate', '3']))).text).toContain('One-piece: Shim');
    expect((await ask({ ...shimmed, style: 'two-piece' })).text).toContain('Two-piece: shim 1');
  });

  it('says of the short stud in a two-piece stack which dimension fails and by how much', async () => {
    const page = await ask({ stack: 'two-piece-four-3-8-24', stud: 'short-3-8-24' });
    // Pilot 1.016 less plate 3.175; wanted 1.016, tolerances 2 × 0.254 and 0.102.
    expect(page.text).toContain(
      'The stud pilot is 2.16 mm short of the casting when the thread comes to the plate',
    );
    expect(page.text).toContain('Needs a stud pilot at least 3.79 mm longer.');
  });

  it.each([
    ['no layers', { stack: 'own', 'lt.0': '' }, 'The flexplate stack has no layers'],
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
      '"zzz" is not a thread callout',
    ],
    [
      'a nut without its height',
      { stack: 'own', 'lt.0': '3.2', nutThread: '3/8-24' },
      'Nut height is empty.',
    ],
    [
      'a chamfer below nothing',
      { stack: 'own', 'lt.0': '3.2', 'lc.0': '-1' },
      'The hole chamfer of layer 1 is −1 mm; it must be at least 0 mm',
    ],
    ['a gap below nothing', { stack: 'own', 'lt.0': '3.2', pull: '-3' }, 'The pull-forward gap is −3 mm'],
    ['words for a gap', { stack: 'one-piece-four-3-8-24', pull: 'many' }, '"many" is not a plain number'],
  ])('refuses %s with a sentence', async (_what, fields, sentence) => {
    const page = await ask(fields);
    expect(page.status).toBe(422);
    expect(page.text).toContain(sentence);
  });

  it('takes a stack in inches and fractions, and says the same as in millimeters', async () => {
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
    expect(inch.text).toContain('One-piece: plate 0.125, total 0.125 in');
  });

  it('prints a slip that says which stud, and why its neighbor does not do', async () => {
    const page = await program.get('/stud/slip?stack=two-piece-four-3-8-24&stud=long-3-8-24');
    expect(page.text).toContain('Long stud 3/8-24 UNF');
    expect(page.text).toMatch(/Do not use Short stud 3\/8-24 UNF : .*2\.16 mm short of the casting/);
    expect(page.text).toContain(
      "Torque, gap and balance figures of the vehicle's and the parts' makers come first.",
    );
  });
});

describe('the list of flexplate stacks', () => {
  const listed = ({ html }: { html: string }) =>
    [...(/<select id="f-stack"[\s\S]*?<\/select>/.exec(html)?.[0] ?? '').matchAll(/value="([^"]+)"/g)]
      .map((match) => match[1])
      .filter((id) => id !== 'own');

  it('says first what tells them apart: thread, pieces, studs', async () => {
    const { text } = await ask({});
    expect(text).toContain('3/8-24 UNF · two-piece · 4 studs · Two-piece, four 3/8-24');
    expect(text).toContain('M12×1.75 · two-piece · 6 studs ·');
  });

  it('is narrowed by pieces, studs and thread, and keeps the one chosen', async () => {
    expect(listed(await ask({}))).toHaveLength(12);
    expect(listed(await ask({ listStyle: 'two-piece', listCount: '4' }))).toHaveLength(3);
    const thread = await ask({ listStyle: 'two-piece', listCount: '4', listThread: '3/8-24 UNF-2B' });
    expect(listed(thread)).toEqual(['two-piece-four-3-8-24']);
    expect(thread.html).toMatch(/<details[^>]*id="fewer-stacks"[^>]*open/);
    const other = await ask({ stack: 'one-piece-six-m10', listCount: '3' });
    expect(listed(other)).toHaveLength(4);
    expect(other.text).toContain('Short stud M10×1.5 fits');
  });
});

describe('what would do instead', () => {
  const two = { stack: 'two-piece-four-3-8-24' };

  it('says beside a no what would make something better of it, and which stud is the same but longer', async () => {
    const page = await ask({ ...two, stud: 'short-3-8-24' });
    expect(page.text).toMatch(
      /What would work: .*A stud with the same thread and at least 27\.80 mm length from pad would fit\./,
    );
    expect(page.text).toContain('The same but 6.35 mm longer: Long stud 3/8-24 UNF , fits here.');
    const plain = await ask({ stack: 'one-piece-four-3-8-24' });
    expect(/id="stud-short-3-8-24"[\s\S]*?<\/li>/.exec(plain.html)?.[0]).not.toContain('What would work');
  });

  it('looks at one thread, or only at what is in stock', async () => {
    const ids = ({ html }: { html: string }) =>
      [...html.matchAll(/id="stud-((?:short|long)-[\w-]+)"/g)].map((match) => match[1]);
    const one = await ask({ ...two, onlyThread: '3/8-24 UNF-2A' });
    expect(ids(one).sort()).toEqual(['long-3-8-24', 'short-3-8-24']);
    const stocked = ids(await ask({ ...two, inStock: '1' }));
    expect(stocked).not.toContain('long-m10');
    expect(ids(await ask(two))).toContain('long-m10');
    expect(stocked).toHaveLength(15);
  });

  it('says how many there are and where they lie, on the page and on the slip', async () => {
    expect((await ask(two)).text).toContain('48 in stock, shelf L-3');
    const slip = await program.get('/stud/slip?stack=two-piece-four-3-8-24&stud=long-3-8-24');
    expect(slip.text).toContain('; 48 in stock, shelf L-3');
  });

  it('names worst case, RSS and simulation apart, with the share that would fail', async () => {
    const page = await ask({ ...two, stud: 'short-3-8-24' });
    expect(page.text).toMatch(/Lining up the pieces −3\.1[78] −3\.55 −3\.7[89] all/);
    expect((await ask(two)).text).toContain(
      'Tolerances With every size within its tolerance, no assembly would fail.',
    );
  });

  it('a tip that may strike the engine side is in the table, and the table agrees with the verdict', async () => {
    const page = await ask({
      stack: 'own',
      style: 'one-piece',
      stud: 'short-3-8-24',
      'ln.0': 'plate',
      'lt.0': '3.2',
      'lo.0': '.1',
      'lh.0': '10.3',
      holeCount: '4',
      holeCircle: '286',
      tipRoom: '24.203',
      nutThread: '3/8-24',
      nutHeight: '8.3',
      nutTolerance: '.2',
      nutCountersink: '.1',
      nutBearing: '13.4',
      nutTensile: '900',
      pull: '4',
    });
    expect(page.text).toContain('does not fit: its end hits the engine side');
    expect(page.text).toMatch(
      /Tolerances With every size within its tolerance, (9|10)\.\d % of assemblies would fail/,
    );
    expect(page.text).toMatch(/Stud end clearance 0\.20 −0\.05 −0\.05 (9|10)\.\d %/);
  });

  it('shows stacks of one style only', async () => {
    const page = await program.get('/stud/stacks?stud=short-3-8-24&onlyStyle=two-piece');
    const ids = [...page.html.matchAll(/id="stack-([\w-]+)"/g)].map((match) => match[1]);
    expect(ids).toHaveLength(6);
    expect(ids.every((id) => id?.startsWith('two-piece'))).toBe(true);
  });
});

describe('the joint', () => {
  const joint = { stack: 'two-piece-four-3-8-24', torque: '27 lb-ft', engine: '350 N·m', kFrom: 'zinc' };

  it('says in words whether it holds, with what is enough and what is too much, and whose torque comes first', async () => {
    const page = await ask(joint);
    expect(page.status).toBe(200);
    expect(page.text).toContain('Joint holds.');
    expect(page.text).toContain("The vehicle maker's torque comes first");
    expect(page.text).toContain('36.6 N·m is not marked as the vehicle maker’s figure.');
    // K d F as calc/stud/joint/torqueWindow.test.ts: 0.2 · 9.525e-3 · 0.75 · 586 · 56.663/1.25.
    expect(page.text).toContain('to 38.0 N·m holds and is not too much for the stud');
    expect(page.html).toMatch(/<option[^>]*>0.20: zinc plated<\/option>/);
    expect(page.text).toContain('0.20, 0.18, 0.16, 0.12, 0.09: Shigley, 9th ed., table 8-15');
  });

  it('reads the same torque in N·m and in lb-ft', async () => {
    const figures = (page: { text: string }) =>
      /At the lowest preload the joint holds (\d+)/.exec(page.text)?.[1];
    const bare = await ask({ ...joint, torque: '27', engine: '350 N·m', torqueUnit: 'lb·ft' });
    expect(figures(bare)).toBe(figures(await ask(joint)));
    expect(figures(bare)).not.toBe(figures(await ask({ ...joint, torque: '27' })));
  });

  it('says no, and why, where the engine is too strong for it', async () => {
    const page = await ask({ ...joint, engine: '700 N·m', torqueFrom: 'maker' });
    expect(page.text).toContain('Joint does not hold.');
    expect(page.text).toContain('No torque works');
    expect(page.text).toContain('36.6 N·m is the vehicle maker’s figure: use it.');
  });

  it('takes number and circle from the stack, and whatever is typed before them', async () => {
    const slip = (page: { text: string }) =>
      Number(/the joint (?:holds|slips at) (\d+) N·m/.exec(page.text)?.[1]);
    const four = slip(await ask(joint));
    expect(slip(await ask({ ...joint, jointStuds: '8' }))).toBeCloseTo(2 * four, -1);
  });

  it.each([
    ['a torque without an engine', { engine: '' }, 'Engine torque is empty.'],
    ['an engine without a torque', { torque: '' }, 'Tightening torque is empty.'],
    ['no finish', { kFrom: '' }, 'Nut factor K: choose a figure'],
    ['its own factor, not typed', { kFrom: 'own' }, 'Nut factor K is empty.'],
    ['a torque in millimetres', { torque: '27 mm' }, 'mm is a unit of length, and this is a torque'],
    ['a spread of all of it', { scatterFrom: 'own', scatter: '100' }, 'The torque-wrench scatter is 1'],
    ['nothing for a torque', { torque: '0' }, 'The tightening torque is 0 N·m; it must be more than 0'],
  ])('refuses %s with a sentence, and keeps what was typed', async (_what, change, sentence) => {
    const page = await ask({ ...joint, ...change });
    expect(page.status).toBe(422);
    expect(page.text).toContain(sentence);
    expect(page.html).toMatch(/name="torque"/);
  });

  it('stands on the slip as large as the fit, and never as the torque to use', async () => {
    const page = await program.get(`/stud/slip?${new URLSearchParams(joint)}`);
    expect(page.html).toMatch(/<h2 class="slip-head">/);
    expect(page.text).toContain('Holds at 37 N·m');
    expect(page.text).toContain('37 N·m , not the vehicle maker’s figure: look that up first.');
    expect(page.text).toContain('Look up the vehicle maker’s torque.”');
  });
});

describe('a slip is given only for a whole answer', () => {
  const two = 'stack=two-piece-four-3-8-24&unit=mm';
  it.each([
    ['a gap that may be in inches', `${two}&pull=3/16`],
    ['a gap in words', `${two}&pull=abc`],
    ['a torque that is none', `${two}&torque=47xyz&engine=250&kFrom=zinc`],
    ['a torque without an engine', `${two}&torque=47`],
  ])('not with %s', async (_what, query) => {
    for (const path of ['/stud', '/stud/slip']) {
      const page = await program.get(`${path}?${query}`);
      expect([path, page.status]).toEqual([path, 422]);
      expect(page.html).toContain('id="stud-form"');
      expect(page.html).not.toContain('class="slip"');
      expect(page.html).not.toContain('id="slip"');
      expect(page.html).not.toContain('verdict fits-');
    }
  });

  const OWN = 'stack=own&unit=mm&ln.0=plate&lt.0=3.2&lh.0=10.3&nutThread=3/8-24&nutHeight=8.3&pull=4';
  it.each([
    ['nut height in inches', OWN.replace('8.3', '.328'), 'Nut height: .328 mm? Did you mean .328 in?'],
    [
      'a hole in inches',
      OWN.replace('10.3', '.406'),
      'Hole diameter of plate: .406 mm? Did you mean .406 in?',
    ],
    [
      'a slipped bolt circle',
      `${OWN}&holeCircle=28.6`,
      'Bolt circle diameter: 28.6 mm? Did you mean 286 mm?',
    ],
    ['room in inches', `${OWN}&tipRoom=1.5`, 'Room for the stud end: 1.5 mm? Did you mean 1.5 in?'],
  ])('not with %s, which is asked about', async (_what, query, question) => {
    const page = await program.get(`/stud?${query}`);
    expect(page.status).toBe(422);
    expect(page.text.replace(/Did you mean (\d*)\.(\d+) in/, 'Did you mean .$2 in')).toContain(
      question.replace(/Did you mean (\d*)\.(\d+) in/, 'Did you mean .$2 in'),
    );
    expect((await program.get(`/stud/slip?${query}`)).status).toBe(422);
  });

  it('asks about the lengths of a stud in the hand, of a flexplate and of the gap', async () => {
    const stud = '/stud/stacks?stud=own&unit=mm&thread=3/8-24&threadStart=.04&threadEnd=.9&projection=.95';
    expect((await program.get(stud)).text).toContain('Length from pad: .95 mm?');
    expect((await program.get('/stud/flexplate?unit=mm&total=.5')).text).toContain('.5 mm? Did you mean');
    const gap = await program.get('/stud/gap?unit=mm&depth=1.1&standsOut=.9');
    expect([gap.status, gap.text]).toEqual([422, expect.stringContaining('1.1 mm? Did you mean 1.1 in?')]);
    expect(
      (await program.get('/stud/gap?unit=mm&depth=1.1&standsOut=.9&ok.depth=1.1&ok.standsOut=.9')).status,
    ).toBe(200);
  });

  it('the gap of the caller before does not stay when the stack is changed', async () => {
    const page = await program.get(
      '/stud?stack=one-piece-four-3-8-24&unit=mm&pull=3.3&gapOf=two-piece-four-3-8-24',
    );
    expect(page.status).toBe(200);
    expect(page.html).not.toMatch(/name="pull"[^>]*value="3/);
    expect(page.text).not.toContain('Used: 3.30 mm');
  });

  it('not where no thread is known: a 14.6 mm stack with four studs names no stud', async () => {
    const query = 'stack=own&unit=mm&ln.0=all&lt.0=14.6&lh.0=10.3&holeCount=4&ok.lt.0=14.6';
    const page = await program.get(`/stud?${query}`);
    expect(page.text).toContain('The nut thread is missing, so no stud can be named.');
    expect(page.html).not.toContain('verdict fits-');
    expect((await program.get(`/stud/slip?${query}`)).status).toBe(422);
  });

  it('names quantity, class, gap and who: four studs, Grade 5, the catalog’s gap said so', async () => {
    const page = await program.get(`/stud/slip?${two}`);
    expect(page.text).toMatch(/4 × Long stud 3\/8-24 UNF , Grade 5/);
    expect(page.text).toContain('from the catalog: measure yours');
    expect(page.text).toContain('Measure your pull-forward gap');
    const measured = await program.get(`/stud/slip?${two}&pull=4`);
    expect(measured.text).toMatch(/Pull-forward gap 4\.00 mm, measured/);
    expect(measured.text).toContain(
      '“You have a two-piece flexplate and a pull-forward gap of 4.00 millimeters.',
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
    expect(page.text).toContain('Drawing of One-piece, four 3/8-24 on an 11.25 in bolt circle, to scale');
    const two = /id="stack-two-piece-four-3-8-24"[\s\S]*?<\/li>/.exec(page.html)?.[0];
    expect(two).toContain('Needs a stud pilot at least');
    expect(page.text).toContain('10 more with a different nut thread');
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
