import { describe, expect, it } from 'vitest';
import { preferredR40 } from '../../src/calc/stud/thread/preferredR40.ts';
import { tensileStressArea } from '../../src/calc/stud/thread/tensileStressArea.ts';
import { threadGeometry } from '../../src/calc/stud/thread/threadGeometry.ts';
import { metric, unified } from '../calc/stud/example.ts';

const SIZES: Record<string, readonly [inch: number, tpi: number, series: 'UNC' | 'UNF']> = {
  '#10-24': [0.19, 24, 'UNC'],
  '#10-32': [0.19, 32, 'UNF'],
  '1/4-20': [0.25, 20, 'UNC'],
  '1/4-28': [0.25, 28, 'UNF'],
  '5/16-18': [0.3125, 18, 'UNC'],
  '5/16-24': [0.3125, 24, 'UNF'],
  '3/8-16': [0.375, 16, 'UNC'],
  '3/8-24': [0.375, 24, 'UNF'],
  '7/16-14': [0.4375, 14, 'UNC'],
  '7/16-20': [0.4375, 20, 'UNF'],
  '1/2-13': [0.5, 13, 'UNC'],
  '1/2-20': [0.5, 20, 'UNF'],
  '5/8-11': [0.625, 11, 'UNC'],
};

function un(size: string, threadClass: '2A' | '3A' | '2B' | '3B') {
  const [inch, tpi, series] = SIZES[size]!;
  const found = threadGeometry(unified(inch, tpi, threadClass, series));
  const inches = (mm: number | null) => (mm === null ? null : (mm / 25.4).toFixed(4));
  return {
    area: found.tensileStressAreaMm2 / 645.16,
    major: [inches(found.majorMm.max), inches(found.majorMm.min)],
    pitch: [inches(found.pitchDiameterMm.max), inches(found.pitchDiameterMm.min)],
    minor: [inches(found.minorMm.max), inches(found.minorMm.min)],
    basic: [inches(found.pitchDiameterMm.basic), inches(found.minorMm.basic)],
    minorMax: (found.minorMm.max ?? 0) / 25.4,
  };
}

describe('Unified threads: stress area and basic diameters', () => {
  // Stress area as printed: Shigley 9th ed., Table 8-2, compiled from ANSI B1.1-1974. It truncates in places (0.0580 for
  // 5/16-24), so ± 0.0001 in². Basic diameters: UNC and UNF tables after ASME B1.1, to the last digit.
  it.each([
    ['1/4-20', 0.0318, '0.2175', '0.1959'],
    ['1/4-28', 0.0364, '0.2268', '0.2113'],
    ['5/16-18', 0.0524, '0.2764', '0.2524'],
    ['5/16-24', 0.058, '0.2854', '0.2674'],
    ['3/8-16', 0.0775, '0.3344', '0.3073'],
    ['3/8-24', 0.0878, '0.3479', '0.3299'],
    ['7/16-14', 0.1063, '0.3911', '0.3602'],
    ['7/16-20', 0.1187, '0.4050', '0.3834'],
    ['1/2-13', 0.1419, '0.4500', '0.4167'],
    ['1/2-20', 0.1599, '0.4675', '0.4459'],
  ])('%s has the printed stress area and basic diameters', (size, area, pitch, minor) => {
    const found = un(size, '2A');
    expect(Math.abs(found.area - area)).toBeLessThanOrEqual(0.0001);
    expect(found.basic).toEqual([pitch, minor]);
  });
});

describe('Unified threads: class 2A limits, inches', () => {
  // A table headed "Class 2A/3A external screw thread limit tables" after ASME B1.1; its minor column is the older
  // flat-root figure and is not used. #10: a chart after ASME B1.1 (majors), pitch diameters from memory.
  // 5/8-11: Machinery's Handbook, 27th ed., table 3.
  it.each([
    ['#10-24', '0.1890', '0.1818', '0.1619', '0.1586'],
    ['#10-32', '0.1891', '0.1831', '0.1688', '0.1658'],
    ['1/4-20', '0.2489', '0.2408', '0.2164', '0.2127'],
    ['1/4-28', '0.2490', '0.2425', '0.2258', '0.2225'],
    ['5/16-18', '0.3113', '0.3026', '0.2752', '0.2712'],
    ['5/16-24', '0.3114', '0.3042', '0.2843', '0.2806'],
    ['3/8-16', '0.3737', '0.3643', '0.3331', '0.3287'],
    ['3/8-24', '0.3739', '0.3667', '0.3468', '0.3430'],
    ['7/16-14', '0.4361', '0.4258', '0.3897', '0.3850'],
    ['7/16-20', '0.4362', '0.4281', '0.4037', '0.3995'],
    ['1/2-13', '0.4985', '0.4876', '0.4485', '0.4435'],
    ['1/2-20', '0.4987', '0.4906', '0.4662', '0.4619'],
    ['5/8-11', '0.6234', '0.6113', '0.5644', '0.5589'],
  ])('%s has the printed class 2A limits', (size, majorMax, majorMin, pitchMax, pitchMin) => {
    const found = un(size, '2A');
    expect(found.major).toEqual([majorMax, majorMin]);
    expect(found.pitch).toEqual([pitchMax, pitchMin]);
    expect(found.minor[1]).toBeNull();
  });

  // "UNR minor dia. max (ref.)", newer ASME B1.1 tables. 3/8-16, 1/2-13: from memory; the rest: tables after
  // Machinery's Handbook, 27th ed. The standard's own last digit wanders, so ± 0.0001 in.
  it.each([
    ['3/8-16', 0.2992],
    ['1/2-13', 0.4069],
    ['5/8-11', 0.5152],
  ])('%s has the printed rounded-root minor diameter', (size, minor) => {
    expect(Math.abs(un(size, '2A').minorMax - minor)).toBeLessThanOrEqual(0.0001 + 1e-9);
  });
});

