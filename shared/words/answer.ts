/** One line of working: the formula, the same with its numbers in it, and where it comes from. */
export interface Step {
  readonly formula: string;
  readonly numbers: string;
  readonly source: string;
}

/** Something a reader must know about an answer: a limit of validity passed, an assumption made. */
export interface Warning {
  readonly code: string;
  readonly text: string;
}

/** What every calculation gives back. `value` is null when it cannot be computed; a warning then says why. */
export interface Answer {
  readonly symbol: string;
  readonly value: number | null;
  readonly unit: Unit;
  readonly how: readonly Step[];
  readonly warnings: readonly Warning[];
}

export type Unit =
  | 'mm'
  | 'mm²'
  | 'deg'
  | 'N'
  | 'MPa'
  | 'N·m'
  | 'kg'
  | 'g·mm'
  | 'µm'
  | 'threads'
  | 'diameters'
  | 'cuts'
  | 'rpm'
  | 's'
  | 'K'
  | '%'
  | '';
