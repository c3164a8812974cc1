import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { readReading, type TypedReading } from '../../../shared/measuring/readReading.ts';
import { TYPED_TEXTS } from '../../quantity/typedTexts.ts';
import { type Served, serve } from '../program.ts';

const READER = 'shared/measuring/readReading.js';
const UNITS = ['mm', 'in'] as const;
const SIGNS = ['point', 'comma'] as const;
const KINDS = ['wall', 'face', 'mark'] as const;

let program: Served;
let folder: string;
let onTablet: typeof readReading;

beforeAll(async () => {
  program = await serve({ demo: false });
  folder = mkdtempSync(join(tmpdir(), 'coverwright-reader-'));
  await bring(READER);
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }');
  const { href } = pathToFileURL(join(folder, READER));
  onTablet = ((await import(/* @vite-ignore */ href)) as { readReading: typeof readReading }).readReading;
});
afterAll(async () => {
  await program.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Fetches a module as a tablet does, with all it imports, into a folder of its own. */
async function bring(path: string, had = new Set<string>()): Promise<void> {
  if (had.has(path)) return;
  had.add(path);
  const text = await (await fetch(`${program.url}/assets/modules/${path}`)).text();
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), text);
  for (const [, from] of text.matchAll(/\bfrom ?["']([^"']+)["']/g))
    await bring(join(dirname(path), from!), had);
}

const reading = (more: Pick<TypedReading, 'typed'> & Partial<TypedReading>): TypedReading => ({
  kind: 'wall',
  field: 'Wall behind stud 1',
  unit: 'mm',
  decimalSign: 'point',
  nominalWallMm: 5,
  ...more,
});

it('the reader that a tablet is sent is another copy of the very code of the server, not the same function', () => {
  expect(onTablet).not.toBe(readReading);
  expect(onTablet(reading({ typed: '4.92' }))).toEqual({ ok: true, valueMm: 4.92, doubt: null });
});

it.each(TYPED_TEXTS)('%j is read, doubted or refused on the tablet as on the server', (typed) => {
  for (const kind of KINDS) {
    for (const unit of UNITS) {
      for (const decimalSign of SIGNS) {
        const asked = reading({ typed, kind, unit, decimalSign });
        expect(onTablet(asked)).toEqual(readReading(asked));
      }
    }
  }
});

it('no text of figures, signs and units is read otherwise on the tablet', () => {
  const letters = fc.constantFrom(...'0123456789.,-+/ "½mincthouµ');
  fc.assert(
    fc.property(
      fc.string({ unit: letters, minLength: 1, maxLength: 9 }),
      fc.constantFrom(...KINDS),
      fc.constantFrom(...UNITS),
      fc.constantFrom(...SIGNS),
      (typed, kind, unit, decimalSign) => {
        const asked = reading({ typed, kind, unit, decimalSign });
        expect(onTablet(asked)).toEqual(readReading(asked));
      },
    ),
    { numRuns: 5000 },
  );
});

it.each([
  ['1-3/16 in', 30.1625],
  ['½ in', 12.7],
  ['0.187 inches', 4.7498],
  ['4920 micron', 4.92],
  ['187 thou', 4.7498],
])('%s, which tablets could once not read or read otherwise, is %f mm', (typed, valueMm) => {
  expect(onTablet(reading({ typed, nominalWallMm: 0 }))).toEqual({ ok: true, valueMm, doubt: null });
});

it('what is no length says what was probably meant', () => {
  const meant = (typed: string, decimalSign: 'point' | 'comma' = 'point') => {
    const read = onTablet(reading({ typed, decimalSign }));
    return read.ok ? 'read' : read.meant;
  };
  expect(meant('4,85')).toBe('4.85');
  expect(meant('4.85', 'comma')).toBe('4,85');
  expect(meant('3/16')).toBe('3/16 in');
  expect(meant('about 5')).toBeUndefined();
});

it('a doubted value is asked about in the unit it was typed in', () => {
  const read = onTablet(reading({ typed: '0.0187 in' }));
  expect(read.ok && read.doubt?.question).toBe('0.0187 in? Did you mean 0.187 in?');
});

it.each([
  ['face', '2.6', '2.6 mm on the indicator? Did you mean 0.26 mm?'],
  ['mark', '5.1', '5.1 mm deep? The wall here is 5 mm. Did you mean 0.051 mm?'],
  ['mark', '0.2 in', '0.2 in deep? The wall here is 0.1969 in. Did you mean 0.002 in?'],
] as const)('a %s of %s is asked about', (kind, typed, question) => {
  const read = onTablet(reading({ kind, typed }));
  expect(read.ok && read.doubt?.question).toBe(question);
});

it.each([
  ['wall', '0', 'Wall behind stud 1 is 0.000 mm; it must be more than 0. Measure it again.'],
  ['mark', '-0.1', 'Wall behind stud 1 is −0.100 mm; it must be at least 0. Measure it again.'],
] as const)('a %s of %s is refused', (kind, typed, message) => {
  expect(onTablet(reading({ kind, typed }))).toEqual({ ok: false, message });
});
