import type { CatalogueLathe, LatheSettings } from '../catalogue.ts';
import type { Fields } from './field.ts';

export const RPM = { kind: 'speed', least: 0, open: true, most: 20_000 } as const;

/** What the shop’s lathe does, and how it is worked. All of it or none: half a lathe plans no pass. */
export const LATHE = {
  leastRpm: { label: 'Minimum rpm', ...RPM },
  mostRpm: { label: 'Maximum rpm', ...RPM },
  cuttingSpeedMPerMin: {
    label: 'Cutting speed',
    help: 'The tool maker’s figure comes first',
    kind: 'cutting-speed',
    least: 0,
    open: true,
    most: 2000,
  },
  noseRadiusMm: { label: 'Nose radius', kind: 'size' },
  roughingLimitMm: { label: 'Deepest roughing pass', kind: 'size' },
  finishingCutMm: { label: 'Finishing pass', kind: 'extent' },
  roughingFeedMm: { label: 'Roughing feed', help: 'Per revolution', kind: 'size' },
  finishingFeedMm: { label: 'Finishing feed', help: 'Per revolution', kind: 'size' },
} as const satisfies Fields<LatheSettings>;

/** A lathe of the catalog, whole: a cut plan takes all its figures from one. */
export const CATALOGUE_LATHE = {
  name: { head: 'Lathe', label: 'Name', help: 'As the shop calls it', kind: 'text', least: 1, most: 80 },
  ...LATHE,
  source: {
    label: 'Source of the figures',
    help: 'Its manual, the tool maker’s sheet, or who set them',
    kind: 'text',
    least: 1,
    most: 200,
  },
  sourceOn: {
    label: 'Date of the source',
    help: 'Of its edition, or when they were set',
    box: 'sourceOn',
    kind: 'day',
    optional: true,
  },
  note: { label: 'Note', kind: 'text', most: 2000, lines: true },
} as const satisfies Fields<CatalogueLathe>;
