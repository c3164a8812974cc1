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
      title: "The maker's leave",
      status: makerAllows === 'yes' ? 'pass' : makerAllows === 'no' ? 'fail' : 'not-checked',
      sentence: {
        yes: 'The vehicle’s maker allows re-torquing after the first heat cycle.',
        no: 'The vehicle’s maker does not allow re-torquing, so all of the settling is counted. Take the nuts off and fit new ones as the maker says.',
        'not-said':
          'Whether the vehicle’s maker allows it was not said, so all of the settling is counted. Look it up before the job goes out.',
      }[makerAllows],
    },
    {
      ...base,
      id: 'retightening-locker',
      title: 'Thread-locker',
      status: threadLocker ? 'fail' : 'pass',
      sentence: threadLocker
        ? 'Turning the nut again breaks the thread-locker, which then holds nothing; all of the settling is counted. Take it off, clean both threads, and lock it anew.'
        : 'No thread-locker is on the threads.',
    },
    {
      ...base,
      id: 'retightening-torque',
      title: 'Same torque',
      status: firstNm === null ? 'not-checked' : same ? 'pass' : 'caution',
      value: torqueNm,
      limit: firstNm,
      unit: 'N·m',
      sentence:
        firstNm === null
          ? `Re-torqued to ${Nm(torqueNm)}; the first torque was not recorded.`
          : same
            ? `Re-torqued to ${Nm(torqueNm)}, the torque of the first time.`
            : `Re-torqued to ${Nm(torqueNm)}; the first time it was ${Nm(firstNm)}. The vehicle maker’s torque comes first.`,
    },
  ];
}
