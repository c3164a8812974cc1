import type { HeatSettings } from '../../../shared/words/bending/bending.ts';
import type { CatalogueSteel } from '../../../shared/words/catalogue.ts';

/**
 * One engagement as the shop reckons it, in the steel of the cover.   (λ, ρ, c) of the steel where it has all three, else
 * those of the shop
 *
 * λ conductivity [W/(m·K)] · ρ density [kg/m³] · c specific heat [J/(kg·K)].
 * Valid: the three of one source, taken together.   Source: this program’s own choice
 * Example: a steel of 30 W/(m·K), 7700 kg/m³ and 460 J/(kg·K) in a shop that has others (tests/calc/heat/heatOfSteel.test.ts)
 */
export function heatOfSteel(shop: HeatSettings, steel: CatalogueSteel | null): HeatSettings {
  if (steel === null) return shop;
  const { conductivityWPerMK, densityKgPerM3, specificHeatJPerKgK } = steel;
  if (conductivityWPerMK === null || densityKgPerM3 === null || specificHeatJPerKgK === null) return shop;
  return { ...shop, conductivityWPerMK, densityKgPerM3, specificHeatJPerKgK };
}
