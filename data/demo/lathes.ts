import type { CatalogueLathe } from '../../shared/words/catalogue.ts';
import { inches, us } from './inches.ts';

/** Invented lathes: the one the shop limits describe, and a slower, lighter one. */
export const demoLathes: readonly { readonly id: string; readonly lathe: CatalogueLathe }[] = [
  {
    id: 'lathe-1',
    lathe: {
      name: 'Lathe 1, demo',
      leastRpm: 30,
      mostRpm: 800,
      cuttingSpeedMPerMin: us(460, 'cutting-speed'),
      noseRadiusMm: inches(0.031),
      roughingLimitMm: inches(0.008),
      finishingCutMm: inches(0.004),
      roughingFeedMm: inches(0.008),
      finishingFeedMm: inches(0.004),
      source: 'invented for the demo shop',
      sourceOn: '2026-02-09',
      note: 'Invented.',
    },
  },
  {
    id: 'lathe-2',
    lathe: {
      name: 'Lathe 2, demo',
      leastRpm: 45,
      mostRpm: 360,
      cuttingSpeedMPerMin: us(330, 'cutting-speed'),
      noseRadiusMm: inches(0.016),
      roughingLimitMm: inches(0.005),
      finishingCutMm: inches(0.003),
      roughingFeedMm: inches(0.006),
      finishingFeedMm: inches(0.003),
      source: 'invented for the demo shop',
      sourceOn: '2026-02-09',
      note: 'Invented.',
    },
  },
];
