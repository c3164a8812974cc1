import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readable, wordsOf, written } from './list.ts';
import { visitAll } from './visit.ts';

/** `npm run words`: makes the list anew. */
const path = fileURLToPath(new URL('words.md', import.meta.url));
const text = written(wordsOf(readable(await visitAll())));
writeFileSync(path, text);
console.log(
  `${text.split('\n').filter((line) => line.startsWith('- ')).length} sentences and labels: tests/words/words.md`,
);
process.exit(0);
