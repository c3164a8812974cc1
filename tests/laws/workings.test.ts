import fc from 'fast-check';
import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { coverExamples } from '../../data/examples/coverExamples.ts';
import { heatExamples } from '../../data/examples/heatExamples.ts';
import { judgeExamples } from '../../data/examples/judgeExamples.ts';
import { measureExamples } from '../../data/examples/measureExamples.ts';
import { plateExamples } from '../../data/examples/plateExamples.ts';
import { studExamples } from '../../data/examples/studExamples.ts';
import type { Step } from '../../shared/words/answer.ts';
import { checkCover } from '../../src/calc/cover/checkCover.ts';
import { cutsLeft } from '../../src/calc/cover/cutting/cutsLeft.ts';
import { checkStud } from '../../src/calc/stud/checkStud.ts';
import { anyCoverCheck } from './anyCover.ts';
import { anyStudCheck } from './anyStud.ts';

/** Longest first: a unit is taken off after a number or a bracket. */
const UNITS =
  /(?<=[\d)\]⁴³²½⌋] ?)(?: |(?<=[)\]²] ?))(?:per mm|J\/\(kg·K\)|W\/\(m·K\)|MW\/m²|kg\/m³|µm\/mm|mm²\/s|mm\/N|mm\/s|m\/min|s\/min|g·mm|lb·ft|N·m|mm²|in²|MPa|rpm|mm|µm|kg|in|N|K|s|g|%|°)(?![\p{L}²³])/gu;
/** Powers of ten between N·m and N·mm, µm and mm, kg and g; and a hundred for percent. */
const POWERS = [0, 2, 3, 6, 9].flatMap((power) => [10 ** power, 10 ** -power]);
const INCHES = [1, 25.4, 1 / 25.4, 25.4 ** 2, 25.4 ** -2];

interface Value {
  readonly value: number;
  /** By how much it may be off, because the figures it is made of were rounded when they were printed. */
  readonly within: number;
  /** The same where a figure of two digits or less is exactly what somebody typed: 0.1 mm of feed. */
  readonly asTyped: number;
  /** The largest figure of a sum; of a product its value. */
  readonly size: number;
}

