import type { CatalogueLining } from '../catalogue.ts';
import type { Fields } from './field.ts';

/** How stiff a lining is: of the catalog's, and of the shop's for every cover. */
export const LINING_MODULUS = {
  label: 'Lining modulus',
  help: { mm: 'Pressure for each mm it is squeezed', in: 'Pressure for each inch it is squeezed' },
  box: 'liningModulus',
  kind: 'lining-modulus',
  least: 5,
  most: 1000,
  advice: {
    mm: 'Give the pressure in MPa for each mm it is squeezed.',
    in: 'Give the pressure in psi for each inch it is squeezed.',
  },
} as const;

/** A clutch lining, as far as a calculation asks for it. */
export const LINING = {
  name: { head: 'Lining', label: 'Name', help: 'With its thickness', kind: 'text', least: 1, most: 80 },
  liningModulusMPaPerMm: LINING_MODULUS,
  source: {
    label: 'Source of the figure',
    help: 'Its maker’s data sheet, or who measured it and how',
    kind: 'text',
    least: 1,
    most: 200,
  },
  sourceOn: {
    label: 'Date of the source',
    help: 'Of its edition, or of the measurement',
    box: 'sourceOn',
    kind: 'day',
    optional: true,
  },
  note: { label: 'Note', kind: 'text', most: 2000, lines: true },
} as const satisfies Fields<CatalogueLining>;
