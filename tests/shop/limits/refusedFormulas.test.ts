import { createRequire } from 'node:module';
import { beforeAll, describe, expect, it, vi } from 'vitest';

/** As in a program that has just started: other tests of the same process load the library too. */
let minimumByFormula: typeof import('../../../src/shop/limits/minimumFormula.ts')['minimumByFormula'];
let readFormula: typeof import('../../../src/shop/limits/minimumFormula.ts')['readFormula'];
beforeAll(async () => {
  const { cache } = createRequire(import.meta.url);
  for (const file of Object.keys(cache)) if (file.includes('/mathjs/')) delete cache[file];
  vi.resetModules();
  ({ minimumByFormula, readFormula } = await import('../../../src/shop/limits/minimumFormula.ts'));
});

const COVER = {
  nominalWallMm: 4.826,
  studCount: 6,
  studCircleDiameterMm: 286,
  trackInnerDiameterMm: 200,
  trackOuterDiameterMm: 260,
};

/** Whether the library for arithmetic is in this program yet. */
function arithmeticLoaded(): boolean {
  return Object.keys(createRequire(import.meta.url).cache).some((file) => file.includes('/mathjs/'));
}

const inBrackets = (levels: number) => `${'('.repeat(levels)}1 in${')'.repeat(levels)}`;

/** What is sent, and what of it the sentence repeats or says. */
const REFUSED: readonly (readonly [formula: string, says: string])[] = [
  ['import("fs")', '"import"'],
  ['import({ evaluate: 1 })', '"import"'],
  ['constructor', '"constructor"'],
  ['max.constructor("return 1")() * 1 in', '"max.constructor"'],
  ['new wall.constructor', '"."'],
  ['__proto__', '"__proto__"'],
  ['prototype', '"prototype"'],
  ['1 in.constructor', '"constructor"'],
  ['cos.constructor("return process")()', '"cos.constructor"'],
  ['evaluate("1")', '"evaluate"'],
  ['parse(new wall)', '"parse"'],
  ['createUnit', '"createUnit"'],
  ['sqrt(4) * 1 in', '"sqrt"'],
  ['maximum(1 in, 2 in)', '"maximum"'],
  ['max1(1 in, 2 in)', '"max1"'],
  ['max', 'The formula ends'],
  ['f(x) = 1 in', '"f"'],
  ['q0', '"q0"'],
  ['i in', '"i"'],
  ['2^3 in', '"^"'],
  ['2 ** 3 in', '"*" cannot stand there'],
  ['new wall ^ 1', '"^"'],
  ['1 in; 2 in', '";" cannot stand there'],
  ['a = 1 in', '"a"'],
  ['1 in = 1 in', '"=" cannot stand there'],
  ['1 in\n2 in', '"2 in" cannot stand there'],
  ['"1 in"', '""" has no place'],
  ["'1 in'", '"\'" has no place'],
  ['`1 in`', '"`" has no place'],
  ['[1 in, 2 in]', '"["'],
  ['{a: 1 in}', '"{"'],
  ['new wall[0]', '"["'],
  ['new wall ? 1 in : 2 in', '"?"'],
  ['new wall!', '"!"'],
  ['new wall # 1', '"#"'],
  ['new wall & 1', '"&"'],
  ['1 in // 2', '"/" cannot stand there'],
  ['٣ in', '"٣"'],
  ['３ in', '"３"'],
  ['1²  in', '"²"'],
  ['new\u200bwall', '"new"'],
  ['𝟏 in', '"𝟏"'],
  ['1\0 in', 'does not show'],
  ['1 in\u0007', 'does not show'],
  ['0x10 in', '"x10"'],
  ['1e3 in', '"e3"'],
  ['Infinity', '"Infinity"'],
  ['NaN', '"NaN"'],
  ['-1 in', '"-" cannot stand there'],
  ['5 kg', '"kg"'],
  ['1 in * 1 in', '"1 in * 1 in" gives an area'],
  ['1 + 1 in', '"1 + 1 in" adds "1", a plain number, and "1 in", a length'],
  ['1 in - 1', '"1 in - 1" takes away'],
  ['stud count', '"stud count" gives a plain number'],
  ['1 in / 1 in', '"1 in / 1 in" gives a plain number'],
  ['stud count / (1 in)', 'neither a number nor a length'],
  ['0.165', '"0.165" gives a plain number'],
  ['max(0.165, 85 % of new wall)', '"0.165", a plain number'],
  ['if stud count > 2 then 1 in else 2', 'chooses between "1 in", a length, and "2", a plain number'],
  ['if stud count > 2 then 1 else 2 in', 'chooses between "1", a plain number, and "2 in", a length'],
  ['if new wall > 2 then 1 in else 2 in', '"new wall > 2" compares'],
  ['if new wall then 1 in else 2 in', '"then" cannot stand there'],
  ['if stud count >= 6 then 1 in', 'ends where else'],
  ['1 in 2 in', '"2 in" cannot stand there'],
  ['85 % new wall', '"new wall" cannot stand there. After "%"'],
  ['85 %', 'ends where of'],
  ['max()', '")" cannot stand there'],
  ['max(1 in,)', '")" cannot stand there'],
  ['max(1 in', 'ends where'],
  ['(1 in', 'ends where'],
  ['1 in)', '")" cannot stand there'],
  ['', 'ends where a length with its unit'],
  ['0,165 in', '"," cannot stand there'],
  ['max(4,2 mm, 1 mm)', '"4", a plain number'],
  ['1.2.3 in', '"1.2.3 in" is not a plain number'],
  ['1/3 in', '"1/3 in" has 3 under the line'],
  ['1/0 in', 'divides by zero'],
  ['3/16 mm', 'only inches are read in fractions'],
  ['2 × 1-3/16 in', '"1-3/16 in" can be read two ways after ×'],
  ['4 in / 1-3/16 in', '"1-3/16 in" can be read two ways after ÷'],
  ['1 in * new wall / 3/16 in', '"3/16 in" can be read two ways after ÷'],
  ['2-3/16', 'gives a plain number'],
  [inBrackets(11), 'deeper than 10'],
  [`${'max('.repeat(11)}1 in${')'.repeat(11)}`, 'deeper than 10'],
  [`${'1 % of '.repeat(11)}new wall`, 'deeper than 10'],
  [`${'if 1 < 2 then 1 in else '.repeat(7)}${inBrackets(4)}`, 'deeper than 10'],
  [`${'('.repeat(190)}1 in`, 'deeper than 10'],
  [`1 in${' + 1 in'.repeat(27)} X`, '"X"'],
  [`1 in${' '.repeat(196)}+`, '201 characters; it may have 200'],
  ['9'.repeat(201), '201 characters; it may have 200'],
];

