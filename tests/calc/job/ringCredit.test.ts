import { describe, expect, it } from 'vitest';
import { restsOnUnjoinedRing } from '../../../src/calc/job/ringCredit.ts';
import { ringedDecision } from '../../records/jobs/ringed.ts';

describe('whether a decision counts on a ring that is not recorded as joined', () => {
  const met = ringedDecision(4);
  const planned = {
    ...met,
    decision: 'face-and-ring' as const,
    check: { ...met.check, verdict: 'face-and-ring' as const },
  };
  const joined = ringedDecision(4, { joinedToPads: true });

  it.each([
    ['a limit met with a ring kept before it was asked', met, true],
    ['a limit met with a ring that is not joined', ringedDecision(4, { joinedToPads: false }), true],
    ['a limit met with a ring that is joined', joined, false],
    ['a limit that was not checked', ringedDecision(4, { stiffness: 'not-checked' }), false],
    ['a cover that is replaced', { ...met, decision: 'replace' as const }, false],
    ['a verdict that asked for a ring, how it is joined unknown', planned, true],
    ['a verdict that asked for a ring, nothing kept of its bending', { ...planned, bending: null }, true],
    [
      'a verdict that asked for a ring that is joined',
      {
        ...planned,
        bending: {
          ...joined.bending!,
          welded: false,
          cases: [{ ...joined.bending!.cases[2]!, id: 'ring-unbonded' as const }],
        },
      },
      false,
    ],
    [
      'a person who used it without the ring asked for',
      { ...planned, decision: 'face' as const, bending: null },
      false,
    ],
    ['a decision from before bending was kept', { ...met, bending: null }, false],
  ])('%s', (_, decision, wanted) => {
    expect(restsOnUnjoinedRing(decision)).toBe(wanted);
  });
});
