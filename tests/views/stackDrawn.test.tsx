import { describe, expect, it } from 'vitest';
import { readThread } from '../../shared/quantity/readThread.ts';
import { StackDrawn, type StackDrawnProps } from '../../views/drawings/stackDrawn.tsx';
import { renderPart } from '../../views/render.ts';
import { expectSound, numberOf, tagsOf, valuesOf } from './markup.ts';
import { nut } from './samples.ts';

const thread = readThread('3/8-24', 'internal');
const NUT = { ...nut, thread: thread.ok ? thread.thread : null, heightMm: 8.3, washerMm: 0 };

const layer = (
  kind: 'plate' | 'casting' | 'shim',
  thicknessMm: number,
  holeDiameterMm: number | null = 10.3,
) => ({
  name: kind,
  kind,
  thicknessMm,
  holeDiameterMm,
});

const TWO_PIECE: StackDrawnProps = {
  id: 's',
  layers: [layer('shim', 0.8, 10.5), layer('plate', 3.2), layer('casting', 11.1, 10.7)],
  whole: true,
  nut: NUT,
  gapMm: 4,
  usualHoleMm: 10.3,
  unit: 'mm',
};

const draw = (changes: Partial<StackDrawnProps> = {}) =>
  renderPart(<StackDrawn {...TWO_PIECE} {...changes} />);

/** The layers as drawn, from the left: the hatched halves above the axis. */
function layersIn(html: string) {
  return tagsOf(html, 'rect')
    .filter(
      (tag) =>
        /url\(#s-/.test(tag) && numberOf(tag, 'y') < 0 && numberOf(tag, 'y') + numberOf(tag, 'height') < 0,
    )
    .map((tag) => ({
      left: numberOf(tag, 'x'),
      width: numberOf(tag, 'width'),
      hole: -2 * (numberOf(tag, 'y') + numberOf(tag, 'height')),
      hatch: /url\(#s-(\w+-\d)\)/.exec(tag)?.[1] ?? '',
    }));
}

/** Each dimension: its figure, its word, and how far its two arrow points are apart. */
function dimensionsIn(html: string) {
  return html
    .split('<g class="dimension">')
    .slice(1)
    .map((part) => {
      const arrows = /d="([^"]*)" class="arrow"/.exec(part)?.[1] ?? '';
      const [from = 0, to = 0] = [...arrows.matchAll(/M([\d.]+) /g)].map(([, x]) => Number(x));
      const [figure = '', word = ''] = [...part.matchAll(/<text[^>]*>([^<]*)</g)].map(([, text]) => text);
      return { figure: Number(figure), word, apart: Math.abs(to - from) };
    });
}

const MANY = [
  layer('shim', 0.5, 12),
  layer('plate', 3.2, null),
  layer('plate', 1.6),
  layer('casting', 8),
  layer('plate', 2),
  layer('shim', 1.2, 11),
];

