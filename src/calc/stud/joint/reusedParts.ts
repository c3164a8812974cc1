import { type LengthUnit, printTorque } from '../../../../shared/words/print.ts';
import type { Joint, Nut } from '../../../../shared/words/stud/stud.ts';
import type { Checked } from '../numbers/checked.ts';

const PRACTICE = 'common practice, no source';

/**
 * What to look at by hand where studs or locking nuts were used before, or nuts are re-torqued; nothing is computed.
 *   Valid: advice beside the joint; it moves neither `fits` nor `holds`. Without its own torque a locking nut leaves
 *   `holds` unknown (jointChecks.ts).
 *   Source: common practice, no source; ISO 2320 gives prevailing torques by size and class (from memory, not built in)
 *   Example: a prevailing-torque nut without its own torque → not checked (calc/stud/joint/reusedParts.test.ts)
 */
export function reusedParts(joint: Joint, nut: Nut | null, unit: LengthUnit): Checked[] {
  return [
    ...(joint.studsUsedBefore ? [studsUsed()] : []),
    ...(nut?.prevailing ? [prevailingNut(joint, unit)] : []),
    ...(joint.retightened ? [retorqued()] : []),
  ];
}

function studsUsed(): Checked {
  return byHand(
    'joint-studs-used',
    'Studs used before',
    'caution',
    'A stretched stud does not hold. Run a new nut down each by hand and measure its pitch diameter; replace any that binds, is thin or out of square.',
  );
}

function prevailingNut({ prevailingNm }: Joint, unit: LengthUnit): Checked {
  return prevailingNm == null
    ? byHand(
        'joint-prevailing-nut',
        'Locking nut',
        'not-checked',
        'The nut’s prevailing torque is missing. Measure it on the last turn before the nut seats. Use a new locking nut, or one still at its maker’s figure.',
      )
    : byHand(
        'joint-prevailing-nut',
        'Locking nut',
        'caution',
        `${printTorque(prevailingNm, unit, 1)} of the torque only turns the nut. A locking nut grips less each time; below its maker’s figure, replace it.`,
      );
}

function retorqued(): Checked {
  return byHand(
    'joint-retightened',
    'Re-torque',
    'caution',
    'Half the settling loss counts because the nuts are re-torqued after the first heat cycle. Only where the vehicle maker allows it; never on thread-locker.',
  );
}

function byHand(id: string, title: string, status: 'caution' | 'not-checked', sentence: string): Checked {
  return {
    finding: {
      id,
      title,
      status,
      value: null,
      limit: null,
      unit: '',
      sentence,
      source: PRACTICE,
      answer: null,
    },
    field: 'joint',
    missMm: null,
    short: '',
    mend: '',
    counts: false,
    answers: {},
  };
}
