import type { Answer } from '../../../../shared/words/answer.ts';
import type { Status } from '../../../../shared/words/finding.ts';
import { printNumber, printShare } from '../../../../shared/words/print.ts';
import type { Checked } from '../numbers/checked.ts';

/** Most of the proof load advised for a joint that is taken apart and used again. */
export const MOST_OF_PROOF = 0.75;
const SOURCE = '75 % of proof for a joint used again: Shigley, 9th ed., ch. 8; a recommendation, not a law';

/**
 * Share of the stud's proof load that the tightest of the joints carries.   share = F_most/(Sp At)
 *   F_most preload with its scatter against you [N] · Sp proof stress [MPa] · At stress area [mm²]; above Rm At, Rm tensile
 *   strength [MPa], the sentence says that it may break
 *   Valid: steady load on top left out: the converter floats, so a stud carries little beyond its preload.
 *   Source: Shigley's Mechanical Engineering Design, 9th ed., ch. 8, 0.75 for reused fasteners (from memory)
 *   Example: 24 279 N on 3/8-24, Sp 586 → 0.731 (calc/stud/joint/joint.test.ts)
 */
export function proofShare({
  mostN,
  proofMPa,
  tensileMPa = null,
  areaMm2,
}: {
  mostN: number;
  proofMPa: number | null;
  tensileMPa?: number | null;
  areaMm2: number;
}): Checked & { readonly share: number | null } {
  const share = proofMPa === null ? null : mostN / (proofMPa * areaMm2);
  if (proofMPa === null || share === null) {
    const sentence = 'The stud’s proof stress is missing, so the share of its proof load can’t be checked.';
    return { ...told('not-checked', sentence, null), share };
  }
  const breaks = tensileMPa !== null && mostN > tensileMPa * areaMm2;
  const breaking = breaks ? ' The stud may break as it is tightened.' : '';
  const answer = {
    symbol: 'F/F_p',
    value: share,
    unit: '',
    how: [
      {
        formula: 'share = F_most/(Sp At)',
        numbers: `${printNumber(mostN, 0)}/(${proofMPa} · ${printNumber(areaMm2, 1)}) = ${printNumber(share, 3)}`,
        source: 'first principles',
      },
    ],
    warnings: [],
  } as const;
  const sentence = `The highest preload is ${printShare(share)} of the stud’s proof load; at most 75 % is advised for a reused joint.${breaking}`;
  return { ...told(share <= MOST_OF_PROOF + 1e-9 ? 'pass' : 'fail', sentence, answer), share };
}

function told(status: Status, sentence: string, answer: Answer | null): Checked {
  return {
    finding: {
      id: 'joint-proof',
      title: 'Share of proof load',
      limit: MOST_OF_PROOF,
      unit: '',
      source: SOURCE,
      status,
      value: answer?.value ?? null,
      sentence,
      answer,
    },
    field: 'proofMPa',
    missMm: null,
    short: 'the preload is too great for the stud',
    mend: '',
    counts: false,
    answers: answer ? { proofShare: answer } : {},
  };
}
