import type { Answer } from '../../../shared/words/answer.ts';
import type { Finding } from '../../../shared/words/finding.ts';

/** Figures make no other sentence, nor does it matter which places a list names, and how many. */
const shapeOf = (text: string) =>
  [...new Set(text.replace(/[-−]?\d[\d.,]*(e[-+]?\d+)?/g, '#').split(/[\s,]+/))].sort().join(' ');

/** What is said of each thing, every sentence once, as first said, with its figures. */
export class Told {
  readonly #lines = new Map<string, string>();

  add(of: string, said: string): void {
    for (const sentence of said.split(/(?<=[.?!]) (?=\p{Lu})/u)) {
      const key = `${of} ${shapeOf(sentence)}`;
      if (sentence !== '' && !this.#lines.has(key)) this.#lines.set(key, `[${of}] ${sentence}`);
    }
  }

  finding({ id, title, status, value, limit, unit, sentence, source, answer }: Finding): void {
    this.add(id, `${title} is ${status}: ${figure(value)} of ${figure(limit)} ${unit}`.trim());
    this.add(id, sentence);
    this.add(id, `{${source}}`);
    if (answer !== null) this.answer(answer, id);
  }

  answer({ symbol, value, unit, how, warnings }: Answer, of: string): void {
    this.add(of, `${symbol} = ${figure(value)} ${unit}`.trim());
    for (const { formula, numbers, source } of how) this.add(of, `${formula} : ${numbers} {${source}}`);
    for (const { code, text } of warnings) this.add(of, `(${code}) ${text}`);
  }

  toString(): string {
    return `${[...this.#lines.values()].sort().join('\n')}\n`;
  }
}

/** "fail: a, b; caution: c", without what passed. */
export function open(findings: readonly Pick<Finding, 'id' | 'status'>[]): string {
  const statuses = ['fail', 'caution', 'not-checked'] as const;
  return statuses
    .map((status) => [status, findings.filter((one) => one.status === status).map(({ id }) => id)] as const)
    .flatMap(([status, ids]) => (ids.length === 0 ? [] : [`${status}: ${ids.join(' ')}`]))
    .join('; ');
}

/** Six decimals: what a sum in another order leaves over is no other figure. */
export const figure = (value: number | null | undefined): string =>
  value == null ? '—' : String(Number(value.toFixed(6)) + 0);
