import { type LengthUnit, printTorque } from '../../../../shared/words/print.ts';
import type { Joint, Nut } from '../../../../shared/words/stud.ts';
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
    'A stud that was ever pulled past its yield does not hold its preload again. Run a new nut down each by hand, measure the pitch diameter half way along, and replace any that binds, is thin, or leans.',
  );
}

function prevailingNut({ prevailingNm }: Joint, unit: LengthUnit): Checked {
  return prevailingNm == null
    ? byHand(
        'joint-prevailing-nut',
        'Locking nut',
        'not-checked',
        'It takes torque only to turn this nut; that part gives no preload, and it was not given. Measure it on the last turn before the nut seats. A locking nut that was on before grips less each time: use a new one, or the one whose torque is still what its maker asks.',
      )
    : byHand(
        'joint-prevailing-nut',
        'Locking nut',
        'caution',
        `Of the torque ${printTorque(prevailingNm, unit, 1)} only turns the nut and is taken off before the preload. A locking nut grips less each time it is used: below its maker’s figure, replace it.`,
      );
}

function retorqued(): Checked {
  return byHand(
    'joint-retightened',
    'Re-torqued',
    'caution',
    'Half the settling is counted, because the nuts are re-torqued after the first heat cycle. Only where the vehicle’s maker allows it, and never on thread-locker.',
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
