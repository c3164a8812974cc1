import { describe, expect, it } from 'vitest';
import { thinnestRead } from '../../../src/calc/job/thinnestRead.ts';
import { jobWith } from './jobWith.ts';

describe('the wall at the thinnest station', () => {
  it('is the mean of the readings there: 4.9 and 5.1 are thinner than 5.2', () => {
    const job = jobWith([{ valueMm: 4.9 }, { valueMm: 5.1 }, { angleDeg: 90, valueMm: 5.2 }]);
    expect(thinnestRead(job, 'before')).toBeCloseTo(5.0, 12);
  });

  it('is not a single thin reading among thicker ones of the same station', () => {
    const job = jobWith([{ valueMm: 4.6 }, { valueMm: 5.2 }, { angleDeg: 90, valueMm: 4.8 }]);
    expect(thinnestRead(job, 'before')).toBeCloseTo(4.8, 12);
  });

  it('counts walls of its own pass alone', () => {
    const job = jobWith([
      { valueMm: 4.9 },
      { valueMm: 4.4, pass: 'after' },
      { valueMm: 0.2, kind: 'mark' },
      { angleDeg: 90, valueMm: null },
    ]);
    expect(thinnestRead(job, 'before')).toBe(4.9);
    expect(thinnestRead(job, 'after')).toBe(4.4);
  });

  it('is unknown where no wall was read', () => {
    expect(thinnestRead(jobWith([{ kind: 'mark', valueMm: 0.2 }]), 'before')).toBeNull();
  });
});
