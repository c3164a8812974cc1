import type { HeatSettings } from '../../../shared/words/bending/bending.ts';
import type { CatalogueSteel } from '../../../shared/words/catalogue.ts';

/**
 * One engagement as the shop reckons it, in the steel of the cover: conductivity k [W/(m·K)], density ρ [kg/m³] and
 * specific heat c [J/(kg·K)] are the steel’s where it has all three, else the shop’s: never figures of two sources
 * together.
 */
export function heatOfSteel(shop: HeatSettings, steel: CatalogueSteel | null): HeatSettings {
  if (steel === null) return shop;
  const { conductivityWPerMK, densityKgPerM3, specificHeatJPerKgK } = steel;
  if (conductivityWPerMK === null || densityKgPerM3 === null || specificHeatJPerKgK === null) return shop;
  return { ...shop, conductivityWPerMK, densityKgPerM3, specificHeatJPerKgK };
}
