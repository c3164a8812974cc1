import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

// OKLab and OKLCH: CSS Color Module Level 4, §9 and its sample code; contrast: WCAG 2.2, relative luminance.
type Three = readonly [number, number, number];

const toLinear = (c: number) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
const fromLinear = (c: number) => (c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055);
const linearOf = (hex: string) =>
  [1, 3, 5].map((at) => toLinear(Number.parseInt(hex.slice(at, at + 2), 16) / 255));

function lchOf(hex: string): Three {
  const [r, g, b] = linearOf(hex) as unknown as Three;
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  const lightness = 0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s;
  const a = 1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s;
  const bb = 0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s;
  return [lightness, Math.hypot(a, bb), Math.atan2(bb, a)];
}

function linearFrom([lightness, chroma, hue]: Three): Three {
  const [a, b] = [chroma * Math.cos(hue), chroma * Math.sin(hue)];
  const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [
    4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s,
    -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s,
    -0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s,
  ];
}

const shown = (color: Three) => linearFrom(color).every((c) => c >= 0 && c <= 1);

/** The hue and chroma of an ink at another lightness, less where there is less room, and no more than a screen shows. */
function inkAt(ink: string, lightness: number): string {
  const [, chroma, hue] = lchOf(ink);
  let [low, high] = [0, chroma * 4 * lightness * (1 - lightness)];
  if (!shown([lightness, high, hue])) {
    for (let i = 0; i < 40; i++) {
      const middle = (low + high) / 2;
      if (shown([lightness, middle, hue])) low = middle;
      else high = middle;
    }
    high = low;
  }
  const bytes = linearFrom([lightness, high, hue]).map((c) => Math.round(255 * fromLinear(Math.max(0, c))));
  return `#${bytes.map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;
}

const luminance = (hex: string) => {
  const [r, g, b] = linearOf(hex) as unknown as Three;
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (one: string, other: string) => {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (light + 0.05) / (dark + 0.05);
};

const css = (name: string) =>
  readFileSync(new URL(`../../views/assets/${name}.css`, import.meta.url), 'utf8');
/** The first is of the light sheet, the second of the dark one. */
const values = (name: string, of: string, which: number) =>
  [...css(name).matchAll(new RegExp(`--${of}: (#[0-9a-f]{6});`, 'g'))][which]![1]!;

describe.each([
  ['light', 0, 0.94, 0.34],
  ['dark', 1, 0.3, 0.9],
])('the colors of lining pressure on the %s sheet', (_, which, from, to) => {
  const ink = values('look', 'cut', which);
  const ramp = Array.from({ length: 7 }, (__, i) => values('drawings', `press-${i}`, which));

  it('are the drawing’s own rust at seven even lightnesses', () => {
    expect(ramp).toEqual(ramp.map((__, i) => inkAt(ink, from + ((to - from) * i) / 6)));
  });

  it('go one way in lightness, in steps that a gray printer tells apart', () => {
    const light = ramp.map((hex) => lchOf(hex)[0]);
    const steps = light.slice(1).map((value, i) => (value - light[i]!) * Math.sign(to - from));
    for (const step of steps) expect(step).toBeGreaterThan(0.08);
  });

  it('keep lines and crosses visible: ink on the first four, sheet on the others', () => {
    const [line, sheet] = [values('look', 'ink', which), values('look', 'sheet', which)];
    for (const [i, band] of ramp.entries()) expect(contrast(band, i <= 3 ? line : sheet)).toBeGreaterThan(3);
  });
});
