import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { figuresIn } from '../words/figures.ts';
import { readable, wordsOf, written } from '../words/list.ts';
import { refusedIn } from '../words/refused.ts';
import { visitAll } from '../words/visit.ts';

let now: readonly string[];
const figures = figuresIn('in');
beforeAll(async () => {
  now = written(wordsOf(readable(await visitAll(figures.take)))).split('\n');
});

test('the list of words holds every sentence and label of the demo shop and of the source, and nothing else', () => {
  const stored = readFileSync(new URL('../words/words.md', import.meta.url), 'utf8').split('\n');
  const mend = 'tests/words/words.md is out of date: run `npm run words`, read what changed, and commit it';
  expect(
    now.filter((line) => !stored.includes(line)),
    mend,
  ).toEqual([]);
  expect(
    stored.filter((line) => !now.includes(line)),
    mend,
  ).toEqual([]);
});

test('no page, sheet, slip or answer says a word that the shop does not use', () => {
  expect(now.flatMap((line) => refusedIn(line).map((word) => `${word} in "${line}"`))).toEqual([]);
});

describe('with lengths in inches', figures.tests);
