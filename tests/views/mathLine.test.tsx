import { describe, expect, it } from 'vitest';
import { readFormulas } from '../../src/web/how/formulas.ts';
import { formulaPieces } from '../../views/parts/how/formulaText.tsx';
import { plainSigns } from '../../views/parts/how/formulaTree.ts';
import { MathLine } from '../../views/parts/how/mathLine.tsx';
import { renderPart } from '../../views/render.ts';

const set = (text: string) => renderPart(<MathLine text={text} />);
const shown = (html: string) =>
  html
    .replace(/<[^>]+>/g, '')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&amp;/g, '&');

/** Symbols, numbers and signs in their order; brackets and strokes of fractions are set as lines. */
const signs = (text: string) =>
  plainSigns(text.replace(/(?<=\p{L}\d?),(?=max|min|nut)/gu, ''))
    .replace(/[\s()[\]{}/_^√∛]/g, '')
    .replaceAll('-', '−');

const lines = readFormulas().flatMap(({ name, text }) =>
  formulaPieces(text)
    .filter(({ formula }) => formula)
    .map((piece) => [name, piece.text] as const),
);

describe('a formula as MathML', () => {
  it('is there for the calculations', () => expect(lines.length).toBeGreaterThan(100));

  it.each(lines)('has the symbols and numbers of its text: %s, %s', (_, text) => {
    const html = set(text);
    expect(html).toContain('<math>');
    // The 3 of a cube root stands after what is under it.
    const roots = [...text].filter((sign) => sign === '∛').length;
    if (roots === 0) expect(signs(shown(html))).toBe(signs(text));
    else {
      const sorted = (one: string) => [...one].sort().join('');
      expect(sorted(signs(shown(html)))).toBe(sorted(signs(text) + '3'.repeat(roots)));
    }
    expect(html.match(/<(?:msqrt|mroot)>/g)?.length ?? 0).toBe(
      [...text].filter((sign) => '√∛'.includes(sign)).length,
    );
    expect(html).not.toMatch(/<mo[^>]*>[_^√]</);
  });

  it('sets fractions, roots, and small signs where they belong', () => {
    expect(set('k = (a + b)/2')).toContain(
      '<mfrac><mrow><mi>a</mi><mo form="infix">+</mo><mi>b</mi></mrow><mn>2</mn></mfrac>',
    );
    expect(set('√(a² + b²)')).toContain('<msqrt><mrow><msup><mi>a</mi><mn>2</mn></msup>');
    expect(set('t_p(ν)·u')).toContain('<msub><mi>t</mi><mi>p</mi></msub>');
    expect(set('uᵢ²')).toContain('<msubsup><mi>u</mi><mi>i</mi><mn>2</mn></msubsup>');
    expect(set('s/√n')).toContain('<mfrac><mi>s</mi><msqrt><mi>n</mi></msqrt></mfrac>');
    expect(set('|a − b|')).toContain('<mo>|</mo><mrow><mi>a</mi>');
    expect(set('draws that pass/all draws')).toContain(
      '<mfrac><mtext>draws that pass</mtext><mtext>all draws</mtext></mfrac>',
    );
  });

  it('may end a line before a relation and after a comma, so that it needs no scrolling', () => {
    expect(set('x = r·cos θ,  y = r·sin θ').match(/<math>/g)).toHaveLength(4);
  });
});
