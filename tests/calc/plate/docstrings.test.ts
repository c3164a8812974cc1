import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const calc = fileURLToPath(new URL('../../../src/calc/', import.meta.url));
const tests = fileURLToPath(new URL('../../', import.meta.url));

/** They gather, refuse or hold a shape; the formulas are elsewhere. */
const NO_FORMULA = [
  'plate/coverAnswers.ts',
  'plate/lining/lining.ts',
  'plate/lining/pressed.ts',
  'plate/model/refuseCover.ts',
  'heat/refuseHeat.ts',
];
const files = ['plate', 'heat']
  .flatMap((folder) =>
    readdirSync(`${calc}${folder}`, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => `${folder}/${name}`),
  )
  .filter((name) => !NO_FORMULA.includes(name));

describe('every formula says what it is', () => {
  it('there are formulas to look at', () => expect(files.length).toBeGreaterThan(25));

  it.each(files)('%s: validity, source, worked example by a test that is there', (name) => {
    const doc = [...readFileSync(calc + name, 'utf8').matchAll(/\/\*\*[\s\S]*?\*\//g)]
      .map(([match]) => match)
      .find((one) => one.includes('Example:'));
    expect(doc).toBeDefined();
    for (const part of ['Valid:', 'Source:']) expect(doc).toContain(part);
    const test = /([\w/]+\.test\.ts)/.exec(doc!.slice(doc!.indexOf('Example:')))?.[1];
    expect(existsSync(tests + test!.replace(/^tests\//, '')), `${test}`).toBe(true);
  });
});
