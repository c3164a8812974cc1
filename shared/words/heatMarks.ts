import { type Row, rowNames } from './paper.ts';
import { briefLength, type LengthUnit, printLength, printNumber, printShare } from './print.ts';

/** How the heat marks of one row lie, seen from above. `not-enough-stations` where that cannot be told. */
export const MARK_PATTERNS = [
  'behind-studs',
  'one-side',
  'between-studs',
  'all-round',
  'one-row-deeper',
  'none',
  'not-enough-stations',
] as const;
export type MarkPattern = (typeof MARK_PATTERNS)[number];

/** The heat marks of one row, as shares of their mean depth; what cannot be told is null. */
export interface HeatMarkRow {
  readonly radiusMm: number;
  readonly meanMm: number;
  /** √(a₁² + b₁²)/d₀. */
  readonly oneSidedShare: number | null;
  /** Where they are deepest, clockwise from stud 1; null where no side is deeper. */
  readonly oneSidedDeg: number | null;
  /** c/d₀: positive behind the studs, negative between them. */
  readonly studShare: number | null;
  /** The strongest of what they say. */
  readonly pattern: MarkPattern;
}

export const MARK_PATTERN_WORD: Readonly<Record<MarkPattern, string>> = {
  'behind-studs': 'behind the studs',
  'one-side': 'on one side',
  'between-studs': 'between the studs',
  'all-round': 'all the way around',
  'one-row-deeper': 'deeper than the other row',
  none: 'no heat marks',
  'not-enough-stations': 'too few stations to tell',
};

/** From where on a share says something (common practice, no source). */
const STUD_SHARE = 0.4;
const ONE_SIDED_SHARE = 0.4;
const ROW_SHARE = 0.5;
/** At a threshold counts; sums of floats miss it by dust. */
const DUST = 1e-9;

/** `told` false where the row has too few stations. */
type Shares = Omit<HeatMarkRow, 'pattern'> & { readonly told: boolean };

/** One thing that the marks of a row say, and how strongly: the ratio of its share to its threshold. */
export interface MarksTold {
  readonly row: number;
  readonly pattern: MarkPattern;
  /** As a share of the mean depth, of `one-row-deeper` of this row's; null where there is none. */
  readonly share: number | null;
  readonly strength: number;
}

/** What all rows say, the strongest first. A row that says nothing else is marked all around, not marked, or not told. */
export function patternsTold(rows: readonly Shares[]): readonly MarksTold[] {
  const means = rows.filter((one) => one.told).map(({ meanMm }) => meanMm);
  const shallowestMm = Math.min(...means);
  return rows
    .flatMap((one, row): MarksTold[] => {
      const { meanMm, studShare, oneSidedShare } = one;
      const said = (pattern: MarkPattern, share: number | null = null, strength = 0) => ({
        row,
        pattern,
        share,
        strength,
      });
      if (!one.told) return [said('not-enough-stations')];
      if (studShare === null || oneSidedShare === null) return [said('none')];
      const deeper = (meanMm - shallowestMm) / meanMm;
      const strong = [
        said('behind-studs', studShare, studShare / STUD_SHARE),
        said('one-side', oneSidedShare, oneSidedShare / ONE_SIDED_SHARE),
        said('between-studs', studShare, -studShare / STUD_SHARE),
        said('one-row-deeper', deeper, deeper / ROW_SHARE),
      ].filter(({ strength, pattern }) =>
        pattern === 'one-row-deeper' ? strength > 1 + DUST : strength >= 1 - DUST,
      );
      const round = strong.every(({ pattern }) => pattern === 'one-row-deeper');
      return round ? [...strong, said('all-round')] : strong;
    })
    .sort((a, b) => b.strength - a.strength || a.row - b.row);
}

/** The strongest of what one row says. */
export function strongestOf(told: readonly MarksTold[], row: number): MarkPattern {
  return told.find((one) => one.row === row)?.pattern ?? 'not-enough-stations';
}

/**
 * What the heat marks say, in sentences, the strongest first; nothing where no depth was read. Advice (common
 * practice, no source).
 */
export function heatMarksInWords(rows: readonly HeatMarkRow[], unit: LengthUnit): readonly string[] {
  const told = patternsTold(rows.map((row) => ({ ...row, told: row.pattern !== 'not-enough-stations' })));
  const spoken = told.filter(({ pattern }) => pattern !== 'none' && pattern !== 'not-enough-stations');
  if (rows.every(({ meanMm }) => meanMm === 0)) return [];
  if (spoken.length === 0) {
    return [
      'Too few stations to tell how the heat marks lie. A row needs one behind every stud and one between every pair.',
    ];
  }
  const sentences = spoken.map((one) => {
    const row = rows[one.row]!;
    return SAYS[one.pattern]({ row, share: one.share ?? 0, where: whereOn(rows, one.row, unit), unit });
  });
  const causes = [...new Set(spoken.map(({ pattern }) => pattern))].map((pattern) => CAUSE[pattern]);
  return [...sentences, ...causes.filter((cause) => cause !== '')];
}

interface Said {
  readonly row: HeatMarkRow;
  readonly share: number;
  readonly where: string;
  readonly unit: LengthUnit;
}

/** "62 % above the mean of 0.120 mm". */
const above = ({ share, row, unit }: Said) =>
  `${printShare(Math.abs(share), 0)} above the mean of ${printLength(row.meanMm, unit)}`;

const SAYS: Readonly<Record<MarkPattern, (said: Said) => string>> = {
  'behind-studs': (said) => `Heat marks are deepest behind the studs${said.where}: ${above(said)}.`,
  'one-side': (said) =>
    `Heat marks are deepest on one side${said.where}, at ${printNumber(said.row.oneSidedDeg ?? 0, 0)}°: ${above(said)}.`,
  'between-studs': (said) => `Heat marks are deepest between the studs${said.where}: ${above(said)}.`,
  'all-round': ({ row, where, unit }) =>
    `Heat marks run all the way around${where}, ${printLength(row.meanMm, unit)} deep on average.`,
  'one-row-deeper': ({ row, where, share, unit }) =>
    `Heat marks are deeper${where}: ${printLength(row.meanMm, unit)} on average, ${printLength(row.meanMm * (1 - share), unit)} on the other row.`,
  none: () => '',
  'not-enough-stations': () => '',
};

/** Where to look for the cause. */
const CAUSE: Readonly<Record<MarkPattern, string>> = {
  'behind-studs': 'The cover bends between its studs. Look at the wall, a ring and the lock-up pressure.',
  'one-side': 'The face or the piston was not square. Look at the runout, the crank pilot and the hub.',
  'between-studs': 'Bending between the studs does not leave such marks.',
  'all-round': 'The clutch slipped. Look at the pressure, the lining, the oil and the release clearance.',
  'one-row-deeper': 'The face was dished or the piston coned. Look at both.',
  none: '',
  'not-enough-stations': '',
};

/** " on the inner row"; nothing where there is one row only. */
function whereOn(rows: readonly HeatMarkRow[], index: number, unit: LengthUnit): string {
  const name: Row = rowNames(rows.length)[index]!;
  if (name === 'only') return '';
  if (name !== 'of-many') return ` on the ${name} row`;
  return ` at radius ${briefLength(rows[index]!.radiusMm, unit)}`;
}
