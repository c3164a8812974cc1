import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ROOT } from './kit/program.ts';
import { rowsOfFaults } from './kit/tell.ts';

test('every row of the table of faults is printed by a test', () => {
  const folder = join(ROOT, 'tests');
  const tests = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => readFileSync(join(folder, name), 'utf8'));
  const faults = rowsOfFaults().map((row) => row.split(' | ')[0]!.slice(2));
  expect(faults.length).toBeGreaterThan(20);
  expect(faults.filter((fault) => !tests.some((text) => text.includes(`'${fault}'`)))).toEqual([]);
});
