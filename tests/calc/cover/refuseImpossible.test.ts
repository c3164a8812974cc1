import { describe, expect, it } from 'vitest';
import type { CoverCheckInput, Station } from '../../../shared/words/cover.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { checkCover } from '../../../src/calc/cover/checkCover.ts';
import { CRITERIA, coverInput, NO_GAUGE, SET_ONE, SHAPE } from './sets.ts';

const change = (index: number, over: Partial<Station>) =>
  SET_ONE.map((station, i) => (i === index ? { ...station, ...over } : station));
const many = (count: number) =>
  Array.from({ length: count }, (_, i) => ({ ...SET_ONE[0]!, angleDeg: (i * 360) / count, radiusMm: 110 }));

function faults(over: Partial<CoverCheckInput>) {
  try {
    checkCover(coverInput(over));
  } catch (error) {
    if (error instanceof Refusal) return error.faults;
    throw error;
  }
  return [];
}

describe('what the cover check refuses, by field', () => {
  it.each<[string, Partial<CoverCheckInput>, string]>([
    ['no station', { stations: [] }, 'stations'],
    ['401 stations', { stations: many(401) }, 'stations'],
    ['a station without a wall', { stations: change(2, { wallMm: [] }) }, 'stations.2.wallMm'],
    ['a wall of nothing', { stations: change(2, { wallMm: [4.9, 0] }) }, 'stations.2.wallMm.1'],
    ['a wall that is no number', { stations: change(2, { wallMm: [Number.NaN] }) }, 'stations.2.wallMm.0'],
    [
      'an endless angle',
      { stations: change(1, { angleDeg: Number.POSITIVE_INFINITY }) },
      'stations.1.angleDeg',
    ],
    ['a radius of nothing', { stations: change(1, { radiusMm: 0 }) }, 'stations.1.radiusMm'],
    ['a height left out', { stations: change(3, { faceMm: null }) }, 'stations.3.faceMm'],
    ['a negative mark', { stations: change(3, { markDepthMm: -0.1 }) }, 'stations.3.markDepthMm'],
    ['a mark as deep as the wall', { stations: change(3, { markDepthMm: 4.83 }) }, 'stations.3.markDepthMm'],
    ['a mark through the wall', { marks: [{ angleDeg: 10, radiusMm: 110, depthMm: 5 }] }, 'marks.0.depthMm'],
    ['two stations at one place', { stations: change(5, { angleDeg: 45, radiusMm: 110.3 }) }, 'stations.5'],
    ['one place a turn apart', { stations: change(5, { angleDeg: 405 }) }, 'stations.5'],
    ['half a stud', { cover: { ...SHAPE, studCount: 4.5 } }, 'cover.studCount'],
    ['a track inside out', { cover: { ...SHAPE, trackInnerDiameterMm: 264 } }, 'cover.trackInnerDiameterMm'],
    ['no density', { cover: { ...SHAPE, densityKgPerM3: 0 } }, 'cover.densityKgPerM3'],
    ['a minimum of nothing', { criteria: { ...CRITERIA, minimumWallMm: 0 } }, 'criteria.minimumWallMm'],
    ['certainty', { criteria: { ...CRITERIA, confidence: 1 } }, 'criteria.confidence'],
    ['a negative gauge', { gauge: { ...NO_GAUGE, resolutionMm: -1 } }, 'gauge.resolutionMm'],
    ['a negative cut', { plannedCutMm: -0.1 }, 'plannedCutMm'],
  ])('a cover check with %s is refused, with its field named', (_, over, path) => {
    expect(faults(over).map((fault) => fault.path)).toEqual([path]);
  });
  it('a cover check with several faults names them all, each in a sentence with its value', () => {
    const found = faults({ stations: change(2, { wallMm: [-4.86], radiusMm: -110 }), plannedCutMm: -1 });
    expect(found.map(({ path }) => path)).toEqual([
      'stations.2.radiusMm',
      'stations.2.wallMm.0',
      'plannedCutMm',
    ]);
    expect(found[1]!.message).toBe(
      'The wall at station 3 is -4.86 mm; it must be more than 0 mm and at most 10000 mm.',
    );
  });
  it('a cover check takes 400 stations', () => {
    const gauge = { ...NO_GAUGE, standardUncertaintyMm: 0.005, repeatabilityMm: 0.003 };
    const stations = many(400).map((s, i) => ({
      ...s,
      wallMm: [4.9 + 1e-4 * (i % 97)],
      faceMm: 1e-4 * (i % 89),
    }));
    const criteria = { ...CRITERIA, faceRunoutLimitMm: 0.1, minimumWallMm: 4.64 };
    expect(checkCover(coverInput({ stations, gauge, criteria })).stations).toHaveLength(400);
  });
});
