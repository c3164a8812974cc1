import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true, unit: 'in' });
});
afterAll(() => program.close());

const drawnAs = async (kind: string, typed: Record<string, string>) => {
  const { status, html } = await program.get(
    `/catalogue/${kind}/new/drawing?${new URLSearchParams({ unit: 'in', ...typed })}`,
  );
  expect(status).toBe(200);
  return html.slice(html.indexOf('id="entry-drawn"'), html.indexOf('</figure>'));
};
const drawn = (typed: Record<string, string>) => drawnAs('family', typed);
/** A figure after the letter of its box. */
const lettered = (letter: string, text: string) => new RegExp(`>${letter}</tspan>\\s*${text}</text>`);

describe('a cover type is drawn as it is typed', () => {
  it('nothing typed: every letter stands in the drawing, without a figure', async () => {
    const figure = await drawn({});
    for (const letter of 'ABCDEFGH') expect(figure).toContain(`>${letter}</tspan>`);
    expect(figure).not.toContain('Ø');
    expect(figure).toContain('What is blank is drawn as usual.');
  });

  it('each figure stands after the letter of its box', async () => {
    const figure = await drawn({ circle: '11.25', trackOuter: '10.375', nominal: '0.197', pad: '0.9375' });
    for (const [letter, text] of [
      ['A', 'Ø 11.25'],
      ['C', 'Ø 10.375'],
      ['D', '0.197'],
      ['G', 'Ø 0.9375'],
    ])
      expect(figure).toMatch(lettered(letter!, text!));
    expect(figure).toMatch(/>B<\/tspan><\/text>/);
  });

  it('what cannot be read is said, and the rest is drawn', async () => {
    const figure = await drawn({ circle: '11.25', trackOuter: 'ten' });
    expect(figure).toContain('Ø 11.25');
    expect(figure).toContain('Not in the drawing:');
  });

  it('figures that make no cover are not drawn as if they did', async () => {
    const figure = await drawn({ trackInner: '10.5', trackOuter: '9.5' });
    expect(figure).toContain(
      'B, friction surface inner diameter, must be smaller than C, friction surface outer diameter.',
    );
    expect(figure).not.toContain('Ø');
  });
});

it('the form of a kept cover type shows its drawing, and the letter before each box it letters', async () => {
  const { html } = await program.get('/catalogue/family/1125-4-plain');
  expect(html).toMatch(/>A<\/tspan>\s*Ø 11.25</);
  for (const letter of 'ABCDEFGH')
    expect(html).toContain(`<b class="letter" aria-hidden="true">${letter}</b>`);
  expect(html).toContain('To scale.');
});

describe('a stud is drawn as it is typed', () => {
  const STUD = {
    thread: '3/8-24',
    threadStart: '.04',
    threadEnd: '29/32',
    projection: '1.195',
    pilot: '.315',
  };

  it('nothing typed: the letter of each box that has to be filled, without a figure', async () => {
    const figure = await drawnAs('stud', {});
    for (const letter of 'ABCD') expect(figure).toContain(`>${letter}</tspan></text>`);
    expect(figure).toContain('What is blank is drawn as usual.');
  });

  it('fractions and decimals stand in it as the shop letters them, with the thread', async () => {
    const figure = await drawnAs('stud', STUD);
    expect(figure).toMatch(lettered('B', '0.9063'));
    expect(figure).toMatch(lettered('C', '1.195'));
    expect(figure).toMatch(lettered('D', 'Ø 0.315'));
    expect(figure).toContain('>3/8-24 UNF-2A</text>');
    expect(figure).toContain('To scale.');
  });

  it('its lengths are to one scale: the last full thread at 0.9 of a stud is at 0.9 of its dimension', async () => {
    const figure = await drawnAs('stud', { ...STUD, threadEnd: '.9', projection: '1.0' });
    const reach = (letter: string) => {
      const part = figure.split('<g class="dimension">').find((one) => one.includes(`>${letter}</tspan>`))!;
      const [, from, to] = /d="M([\d.]+) [^M]*M([\d.]+) /.exec(part)!;
      return Number(to) - Number(from);
    };
    expect(reach('B') / reach('C')).toBeCloseTo(0.9, 3);
  });

  it('a length in the wrong unit is asked about, and not drawn', async () => {
    const figure = await drawnAs('stud', { ...STUD, projection: '30.4' });
    expect(figure).toContain('Not in the drawing: length from pad: 30.4 in?');
    expect(figure).not.toContain('30.4</text>');
  });

  it('a length below zero is said, and not drawn', async () => {
    const figure = await drawnAs('stud', { ...STUD, projection: '-1.2' });
    expect(figure).toContain('length from pad: −1.2 can’t be drawn. Enter it above 0.');
    expect(figure).not.toContain('1.2</text>');
  });

  it('a thread that ends before it begins is said, and drawn without figures', async () => {
    const figure = await drawnAs('stud', { ...STUD, threadStart: '.3', threadEnd: '.2' });
    expect(figure).toContain('A, first full thread, must be smaller than B, last full thread.');
    expect(figure).not.toContain('1.195');
  });
});

it('a nut and a washer are drawn with the letters of their boxes', async () => {
  const nut = await drawnAs('nut', { nutThread: '3/8-16', nutHeight: '21/64', nutBearing: '.528' });
  expect(nut).toMatch(lettered('A', '0.3281'));
  expect(nut).toMatch(lettered('C', 'Ø 0.528'));
  expect(nut).toContain('>3/8-16 UNC-2B</text>');
  const washer = await drawnAs('washer', { inner: '.41', outer: '.8125', thickness: '.0625' });
  for (const [letter, text] of [
    ['A', 'Ø 0.41'],
    ['B', 'Ø 0.8125'],
    ['C', '0.0625'],
  ])
    expect(washer).toMatch(lettered(letter!, text!));
});

describe('a gauge is drawn as how sure one reading with it is', () => {
  it('beside the least metal between new wall and minimum of any cover type', async () => {
    // k 2, so u_cal is 0.0003; with s 0.0004 that is u 0.0005, and 1.645 times u at 95 %.
    const figure = await drawnAs('gauge', {
      gaugeKind: 'caliper',
      calibration: '.0006',
      repeatability: '.0004',
    });
    expect(figure).toMatch(/new wall to minimum, [^<]+<\/text>/);
    expect(figure).toMatch(/95 % sure<\/text>[^>]*>0\.00082 in</);
    expect(figure).toContain('>0.0003 in<');
  });

  it('an indicator beside the runout allowed; nothing entered is said', async () => {
    const figure = await drawnAs('gauge', { gaugeKind: 'indicator' });
    expect(figure).toContain('runout allowed after the cut');
    expect(figure).toContain('>not entered<');
  });
});

it('what has no drawing there is not found', async () => {
  expect((await program.get('/catalogue/criteria/new/drawing')).status).toBe(404);
});
