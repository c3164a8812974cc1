import fc from 'fast-check';
import { stationAnswer } from '../../views/samples.ts';
import { type Drawing, extent, type Point } from './readSvg.ts';

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const unit = fc.constantFrom('mm' as const, 'in' as const);

/** Any cover that is no nonsense, with or without what need not be given. */
export const anyCover = fc
  .record({
    studCount: fc.constantFrom(3, 4, 5, 6),
    inner: mm(120, 230),
    wide: mm(18, 34),
    out: mm(4, 14),
    wall: mm(3, 7),
    boss: fc.option(mm(50, 100)),
    rim: fc.option(mm(0, 20)),
    pad: fc.option(mm(18, 30)),
    padThick: fc.option(mm(7, 16)),
  })
  .map(({ studCount, inner, wide, out, wall, boss, rim, pad, padThick }) => {
    const outer = inner + 2 * wide;
    const circle = outer + 2 * out;
    return {
      studCount,
      studCircleDiameterMm: circle,
      trackInnerDiameterMm: inner,
      trackOuterDiameterMm: outer,
      nominalWallMm: wall,
      densityKgPerM3: null,
      bossDiameterMm: boss,
      rimDiameterMm: rim === null ? null : circle + 34 + rim,
      padDiameterMm: pad,
      padThicknessMm: padThick,
    };
  });

/** The places a drawing's shape marks, whatever its shape. */
export const middle = (points: readonly Point[]): Point => {
  const [x, y] = [extent(points.map((one) => one.x)), extent(points.map((one) => one.y))];
  return { x: (x.from + x.to) / 2, y: (y.from + y.to) / 2 };
};
/** Of a place seen from the clutch side: 0° at the top, clockwise. */
export const polar = (angleDeg: number, distance: number): Point => ({
  x: distance * Math.sin((angleDeg * Math.PI) / 180),
  y: -distance * Math.cos((angleDeg * Math.PI) / 180),
});
export const horizontal = (drawing: Drawing, className: string) =>
  drawing
    .of('path', className)
    .filter(
      (one) =>
        one.lines.length === 1 && one.lines[0]!.length === 2 && one.lines[0]![0]!.y === one.lines[0]![1]!.y,
    )
    .map((one) => one.lines[0]![0]!.y);
export const upright = (drawing: Drawing, className: string) =>
  drawing
    .of('path', className)
    .filter(
      (one) =>
        one.lines.length === 1 && one.lines[0]!.length === 2 && one.lines[0]![0]!.x === one.lines[0]![1]!.x,
    )
    .map((one) => one.lines[0]![0]!.x);

/** A face with rings of stations all round, thinnest anywhere, cut and marks at any depth. */
export const anyFace = fc
  .record({
    cover: anyCover,
    per: fc.integer({ min: 3, max: 10 }),
    rings: fc.integer({ min: 1, max: 3 }),
    walls: fc.array(mm(4, 5), { minLength: 30, maxLength: 30 }),
    depths: fc.array(fc.oneof(fc.constant(0), mm(0.05, 0.3)), { minLength: 30, maxLength: 30 }),
    cut: mm(0.1, 0.5),
    minimum: fc.option(mm(3.4, 5)),
    band: fc.option(mm(0.001, 0.05)),
    unit,
  })
  .map(({ cover, per, rings, walls, depths, cut, minimum, band, unit: read }) => {
    const [inner, outer] = [cover.trackInnerDiameterMm / 2, cover.trackOuterDiameterMm / 2];
    const stations = Array.from({ length: per * rings }, (_, index) => {
      const ring = Math.floor(index / per);
      return stationAnswer({
        angleDeg: (360 * (index % per)) / per,
        radiusMm: inner + ((ring + 1) * (outer - inner)) / (rings + 1),
        wallMm: walls[index]!,
        markDepthMm: depths[index]!,
        cutMm: cut,
        wallAfterMm: walls[index]! - cut,
      });
    });
    const least = stations.reduce(
      (low, one, index) => (one.wallAfterMm < stations[low]!.wallAfterMm ? index : low),
      0,
    );
    const check = {
      stations,
      marks: [],
      minimumWall: minimum === null ? null : { mm: minimum, source: 'the shop', from: 'shop' as const },
      leastWall: {
        beforeMm: Math.min(...stations.map(({ wallMm }) => wallMm)),
        afterMm: stations[least]!.wallAfterMm,
        station: least,
        standardUncertaintyMm: null,
        expandedUncertaintyMm: band,
        degreesOfFreedom: null,
      },
      cut: { dialledMm: cut, toolPlaneMm: 0, cleansUp: true, cleanUpMm: cut },
    };
    return { cover, check, per, rings, unit: read, thinnest: stations[least]! };
  });
