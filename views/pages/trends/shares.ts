import { printShare } from '../../../shared/words/print.ts';

/** Counts with their share of all, and the shares added up. */
export function sharesRunning<Row extends { readonly n: number }>(
  rows: readonly Row[],
): readonly (Row & { readonly share: string; readonly running: string })[] {
  const total = rows.reduce((sum, { n }) => sum + n, 0);
  let before = 0;
  return rows.map((row) => {
    before += row.n;
    return { ...row, share: printShare(row.n / total, 0), running: printShare(before / total, 0) };
  });
}
