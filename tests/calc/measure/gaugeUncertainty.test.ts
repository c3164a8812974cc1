import { describe, expect, it } from 'vitest';
import { calibrationUncertainty } from '../../../src/calc/measure/calibrationUncertainty.ts';
import { heightUncertainty } from '../../../src/calc/measure/heightUncertainty.ts';

// Arithmetic by hand of the formulas of JCGM 100:2008, 4.3.3, 4.3.7 and 5.1.2.
describe('the calibration of a gauge', () => {
  it.each([
    [0.004, 2, 0.002],
    [0.003, 1.5, 0.002],
    [0, 2, 0],
  ])(
    'a calibration of U %s mm with k %s is a standard uncertainty of %s mm',
    (expandedMm, coverageFactor, u) => {
      expect(calibrationUncertainty({ expandedMm, coverageFactor }).value).toBeCloseTo(u, 15);
    },
  );
});

describe('one height by indicator', () => {
  const calibration = { expandedMm: 0.004, coverageFactor: 2 };

  it('one height’s uncertainty is the root of the squares of calibration, step and spread', () => {
    // 4e-6 + 1e-4 / 12 + 4e-6 = 16.3333e-6
    const found = heightUncertainty({ calibration, stepMm: 0.01, repeatabilityMm: 0.002 })!;
    expect(found.value).toBeCloseTo(0.0040415, 7);
    expect(found.how.at(-1)?.numbers).toBe(
      'u_z = √((0.00200 mm)² + (0.00289 mm)² + (0.00200 mm)²) = 0.00404 mm',
    );
  });

  it.each([
    ['the calibration alone', { calibration, stepMm: null, repeatabilityMm: null }, 0.002],
    [
      'the step alone, evenly within half a step',
      { calibration: null, stepMm: 0.012, repeatabilityMm: null },
      0.0034641,
    ],
    ['the spread alone', { calibration: null, stepMm: null, repeatabilityMm: 0.003 }, 0.003],
  ])('one height’s uncertainty counts what is not known as zero: %s', (_what, given, u) => {
    expect(heightUncertainty(given)!.value).toBeCloseTo(u, 7);
  });

  it('one height’s uncertainty is null where nothing is given', () => {
    expect(heightUncertainty({ calibration: null, stepMm: null, repeatabilityMm: null })).toBeNull();
  });
});
