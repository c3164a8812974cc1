import type { Gauge } from '../cover.ts';
import type { MeasuringSetup } from '../job.ts';
import type { Fields } from './field.ts';
import { KNOCK_ON } from './knockOn.ts';

/** How well it measures, where that is typed instead of taken from a gauge of the catalog. */
export const GAUGE_FIGURES = {
  standardUncertaintyMm: {
    label: 'Gauge standard uncertainty',
    help: 'From its calibration: U divided by k',
    box: 'gaugeU',
    kind: 'extent',
    optional: true,
  },
  resolutionMm: {
    label: 'Gauge resolution',
    help: 'Smallest step it shows',
    box: 'gaugeStep',
    kind: 'extent',
    optional: true,
  },
  repeatabilityMm: {
    label: 'Gauge repeatability',
    help: 'Standard deviation of one reading',
    box: 'gaugeSpread',
    kind: 'extent',
    optional: true,
  },
  faceStandardUncertaintyMm: {
    label: 'Indicator standard uncertainty',
    help: 'Of one indicator reading',
    box: 'faceU',
    kind: 'extent',
    optional: true,
  },
  cutSettingStandardUncertaintyMm: {
    label: 'Depth of cut standard uncertainty',
    help: 'How repeatable is the depth of cut?',
    box: 'cutU',
    kind: 'extent',
    optional: true,
  },
} as const satisfies Fields<Gauge>;

/** How the cover is measured. */
export const SETUP = {
  gauge: {
    label: 'Gauge',
    help: 'Micrometer, caliper or indicator',
    kind: 'text',
    most: 120,
    none: 'not given',
  },
  gauges: { label: 'Gauges from the catalog', kind: 'made' },
  ringWelded: { label: 'Stiffening ring welded', kind: 'made' },
  chucking: {
    label: 'Held in the lathe by',
    subject: 'How the cover is held in the lathe',
    kind: 'choice',
    options: {
      'pads-and-pilot-trued': 'pads and crank pilot, trued in the chuck',
      'side-wall-jaws': 'jaws on the side wall',
    },
    optional: true,
  },
  residualRunoutMm: { label: 'Runout left in the chuck', box: 'residual', kind: 'extent', optional: true },
  wallReadThrough: {
    label: 'Wall measured through',
    subject: 'What the wall was measured through',
    box: 'through',
    kind: 'choice',
    options: {
      bare: 'bare metal',
      'pad-subtracted': 'a pad, subtracted',
      ultrasound: 'ultrasound to the joint',
    },
    ifEmpty: 'bare',
  },
  gaugeFigures: { label: 'Gauge figures', kind: 'part', fields: GAUGE_FIGURES, optional: true },
  releaseClearanceMm: {
    label: 'Lock-up release clearance',
    help: 'Before the cut; it grows by the cut',
    box: 'release',
    kind: 'extent',
    optional: true,
  },
  knockOn: {
    label: 'Other dimensions affected',
    kind: 'part',
    fields: KNOCK_ON,
    at: 'k.',
    quiet: true,
    optional: true,
  },
  stations: { label: 'Stations', kind: 'made' },
} as const satisfies Fields<MeasuringSetup>;
