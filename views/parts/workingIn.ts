import { type LengthUnit, MM_PER_UNIT, printNumber } from '../../shared/words/print.ts';

/** Units that are not mm, and signs of a product, a power or a ratio: but for a half, the figures do not scale alike. */
const MORE_THAN_SUMS = /[·×√²³⁴π⌊]|\/(?!2(?![\d.]))|µm|\b(?:N|kN|MPa|GPa|kg|rpm)\b/;
const FIGURE = /\d+(?:\.(\d+))?(?! ?°)(?![\d.])/g;

/**
 * The numbers of one step of a working, in the reader’s unit where they are lengths that are added or compared; null
 * where the formula has constants or units of its own, which hold in SI units alone.
 */
export function workingIn(numbers: string, unit: LengthUnit): string | null {
  if (unit === 'mm') return numbers;
  if (MORE_THAN_SUMS.test(numbers)) return /\d/.test(numbers) ? null : numbers;
  return numbers
    .split(/(?<=[;:])/)
    .map((part) => (/\bmm\b/.test(part) ? inInches(part) : part))
    .join('');
}

/** An inch has 25.4 mm: one decimal more says as much. */
function inInches(part: string): string {
  return part
    .replace(FIGURE, (figure, decimals: string | undefined, at: number) => {
      if (decimals === undefined && !part.slice(at + figure.length).startsWith(' mm')) return figure;
      return printNumber(Number(figure) / MM_PER_UNIT.in, Math.max(3, (decimals ?? '').length + 1));
    })
    .replace(/\bmm\b/g, 'in');
}
