import { expect, test } from 'vitest';
import { refusedIn } from '../words/refused.ts';
import { sourceWords } from '../words/sourceWords.ts';

test('a refused word is found as a word, and not in the name of a field, a path or a file', () => {
  expect(refusedIn('The track of this Family')).toEqual([
    'family (say: cover type)',
    'track (say: friction surface)',
  ]);
  expect(refusedIn('See trackInnerDiameterMm, cover.family, family.csv and /catalogue/family')).toEqual([]);
});

test('no string of the program that is shown says a word that the shop does not use', () => {
  const said = sourceWords().flatMap(({ file, line, text }) =>
    refusedIn(text).map((word) => `${file}:${line} ${word} in "${text}"`),
  );
  expect(said).toEqual([]);
});