/** What a piece of a working comes to; null where it is no arithmetic. */
function worth(piece: string, last: boolean): Value | null {
  const plain = piece
    .replace(/\((?=[^()]*[a-z]{3})(?![^()]*\d\.\d)[^()]*\)/g, '')
    .replace(/± [\d.]+/g, '')
    .replace(UNITS, '')
    .replaceAll('−', '-')
    .replaceAll('·', '*')
    .replaceAll('½', '(1/2)')
    .replaceAll('π', '(pi)')
    .replaceAll('²', '^2')
    .replaceAll('⁴', '^4')
    .replaceAll('⌊', 'floor(')
    .replaceAll('⌋', ')')
    .replaceAll('[', '(')
    .replaceAll(']', ')')
    .replaceAll('√', 'sqrt')
    // A product without its sign counts before the division beside it for mathjs, for a reader it does not.
    .replace(/([\d)]) ?\(/g, '$1*(')
    // What is said before the figures: "stud 56.7 · 827".
    .replace(/^(?:[\p{L}’]+ )+(?=[\d(])/u, '');
  const figures = [...plain.matchAll(/(?<![\w.^])\d+(?:\.(\d+))?(?:e([+-]\d+))?/g)];
  if (figures.length === 0) return null;
  const of = (text: string): number | null => {
    try {
      const found = evaluate(text);
      return typeof found === 'number' ? found : null;
    } catch {
      return null;
    }
  };
  const value = of(plain);
  if (value === null) {
    // A figure with words after it: "8.10 mm of 8.10 mm".
    const leading = /^-?\d+(?:\.\d+)?(?:e[+-]\d+)?/.exec(plain)?.[0];
    return !last || leading === undefined || leading === plain ? null : worth(leading, last);
  }
  const moved = figures.map((figure) => {
    const [text, decimals, power] = figure;
    if (decimals === undefined && Number(text) < 100) return { by: 0, typed: true };
    const half = 0.5 * 10 ** (Number(power ?? 0) - (decimals?.length ?? 0));
    const others = [-half, half].map((by) => {
      const at = figure.index;
      return of(`${plain.slice(0, at)}(${Number(text) + by})${plain.slice(at + text.length)}`) ?? value;
    });
    const typed = text.replace(/^[0.]+|\.|e.*$/g, '').length <= 2;
    return { by: Math.max(...others.map((other) => Math.abs(other - value))), typed };
  });
  const sum = (of: typeof moved) => of.reduce((total, { by }) => total + by, 1e-12);
  const added = /[*/^]|sqrt/.test(plain) ? [value] : figures.map(([text]) => Number(text));
  return {
    value,
    within: sum(moved),
    asTyped: sum(moved.filter(({ typed }) => !typed)),
    size: Math.max(...added.map(Math.abs)),
  };
}

interface Held {
  readonly text: string;
  readonly off: number;
  readonly within: number;
  /** Right so closely that a factor of 1.05 in it would be seen. */
  readonly closely: boolean;
}

/** Every "… = …" in a working whose two sides are both arithmetic. */
function heldIn(numbers: string): Held[] {
  return numbers.split(/; |: |, (?=\p{L}[^,;(]* = )/u).flatMap((clause) => {
    const sides = clause.split(' = ').map((piece, i, all) => worth(piece, i === all.length - 1));
    return sides.slice(1).flatMap((right, i) => {
      const left = sides[i];
      if (!left || !right) return [];
      const powers = right.value === 0 ? [1] : POWERS;
      const times = powers.flatMap((power) =>
        (/ in\b| in²/.test(clause) ? INCHES : [1]).map((one) => power * one),
      );
      const apart = times.map((one) => {
        const off = Math.abs(left.value * one - right.value);
        const close = left.asTyped * one + right.within;
        const size = Math.max(Math.abs(right.value), left.size * one);
        return {
          text: clause,
          off,
          within: left.within * one + right.within,
          closely: off <= close && close < 0.025 * size,
        };
      });
      return apart.toSorted((a, b) => a.off / a.within - b.off / b.within).slice(0, 1);
    });
  });
}

/** Workings that say a result without the arithmetic: a fit, a search, a series, an integral, draws, a comparison. */
const NO_ARITHMETIC = [
  'z = a·x + b·y + c, with Σ (zᵢ − (a·xᵢ + b·yᵢ + c))² least',
  'FLTt(MZ) = least h with |zᵢ − (a·xᵢ + b·yᵢ + c)| ≤ h/2',
  'F(t) = αt/(kL) + (L/k)·[1/3 − (2/π²)·Σ e^(−n²π²αt/L²)/n²], α = k/(ρc)',
  'F′(t_max) = F(t_max)/t_s',
  'θ(t) = q₀·[F(t) − (1/t_s)·∫₀ᵗ F dt]',
  'P = draws in which every check passes/all draws',
  'P = ∫ φ(x) Π Φ((mᵢ − u_c·x)/uᵢ) dx',
  'least of Le over every size within its tolerance',
  'pilot < D1,min',
  's_pc = 0: counted with the repeats',
  't_min = the larger of the maker’s figure and the shop’s',
  'δ_P = Σ ln[(D₂ − d_h)(D₁ + d_h)/((D₂ + d_h)(D₁ − d_h))]/(π E d_h tan φ)',
];

function stepsIn(value: unknown): Step[] {
  if (Array.isArray(value)) return value.flatMap(stepsIn);
  if (typeof value !== 'object' || value === null) return [];
  const own = 'formula' in value && 'numbers' in value ? [value as Step] : [];
  return [...own, ...Object.values(value).flatMap(stepsIn)];
}

const EXAMPLES = {
  ...coverExamples,
  ...studExamples,
  ...heatExamples,
  ...judgeExamples,
  ...measureExamples,
  ...plateExamples,
};
const ofExamples = Object.values(EXAMPLES).flatMap((example) => stepsIn(example()));
const draw = <T>(from: fc.Arbitrary<T>, count: number) => fc.sample(from, count);
const ofRandom = [
  // A whole number of cuts says the same a little to either side.
  ...stepsIn(cutsLeft({ leastWallMm: 5.2, minimumWallMm: 4.3, typicalCutMm: 0.25 })),
  ...draw(anyStudCheck, 40).flatMap((input) => stepsIn(checkStud(input))),
  ...draw(anyCoverCheck, 15).flatMap((input) => stepsIn(checkCover(input))),
];

describe('a printed working', () => {
  const once = new Map([...ofExamples, ...ofRandom].map((step) => [step.formula + step.numbers, step]));
  const steps = [...once.values()].map(({ formula, numbers }) => ({ formula, held: heldIn(numbers) }));

  it('comes to what it says, from its own figures, whatever was measured', () => {
    expect(steps.length).toBeGreaterThan(400);
    const wrong = steps.flatMap(({ formula, held }) =>
      held
        .filter(({ off, within }) => off > within)
        .map(({ text, off, within }) => ({ formula, text, off, within })),
    );
    expect(wrong).toEqual([]);
  });

  it('is arithmetic that anybody can do again, closely enough that 5 % would be seen', () => {
    const closely = steps.filter(({ held }) => held.some((one) => one.closely));
    const formulas = (of: typeof steps) => new Set(of.map(({ formula }) => formula));
    const unheld = [...formulas(steps)].filter((formula) => !formulas(closely).has(formula));
    expect(unheld.sort()).toEqual([...NO_ARITHMETIC].sort());
  });
});