describe('a flexplate stack as typed', () => {
  it.each([
    ['a two-piece stack with gap and nut', {}],
    ['inches', { unit: 'in' as const }],
    ['one thin plate alone', { layers: [layer('plate', 1.5, null)], nut: null, gapMm: null }],
    ['six layers', { layers: MANY }],
    ['twelve layers', { layers: [...MANY, ...MANY], gapMm: 30 }],
    ['a hole as large as nobody drills', { layers: [layer('plate', 3.2, 90)], nut: null }],
  ])(
    'is to one scale along and across the axis, each figure the distance of its arrows, with %s',
    (_, changes) => {
      const props = { ...TWO_PIECE, ...changes };
      const html = draw(changes);
      expectSound(html);
      const drawn = layersIn(html);
      expect(drawn).toHaveLength(props.layers.length);
      const k =
        Math.max(...drawn.map(({ width }) => width)) /
        Math.max(...props.layers.map((one) => one.thicknessMm));
      let left = drawn[0]?.left ?? 0;
      for (const [i, { thicknessMm, holeDiameterMm }] of props.layers.entries()) {
        expect(drawn[i]?.left, `layer ${i + 1} begins where the one before ends`).toBeCloseTo(left, 1);
        expect(drawn[i]?.width, `width of layer ${i + 1}`).toBeCloseTo(k * thicknessMm, 1);
        const hole = k * (holeDiameterMm ?? 10.3);
        // Coordinates are written to a hundredth: the scale is as exact as the layer it was read from is wide.
        const within = 0.02 + (0.01 * hole) / (drawn[i]?.width ?? 1);
        expect(Math.abs((drawn[i]?.hole ?? 0) - hole), `hole of layer ${i + 1}`).toBeLessThan(within);
        left += k * thicknessMm;
      }
      const perFigure = props.unit === 'in' ? 25.4 : 1;
      const rounding = props.unit === 'in' ? 0.0005 : 0.005;
      const dimensions = dimensionsIn(html);
      for (const { figure, word, apart } of dimensions)
        expect(Math.abs(apart / k / perFigure - figure), `${word} ${figure}`).toBeLessThan(rounding + 0.005);
      expect(dimensions.filter(({ word }) => /plate|casting|shim/.test(word))).toHaveLength(
        props.layers.length,
      );
    },
  );

  it('keeps all of it on the paper', () => {
    for (const changes of [{}, { layers: [...MANY, ...MANY], gapMm: 30 }, { gapMm: null, nut: null }]) {
      const html = draw(changes);
      const [, top = 0, width = 0, height = 0] = (valuesOf(html, 'viewBox')[0] ?? '').split(' ').map(Number);
      for (const tag of [...tagsOf(html, 'text'), ...tagsOf(html, 'rect')]) {
        expect(numberOf(tag, 'x')).toBeGreaterThanOrEqual(0);
        expect(numberOf(tag, 'x')).toBeLessThanOrEqual(width);
        if (!valuesOf(tag, 'y')[0]) continue;
        expect(numberOf(tag, 'y')).toBeGreaterThanOrEqual(top);
        expect(numberOf(tag, 'y')).toBeLessThanOrEqual(top + height);
      }
    }
  });

  it('tells plate, casting and shim by hatch and by word, and neighbors of a kind by its way', () => {
    const html = draw({ layers: MANY });
    expect(layersIn(html).map(({ hatch }) => hatch)).toEqual([
      'shim-0',
      'plate-1',
      'plate-0',
      'casting-1',
      'plate-0',
      'shim-1',
    ]);
    const patterns = html.split('<pattern').slice(1);
    const lines = new Map(patterns.map((one) => [valuesOf(one, 'id')[0], one.replace(/id="[^"]*"/, '')]));
    expect(new Set(lines.values()).size).toBe(6);
    const named = draw({ layers: [{ ...layer('casting', 9), name: 'ring' }, layer('plate', 3)] });
    expect(named).toContain('>ring (casting), Ø 10.30</text>');
    expect(named).toContain('>plate, Ø 10.30</text>');
  });

  it('dimensions gap, each layer, the whole and the nut, and no whole where a layer is left out', () => {
    const words = (html: string) =>
      dimensionsIn(html)
        .map(({ word }) => word)
        .sort();
    expect(words(draw())).toEqual(['casting', 'gap', 'nut', 'plate', 'shim', 'stack']);
    expect(words(draw({ whole: false, gapMm: null, nut: null }))).toEqual(['casting', 'plate', 'shim']);
  });

  it('has the gap between pad and first layer, and the hole dashed where none was entered', () => {
    const html = draw();
    const first = layersIn(html)[0]!;
    const k = first.width / 0.8;
    const pad = tagsOf(html, 'rect', 'metal')[0] ?? '';
    expect((first.left - numberOf(pad, 'x') - numberOf(pad, 'width')) / k).toBeCloseTo(4, 1);
    expect(html).not.toContain('hidden-line');
    expect(draw({ layers: [layer('plate', 3.2, null)] })).toContain('hidden-line');
    expect(html).toContain(
      'From the converter side: shim 0.80 mm thick, hole 10.50 mm; plate 3.20 mm thick, hole 10.30 mm; casting 11.10 mm thick, hole 10.70 mm. Nut 8.30 mm high. Pull-forward gap 4.00 mm.',
    );
  });
});
