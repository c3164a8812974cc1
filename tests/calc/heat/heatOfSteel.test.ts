import { expect, it } from 'vitest';
import { demoCriteria } from '../../../data/demo/criteria.ts';
import { demoFamilies } from '../../../data/demo/families.ts';
import { demoSteels } from '../../../data/demo/steels.ts';
import type { CatalogueSteel } from '../../../shared/words/catalogue.ts';
import { heatOfSteel } from '../../../src/calc/heat/heatOfSteel.ts';
import { bendingBase } from '../../../src/calc/plate/bendingBase.ts';

const shop = demoCriteria.heat!;
const three = { conductivityWPerMK: 30, densityKgPerM3: 7700, specificHeatJPerKgK: 460 };
const steel = { ...demoSteels[1]!.steel, youngMPa: 200_000, poisson: 0.27, yieldMPa: 420, ...three };
const { yieldMPa: _, ...family } = demoFamilies[0]!.family;
const of = (body: Partial<CatalogueSteel>) => ({ id: 'a', revision: 3, steel: { ...steel, ...body } });

it('a steel brings its own three figures of heat, and the engagement stays the shop’s', () => {
  expect(heatOfSteel(shop, steel)).toEqual({ ...shop, ...three });
  expect(heatOfSteel(shop, { ...steel, specificHeatJPerKgK: null })).toEqual(shop);
  expect(heatOfSteel(shop, null)).toEqual(shop);
});

it('a cover bends with the modulus, the ratio and the yield of its steel, and its own yield wins', () => {
  const settings = { ...demoCriteria.bending!, yieldMPa: 235 };
  const base = (more: object) => bendingBase({ ...family, ...more }, settings).base!;
  const { youngMPa, poisson } = settings;
  expect(base({ steel: null })).toMatchObject({ youngMPa, poisson, yieldMPa: 235 });
  expect(base({ steel: of({}) })).toMatchObject({ youngMPa: 200_000, poisson: 0.27, yieldMPa: 420 });
  expect(base({ steel: of({}), yieldMPa: 300 }).yieldMPa).toBe(300);
  expect(base({ steel: of({ yieldMPa: null }) }).yieldMPa).toBe(235);
});
