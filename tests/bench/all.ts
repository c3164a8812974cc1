import { readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism, cpus, loadavg } from 'node:os';
import { fileURLToPath } from 'node:url';
import { heldRow } from './heldRow.ts';
import { pageRows } from './pageRows.ts';
import { pictureRow } from './pictureRow.ts';
import { type Row, tableOf } from './rows.ts';
import { bigRows, memoryRow, startRows } from './startRows.ts';
import { sumRows } from './sumRows.ts';

/**
 * `npm run bench`: one table, each row beside its yardstick of the same run, one after another, so that none takes time
 * from another. `-- --all` also does the long rows, `-- --readme` puts the table into the README.
 */
const words = process.argv.slice(2);
const machine = () =>
  `${availableParallelism()} cores of ${cpus()[0]?.model.trim() ?? 'unknown'}, node ${process.versions.node}, SQLite; load of the machine ${loadavg()[0]?.toFixed(1)} before it began`;

const on = machine();
console.log(`\n${on}\n`);
const rows: Row[] = [
  ...(await sumRows()),
  await heldRow(),
  ...(await pageRows()),
  ...(await startRows()),
  ...(await pictureRow()),
];
rows.push(...(await (words.includes('--all') ? memoryRow(10, 60) : memoryRow(2, 5))));
if (words.includes('--all')) rows.push(...(await bigRows()));
console.log(tableOf(rows));
if (words.includes('--readme')) intoReadme(`Measured on ${on}.\n\n${tableOf(rows)}`);
if (words.includes('--all')) await import('./plate.bench.ts');
process.exit(0);

/** Between its two marks; what is between them is never written by hand. */
function intoReadme(text: string): void {
  const path = fileURLToPath(new URL('../../README.md', import.meta.url));
  const [from, to] = ['<!-- bench -->', '<!-- /bench -->'];
  const before = readFileSync(path, 'utf8');
  const start = before.indexOf(from);
  const end = before.indexOf(to);
  if (start < 0 || end < start) throw new Error(`The README lacks its marks ${from} and ${to}.`);
  writeFileSync(path, `${before.slice(0, start)}${from}\n${text}\n${before.slice(end)}`);
}
