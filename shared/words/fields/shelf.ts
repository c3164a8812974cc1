import type { ShelfAsked } from '../shelf.ts';
import type { Fields } from './field.ts';

/** What an order asks of a cover on the shelf, as it is typed. */
export const SHELF_ASKED = {
  leastWallMm: {
    label: 'Least wall left',
    help: 'Blank: the minimum wall of each cover',
    box: 'wall',
    kind: 'size',
    optional: true,
  },
  sure: {
    label: 'How sure, at least',
    help: 'Blank: the confidence required by the shop limits',
    box: 'sure',
    kind: 'share',
    least: 0.5,
    most: 0.9999,
    optional: true,
  },
  crankPilotMm: {
    label: 'Crank pilot diameter',
    box: 'pilot',
    kind: 'size',
    optional: true,
  },
} as const satisfies Fields<Pick<ShelfAsked, 'leastWallMm' | 'sure' | 'crankPilotMm'>>;
