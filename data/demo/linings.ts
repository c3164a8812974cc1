import type { CatalogueLining, Chosen } from '../../shared/words/catalogue.ts';
import { us } from './inches.ts';

/** Invented linings: one as the shop reckons every cover, one stiffer. */
export const demoLinings: readonly { readonly id: string; readonly lining: CatalogueLining }[] = [
  {
    id: 'tan-paper-lining',
    lining: {
      name: 'Tan paper lining 0.030, demo',
      liningModulusMPaPerMm: us(220_000, 'lining-modulus'),
      source: 'invented for the demo shop',
      sourceOn: '2026-03-02',
      note: 'Invented.',
    },
  },
  {
    id: 'woven-lining',
    lining: {
      name: 'Woven lining 0.025, demo',
      liningModulusMPaPerMm: us(350_000, 'lining-modulus'),
      source: 'invented for the demo shop',
      sourceOn: '2026-03-02',
      note: 'Invented.',
    },
  },
];

/** What the clutches of demo covers are lined with. */
export function demoLiningChosen(): Chosen<'lining'> {
  const { id, lining } = demoLinings[0]!;
  return { id, revision: 1, lining };
}
