import { describe, expect, it } from 'vitest';
import { keepTogether, keepTogetherIn } from '../../shared/words/together.ts';

/** As it is read in a test: a blank that does not break a line is `_`. */
const shown = (text: string) => text.replaceAll('\u00a0', '_');

describe('a number is not parted from its unit at the end of a line', () => {
  it.each([
    ['leaves 0.1617 in at the thinnest station', 'leaves 0.1617_in at the thinnest station'],
    ['95 % sure; 37 lb·ft or 50 N·m', '95_% sure; 37_lb·ft or 50_N·m'],
    ['0.048 oz·in at 185 rpm in 2 min 12 s', '0.048_oz·in at 185_rpm in 2_min 12_s'],
    ['about 51.9 W/(m·K), 30 Btu/(h·ft·°F)', 'about 51.9_W/(m·K), 30_Btu/(h·ft·°F)'],
    ['90 °C, 194 °F', '90_°C, 194_°F'],
    ['Ø 11.25 in, ± 0.01 in, limit ≤ .5', 'Ø_11.25_in, ±_0.01_in, limit ≤_.5'],
    ['206 000 MPa', '206_000_MPa'],
    ['12 inches', '12 inches'],
    ['24 wall readings at 12 stations', '24 wall readings at 12 stations'],
    ['9:00 AM, Oct 8, 2026', '9:00_AM, Oct 8, 2026'],
  ])('%s', (text, kept) => {
    expect(shown(keepTogether(text))).toBe(kept);
  });

  it('what is typed, and what a form sends, stays as it is', () => {
    const html =
      '<input value="0.5 in" aria-label="a > 5 in"><textarea>cut 3 mm</textarea><p title="5 mm">5 mm</p>';
    expect(shown(keepTogetherIn(html))).toBe(
      '<input value="0.5 in" aria-label="a > 5 in"><textarea>cut 3 mm</textarea><p title="5 mm">5_mm</p>',
    );
  });
});
