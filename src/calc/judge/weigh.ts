import type { Finding, Status } from '../../../shared/words/finding.ts';
import { USUAL_WEIGHT, type Weight, type WhatStops } from '../../../shared/words/whatStops.ts';

/** The status each finding has while it is not met; those it does not name have a caution. */
const UNMET: Partial<Record<keyof WhatStops, Status>> = {
  coverage: 'fail',
  'doubtful-readings': 'fail',
  'cleans-up': 'fail',
  stiffness: 'fail',
  'after-runout': 'fail',
};

/**
 * Findings with the weight the shop chose for each.   not met, chosen otherwise than usual → stop: fail; caution: caution
 *
 * A planned cut that leaves heat marks, but enough wall, weighs as the clean-up does. A finding that is met, one nobody may
 * choose of, and one left as usual stay as they were found: so a crack and a wall below the minimum always stop.
 * Valid: findings of one cover.   Source: this program’s own rule; the choice is the shop’s
 * Example: calibration overdue, chosen to stop → fail, "The shop stops here until this is fixed."
 * (tests/calc/judge/weigh.test.ts)
 */
export function weigh(
  findings: readonly Finding[],
  chosen: Partial<WhatStops> | null = null,
): readonly Finding[] {
  if (chosen === null) return findings;
  const thin = findings.some(({ id, status }) => id === 'wall-left' && status === 'fail');
  return findings.map((finding) => {
    const as = finding.id === 'planned-cut' && !thin ? 'cleans-up' : finding.id;
    const weight = mayChoose(as) ? (chosen[as] ?? USUAL_WEIGHT[as]) : null;
    if (!mayChoose(as) || weight === null || weight === USUAL_WEIGHT[as]) return finding;
    return finding.status === (UNMET[as] ?? 'caution') ? weighed(finding, weight) : finding;
  });
}

function mayChoose(id: string): id is keyof WhatStops {
  return Object.hasOwn(USUAL_WEIGHT, id);
}

function weighed(finding: Finding, weight: Weight): Finding {
  if (weight !== 'stop') return { ...finding, status: 'caution', weight };
  return stopping(finding);
}

/** A finding that is not met, where the shop chose that it stops. */
export function stopping(finding: Finding): Finding {
  const sentence = `${finding.sentence} The shop stops here until this is fixed.`;
  return { ...finding, status: 'fail', weight: 'stop', sentence };
}
