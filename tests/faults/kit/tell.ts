import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './program.ts';

/** Prints one row of the table of faults, and holds DEVELOPERS.md to it. */
export function tell(fault: string, count: string, result: string): void {
  const row = `| ${fault} | ${count} | ${result} |`;
  process.stdout.write(`${row}\n`);
  const rows = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8').split('\n');
  if (!rows.includes(row)) throw new Error(`The table of faults in DEVELOPERS.md lacks this row:\n${row}`);
}
