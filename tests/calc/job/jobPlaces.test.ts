import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Reading } from '../../../shared/words/job.ts';
import { StationIndex, stationAt } from '../../../shared/words/places.ts';
import { readAt, stationsRead, stationsToMeasure } from '../../../src/calc/job/jobPlaces.ts';
import { jobWith } from './jobWith.ts';

const ids = (readings: readonly Reading[]) => readings.map(({ id }) => id);

describe('an index of stations', () => {
  it('finds what looking through them all finds, whatever angle and radius', () => {
    const angle = fc.oneof(
      fc.constantFrom(0, 359.9999999, 360, 0.5, 0.4999999, 359.5, -0.5, 1.5, 89.5),
      fc.double({ min: -360, max: 360, noNaN: true }),
    );
    const place = fc.record({ angleDeg: angle, radiusMm: fc.constantFrom(110, 110.3, 110.6, 118) });
    fc.assert(
      fc.property(fc.array(place, { maxLength: 30 }), place, (stations, asked) => {
        const index = new StationIndex(stations);
        for (const one of [asked, ...stations]) expect(index.at(one)).toBe(stationAt(stations, one));
      }),
    );
  });
});

describe('the stations of a job', () => {
  it('the stations of a job take readings that are off by float dust, or a turn apart, as repeats', () => {
    const job = jobWith([{}, { radiusMm: 110.0000000000001 }, { angleDeg: 359.9999999 }, { angleDeg: 360 }]);
    const stations = stationsRead(job, 'before');
    expect(stations).toHaveLength(12);
    expect(stations[0]).toMatchObject({ angleDeg: 0, radiusMm: 110, laidOut: true });
    expect(ids(stations[0]!.readings)).toEqual(['reading-0', 'reading-1', 'reading-2', 'reading-3']);
    expect(ids(readAt(stations, 'wall', { angleDeg: 360, radiusMm: 110.2 }))).toHaveLength(4);
  });

  it('the stations of a job are the same before the cut and after it: an own place read at another radius after it is the one from before', () => {
    const own = { angleDeg: 20, radiusMm: 118 };
    const job = jobWith([own, { ...own, radiusMm: 118.4, pass: 'after' }]);
    const last = (pass: 'before' | 'after') => stationsRead(job, pass).at(-1);
    expect(last('before')).toMatchObject({ ...own, laidOut: false });
    expect(last('after')).toMatchObject({ ...own, laidOut: false });
    expect(ids(last('after')!.readings)).toEqual(['reading-1']);
  });

  it('the stations of a job have each reading once, though two stations are near enough', () => {
    const job = jobWith([
      { angleDeg: 20, radiusMm: 118 },
      { angleDeg: 20, radiusMm: 118.8 },
      { angleDeg: 20, radiusMm: 118.4 },
    ]);
    const own = stationsRead(job, 'before').slice(12);
    expect(own.map(({ readings }) => ids(readings))).toEqual([['reading-0', 'reading-2'], ['reading-1']]);
  });

  it('the stations of a job are asked for unless only a mark was put between them', () => {
    const job = jobWith([
      { angleDeg: 20, radiusMm: 118, kind: 'mark' },
      { kind: 'mark' },
      { angleDeg: 70, radiusMm: 118 },
    ]);
    const asked = stationsToMeasure(stationsRead(job, 'before'));
    expect(asked).toHaveLength(13);
    expect(asked.at(-1)).toMatchObject({ angleDeg: 70, radiusMm: 118 });
  });
});
