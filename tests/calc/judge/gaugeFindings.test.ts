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
    ['the day before it was due', '2026-02-28', 'pass', 'Within its date: bench micrometer, due 2026-03-01.'],
    ['on the very day', '2026-03-01', 'pass', 'Within its date: bench micrometer, due 2026-03-01.'],
    [
      'the day after it was due',
      '2026-03-02',
      'caution',
      'Past its date when it was used on 2026-03-02: bench micrometer, due 2026-03-01. Have it calibrated, or measure again with another.',
    ],
  ])('a gauge used %s is judged by the day it was used', (_, measuredOn, status, sentence) => {
    expect(on(measuredOn, ['bench micrometer', '2026-03-01'])).toMatchObject([
      { id: 'gauge-due', status, sentence },
    ]);
  });

  test('one of two past its date is named alone; one without a date is said to be unknown', () => {
    const [late] = on('2026-05-04', ['micrometer', '2026-12-31'], ['indicator', '2026-04-30']);
    expect(late).toMatchObject({ status: 'caution' });
    expect(late!.sentence).toContain('indicator, due 2026-04-30');
    expect(late!.sentence).not.toContain('micrometer');
    expect(on('2026-05-04', ['micrometer', '2026-12-31'], ['indicator', null])).toMatchObject([
      { status: 'not-checked', sentence: 'No date of calibration is known of indicator.' },
    ]);
  });

  test('no gauge gives no finding, and a gauge without the day of measuring is not checked', () => {
    expect(on('2026-05-04')).toEqual([]);
    expect(on(null, ['indicator', '2026-04-30'])).toMatchObject([
      { status: 'not-checked', sentence: expect.stringMatching(/the day of the readings was not given\.$/) },
    ]);
  });
});
