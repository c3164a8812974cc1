import type { Finding } from '../../../../shared/words/finding.ts';
import type { RetorqueAsked } from '../../../../shared/words/job.ts';
import { type LengthUnit, printTorque } from '../../../../shared/words/print.ts';

const PRACTICE = 'common practice, no source';
/** Torques this close count as the same: a wrench is read no closer (this program's own rule). */
const SAME_SHARE = 0.02;

/**
 * What is found of nuts that were re-torqued after the first heat cycle.
 *   the maker's leave: yes passes, no fails, not said is not checked · thread-locker fails · torque within 2 % of the first
 *   Valid: a record, not a calculation; how much settling is then counted is in embeddingLoss.ts: halved where
 *   the maker allows it and no thread-locker is used, else whole, never none.
 *   Source: common practice, no source; 2 % is this program's own rule
 *   Example: not allowed, or on thread-locker → fail (calc/stud/joint/retorque.test.ts)
 */
export function retorque(
  { makerAllows, threadLocker, torqueNm }: RetorqueAsked,
  firstNm: number | null,
  unit: LengthUnit,
): readonly Finding[] {
  const base = { value: null, limit: null, unit: '', source: PRACTICE, answer: null };
  const Nm = (value: number) => printTorque(value, unit, 1);
  const same = firstNm !== null && Math.abs(torqueNm / firstNm - 1) <= SAME_SHARE + 1e-9;
  return [
    {
      ...base,
      id: 'retightening-allowed',
      title: 'Vehicle maker’s rule',
      status: makerAllows === 'yes' ? 'pass' : makerAllows === 'no' ? 'fail' : 'not-checked',
      sentence: {
        yes: 'The vehicle maker allows re-torquing after the first heat cycle.',
        no: 'The vehicle maker does not allow re-torquing, so the full settling loss counts. Fit new nuts as the maker says.',
        'not-said':
          'Look up whether the vehicle maker allows re-torquing before the job goes out. Until then the full settling loss counts.',
      }[makerAllows],
    },
    {
      ...base,
      id: 'retightening-locker',
      title: 'Thread-locker',
      status: threadLocker ? 'fail' : 'pass',
      sentence: threadLocker
        ? 'Re-torquing breaks the thread-locker, and the full settling loss counts. Remove the nut, clean both threads and apply new thread-locker.'
        : 'No thread-locker is on the threads.',
    },
    {
      ...base,
      id: 'retightening-torque',
      title: 'Re-torque',
      status: firstNm === null ? 'not-checked' : same ? 'pass' : 'caution',
      value: torqueNm,
      limit: firstNm,
      unit: 'N·m',
      sentence:
        firstNm === null
          ? `Re-torqued to ${Nm(torqueNm)}; the first torque is not recorded.`
          : same
            ? `Re-torqued to ${Nm(torqueNm)}, the same as at first.`
            : `Re-torqued to ${Nm(torqueNm)}; at first it was ${Nm(firstNm)}. The vehicle maker’s torque comes first.`,
    },
  ];
}
