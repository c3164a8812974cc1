import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ThreadGeometry } from '../../../shared/words/stud/thread.ts';
import { apiServer } from './apiServer.ts';

let api: Awaited<ReturnType<typeof apiServer>>;
beforeAll(async () => {
  api = await apiServer();
});
afterAll(() => api.close());

async function geometry(thread: string): Promise<ThreadGeometry> {
  const { status, body } = await api.post('/api/thread', { thread });
  expect(status).toBe(200);
  return body as ThreadGeometry;
}

const inch = (mm: number | null) => (mm ?? Number.NaN) / 25.4;
/** Printed tables round and truncate in the fourth place (check-values page 1.1 to 1.3: allow ±0.0001). */
function near(value: number, printed: number, by = 0.000_1) {
  expect(Math.abs(value - printed), `${value} for ${printed}`).toBeLessThanOrEqual(by + 1e-9);
}

// Shigley, 9th ed., Table 8-2, from ANSI B1.1-1974: At; basic pitch and internal minor diameters, inches.
test.each<[string, string, number, number, number, number]>([
  ['1/4-20', '1/4-20 UNC-2A', 0.25, 0.0318, 0.2175, 0.1959],
  ['1/4-28', '1/4-28 UNF-2A', 0.25, 0.0364, 0.2268, 0.2113],
  ['5/16-18', '5/16-18 UNC-2A', 0.3125, 0.0524, 0.2764, 0.2524],
  ['5/16-24', '5/16-24 UNF-2A', 0.3125, 0.058, 0.2854, 0.2674],
  ['3/8-16', '3/8-16 UNC-2A', 0.375, 0.0775, 0.3344, 0.3073],
  ['3/8-24', '3/8-24 UNF-2A', 0.375, 0.0878, 0.3479, 0.3299],
  ['7/16-14', '7/16-14 UNC-2A', 0.4375, 0.1063, 0.3911, 0.3602],
  ['7/16-20', '7/16-20 UNF-2A', 0.4375, 0.1187, 0.405, 0.3834],
  ['1/2-13', '1/2-13 UNC-2A', 0.5, 0.1419, 0.45, 0.4167],
  ['1/2-20', '1/2-20 UNF-2A', 0.5, 0.1599, 0.4675, 0.4459],
])('%s has the basic sizes of the table', async (thread, designation, major, area, pitch, minor) => {
  const found = await geometry(thread);
  expect(found.designation).toBe(designation);
  near(inch(found.majorMm.basic), major);
  near(found.tensileStressAreaMm2 / 645.16, area);
  near(inch(found.pitchDiameterMm.basic), pitch);
  near(inch(found.minorMm.basic), minor);
});

