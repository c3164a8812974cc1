import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const TABLE = fileURLToPath(new URL('../README.md', import.meta.url));

/** The rows of the table of faults. */
export const rowsOfFaults = (): readonly string[] =>
  readFileSync(TABLE, 'utf8')
    .split('\n')
    .filter((line) => line.startsWith('| '))
    .slice(2);

/** Prints one row of the table of faults, and holds the table to it. */
export function tell(fault: string, count: string, result: string): void {
  const row = `| ${fault} | ${count} | ${result} |`;
  process.stdout.write(`${row}\n`);
  if (!rowsOfFaults().includes(row)) {
    throw new Error(`The table in tests/faults/README.md lacks this row:\n${row}`);
  }
}