describe('Unified threads: class 2B limits, inches', () => {
  // ASME B1.1. UNC rows: a table after the standard (it misprints 1/2-13 minor min as 0.4700). 5/16-24, 7/16-20 and the
  // minors of 3/8-24 and 1/2-20: from memory. #10: a chart after ASME B1.1, pitch diameter of #10-32 from memory.
  it.each([
    ['#10-24', '0.1450', '0.1560', '0.1629', '0.1672'],
    ['#10-32', '0.1560', '0.1640', '0.1697', '0.1736'],
    ['1/4-20', '0.1960', '0.2070', '0.2175', '0.2224'],
    ['5/16-18', '0.2520', '0.2650', '0.2764', '0.2817'],
    ['5/16-24', '0.2670', '0.2770', '0.2854', '0.2902'],
    ['3/8-16', '0.3070', '0.3210', '0.3344', '0.3401'],
    ['3/8-24', '0.3300', '0.3400', '0.3479', '0.3528'],
    ['7/16-14', '0.3600', '0.3760', '0.3911', '0.3972'],
    ['7/16-20', '0.3830', '0.3950', '0.4050', '0.4104'],
    ['1/2-13', '0.4170', '0.4340', '0.4500', '0.4565'],
    ['1/2-20', '0.4460', '0.4570', '0.4675', '0.4731'],
    ['5/8-11', '0.5270', '0.5460', '0.5660', '0.5732'],
  ])('%s has the printed class 2B limits', (size, minorMin, minorMax, pitchMin, pitchMax) => {
    const found = un(size, '2B');
    expect(found.minor).toEqual([minorMax, minorMin]);
    expect(found.pitch).toEqual([pitchMax, pitchMin]);
    expect(found.major[0]).toBeNull();
  });
});

describe('Unified threads: class 3A and 3B, inches', () => {
  // ASME B1.1-2003, from memory.
  it.each([
    ['5/16-24', '0.2854', '0.2827', '0.2890', '0.2754'],
    ['3/8-24', '0.3479', '0.3450', '0.3516', '0.3372'],
    ['7/16-20', '0.4050', '0.4019', '0.4091', '0.3916'],
    ['1/2-13', '0.4500', '0.4463', '0.4548', '0.4284'],
  ])('%s has the printed class 3A and 3B limits', (size, pitchMax, pitchMin, nutPitchMax, nutMinorMax) => {
    const bolt = un(size, '3A');
    const nut = un(size, '3B');
    expect(bolt.pitch).toEqual([pitchMax, pitchMin]);
    expect([nut.pitch[0], nut.minor[0]]).toEqual([nutPitchMax, nutMinorMax]);
  });
});

describe('Unified threads: engagement behind the tolerance', () => {
  // 2-8 UN-2A pitch diameter min 1.9087, ASME B1.1, from memory: an 8-thread series takes LE = D, not 9P.
  // 5/8-24 UNEF-2A 0.5967 to 0.5927: Machinery's Handbook, 27th ed., table 3: extra fine takes 9P.
  it.each([
    [2, 8, 'UN', '1.9087'],
    [0.625, 24, 'UNEF', '0.5927'],
  ] as const)(
    'thread %f-%i %s has the printed tolerance for its engagement',
    (inch, tpi, series, pitchMin) => {
      const found = threadGeometry(unified(inch, tpi, '2A', series));
      expect((found.pitchDiameterMm.min! / 25.4).toFixed(4)).toBe(pitchMin);
    },
  );
});

