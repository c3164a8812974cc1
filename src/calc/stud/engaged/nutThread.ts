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
    ? 'No nut was given, so engagement, protrusion and strength are not worked out.'
    : !numbers.nutThreadGiven
      ? `The nut’s thread was not given; it is taken as the stud’s, class ${numbers.input.stud.thread.system === 'metric' ? '6H' : '2B'}.`
      : goesOn
        ? `The nut’s thread, ${nut.thread?.designation}, goes on the stud’s, ${name}.`
        : `The nut’s thread, ${nut.thread?.designation}, does not go on the stud’s, ${name}. Never force it.`;
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
    short: nut ? 'its thread is not the nut’s' : 'no nut was given',
    mend: nut ? '' : 'Give the nut to check engagement and strength.',
    counts: true,
    answers: {},
  };
}
