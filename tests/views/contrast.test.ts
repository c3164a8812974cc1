import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const css = ['look.css', 'drawings.css', 'paper.css', 'slip.css']
  .map((name) => readFileSync(new URL(`../../views/assets/${name}`, import.meta.url), 'utf8'))
  .join('\n');

/** The custom properties of one `:root` block. */
function properties(block: string): Record<string, string> {
  return Object.fromEntries(
    [...block.matchAll(/--([a-z-]+):\s*(#[0-9a-f]{6})/g)].map((match) => [match[1] ?? '', match[2] ?? '']),
  );
}

const roots = [...css.matchAll(/:root \{([^}]*)\}/g)].map((match) => match[1] ?? '');
const light = properties(roots[0] ?? '');
const dark = { ...light, ...properties(roots[1] ?? '') };
const printed = { ...light, ...properties(roots.at(-1) ?? '') };

/** WCAG 2.2, relative luminance and contrast ratio. */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((share) => (share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4)) as [
    number,
    number,
    number,
  ];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

const TEXT: readonly [string, string][] = [
  ...['ink', 'faint', 'cut', 'pass', 'caution', 'fail', 'link', 'line'].map((text): [string, string] => [
    text,
    'sheet',
  ]),
  ...['ink', 'faint', 'link', 'fail', 'caution'].map((text): [string, string] => [text, 'wash']),
  ['ink', 'field'],
  ['ink', 'metal'],
  ['sheet', 'ink'],
  ['sheet', 'line'],
  ['ink', 'desk'],
];
/** Lines, shapes and the ring round what has the focus: 3 to 1. */
const SHAPES: readonly [string, string][] = [
  ['line', 'sheet'],
  ['line', 'desk'],
  ['line', 'wash'],
  ['line', 'metal'],
  ['cut', 'sheet'],
  ['cut', 'metal'],
  ['fail', 'metal'],
  ['heat', 'sheet'],
  ['focus', 'sheet'],
  ['focus', 'wash'],
  ['on-sign', 'pass'],
  ['on-caution', 'caution-fill'],
];

describe.each([
  ['light', light],
  ['dark', dark],
  ['on paper', printed],
])('%s', (_, colours) => {
  it.each(TEXT)('%s is read on %s', (text, ground) => {
    expect(contrast(colours[text] ?? '', colours[ground] ?? '')).toBeGreaterThanOrEqual(4.5);
  });
  it.each(SHAPES)('%s is seen on %s', (shape, ground) => {
    expect(contrast(colours[shape] ?? '', colours[ground] ?? '')).toBeGreaterThanOrEqual(3);
  });
});

describe('the measure of contrast', () => {
  it('knows the two ends and a middle (WCAG: #777 on white is 4.48)', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
  });
});

describe('the look of the pages', () => {
  it('keeps boxes and buttons at least 48 px tall', () => {
    const heightOf = (selector: string) =>
      Number(new RegExp(`\\n${selector} \\{[^}]*min-height: (\\d+)px`).exec(css)?.[1]);
    expect(heightOf('input,\nselect,\ntextarea')).toBeGreaterThanOrEqual(48);
    expect(heightOf('\\.button,\nbutton')).toBeGreaterThanOrEqual(48);
    expect(heightOf('\\.radio')).toBeGreaterThanOrEqual(48);
    expect(heightOf('\\.finding-line')).toBeGreaterThanOrEqual(48);
  });

  it('keeps lettering in a drawing at 12 px or more where the drawing is shown smallest', () => {
    const sizes = [
      ...css.matchAll(
        /\.drawing ([.a-z-]*)\s?(?:text|\.[a-z-]+)? ?\{[^}]*?font(?:-size)?:[^;}]*?([\d.]+)px/g,
      ),
    ];
    const px = sizes.map((match) => ({ wide: (match[1] ?? '').includes('wide'), size: Number(match[2]) }));
    expect(px.length).toBeGreaterThanOrEqual(3);
    for (const { wide, size } of px) {
      // The narrow drawings are 352 wide and shown from 328 px; the wide track is 900 wide and shown from 780 px.
      expect(wide ? (size * 780) / 900 : (size * 328) / 352).toBeGreaterThanOrEqual(12);
    }
  });

  it('takes nothing from outside the shop', () => {
    const urls = [...css.matchAll(/url\(['"]?([^'")]+)/g)].map((match) => match[1]);
    expect(urls).toHaveLength(2);
    for (const url of urls) expect(url).toMatch(/^\/assets\//);
    expect(css).not.toContain('@import');
  });
});
