import { afterAll, describe, expect, it } from 'vitest';
import { checkCover, workOutCover } from '../../../src/calc/cover/checkCover.ts';
import { checkAsked } from '../../../src/shop/doubts/coverDoubts.ts';
import { askedCover, judged, numbersOf, stopWork, workWaiting } from '../../../src/shop/work/apart.ts';
import { ITSELF } from '../../../src/shop/work/workPool.ts';
import { coverInput, SET_ONE } from '../../calc/cover/sets.ts';
import '../../patient.ts';

const of = (stations: number) =>
  coverInput({
    stations: Array.from({ length: stations }, (_, i) => ({
      ...SET_ONE[i % SET_ONE.length]!,
      angleDeg: (i * 360) / stations,
      radiusMm: 110,
    })),
  });

afterAll(stopWork);

describe('a cover of many readings', () => {
  it('is worked out beside the requests and answered as on the spot; one measured by hand is not handed over', async () => {
    const [small, large] = [of(12), of(61)];
    const here = numbersOf(small);
    expect(workWaiting().running).toBe(0);
    expect(await here).toEqual(workOutCover(small));
    const beside = numbersOf(large);
    expect(workWaiting()).toEqual({ running: 1, people: 0, scripts: 0 });
    const numbers = await beside;
    const found = judged(numbers, 'in');
    expect(workWaiting().running).toBe(1);
    expect(await found).toEqual(checkCover(large, 'in'));
  });

  it('waits among what scripts ask, where a script asks', async () => {
    const [first, second] = [of(62), of(63)];
    const script = { caller: 's', lane: 'scripts' } as const;
    const asked = [askedCover(first, [], ITSELF), askedCover(second, [], script)];
    expect(workWaiting()).toEqual({ running: 1, people: 0, scripts: 1 });
    expect(await Promise.all(asked)).toEqual([checkAsked(first, []), checkAsked(second, [])]);
  });

  it('is refused as on the spot', async () => {
    const large = of(64);
    const broken = { ...large, stations: large.stations.map((one) => ({ ...one, wallMm: [-1] })) };
    expect(() => workOutCover(broken)).toThrow();
    await expect(numbersOf(broken)).rejects.toMatchObject({ faults: expect.any(Array) });
  });
});
