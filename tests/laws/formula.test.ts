import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formulaTold } from '../../shared/quantity/formulaSign.ts';
import { type Measures, minimumByFormula, readFormula } from '../../src/shop/limits/minimumFormula.ts';

/** Formulas made at random, each with a second evaluation of its own: independent, not published. */
interface Made {
  readonly text: string;
  readonly value: (cover: Measures) => number;
}

const hundredths = (most: number) => fc.integer({ min: 1, max: most }).map((n) => n / 100);

const cover: fc.Arbitrary<Measures> = fc.record({
  nominalWallMm: hundredths(800),
  studCount: fc.constantFrom(3, 4, 6),
  studCircleDiameterMm: hundredths(30_000),
  trackInnerDiameterMm: hundredths(20_000),
  trackOuterDiameterMm: hundredths(26_000),
});

const number: fc.Arbitrary<Made> = fc.oneof(
  hundredths(500).map((n): Made => ({ text: String(n), value: () => n })),
  fc.constant<Made>({ text: 'stud count', value: (one) => one.studCount }),
);

const plainLength: fc.Arbitrary<Made> = fc.oneof(
  hundredths(900).map((n): Made => ({ text: `${n} mm`, value: () => n })),
  hundredths(50).map((n): Made => ({ text: `${n} in`, value: () => n * 25.4 })),
  fc.constantFrom(1, 3, 5, 7).map((n): Made => ({ text: `(${n}/16 in)`, value: () => (n / 16) * 25.4 })),
  fc.constant<Made>({ text: 'new wall', value: (one) => one.nominalWallMm }),
  fc.constant<Made>({ text: 'bolt circle', value: (one) => one.studCircleDiameterMm }),
  fc.constant<Made>({ text: 'friction surface inside', value: (one) => one.trackInnerDiameterMm }),
  fc.constant<Made>({ text: 'friction surface outside', value: (one) => one.trackOuterDiameterMm }),
);

const COMPARE: Readonly<Record<string, (a: number, b: number) => boolean>> = {
  '<': (a, b) => a < b,
  '<=': (a, b) => a <= b,
  '>': (a, b) => a > b,
  '>=': (a, b) => a >= b,
  '=': (a, b) => a === b,
};

const length: fc.Arbitrary<Made> = fc
  .letrec<{ length: Made }>((tie) => {
    const two = fc.tuple(tie('length'), tie('length'));
    return {
      length: fc.oneof(
        { maxDepth: 3, withCrossShrink: true },
        plainLength,
        two.map(([a, b]) => ({
          text: `(${a.text} + ${b.text})`,
          value: (on: Measures) => a.value(on) + b.value(on),
        })),
        two.map(([a, b]) => ({
          text: `(${a.text} − ${b.text})`,
          value: (on: Measures) => a.value(on) - b.value(on),
        })),
        two.map(([a, b]) => ({
          text: `max(${a.text}, ${b.text})`,
          value: (on: Measures) => Math.max(a.value(on), b.value(on)),
        })),
        two.map(([a, b]) => ({
          text: `min(${a.text}, ${b.text})`,
          value: (on: Measures) => Math.min(a.value(on), b.value(on)),
        })),
        fc.tuple(hundredths(9000), tie('length')).map(([share, of]) => ({
          text: `(${share} % of ${of.text})`,
          value: (on: Measures) => (share / 100) * of.value(on),
        })),
        fc.tuple(tie('length'), number).map(([a, n]) => ({
          text: `(${a.text} × ${n.text})`,
          value: (on: Measures) => a.value(on) * n.value(on),
        })),
        fc.tuple(tie('length'), number).map(([a, n]) => ({
          text: `(${a.text} ÷ ${n.text})`,
          value: (on: Measures) => a.value(on) / n.value(on),
        })),
        fc
          .tuple(fc.constantFrom(...Object.keys(COMPARE)), number, number, two)
          .map(([sign, left, right, [a, b]]) => ({
            text: `(if ${left.text} ${sign} ${right.text} then ${a.text} else ${b.text})`,
            value: (on: Measures) =>
              COMPARE[sign]!(left.value(on), right.value(on)) ? a.value(on) : b.value(on),
          })),
      ),
    };
  })
  .length.filter(({ text }) => text.length <= 200);

describe('any formula of the grammar', () => {
  it('gives what it is worked out to by itself, or none where that is no length above zero', () => {
    fc.assert(
      fc.property(length, cover, ({ text, value }, on) => {
        const expected = value(on);
        const { mm, working } = minimumByFormula(text, on, 'in');
        // Of a sum that should be nothing, rounding leaves a trace.
        if (Math.abs(expected) < 1e-9) return;
        if (expected < 0) expect(mm).toBeNull();
        else expect(Math.abs(mm! - expected)).toBeLessThan(1e-9 * Math.max(1, expected));
        expect(working).toContain(expected < 0 ? 'is no length above zero' : ' = ');
      }),
    );
  });

  it('reads the same with commas before decimals', () => {
    fc.assert(
      fc.property(length, ({ text }) => {
        const told = formulaTold(text, 'comma');
        expect(readFormula(told, 'comma')).toMatchObject({ ok: true, kept: text });
      }),
    );
  });
});

describe('any text at all', () => {
  const pieces = fc.constantFrom(
    ...[
      '1',
      '0.5',
      'in',
      'mm',
      'new wall',
      'stud count',
      '(',
      ')',
      'max',
      'min',
      ',',
      ';',
      '+',
      '-',
      '*',
      '/',
      '^',
    ],
    ...[
      '%',
      'of',
      'if',
      'then',
      'else',
      '<',
      '=',
      '.',
      '"',
      '[',
      '__proto__',
      'constructor',
      ' ',
      '\0',
      '３',
      '3/16',
    ],
  );

  it('is read or refused with a sentence; nothing else is thrown, and nothing but a length comes of it', () => {
    const text = fc.oneof(
      fc.string(),
      fc.array(pieces, { maxLength: 30 }).map((all) => all.join('')),
    );
    fc.assert(
      fc.property(text, fc.constantFrom('point', 'comma'), cover, (typed, sign, on) => {
        const read = readFormula(typed, sign);
        if (!read.ok) expect(read.message).toMatch(/\.$|\?$/);
        else {
          const { mm } = minimumByFormula(read.kept, on, 'mm');
          expect(mm === null || (Number.isFinite(mm) && mm > 0)).toBe(true);
        }
      }),
      { numRuns: 2000 },
    );
  });
});
