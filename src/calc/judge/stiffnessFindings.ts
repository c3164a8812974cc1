import type { Bending, BendingCase, PistonRange } from '../../../shared/words/bending.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { printNumber } from '../../../shared/words/print.ts';

const SLACK = 1e-9;
const SOURCE = 'the shop’s criteria; thin-plate model, an advice the shop has made a limit';

interface Held {
  readonly what: string;
  readonly ratio: number;
  readonly limit: number;
}

/**
 * The shop’s limits on bending as findings: the cover as the cut leaves it, and, where a ring may be welded on, the same
 * with the ring taken as unbonded. Under both bounds of the piston the limit must be kept, so the larger ratio judges.
 *
 * Source: rows 7 and 8 of the table of verdicts (this program’s own rule)
 * Example: tests/calc/judge/stiffnessFindings.test.ts
 */
export function stiffnessFindings({
  limits,
  bending,
  why,
  ringAllowed,
}: {
  readonly limits: Bending['limits'];
  readonly bending: Pick<Bending, 'cases' | 'welded'> | null;
  /** Why there is no bending to judge. */
  readonly why: string | null;
  readonly ringAllowed: boolean;
}): Finding[] {
  if (limits.peakOverNew === null && limits.rippleOverNew === null) return [];
  const found = (id: BendingCase['id']) => bending?.cases.find((one) => one.id === id) ?? null;
  const fresh = found('new');
  const after = found('after');
  if (fresh === null || after === null) {
    return [
      finding({
        id: 'stiffness',
        title: 'Stiffness',
        status: 'not-checked',
        sentence: `The shop’s limit on bending was not checked. ${why ?? 'The bending was not worked out.'}`,
      }),
    ];
  }
  const welded = bending?.welded === true;
  const bare = judge('stiffness', welded ? 'Stiffness with its ring' : 'Stiffness', after, fresh, limits);
  const ringed = found('ring-unbonded');
  if (!ringAllowed || ringed === null || welded) return [bare];
  const told = judge('stiffness-with-ring', 'Stiffness with a ring', ringed, fresh, limits);
  // It decides the verdict where the bare cover fails, and then it has to say that too.
  return [bare, bare.status === 'fail' ? { ...told, sentence: `${bare.sentence} ${told.sentence}` } : told];
}

function judge(
  id: Finding['id'],
  title: string,
  one: BendingCase,
  fresh: BendingCase,
  limits: Bending['limits'],
): Finding {
  const held: Held[] = [];
  const hold = (what: string, of: (one: BendingCase) => PistonRange, limit: number | null) => {
    if (limit === null) return;
    const [is, was] = [of(one), of(fresh)];
    held.push({ what, ratio: Math.max(is.rigid / was.rigid, is.conforming / was.conforming), limit });
  };
  hold('pressure peak', ({ peakOverMean }) => peakOverMean, limits.peakOverNew);
  hold('ripple', ({ rippleMm }) => rippleMm, limits.rippleOverNew);
  const over = ({ ratio, limit }: Held) => ratio > limit + SLACK;
  const worst = held.reduce((a, b) => (b.ratio / b.limit > a.ratio / a.limit ? b : a));
  const told = held.map(
    (each) =>
      `the ${each.what} is ${printAgainstLimit(each)} × that of the new cover, ${over(each) ? 'past' : 'within'} the shop’s ${printNumber(each.limit, 2)} ×`,
  );
  const fails = held.some(over);
  const how = one.ring === null ? 'After the cut' : 'With the ring, taken as unbonded,';
  return finding({
    id,
    title,
    status: fails ? 'fail' : 'pass',
    value: worst.ratio,
    limit: worst.limit,
    unit: '× new',
    sentence: `${how} ${told.join('; ')}.`,
  });
}

/** Enough digits that a ratio past its limit never reads as the limit itself. */
function printAgainstLimit({ ratio, limit }: Held): string {
  const decimals = [2, 3, 4].find((d) => printNumber(ratio, d) !== printNumber(limit, d)) ?? 2;
  return printNumber(ratio, decimals);
}

function finding(told: Pick<Finding, 'id' | 'title' | 'status' | 'sentence'> & Partial<Finding>): Finding {
  return { value: null, limit: null, unit: '', source: SOURCE, answer: null, ...told };
}
