import type { Checked } from '../numbers/checked.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';

/**
 * Does the nut go on the stud's thread?   Same system, major diameter and pitch.
 *   Valid: 60° UN and ISO metric threads; a nut without a thread given is taken as the stud's 2B or 6H and says so.
 *   Source: ASME B1.1, ISO 965-1 (classes of one thread are interchangeable, threads of other sizes are not)
 *   Example: 3/8-24 stud, 3/8-16 nut → no (calc/stud/checkStud.test.ts)
 */
export function nutThread(numbers: StudNumbers): Checked {
  const { stud, nut } = numbers.input;
  const name = stud.thread.designation;
  const goesOn = numbers.nutGoesOn;
  const sentence = !nut
    ? 'No nut is entered, so engagement, threads past the nut and thread strength can’t be checked.'
    : !numbers.nutThreadGiven
      ? `The nut’s thread is not entered; it is taken as the stud’s, class ${numbers.input.stud.thread.system === 'metric' ? '6H' : '2B'}.`
      : goesOn
        ? `A ${nut.thread?.designation} nut goes on the ${name} stud.`
        : `A ${nut.thread?.designation} nut does not go on a ${name} stud. Never force it.`;
  return {
    finding: {
      id: 'nut-thread',
      title: 'Nut thread',
      status: !nut ? 'not-checked' : goesOn ? 'pass' : 'fail',
      value: null,
      limit: null,
      unit: '',
      sentence,
      source: 'the thread callouts',
      answer: null,
    },
    field: nut ? 'thread' : 'nut',
    missMm: nut && goesOn ? 0 : null,
    short: nut ? 'its thread is not the nut’s' : 'the nut',
    mend: nut ? '' : 'Enter the nut to check engagement and strength.',
    counts: true,
    answers: {},
  };
}
