import { expect, test } from 'vitest';
import type { Finding } from '../../shared/words/finding.ts';
import type { StudCheck } from '../../shared/words/stud/stud.ts';
import { holdsInWords, slips } from '../../shared/words/verdicts.ts';

/** A joint of which the slip torque and the share of proof load were checked. */
function joint(slip: Finding['status'], proof: Finding['status']): StudCheck {
  const findings = [
    { id: 'joint-proof', status: proof },
    { id: 'joint-slip', status: slip },
  ];
  return { holds: [slip, proof].includes('fail') ? 'no' : 'yes', findings } as unknown as StudCheck;
}

test('a joint that would hold but overloads its stud is not said to slip', () => {
  expect(holdsInWords(joint('pass', 'pass'))).toBe('Joint holds');
  expect(holdsInWords(joint('pass', 'fail'))).toBe('Torque too much for the stud');
  expect(slips(joint('pass', 'fail'))).toBe(false);
});

test('a joint that slips does not hold, whatever its stud carries', () => {
  expect(holdsInWords(joint('fail', 'pass'))).toBe('Joint does not hold');
  expect(holdsInWords(joint('fail', 'fail'))).toBe('Joint does not hold');
});
