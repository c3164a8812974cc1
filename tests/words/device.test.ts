import { expect, test } from 'vitest';
import { deviceWord } from '../../shared/words/people.ts';

test.each([
  ['Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 Chrome/140.0 Safari/537.36', 'computer'],
  ['Mozilla/5.0 (Linux; Android 14; K) AppleWebKit/537.36 Chrome/140.0 Mobile Safari/537.36', 'phone'],
  ['Mozilla/5.0 (Linux; Android 14; K) AppleWebKit/537.36 Chrome/140.0 Safari/537.36', 'tablet'],
  ['Mozilla/5.0 (iPad; CPU OS 17_5 like Mac OS X) Version/17.5 Mobile/15E148 Safari/604.1', 'tablet'],
  ['', 'computer'],
  ['phone', 'phone'],
])('a browser that calls itself "%s" runs on a %s', (said, word) => {
  expect(deviceWord(said)).toBe(word);
});
