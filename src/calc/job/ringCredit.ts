import type { BendingCaseId } from '../../../shared/words/bending/bending.ts';
import type { Decision } from '../../../shared/words/job.ts';

/**
 * Whether a decision counts on a stiffening ring that is not recorded as joined to the pads: its verdict asked for a
 * ring, or the limit was met with the ring that is on. Decisions of today never do; earlier ones may.
 */
export function restsOnUnjoinedRing({ decision, check, bending = null }: Decision): boolean {
  if (decision === 'replace') return false;
  const ringOf = (id: BendingCaseId) => bending?.cases.find((one) => one.id === id)?.ring ?? null;
  const passed = (id: string) => check.findings.some((one) => one.id === id && one.status === 'pass');
  if (decision === 'face-and-ring' && check.verdict === 'face-and-ring') {
    return ringOf('ring-unbonded')?.joinedToPads !== true;
  }
  const counted = bending?.welded === true ? ringOf('after') : null;
  return counted !== null && counted.joinedToPads !== true && passed('stiffness');
}
