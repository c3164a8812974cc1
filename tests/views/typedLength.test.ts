import { readFileSync } from 'node:fs';
import vm from 'node:vm';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readQuantity } from '../../shared/quantity/readQuantity.ts';
import { measuringDoubt } from '../../src/web/measuring/doubt.ts';

interface OnTablet {
  readLength(text: string, unit: 'mm' | 'in', sign: 'point' | 'comma'): number | null;
  meantLength(text: string, unit: 'mm' | 'in', sign: 'point' | 'comma'): string | null;
  doubtLength(
    kind: 'wall' | 'face' | 'mark',
    mm: number,
    typed: string,
    nominalMm: number,
    unit: 'mm' | 'in',
    sign: 'point' | 'comma',
  ): { question: string; meant: string | null } | null;
}

const world: { coverwrightLength?: OnTablet } = {};
vm.runInNewContext(
  readFileSync(new URL('../../views/assets/typedLength.js', import.meta.url), 'utf8'),
  Object.assign(world, { globalThis: world }),
);
const tablet = world.coverwrightLength!;

const SIGNS = ['point', 'comma'] as const;
const UNITS = ['mm', 'in'] as const;

function onServer(typed: string, unit: 'mm' | 'in', decimalSign: 'point' | 'comma'): number | null {
  const read = readQuantity({ field: 'Wall', typed, kind: 'length', unit, decimalSign });
  return read.ok ? read.value : null;
}

describe('what is typed, read on the tablet', () => {
  it.each([
    '4.92',
    '.187',
    '0',
    '-0.05',
    '+0.02',
    '−0.05',
    '3/16',
    '1 3/16',
    '1-3/16',
    '3/15',
    '3/0',
    '5/4 in',
    '1 5/4',
    '3/16 in',
    '0.187 in',
    '0.187"',
    '187 thou',
    '492 µm',
    '492um',
    '0.492 cm',
    '4.92mm',
    '4,92',
    ',187',
    '4.',
    '1e3',
    '0x10',
    '4.9 psi',
    '4.9 4.9',
    '',
    'x',
    '1,234.5',
    '49 .2',
    '4.92 MM',
    '½',
  ])('%j reads as on the server, or is left to it', (typed) => {
    for (const unit of UNITS) {
      for (const sign of SIGNS) {
        const here = tablet.readLength(typed, unit, sign);
        const there = onServer(typed, unit, sign);
        // The tablet may know less than the server, never more, and never something else.
        if (here !== null) expect(here).toBeCloseTo(there ?? Number.NaN, 9);
      }
    }
  });

  it.each(['4.92', '.187', '-0.05', '3/16 in', '1 3/16 in', '0.187 in', '187 thou', '492 µm'])(
    'and %s, as a gauge or a person types it, the tablet does know',
    (typed) => {
      expect(tablet.readLength(typed, 'mm', 'point')).toBeCloseTo(onServer(typed, 'mm', 'point')!, 9);
    },
  );

  it('says of what is no length here what was probably meant', () => {
    expect(tablet.meantLength('4,85', 'mm', 'point')).toBe('4.85');
    expect(tablet.meantLength('4.85', 'mm', 'comma')).toBe('4,85');
    expect(tablet.meantLength('3/16', 'mm', 'point')).toBe('3/16 in');
    expect(tablet.meantLength('about 5', 'mm', 'point')).toBeNull();
  });

  it('reads no text of figures, signs and units otherwise than the server', () => {
    const letters = fc.constantFrom(...'0123456789.,-+/ "mincthouµ');
    fc.assert(
      fc.property(
        fc.string({ unit: letters, minLength: 1, maxLength: 9 }),
        fc.constantFrom(...UNITS),
        fc.constantFrom(...SIGNS),
        (typed, unit, sign) => {
          const here = tablet.readLength(typed, unit, sign);
          const there = onServer(typed, unit, sign);
          return (
            here === null || (there !== null && Math.abs(here - there) <= 1e-9 * Math.max(1, Math.abs(there)))
          );
        },
      ),
      { numRuns: 5000 },
    );
  });

  it('asks about the same values as the server, with the same question', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.0001, max: 2000, noNaN: true }),
        fc.integer({ min: 2, max: 5 }),
        fc.constantFrom(...UNITS),
        fc.constantFrom('wall', 'face', 'mark'),
        (value, digits, unit, kind) => {
          const typed = String(Number(value.toPrecision(digits)));
          if (typed.includes('e')) return;
          const mm = onServer(typed, unit, 'point')!;
          const here = tablet.doubtLength(kind, mm, typed, 5, unit, 'point');
          const there = measuringDoubt({ kind, valueMm: mm, typed }, 5, {
            lengthUnit: unit,
            decimalSign: 'point',
          });
          expect(here?.meant ?? null).toBe(there?.meantTyped ?? null);
          if (kind === 'wall' || unit === 'mm') expect(here?.question).toBe(there?.question);
          else expect(here === null).toBe(there === null);
        },
      ),
      { numRuns: 2000 },
    );
  });
});
