import { createHash } from 'node:crypto';

/** Hash of one row, whatever the order of its columns. */
export function hashOfRow(row: Readonly<Record<string, unknown>>): string {
  const fields = Object.entries(row).sort(([a], [b]) => (a < b ? -1 : 1));
  const plain = fields.map(([name, value]) => [name, Buffer.isBuffer(value) ? value.toString('hex') : value]);
  return createHash('sha256').update(JSON.stringify(plain)).digest('hex');
}

/** One hash for the rows of a table from those of each, whatever their order. */
export function hashOfRows(hashes: readonly string[]): string {
  return createHash('sha256')
    .update([...hashes].sort().join('\n'))
    .digest('hex');
}
