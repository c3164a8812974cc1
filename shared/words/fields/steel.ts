import type { CatalogueSteel } from '../catalogue.ts';
import { YIELD } from './family.ts';
import type { Fields } from './field.ts';

/** Bounds of this program's own, about the usual figures of metals (from memory): they are to catch GPa typed as MPa. */
export const YOUNG = {
  kind: 'stress',
  least: 50_000,
  most: 250_000,
  advice: {
    mm: 'Give it in MPa, a thousand times the figure in GPa; steel has about 206000.',
    in: 'Give it in ksi; steel has about 29,900.',
  },
} as const;
export const POISSON = {
  kind: 'number',
  unit: '',
  least: 0.15,
  most: 0.4,
  advice: 'Steel has about 0.29.',
} as const;
const above = (most: number) => ({ least: 0, open: true, most }) as const;
export const CONDUCTIVITY = { kind: 'conductivity', ...above(10_000) } as const;
export const DENSITY = { kind: 'density', ...above(30_000) } as const;
export const SPECIFIC_HEAT = { kind: 'specific-heat', ...above(20_000) } as const;

/** A steel, as far as a calculation asks for it. */
export const STEEL = {
  name: { head: 'Steel', label: 'Name', help: 'As its standard names it', kind: 'text', least: 1, most: 80 },
  youngMPa: { label: 'Young’s modulus', subject: 'Young’s modulus', box: 'young', ...YOUNG },
  poisson: { label: 'Poisson’s ratio', subject: 'Poisson’s ratio', box: 'poisson', ...POISSON },
  source: {
    label: 'Source of the figures',
    help: 'The standard, handbook or certificate they stand in',
    kind: 'text',
    least: 1,
    most: 200,
  },
  sourceOn: {
    label: 'Date of the source',
    help: 'Of its edition or certificate',
    box: 'sourceOn',
    kind: 'day',
    optional: true,
  },
  note: { label: 'Note', kind: 'text', most: 2000, lines: true },
  yieldMPa: {
    head: 'Strength and heat',
    headHelp:
      'Needed where the greatest stress is held against its yield, and for heat. For heat enter all three, or none; what is blank comes from the shop limits.',
    folded: true,
    label: 'Yield strength',
    help: 'The least the source promises',
    box: 'yield',
    ...YIELD,
    optional: true,
  },
  conductivityWPerMK: { label: 'Thermal conductivity', box: 'conductivity', ...CONDUCTIVITY, optional: true },
  densityKgPerM3: { label: 'Density', box: 'density', ...DENSITY, optional: true },
  specificHeatJPerKgK: { label: 'Specific heat', box: 'specificHeat', ...SPECIFIC_HEAT, optional: true },
} as const satisfies Fields<CatalogueSteel>;
