import type { Finding, Status } from './finding.ts';

/** What a cover's answer is told in, one row each, in this order. */
export const COVER_ROWS = {
  wall: 'Wall left',
  looked: 'Crack test and inspection',
  sure: 'How sure',
  indicated: 'Indicating and shims',
  cut: 'Cut plan',
  bending: 'Bending and heat',
  marks: 'Heat marks',
  balance: 'Balance',
  clearances: 'Clearances',
} as const;
export type CoverRow = keyof typeof COVER_ROWS;

/** The findings of each row, the one it is told by first. What is in no list is told with the wall. */
const OF_ROW: Readonly<Record<CoverRow, readonly string[]>> = {
  wall: ['wall-left', 'clean-up-cut', 'minimum-wall'],
  looked: ['crack', 'inspection'],
  sure: ['sure-of-it', 'coverage', 'doubtful-readings', 'bounds', 'off-track', 'gauge-due', 'gauge-master'],
  indicated: ['dialled-in', 'tilt', 'flatness', 'chucking', 'chucking-difference'],
  cut: ['cleans-up', 'planned-cut', 'cuts-left'],
  bending: ['stiffness', 'stiffness-with-ring'],
  marks: [],
  balance: ['unbalance'],
  clearances: [
    'release-clearance',
    'pad-thickness',
    'pads-coplanar',
    'pull-forward',
    'hub-engagement',
    'pilot-engaged',
    'pilot-clearance',
    'side-wall-height',
    'overall-height',
    'end-play',
  ],
};

/** The row that tells a finding: every finding is in one. */
export function coverRowOf(findingId: string): CoverRow {
  const [row] = Object.entries(OF_ROW).find(([, ids]) => ids.includes(findingId)) ?? ['wall'];
  return row as CoverRow;
}

const GRAVEST: readonly Status[] = ['fail', 'caution', 'not-checked', 'pass'];

/** One subject of an answer: what its closed row says, and whether it stands open. */
export interface RowTold {
  readonly status: Status;
  /** The finding the row is told by; null where nothing was looked at. */
  readonly says: Finding | null;
  readonly open: boolean;
}

/**
 * A row is as good as its worst finding, and told by it; by its first where none is worse. It stands open where
 * something failed, or where a caution decided.
 */
export function rowTold(findings: readonly Finding[], decides: readonly string[]): RowTold {
  const opens = ({ id, status }: Finding) =>
    status === 'fail' || (status === 'caution' && decides.includes(id));
  const status = gravest(findings.map((one) => one.status));
  const says = findings.find(opens) ?? findings.find((one) => one.status === status) ?? null;
  return { status, says, open: findings.some(opens) };
}

/** The findings of one row, in the order the row is told. */
export function findingsOfRow(row: CoverRow, findings: readonly Finding[]): readonly Finding[] {
  const place = ({ id }: Finding) => (OF_ROW[row].indexOf(id) + 1 || OF_ROW[row].length + 1) - 1;
  return findings
    .filter(({ id }) => coverRowOf(id) === row)
    .map((finding, i) => ({ finding, i }))
    .sort((a, b) => place(a.finding) - place(b.finding) || a.i - b.i)
    .map(({ finding }) => finding);
}

/** The gravest of several. */
function gravest(statuses: readonly Status[]): Status {
  return GRAVEST.find((status) => statuses.includes(status)) ?? 'not-checked';
}
