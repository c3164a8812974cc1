/** One thing that is measured, beside its yardstick of the same run. */
export interface Row {
  readonly what: string;
  readonly measured: string;
  /** What it is held against. */
  readonly yardstick: string;
  /** Measured over yardstick. */
  readonly ratio: number;
  readonly wanted: string;
  readonly met: boolean;
}

/** At most `most` times the yardstick. */
export function atMost(
  what: string,
  [value, unit]: readonly [number, string],
  [beside, told]: readonly [number, string],
  most: number,
): Row {
  const ratio = value / beside;
  return {
    what,
    measured: `${short(value)} ${unit}`,
    yardstick: `${told}: ${short(beside)} ${unit}`,
    ratio,
    wanted: `≤ ${most} ×`,
    met: ratio <= most,
  };
}

/** At least `least` times the yardstick. */
export function atLeast(
  what: string,
  [value, unit]: readonly [number, string],
  [beside, told]: readonly [number, string],
  least: number,
): Row {
  return {
    ...atMost(what, [value, unit], [beside, told], least),
    wanted: `≥ ${least} ×`,
    met: value / beside >= least,
  };
}

/** Less than a figure that stands by itself. */
export function under(what: string, [value, unit]: readonly [number, string], limit: number): Row {
  return atMost(what, [value, unit], [limit, 'wanted'], 1);
}

function short(value: number): string {
  return value >= 100 ? value.toFixed(0) : value.toPrecision(3);
}

const HEADS = ['', 'measured', 'yardstick of the same run', 'ratio', 'wanted', 'met'] as const;

/** The table, as Markdown. */
export function tableOf(rows: readonly Row[]): string {
  const cells = rows.map(({ what, measured, yardstick, ratio, wanted, met }) => [
    what,
    measured,
    yardstick,
    ratio.toPrecision(2),
    wanted,
    met ? 'yes' : '**no**',
  ]);
  const line = (parts: readonly string[]) => `| ${parts.join(' | ')} |`;
  return [line(HEADS), line(HEADS.map(() => '---')), ...cells.map(line)].join('\n');
}
