import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true, unit: 'in' });
});
afterAll(() => program.close());

const drawn = async (typed: Record<string, string>) => {
  const { status, html } = await program.get(
    `/catalogue/family/new/drawing?${new URLSearchParams({ unit: 'in', ...typed })}`,
  );
  expect(status).toBe(200);
  return html.slice(html.indexOf('id="cover-drawn"'), html.indexOf('</figure>'));
};

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
      expect(figure).toMatch(new RegExp(`>${letter}</tspan>\\s*${text}</text>`));
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
