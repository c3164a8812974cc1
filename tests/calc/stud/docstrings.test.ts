import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const folder = fileURLToPath(new URL('../../../src/calc/stud/', import.meta.url));
const tests = fileURLToPath(new URL('../../', import.meta.url));

/** They gather, order or refuse; the formulas are elsewhere. */
const NO_FORMULA = [
  'bestFirst.ts',
  'checkStud.ts',
  'checked.ts',
  'engagementFinding.ts',
  'fits.ts',
  'jointChecks.ts',
  'matchStacks.ts',
  'matchStuds.ts',
  'reachFinding.ts',
  'refuseStud.ts',
  'replacedInStack.ts',
  'studNumbers.ts',
  'threadGeometry.ts',
];
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(
  (name) => name.endsWith('.ts') && !NO_FORMULA.includes(name.slice(name.lastIndexOf('/') + 1)),
);

describe('every formula says what it is', () => {
  it('there are formulas to look at', () => expect(files.length).toBeGreaterThan(20));

  it.each(files)('%s: validity, source, worked example by a test that is there', (name) => {
    const text = readFileSync(folder + name, 'utf8');
    const doc = [...text.matchAll(/\/\*\*[\s\S]*?\*\//g)]
      .map(([match]) => match)
      .find((one) => one.includes('Example:'));
    expect(doc).toBeDefined();
    for (const part of ['Valid:', 'Source']) expect(doc).toContain(part);
    const test = /([\w/]+\.test\.ts)/.exec(doc!.slice(doc!.indexOf('Example:')))?.[1];
    expect(existsSync(tests + test!.replace(/^tests\//, '')), `${test}`).toBe(true);
  });
});