describe('what is no formula', () => {
  it.each(REFUSED)('%j is refused with its place, before anything is worked out', (formula, says) => {
    const read = readFormula(formula, 'point');
    expect(read).toMatchObject({ ok: false });
    expect(read.ok ? '' : read.message).toContain(says);
    expect(arithmeticLoaded()).toBe(false);
    // Kept by another program, it gives nothing either.
    const kept = minimumByFormula(formula, COVER, 'in');
    expect(kept.mm).toBeNull();
    expect(kept.working).toContain('the formula cannot be used');
    expect(arithmeticLoaded()).toBe(false);
  });

  it('what is a formula is worked out, by the library that was not loaded until then', () => {
    expect(readFormula(inBrackets(10), 'point').ok).toBe(true);
    expect(arithmeticLoaded()).toBe(false);
    expect(minimumByFormula(inBrackets(10), COVER, 'in').mm).toBeCloseTo(25.4, 12);
    expect(arithmeticLoaded()).toBe(true);
  });
});

describe('a shop that writes decimals with a comma', () => {
  it.each([
    ['max(4,2 mm, 1 mm)', '“;”'],
    ['max(4.2 mm; 1 mm)', '4,2 mm'],
    ['max(1,2,3 mm; 1 mm)', '"1,2,3 mm"'],
    ['max(4,2; 85 % of new wall)', '"4,2", a plain number'],
  ])('%j is refused', (formula, says) => {
    const read = readFormula(formula, 'comma');
    expect(read.ok ? '' : read.message).toContain(says);
  });
});
