import type { Verdict } from '../../../shared/words/cover.ts';
import { type Finding, type Status, stops } from '../../../shared/words/finding.ts';

/** What a row of the table asks: has the finding of this id one of these statuses? */
type Asks = (id: string, ...statuses: Status[]) => boolean;

interface Row {
  readonly verdict: Verdict;
  readonly when: (is: Asks, stopped: boolean) => boolean;
  /** Findings that can have decided it, the weightiest first. */
  readonly because: readonly string[];
}

/** The cut that just cleans up; it has a finding of its own only where another cut is planned. */
const tooThin = (is: Asks) =>
  is('clean-up-cut', 'fail') || (is('wall-left', 'fail') && !is('clean-up-cut', 'pass', 'caution'));
const unread = (is: Asks) => is('bounds', 'not-checked', 'caution', 'fail');

/** What the shop lets stop a cover, whichever it is: it is put right and measured again. */
const STOPPED = 'stopped';
/** These lead back by rows of their own when they stop. */
const OWN_ROW: ReadonlySet<string> = new Set(['planned-cut', 'cleans-up', 'stiffness']);

/** The first row that applies is the verdict. */
const TABLE: readonly Row[] = [
  {
    verdict: 'replace', // a crack, or a fault the shop calls final: no number overrules either
    when: (is) => is('crack', 'fail') || is('inspection', 'fail'),
    because: ['crack', 'inspection'],
  },
  { verdict: 'advice-only', when: (is) => is('minimum-wall', 'not-checked'), because: ['minimum-wall'] },
  {
    verdict: 'replace', // below the minimum as chucked and with shims; unread faces: on both bounds
    when: (is) => (unread(is) ? is('bounds', 'fail') : tooThin(is) && !is('dialled-in', 'caution')),
    because: ['bounds', 'clean-up-cut', 'wall-left'],
  },
  {
    verdict: 'measure-again',
    when: (is, stopped) =>
      stopped || is('coverage', 'fail') || is('doubtful-readings', 'fail') || is('bounds', 'caution'),
    because: [STOPPED, 'coverage', 'doubtful-readings', 'bounds'],
  },
  {
    verdict: 'plan-again', // another cut would do, or the clean-up cut with shims
    when: (is) => is('planned-cut', 'fail') || is('wall-left', 'fail'),
    because: ['dialled-in', 'planned-cut', 'wall-left'],
  },
  { verdict: 'measure-again', when: (is) => is('sure-of-it', 'caution'), because: ['sure-of-it'] },
  {
    verdict: 'face-and-ring', // a ring recorded as welded to the pads, at its worse bound; only where the family allows one
    when: (is) => is('stiffness', 'fail') && is('stiffness-with-ring', 'pass'),
    because: ['stiffness-with-ring'],
  },
  { verdict: 'replace', when: (is) => is('stiffness', 'fail'), because: ['stiffness'] },
  { verdict: 'face-if-sound', when: (is) => is('crack', 'not-checked'), because: ['wall-left'] },
  { verdict: 'face', when: () => true, because: ['wall-left'] },
];

/**
 * The verdict on a cover: the first row of the table that its findings meet, and the finding that decided it.
 *
 * Valid: findings of one cover; a finding that is missing meets no row.
 * Source: this program's own rule: a crack comes first, and a wall below the minimum before anything that can be mended
 * Example: every row has a test (tests/calc/judge/verdict.test.ts)
 */
export function verdict(findings: readonly Finding[]): { verdict: Verdict; decidedBy: Finding | null } {
  const stopped = findings.filter((one) => stops(one) && !OWN_ROW.has(one.id));
  // What the shop chose to be a caution decides nothing, and what it chose to stop decides in its one row.
  const asked = findings.filter(
    ({ id, weight }) => weight === undefined || (weight === 'stop' && OWN_ROW.has(id)),
  );
  const byId = new Map(asked.map((finding) => [finding.id, finding]));
  const is: Asks = (id, ...statuses) => statuses.some((status) => byId.get(id)?.status === status);
  const row = TABLE.find(({ when }) => when(is, stopped.length > 0))!;
  const weighty = row.because.flatMap((id) => (id === STOPPED ? stopped : (byId.get(id) ?? [])));
  const of = (...statuses: Status[]) => weighty.find(({ status }) => statuses.includes(status));
  const decidedBy = of('fail', 'caution') ?? of('not-checked') ?? weighty[0] ?? null;
  return { verdict: row.verdict, decidedBy };
}
