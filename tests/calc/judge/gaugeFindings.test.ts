import { describe, expect, test } from 'vitest';
import { gaugeFindings } from '../../../src/calc/judge/gaugeFindings.ts';
import { coverInput } from '../cover/sets.ts';

const on = (measuredOn: string | null, ...gauges: [string, string | null][]) =>
  gaugeFindings({
    ...coverInput(),
    gaugesUsed: gauges.map(([name, dueOn]) => ({ name, dueOn })),
    measuredOn,
  });

describe('calibration of the gauges on the day they were used', () => {
  test.each([
    ['the day before it was due', '2026-02-28', 'pass', 'In calibration: bench micrometer, due Mar 1, 2026.'],
    ['on the very day', '2026-03-01', 'pass', 'In calibration: bench micrometer, due Mar 1, 2026.'],
    [
      'the day after it was due',
      '2026-03-02',
      'caution',
      'Calibration was overdue on Mar 2, 2026: bench micrometer, due Mar 1, 2026. Calibrate, or measure again with another gauge.',
    ],
  ])('a gauge used %s is judged by the day it was used', (_, measuredOn, status, sentence) => {
    expect(on(measuredOn, ['bench micrometer', '2026-03-01'])).toMatchObject([
      { id: 'gauge-due', status, sentence },
    ]);
  });

  test('one of two past its date is named alone; one without a date is said to be unknown', () => {
    const [late] = on('2026-05-04', ['micrometer', '2026-12-31'], ['indicator', '2026-04-30']);
    expect(late).toMatchObject({ status: 'caution' });
    expect(late!.sentence).toContain('indicator, due Apr 30, 2026');
    expect(late!.sentence).not.toContain('micrometer');
    expect(on('2026-05-04', ['micrometer', '2026-12-31'], ['indicator', null])).toMatchObject([
      { status: 'not-checked', sentence: 'No calibration date is entered for indicator.' },
    ]);
  });

  test('no gauge gives no finding, and a gauge without the day of measuring is not checked', () => {
    expect(on('2026-05-04')).toEqual([]);
    expect(on(null, ['indicator', '2026-04-30'])).toMatchObject([
      { status: 'not-checked', sentence: expect.stringContaining('The day of the readings is missing') },
    ]);
  });
});