// ASME B1.1 limits of size, classes 2A and 2B, as on the check-values page, tables 1.2 and 1.3, inches.
describe('the limits of a Unified thread', () => {
  test.each<[string, number, number, number, number]>([
    ['1/4-20', 0.2489, 0.2408, 0.2164, 0.2127],
    ['1/4-28', 0.249, 0.2425, 0.2258, 0.2225],
    ['5/16-18', 0.3113, 0.3026, 0.2752, 0.2712],
    ['5/16-24', 0.3114, 0.3042, 0.2843, 0.2806],
    ['3/8-16', 0.3737, 0.3643, 0.3331, 0.3287],
    ['3/8-24', 0.3739, 0.3667, 0.3468, 0.343],
    ['7/16-14', 0.4361, 0.4258, 0.3897, 0.385],
    ['7/16-20', 0.4362, 0.4281, 0.4037, 0.3995],
    ['1/2-13', 0.4985, 0.4876, 0.4485, 0.4435],
    ['1/2-20', 0.4987, 0.4906, 0.4662, 0.4619],
  ])('are those of the table for %s in class 2A', async (thread, majorMax, majorMin, pitchMax, pitchMin) => {
    const found = await geometry(thread);
    near(inch(found.majorMm.max), majorMax);
    near(inch(found.majorMm.min), majorMin);
    near(inch(found.pitchDiameterMm.max), pitchMax);
    near(inch(found.pitchDiameterMm.min), pitchMin);
    expect(found.minorMm.min).toBeNull();
  });

  test.each<[string, number, number, number, number, number]>([
    ['1/4-20', 0.196, 0.207, 0.2175, 0.2224, 0.25],
    ['5/16-18', 0.252, 0.265, 0.2764, 0.2817, 0.3125],
    ['5/16-24', 0.267, 0.277, 0.2854, 0.2902, 0.3125],
    ['3/8-16', 0.307, 0.321, 0.3344, 0.3401, 0.375],
    ['3/8-24', 0.33, 0.34, 0.3479, 0.3528, 0.375],
    ['7/16-14', 0.36, 0.376, 0.3911, 0.3972, 0.4375],
    ['7/16-20', 0.383, 0.395, 0.405, 0.4104, 0.4375],
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: a printed limit, no logarithm.
    ['1/2-13', 0.417, 0.434, 0.45, 0.4565, 0.5],
    ['1/2-20', 0.446, 0.457, 0.4675, 0.4731, 0.5],
  ])(
    'are those of the table for %s in class 2B',
    async (thread, minorMin, minorMax, pitchMin, pitchMax, majorMin) => {
      const found = await geometry(`${thread}-2B`);
      near(inch(found.minorMm.min), minorMin);
      near(inch(found.minorMm.max), minorMax);
      near(inch(found.pitchDiameterMm.min), pitchMin);
      near(inch(found.pitchDiameterMm.max), pitchMax);
      near(inch(found.majorMm.min), majorMin);
      expect(found.majorMm.max).toBeNull();
    },
  );
});

// ISO 898-1 nominal stress areas, mm², at the printed digits; fine pitches from memory of the table, recomputed.
test.each<[string, string]>([
  ['M6', '20.1'],
  ['M8', '36.6'],
  ['M10', '58.0'],
  ['M12', '84.3'],
  ['M14', '115'],
  ['M16', '157'],
  ['M8x1', '39.2'],
  ['M10x1.25', '61.2'],
  ['M10x1', '64.5'],
  ['M12x1.5', '88.1'],
  ['M12x1.25', '92.1'],
  ['M14x1.5', '125'],
  ['M16x1.5', '167'],
])('%s has the stress area of the table', async (thread, printed) => {
  const { tensileStressAreaMm2 } = await geometry(thread);
  expect(tensileStressAreaMm2.toFixed(printed.includes('.') ? 1 : 0)).toBe(printed);
});

// ISO 724 basic diameters and ISO 965-2 limits, mm, at the printed digits (check-values page 1.4 and 1.5).
describe('the limits of a metric thread', () => {
  test.each<[string, number[], number[], number[], number[]]>([
    ['M6x1', [5.974, 5.794], [5.324, 5.212], [5.35, 5.5], [4.917, 5.153]],
    ['M8x1.25', [7.972, 7.76], [7.16, 7.042], [7.188, 7.348], [6.647, 6.912]],
    ['M10x1.5', [9.968, 9.732], [8.994, 8.862], [9.026, 9.206], [8.376, 8.676]],
    ['M10x1.25', [9.972, 9.76], [9.16, 9.042], [9.188, 9.348], [8.647, 8.912]],
    ['M12x1.75', [11.966, 11.701], [10.829, 10.679], [10.863, 11.063], [10.106, 10.441]],
  ])('are those of the table for %s', async (thread, major6g, pitch6g, pitch6H, minor6H) => {
    const stud = await geometry(thread);
    const nut = await geometry(`${thread}-6H`);
    const printed = (limits: { max: number | null; min: number | null }) =>
      [limits.max, limits.min].map((mm) => Number(mm?.toFixed(3)));
    expect(printed(stud.majorMm)).toEqual(major6g);
    expect(printed(stud.pitchDiameterMm)).toEqual(pitch6g);
    expect(printed(nut.pitchDiameterMm).reverse()).toEqual(pitch6H);
    expect(printed(nut.minorMm).reverse()).toEqual(minor6H);
  });
});
