import { createRequire } from 'node:module';

type Mathjs = typeof import('mathjs');
let library: Mathjs | null = null;

/**
 * Works out an expression of plain numbers and of the names in `values`. The library is loaded by the first formula, and
 * not when the program starts: it is large, and few shops have a formula. What reaches it was written by `expressionOf`,
 * never by a person.
 */
export function workOut(expression: string, values: Readonly<Record<string, number>>): number {
  library ??= createRequire(import.meta.url)('mathjs/lib/browser/math.js') as Mathjs;
  const found: unknown = library.evaluate(expression, { ...values });
  return typeof found === 'number' ? found : Number.NaN;
}
