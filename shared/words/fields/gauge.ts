import type { CatalogueGauge } from '../catalogue.ts';
import type { Fields } from './field.ts';

/** A gauge of the shop, with what its certificate says of it. */
export const GAUGE = {
  name: { head: 'Gauge', label: 'Name', kind: 'text', least: 1, most: 80 },
  gaugeKind: {
    label: 'Kind of gauge',
    kind: 'choice',
    options: {
      micrometer: 'micrometer',
      caliper: 'caliper',
      indicator: 'indicator',
      ultrasound: 'ultrasound',
    },
    ifEmpty: 'micrometer',
  },
  resolutionMm: {
    label: 'Resolution',
    help: 'Smallest step it shows',
    box: 'resolution',
    kind: 'extent',
    optional: true,
  },
  calibrationUMm: {
    label: 'Expanded uncertainty U',
    help: 'From its certificate',
    box: 'calibration',
    kind: 'extent',
    optional: true,
  },
  coverageFactor: {
    label: 'Coverage factor k',
    help: 'From its certificate; usually 2',
    box: 'coverage',
    kind: 'number',
    unit: '',
    least: 1,
    most: 4,
    ifEmpty: 2,
  },
  repeatabilityMm: {
    label: 'Repeatability',
    help: 'Standard deviation of one reading',
    box: 'repeatability',
    kind: 'extent',
    optional: true,
  },
  dueOn: { label: 'Calibration due', box: 'due', kind: 'day', optional: true },
  checkEveryDays: {
    label: 'Days between checks on a master',
    help: 'Past that, answers with this gauge carry a caution; blank asks for none',
    box: 'checkEvery',
    kind: 'count',
    least: 1,
    most: 1000,
    optional: true,
    none: 'none asked for',
  },
  note: { label: 'Note', kind: 'text', most: 2000, lines: true },
} as const satisfies Fields<CatalogueGauge>;
