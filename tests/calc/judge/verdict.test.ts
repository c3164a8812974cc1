import { describe, expect, it } from 'vitest';
import type { Verdict } from '../../../shared/words/cover.ts';
import type { Finding, Status } from '../../../shared/words/finding.ts';
import { verdict } from '../../../src/calc/judge/verdict.ts';

/** All in order: crack tested, wall passes, sure of it. */
const SOUND: Readonly<Record<string, Status>> = {
  crack: 'pass',
  inspection: 'pass',
  'minimum-wall': 'pass',
  'wall-left': 'pass',
  coverage: 'pass',
  'doubtful-readings': 'pass',
  'cleans-up': 'pass',
  'sure-of-it': 'pass',
  'dialled-in': 'pass',
};

function judge(changes: Readonly<Record<string, Status>>) {
  const findings = Object.entries({ ...SOUND, ...changes }).map(
    ([id, status]): Finding => ({
      id,
      title: id,
      status,
      value: null,
      limit: null,
      unit: '',
      sentence: '',
      source: '',
      answer: null,
    }),
  );
  const found = verdict(findings);
  return `${found.verdict} by ${found.decidedBy?.id}`;
}

/** Each row of the table, weightiest first. The order is this program’s own. */
const ROWS: readonly (readonly [Readonly<Record<string, Status>>, Verdict, string])[] = [
  [{ crack: 'fail' }, 'replace', 'crack'],
  [{ inspection: 'fail' }, 'replace', 'inspection'],
  [{ 'minimum-wall': 'not-checked', 'wall-left': 'not-checked' }, 'advice-only', 'minimum-wall'],
  [{ 'wall-left': 'fail', 'dialled-in': 'fail', 'sure-of-it': 'fail' }, 'replace', 'wall-left'],
  [{ coverage: 'fail' }, 'measure-again', 'coverage'],
  [{ 'doubtful-readings': 'fail' }, 'measure-again', 'doubtful-readings'],
  [{ bounds: 'caution' }, 'measure-again', 'bounds'],
  [{ 'planned-cut': 'fail', 'cleans-up': 'fail' }, 'plan-again', 'planned-cut'],
  [{ 'wall-left': 'fail', 'dialled-in': 'caution', 'sure-of-it': 'fail' }, 'plan-again', 'dialled-in'],
  [{ 'sure-of-it': 'caution' }, 'measure-again', 'sure-of-it'],
  [{ stiffness: 'fail', 'stiffness-with-ring': 'pass' }, 'face-and-ring', 'stiffness-with-ring'],
  [{ stiffness: 'fail' }, 'replace', 'stiffness'],
  [{ crack: 'not-checked' }, 'face-if-sound', 'wall-left'],
  [{}, 'face', 'wall-left'],
];

describe('the table of verdicts', () => {
  it.each(ROWS)('the verdict on %o is %s, decided by %s', (changes, wanted, by) => {
    expect(judge(changes)).toBe(`${wanted} by ${by}`);
  });
  it('each row of the table decides before all that follow it', () => {
    for (const [i, [changes, wanted]] of ROWS.entries()) {
      for (const [later] of ROWS.slice(i + 1)) {
        // Dialling in was worked out, so the face was read: bounds cannot stand beside it.
        if ('bounds' in later && 'dialled-in' in changes) continue;
        // The row itself overrides; a later row’s failings beside it change nothing.
        expect(judge({ ...later, ...changes }).split(' by ')[0], JSON.stringify([changes, later])).toBe(
          wanted,
        );
      }
    }
  });
});

describe('rows that lean on more than one finding', () => {
  it('an unread face is given up only on both bounds', () => {
    expect(judge({ 'wall-left': 'fail', bounds: 'caution', 'dialled-in': 'not-checked' })).toMatch(
      /^measure-again/,
    );
    expect(judge({ 'wall-left': 'fail', bounds: 'fail', 'dialled-in': 'not-checked' })).toBe(
      'replace by bounds',
    );
  });
  it('a planned cut that leaves too little is no reason to give up a cover whose clean-up cut passes', () => {
    const planned = { 'planned-cut': 'fail', 'wall-left': 'fail', 'clean-up-cut': 'pass' } as const;
    expect(judge(planned)).toBe('plan-again by planned-cut');
    expect(judge({ ...planned, 'clean-up-cut': 'fail', 'dialled-in': 'fail' })).toBe(
      'replace by clean-up-cut',
    );
  });
  it('a fault that can be mended decides nothing', () => {
    expect(judge({ inspection: 'caution' })).toBe('face by wall-left');
  });
  it('a crack is lifted by no other finding', () => {
    const everything = Object.assign({}, ...ROWS.map(([changes]) => changes), { crack: 'fail' });
    expect(judge(everything)).toBe('replace by crack');
  });
});
