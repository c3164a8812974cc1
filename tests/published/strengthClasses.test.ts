import { describe, expect, it } from 'vitest';
import { strengthClass } from '../../src/calc/stud/thread/strengthClass.ts';

describe('strength classes, MPa', () => {
  // ISO 898-1: tensile, yield, proof. 4.6, 8.8, 10.9, 12.9 as printed; the rest from memory.
  it.each([
    ['4.6', 10, 400, 240, 225],
    ['4.8', 10, 420, 340, 310],
    ['5.6', 10, 500, 300, 280],
    ['5.8', 10, 520, 420, 380],
    ['6.8', 10, 600, 480, 440],
    ['8.8', 16, 800, 640, 580],
    ['8.8', 18, 830, 660, 600],
    ['9.8', 10, 900, 720, 650],
    ['10.9', 10, 1040, 940, 830],
    ['12.9', 10, 1220, 1100, 970],
  ])(
    'strength class %s at %i mm has the standard’s stresses',
    (name, diameterMm, tensileMPa, yieldMPa, proofMPa) => {
      expect(strengthClass({ name, diameterMm })).toMatchObject({ tensileMPa, yieldMPa, proofMPa });
    },
  );
  // SAE J429 (Shigley & Mischke, 5th ed., p. 341), ksi: proof, yield, tensile.
  it.each([
    ['grade 1', 0.5, 33, 36, 60],
    ['grade 2', 0.75, 55, 57, 74],
    ['grade 2', 0.8, 33, 36, 60],
    ['grade 5', 0.375, 85, 92, 120],
    ['grade 5', 1.25, 74, 81, 105],
    ['grade 8', 0.4375, 120, 130, 150],
  ])('strength %s at %f in has the standard’s stresses', (name, inch, proof, yields, tensile) => {
    const found = strengthClass({ name, diameterMm: inch * 25.4 })!;
    const ksi = (mPa: number) => Math.round(mPa / 6.894757);
    expect([ksi(found.proofMPa), ksi(found.yieldMPa), ksi(found.tensileMPa)]).toEqual([
      proof,
      yields,
      tensile,
    ]);
  });
  it.each([
    ['7.7', 10],
    ['grade 5', 60],
    ['grade 5', 5],
  ])('strength class %s at %i mm has no stresses', (name, diameterMm) => {
    expect(strengthClass({ name, diameterMm })).toBeNull();
  });
});
