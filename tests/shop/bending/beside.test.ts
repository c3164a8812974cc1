import { expect, it } from 'vitest';
import { demoCriteria } from '../../../data/demo/criteria.ts';
import { demoFamilies } from '../../../data/demo/families.ts';
import { demoSteels } from '../../../data/demo/steels.ts';
import type { Bending, HeatSettings } from '../../../shared/words/bending/bending.ts';
import type { Family } from '../../../shared/words/catalogue.ts';
import { setBeside } from '../../../src/shop/bending/bendings.ts';

const shop = demoCriteria.heat!;
const three = { conductivityWPerMK: 30, densityKgPerM3: 7700, specificHeatJPerKgK: 460 };
const steel = { id: 'a', revision: 3, steel: { ...demoSteels[1]!.steel, ...three } };
/** Told of a cover of another steel, for a longer slip than the shop reckons with today. */
const told = {
  ...shop,
  ...{ conductivityWPerMK: 20, densityKgPerM3: 8000, specificHeatJPerKgK: 500 },
  slipTimeS: shop.slipTimeS * 2,
};

async function heatBeside(family: Partial<Family>, heat: HeatSettings | null = shop) {
  const bending = { heat: told, cases: [] } as Partial<Bending> as Bending;
  const other = { id: 'other', family: { ...demoFamilies[0]!.family, ...family } };
  const both = await setBeside({ bending, why: null, besideWhy: null, findings: [] }, other, {
    ...demoCriteria,
    heat,
  });
  return both?.bending?.other?.heat;
}

it('a cover type beside another slips as that was told, in its own steel', async () => {
  expect(await heatBeside({ steel })).toEqual({ ...told, ...three });
});

it('beside another steel, a cover type that names none has the shop’s', async () => {
  const { conductivityWPerMK, densityKgPerM3, specificHeatJPerKgK } = shop;
  expect(await heatBeside({ steel: null })).toEqual({
    ...told,
    ...{ conductivityWPerMK, densityKgPerM3, specificHeatJPerKgK },
  });
  expect(await heatBeside({ steel: null }, null)).toEqual(told);
});
