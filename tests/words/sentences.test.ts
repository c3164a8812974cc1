import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const MOST_WORDS = 25;

/** Parts of the list that are read sitting down, at a desk or by a program. */
const OTHER_PARTS =
  /^(How it is worked out|Interface for programs|Backups, commands and the database|Start)$/;

/** Lines that are longer, and why. */
const LONGER: readonly (readonly [line: RegExp, why: string])[] = [
  [/ · .* · .* · /, 'names of what was checked, each a word or two'],
  [/; .*; .*; /, 'a list of fields with their values'],
  [/the center moves # toward the engine/, 'read out to who cannot see the drawing, case by case'],
  [/npm run people/, 'the commands there are, each with what it does'],
  [/^- Demo limits, back to/, 'the limits that begin anew, each by its name'],
  [/^- The middle of the wall from the center/, 'what a drawing shows, beside it'],
  [/its waviness is raised by # and its peak pressure/, 'how far to trust advice, folded away'],
];

const list = readFileSync(new URL('words.md', import.meta.url), 'utf8').split('\n');

/** Sentences of a line; a line may begin with the title of what was checked. */
function sentencesOf(line: string): string[] {
  return line.split(/(?<=[.?!:])\s+(?=[\p{Lu}“"#])/u);
}

const lengthOf = (sentence: string) =>
  sentence.split(/\s+/).filter((word) => /[\p{L}\d#]/u.test(word)).length;

test('no sentence on a screen has more than 25 words', () => {
  const long: string[] = [];
  let part = '';
  for (const line of list) {
    if (line.startsWith('#')) part = line.replace(/^#+ /, '');
    if (!line.startsWith('- ') || OTHER_PARTS.test(part)) continue;
    if (LONGER.some(([fits]) => fits.test(line))) continue;
    long.push(...sentencesOf(line.slice(2)).filter((sentence) => lengthOf(sentence) > MOST_WORDS));
  }
  expect([...new Set(long)]).toEqual([]);
});

test('every line that may be longer is still there', () => {
  for (const [line, why] of LONGER)
    expect(
      list.some((one) => line.test(one)),
      why,
    ).toBe(true);
});
