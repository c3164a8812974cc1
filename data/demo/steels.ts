import type { CatalogueSteel, Chosen } from '../../shared/words/catalogue.ts';
import { us } from './inches.ts';

/** Invented steels: one as the shop reckons every cover, one stronger for billet covers. */
export const demoSteels: readonly { readonly id: string; readonly steel: CatalogueSteel }[] = [
  {
    id: 'pressing-steel',
    steel: {
      name: 'Pressing steel, demo',
      youngMPa: us(29_900, 'stress'),
      poisson: 0.29,
      source: 'invented for the demo shop',
      sourceOn: null,
      yieldMPa: us(46, 'stress'),
      conductivityWPerMK: us(30, 'conductivity'),
      densityKgPerM3: us(0.284, 'density'),
      specificHeatJPerKgK: us(0.116, 'specific-heat'),
      note: 'Invented.',
    },
  },
  {
    id: 'bar-steel',
    steel: {
      name: 'Bar steel, demo',
      youngMPa: us(29_700, 'stress'),
      poisson: 0.29,
      source: 'invented for the demo shop',
      sourceOn: null,
      yieldMPa: us(61, 'stress'),
      conductivityWPerMK: us(26, 'conductivity'),
      densityKgPerM3: us(0.283, 'density'),
      specificHeatJPerKgK: us(0.116, 'specific-heat'),
      note: 'Invented.',
    },
  },
];

/** What stamped demo covers are made of. */
export function demoSteelChosen(): Chosen<'steel'> {
  const { id, steel } = demoSteels[0]!;
  return { id, revision: 1, steel };
}
