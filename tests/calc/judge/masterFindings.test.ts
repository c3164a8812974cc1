import { describe, expect, test } from 'vitest';
import type { MasterChecks } from '../../../shared/words/gauges/masterChecks.ts';
import { masterFindings } from '../../../src/calc/judge/masterFindings.ts';

const CHECKS: MasterChecks = {
  everyDays: 30,
  lastOn: '2026-03-01',
  lastOffMm: 0.002,
  nextOn: null,
  nextOffMm: null,
  limitMm: 0.005,
  driftsOutOn: null,
};
const said = (change: Partial<MasterChecks> | null, measuredOn: string | null = '2026-03-10') =>
  masterFindings(
    {
      gaugesUsed: [{ name: 'M1', dueOn: null, masterChecks: change && { ...CHECKS, ...change } }],
      measuredOn,
    },
    'mm',
  )[0];

describe('a gauge on its master', () => {
  test.each([
    ['agrees', {}, 'pass', 'M1 agreed with its master on Mar 1, 2026: 0.002 mm off, 0.005 mm allowed.'],
    ['agrees at the limit itself', { lastOffMm: -0.005 }, 'pass', '0.005 mm off, 0.005 mm allowed'],
    [
      'is over',
      { lastOffMm: 0.006 },
      'caution',
      'M1 read 0.006 mm over its master on Mar 1, 2026; 0.005 mm is allowed.',
    ],
    ['is under', { lastOffMm: -0.0052 }, 'caution', 'M1 read 0.0052 mm under its master'],
    [
      'was found off by the next check',
      { nextOn: '2026-03-20', nextOffMm: 0.02 },
      'caution',
      'read 0.02 mm over its master on Mar 20, 2026',
    ],
    [
      'drifts',
      { driftsOutOn: '2026-03-28' },
      'caution',
      'M1 drifts: past 0.005 mm off its master by Mar 28, 2026.',
    ],
    [
      'was never checked',
      { lastOn: null, lastOffMm: null },
      'caution',
      'M1 was not checked on a master; a check is due every 30 days.',
    ],
    ['has no uncertainty', { limitMm: null }, 'not-checked', 'No uncertainty is entered for M1'],
  ] as const)('that %s', (_, change, status, sentence) => {
    expect(said(change)).toMatchObject({
      id: 'gauge-master',
      status,
      sentence: expect.stringContaining(sentence),
    });
  });

  test('is due on the last day of its interval, and overdue on the next', () => {
    expect(said({}, '2026-03-31')!.status).toBe('pass');
    expect(said({}, '2026-04-01')).toMatchObject({
      status: 'caution',
      sentence: expect.stringContaining('last checked'),
    });
    expect(said({ everyDays: null }, '2026-04-01')!.status).toBe('pass');
  });

  test('says nothing where nobody asks for a check and none tells anything', () => {
    expect(said(null)).toBeUndefined();
    const later = { everyDays: null, lastOn: null, lastOffMm: null, nextOn: '2026-03-20' };
    expect(said({ ...later, nextOffMm: 0.001 })).toBeUndefined();
    expect(said({ ...later, nextOffMm: 0.008 })!.status).toBe('caution');
  });

  test('without the day of the readings is not checked', () =>
    expect(said({}, null)!.status).toBe('not-checked'));

  test('of two gauges the worse is told', () => {
    const gaugesUsed = [
      { name: 'M1', dueOn: null, masterChecks: CHECKS },
      { name: 'M2', dueOn: null, masterChecks: { ...CHECKS, lastOffMm: 0.03 } },
    ];
    const [found] = masterFindings({ gaugesUsed, measuredOn: '2026-03-02' }, 'in');
    expect(found).toMatchObject({ status: 'caution', value: 0.03, limit: 0.005 });
    expect(found!.sentence).toContain('M2 read 0.0012 in over');
    expect(found!.sentence).not.toContain('M1');
  });
});
