import { describe, expect, it } from 'vitest';
import { coverageInWords } from '../../shared/measuring/askedInWords.ts';
import {
  nextStep,
  type Order,
  readStep,
  type Step,
  stepsOf,
  writeStep,
} from '../../shared/measuring/steps.ts';

const THREE = [0, 120, 240].map((angleDeg) => ({ angleDeg, radiusMm: 110 }));
const ORDER: Order = { round: 'numbered', by: 'kind', asks: 'wf', times: 2, repeats: 'together' };
const written = (order: Partial<Order>) =>
  stepsOf(THREE, { ...ORDER, ...order })
    .map(writeStep)
    .join(' ');

describe('two readings of each wall', () => {
  it.each([
    [{}, 'w.0 w.0.1 w.1 w.1.1 w.2 w.2.1 f.0 f.1 f.2'],
    [{ repeats: 'rounds' }, 'w.0 w.1 w.2 w.0.1 w.1.1 w.2.1 f.0 f.1 f.2'],
    [{ by: 'station' }, 'w.0 w.0.1 f.0 w.1 w.1.1 f.1 w.2 w.2.1 f.2'],
    [{ by: 'station', repeats: 'rounds' }, 'w.0 f.0 w.1 f.1 w.2 f.2 w.0.1 w.1.1 w.2.1'],
    [{ times: 1 }, 'w.0 w.1 w.2 f.0 f.1 f.2'],
    [{ times: 3, asks: 'w' }, 'w.0 w.0.1 w.0.2 w.1 w.1.1 w.1.2 w.2 w.2.1 w.2.2'],
  ] as const)('are asked in their order: %j', (order, expected) => {
    expect(written(order)).toBe(expected);
  });

  it('are gone through once each, and a repeat beyond them goes on from its station', () => {
    const steps = stepsOf(THREE, { ...ORDER, repeats: 'rounds' });
    const done = new Set(['w.0', 'w.1', 'w.2', 'w.0.1']);
    const isDone = (step: Step) => done.has(writeStep(step));
    expect(nextStep(steps, readStep('w.0.1', THREE), isDone)).toEqual({ kind: 'wall', at: 1, nth: 1 });
    expect(nextStep(steps, readStep('w.0.2', THREE), isDone)).toEqual({ kind: 'wall', at: 1, nth: 1 });
    for (const step of steps) done.add(writeStep(step));
    expect(nextStep(steps, null, isDone)).toBeNull();
  });
});

it('a step in an address is read back, and one of a station that is not there is none', () => {
  for (const step of stepsOf(THREE, { ...ORDER, asks: 'wfm' })) {
    expect(readStep(writeStep(step), THREE)).toEqual(step);
  }
  expect([readStep('w.3', THREE), readStep('x.0', THREE), readStep(undefined, THREE)]).toEqual([
    null,
    null,
    null,
  ]);
});

describe('how much is measured', () => {
  const steps = stepsOf(THREE, ORDER);

  it('counts a station only when all its readings are there', () => {
    const has = new Set(['w.0', 'w.0.1', 'w.1', 'f.0', 'f.1', 'f.2']);
    expect(coverageInWords(steps, ORDER, (step) => has.has(writeStep(step)), [])).toBe(
      'Walls at 1 of 3 stations, 2 each. Indicator readings at 3 of 3.',
    );
  });

  it('names the places the coverage asks for where no station is laid out', () => {
    expect(coverageInWords(steps, ORDER, () => true, ['between studs 1 and 2', 'on a second row'])).toBe(
      'Walls at 3 of 3 stations, 2 each. Indicator readings at 3 of 3. No station is set up between studs 1 and 2, on a second row.',
    );
  });
});