describe('ISO metric threads', () => {
  // As,nom as printed, ISO 898-1 (fine rows from memory).
  it.each([
    [6, 1, '20.1'],
    [8, 1.25, '36.6'],
    [10, 1.5, '58.0'],
    [12, 1.75, '84.3'],
    [14, 2, '115'],
    [16, 2, '157'],
    [8, 1, '39.2'],
    [10, 1.25, '61.2'],
    [10, 1, '64.5'],
    [12, 1.5, '88.1'],
    [12, 1.25, '92.1'],
    [14, 1.5, '125'],
    [16, 1.5, '167'],
  ] as const)('the stress area of M%f × %f is %s mm²', (d, P, printed) => {
    const area = tensileStressArea(metric(d, P, '6g')).value;
    expect(printed.includes('.') ? area.toFixed(1) : area.toPrecision(3)).toBe(printed);
  });

  // ISO 724, from memory; recomputed.
  it.each([
    [6, 1, 5.35, 4.917],
    [8, 1.25, 7.188, 6.647],
    [8, 1, 7.35, 6.917],
    [10, 1.5, 9.026, 8.376],
    [10, 1.25, 9.188, 8.647],
    [10, 1, 9.35, 8.917],
    [12, 1.75, 10.863, 10.106],
    [12, 1.5, 11.026, 10.376],
    [12, 1.25, 11.188, 10.647],
  ])('M%f × %f has the printed basic diameters', (d, P, d2, D1) => {
    const found = threadGeometry(metric(d, P, '6H'));
    expect([found.pitchDiameterMm.basic, found.minorMm.basic]).toEqual([d2, D1]);
  });

  // ISO 965-2. M10 × 1.25 but for its 6g pitch diameter, and M12 × 1.75 6H: from memory.
  it.each([
    [6, 1, [5.974, 5.794], [5.324, 5.212], [5.5, 5.35], [5.153, 4.917]],
    [8, 1.25, [7.972, 7.76], [7.16, 7.042], [7.348, 7.188], [6.912, 6.647]],
    [10, 1.5, [9.968, 9.732], [8.994, 8.862], [9.206, 9.026], [8.676, 8.376]],
    [10, 1.25, [9.972, 9.76], [9.16, 9.042], [9.348, 9.188], [8.912, 8.647]],
    [12, 1.75, [11.966, 11.701], [10.829, 10.679], [11.063, 10.863], [10.441, 10.106]],
  ] as const)('M%f × %f has the printed limits', (d, P, major, pitch, nutPitch, nutMinor) => {
    const bolt = threadGeometry(metric(d, P, '6g'));
    const nut = threadGeometry(metric(d, P, '6H'));
    expect([bolt.majorMm.max, bolt.majorMm.min]).toEqual(major);
    expect([bolt.pitchDiameterMm.max, bolt.pitchDiameterMm.min]).toEqual(pitch);
    expect([nut.pitchDiameterMm.max, nut.pitchDiameterMm.min]).toEqual(nutPitch);
    expect([nut.minorMm.max, nut.minorMm.min]).toEqual(nutMinor);
  });

  // 6g pitch diameters on which three gauge charts agree; M3 to M5, M6 × 0.75: charts after ASME B1.13M-2005.
  it.each([
    [8, 1, 7.324, 7.212],
    [10, 1, 9.324, 9.212],
    [12, 1.5, 10.994, 10.854],
    [12, 1.25, 11.16, 11.028],
    [14, 2, 12.663, 12.503],
    [14, 1.5, 12.994, 12.854],
    [16, 1.5, 14.994, 14.854],
    [3, 0.5, 2.655, 2.58],
    [4, 0.7, 3.523, 3.433],
    [5, 0.8, 4.456, 4.361],
    [6, 0.75, 5.491, 5.391],
  ])('M%f × %f has the printed 6g pitch diameter', (d, P, max, min) => {
    const { pitchDiameterMm } = threadGeometry(metric(d, P, '6g'));
    expect([pitchDiameterMm.max, pitchDiameterMm.min]).toEqual([max, min]);
  });

  // 6H, charts after ASME B1.13M-1995.
  it.each([
    [12, 1.5, 11.216, 10.676],
    [12, 1, 11.51, 11.153],
    [14, 2, 12.913, 12.21],
    [14, 1.5, 13.216, 12.676],
  ])('M%f × %f has the printed 6H greatest pitch and minor diameters', (d, P, pitch, minor) => {
    const found = threadGeometry(metric(d, P, '6H'));
    expect([found.pitchDiameterMm.max, found.minorMm.max]).toEqual([pitch, minor]);
  });

  // M20 × 2.5, M24 × 3, M48 × 5: ISO 965-2, from memory; here the tables differ from the standard's own formulas.
  it.each([
    [20, 2.5, 18.164, 17.744],
    [24, 3, 21.803, 21.252],
    [48, 5, 44.431, 43.297],
  ])('M%f × %f has the printed 6g least pitch and 6H greatest minor diameter', (d, P, pitch, minor) => {
    expect(threadGeometry(metric(d, P, '6g')).pitchDiameterMm.min).toBe(pitch);
    expect(threadGeometry(metric(d, P, '6H')).minorMm.max).toBe(minor);
  });

  // ISO 965-1, M10 × 1.5: Td2(4) 85, TD2(7) 224, from the grade 6 figures 132 and 180 by steps of the R40 series.
  it.each([
    [132, -8, 85],
    [180, 4, 224],
    [236, -8, 150],
    [236, 8, 375],
    [300, 4, 375],
    [300, -4, 236],
  ])('a tolerance of %i µm and %i grade steps is %i µm', (valueUm, steps, expected) => {
    expect(preferredR40({ valueUm, steps })).toBe(expected);
  });
});
