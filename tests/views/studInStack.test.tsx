import { describe, expect, it } from 'vitest';
import { placeOf, StudInStack, stackScale } from '../../views/drawings/studInStack.tsx';
import { renderPart } from '../../views/render.ts';
import { expectSound, numberOf, tagsOf, valuesOf } from './markup.ts';
import { nut, stack, stud } from './samples.ts';

describe('the stud in its stack', () => {
  const props = { id: 's', stud, stack, nut, pullForwardMm: 4, check: null, unit: 'mm' } as const;
  const views = (changes: Partial<Parameters<typeof StudInStack>[0]> = {}) =>
    renderPart(<StudInStack {...props} {...changes} />);

  it('is drawn to one scale in both views', () => {
    const k = stackScale(props);
    const html = views();
    expectSound(html);
    expect(tagsOf(html, 'svg')).toHaveLength(2);
    for (const svg of html.split('</svg>').slice(0, 2)) {
      const layers = tagsOf(svg, 'rect').filter((tag) => tag.includes('fill="url'));
      const widths = layers.map((tag) => numberOf(tag, 'width') / k);
      expect(widths.filter((mm) => Math.abs(mm - 3.6) < 0.01)).toHaveLength(2);
      expect(widths.filter((mm) => Math.abs(mm - 6.4) < 0.01)).toHaveLength(2);
    }
    // The body goes from the pad face to the tip, 31 mm, and is 7/16 in across.
    const body = /<path d="M([\d.]+) (-[\d.]+)H[^"]*" class="stud-body"/.exec(html);
    const xs = [...(/d="([^"]*)" class="stud-body"/.exec(html)?.[1] ?? '').matchAll(/[MHL]([\d.]+)/g)].map(
      (m) => Number(m[1]),
    );
    expect((Math.max(...xs) - Number(body?.[1])) / k).toBeCloseTo(31, 1);
    expect((-2 * Number(body?.[2])) / k).toBeCloseTo(11.11, 1);
  });

  it('moves the stud back by the gap, and leaves the stack where it is', () => {
    const starts = [...views().matchAll(/d="M([\d.]+) -[\d.]+H[^"]*" class="stud-body"/g)].map((m) =>
      Number(m[1]),
    );
    expect((starts[0] ?? 0) - (starts[1] ?? 0)).toBeCloseTo(4 * stackScale(props), 1);
    expect(starts[0]).toBeCloseTo(placeOf(props, 0), 1);
  });

  it('carries the lengths that matter, in the unit of the reader', () => {
    const figures = (html: string) => [...html.matchAll(/dim-figure[^>]*>([^<]+)</g)].map((m) => m[1]);
    const [seated = '', back = ''] = views().split('</svg>');
    expect(figures(seated)).toEqual(['8.70', '10.00', '21.00']);
    expect(figures(back)).toEqual(['9.00', '4.00', '10.00', '17.00']);
    expect(figures(views({ unit: 'in' }).split('</svg>')[0] ?? '')).toEqual(['0.343', '0.394', '0.827']);
  });

  it('says short where the tip ends inside the stack', () => {
    const html = views({ stud: { ...stud, threadEndMm: 10, projectionMm: 12.5 } }).split('</svg>')[1] ?? '';
    expect(html).toMatch(/dim-bad[^>]*>1\.50</);
    expect(html).toContain('>short</text>');
    expect(html).toContain('is 1.50 mm short of the engine side');
    expect(views()).not.toContain('>short</text>');
  });

  it('needs no nut, no gap and no pilot', () => {
    const html = views({ nut: null, pullForwardMm: null, stud: { ...stud, pilotDiameterMm: null } });
    expectSound(html);
    expect(tagsOf(html, 'svg')).toHaveLength(1);
    expect(html).not.toContain('engaged');
  });

  it('hatches neighbors against each other', () => {
    const seated = views().split('</svg>')[0] ?? '';
    const fills = tagsOf(seated, 'rect')
      .flatMap((tag) => valuesOf(tag, 'fill'))
      .map((fill) => /h(45|135)/.exec(fill)?.[1]);
    expect(fills.slice(0, 4)).toEqual(['45', '45', '135', '135']);
  });
});
