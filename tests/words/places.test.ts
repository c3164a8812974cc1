import { describe, expect, it } from 'vitest';
import { readPlace, samePlace, stationAt, stationsOf, writePlace } from '../../shared/words/places.ts';

const at = (angleDeg: number, radiusMm: number) => ({ angleDeg, radiusMm });

describe('the same place', () => {
  it.each([
    [at(0, 110), at(0, 110.0000000000001), true],
    [at(0, 110), at(360, 110), true],
    [at(359.9999999, 110), at(0, 110), true],
    [at(-90, 110), at(270, 110.5), true],
    [at(45, 110.5), at(45, 110), true],
    [at(45, 4.33 * 25.4), at(45, 109.982), true],
    [at(0, 110), at(0, 110.51), false],
    [at(0, 110), at(0.001, 110), false],
    [at(0, 110), at(180, 110), false],
  ])('%o and %o: %s, whichever comes first', (a, b, same) => {
    expect([samePlace(a, b), samePlace(b, a)]).toEqual([same, same]);
  });

  it('is told by the first station: one between two belongs to the earlier, and a chain makes no long station', () => {
    const places = [at(0, 110), at(0, 110.4), at(0, 110.8), at(0, 111.2)];
    const stations = stationsOf(places);
    expect(stations).toEqual([at(0, 110), at(0, 110.8)]);
    expect(places.map((place) => stationAt(stations, place)?.radiusMm)).toEqual([110, 110, 110.8, 110.8]);
    expect(stationsOf(places.toReversed())).toEqual([at(0, 111.2), at(0, 110.4)]);
  });
});

describe('a place in a form', () => {
  it.each([at(45, 110), at(-22.5, 109.982), at(1e-7, 110.0000000000001), at(359.9999999, 128)])(
    '%o is read back as it was written',
    (place) => expect(readPlace(writePlace(place))).toEqual(place),
  );

  it.each(['', '45', '45/', '/110', '45/110/3', '1.2.3/110', '45/-110', 'x/y', '45/110 '])(
    '"%s" is none',
    (text) => expect(readPlace(text)).toBeNull(),
  );
});
