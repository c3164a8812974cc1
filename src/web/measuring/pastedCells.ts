import type { DecimalSign } from '../../../shared/quantity/plainNumber.ts';

/** One line of a pasted table: its number, counted from 1, and what stands in its columns. */
export interface PastedLine {
  readonly line: number;
  readonly cells: readonly string[];
}

/** The lines and columns of text as a spreadsheet copies it (tabs), a CSV file has it, or a machine prints it. */
export function pastedLines(text: string, sign: DecimalSign): readonly PastedLine[] {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/);
  const separator = separatorOf(lines, sign);
  return lines.flatMap((one, i) => {
    if (one.trim() === '') return [];
    const cells = separator === null ? one.trim().split(/\s{2,}/) : splitAt(one, separator);
    return [{ line: i + 1, cells: cells.map((cell) => cell.trim()) }];
  });
}

/** A comma parts columns only where it is no decimal sign. null: whatever stands apart by two spaces. */
function separatorOf(lines: readonly string[], sign: DecimalSign): string | null {
  const has = (letter: string) => lines.some((line) => line.includes(letter));
  if (has('\t')) return '\t';
  if (has(';')) return ';';
  return sign === 'point' && lines.some((line) => /,.*\d/.test(line) && !/^\s*[+-]?\d+,\d+\s*$/.test(line))
    ? ','
    : null;
}

/** As RFC 4180 quotes a cell that has the separator in it; an inch mark after a figure is no quote. */
function splitAt(line: string, separator: string): string[] {
  const cells: string[] = [];
  let rest = line;
  for (;;) {
    const quoted = /^\s*"((?:[^"]|"")*)"\s*/.exec(rest);
    const after = quoted === null ? '' : rest.slice(quoted[0].length);
    if (quoted !== null && (after === '' || after.startsWith(separator))) {
      cells.push(quoted[1]!.replaceAll('""', '"'));
      if (after === '') return cells;
      rest = after.slice(separator.length);
      continue;
    }
    const end = rest.indexOf(separator);
    if (end < 0) return [...cells, rest];
    cells.push(rest.slice(0, end));
    rest = rest.slice(end + separator.length);
  }
}
