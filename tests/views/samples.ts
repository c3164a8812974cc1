import type { CoverShape, StationAnswer } from '../../shared/words/cover.ts';
import type { Finding } from '../../shared/words/finding.ts';
import type { Nut, Stack, Stud } from '../../shared/words/stud/stud.ts';
import type { TrackCheck } from '../../views/drawings/trackUnrolled.tsx';

export function shape(studCount: number): CoverShape {
  return {
    studCount,
    studCircleDiameterMm: 286,
    trackInnerDiameterMm: 214,
    trackOuterDiameterMm: 264,
    nominalWallMm: 5,
    densityKgPerM3: null,
  };
}

export function stationAnswer(changes: Partial<StationAnswer>): StationAnswer {
  return {
    angleDeg: 0,
    radiusMm: 119,
    wallMm: 4.9,
    faceMm: null,
    markDepthMm: 0,
    cutMm: 0.3,
    wallAfterMm: 4.6,
    marginMm: null,
    conformanceProbability: null,
    ...changes,
  };
}

/** Eight stations on each of two rings, marks behind the four studs, thinnest behind stud 3 on the outer ring. */
export function track(changes: Partial<TrackCheck> = {}): TrackCheck {
  const stations = [111, 127].flatMap((radiusMm, ring) =>
    Array.from({ length: 8 }, (_, index) => {
      const wallMm = 4.92 - 0.01 * ring - (index === 4 ? 0.04 : 0);
      return stationAnswer({
        angleDeg: 45 * index,
        radiusMm,
        wallMm,
        markDepthMm: index % 2 === 0 ? 0.2 : 0,
        wallAfterMm: wallMm - 0.33,
      });
    }),
  );
  return {
    stations,
    marks: [],
    minimumWall: { mm: 4.5, source: 'the shop', from: 'shop' },
    leastWall: {
      beforeMm: 4.87,
      afterMm: 4.54,
      station: 12,
      standardUncertaintyMm: null,
      expandedUncertaintyMm: null,
      degreesOfFreedom: null,
    },
    ...changes,
  };
}

export const stud: Stud = {
  thread: {
    system: 'unified',
    designation: '7/16-20 UNF-2A',
    majorInch: 0.4375,
    threadsPerInch: 20,
    series: 'UNF',
    class: '2A',
  },
  threadStartMm: 3.5,
  threadEndMm: 23,
  projectionMm: 31,
  lengthToleranceMm: 0.25,
  pilotDiameterMm: 8.6,
  tensileMPa: 827,
  proofMPa: 586,
  filletMm: null,
};

export const stack: Stack = {
  style: 'two-piece',
  layers: [
    { name: 'plate', thicknessMm: 3.6, toleranceMm: 0.1, holeDiameterMm: 11.8, chamferMm: null },
    { name: 'casting', thicknessMm: 6.4, toleranceMm: 0.1, holeDiameterMm: 11.8, chamferMm: null },
  ],
  holeCount: 4,
  holeCircleDiameterMm: 286,
  tipRoomMm: 40,
};

export const nut: Nut = {
  heightMm: 9.5,
  toleranceMm: 0.2,
  thread: null,
  proofMPa: 827,
  tensileMPa: 827,
  countersinkMm: 0.4,
  bearingOuterDiameterMm: 17,
  washerMm: 0,
  prevailing: false,
};

export function finding(changes: Partial<Finding>): Finding {
  return {
    id: 'wall',
    title: 'Wall left',
    status: 'pass',
    value: 4.529,
    limit: 4.5,
    unit: 'mm',
    sentence: '4.529 mm at station 13.',
    source: 'the shop',
    answer: null,
    ...changes,
  };
}
