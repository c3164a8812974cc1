import type { CatalogueGauge } from '../../shared/words/catalogue.ts';
import { inches } from './inches.ts';

/** Invented gauges: one of each kind, one past its date. */
export const demoGauges: readonly { readonly id: string; readonly gauge: CatalogueGauge }[] = [
  {
    id: 'micrometer-m2',
    gauge: {
      name: 'Micrometer M2',
      gaugeKind: 'micrometer',
      resolutionMm: inches(0.0001),
      calibrationUMm: inches(0.00015),
      coverageFactor: 2,
      repeatabilityMm: inches(0.0001),
      dueOn: '2027-05-31',
      note: 'Tube micrometer with ball ends. Invented.',
    },
  },
  {
    id: 'caliper-c1',
    gauge: {
      name: 'Caliper C1',
      gaugeKind: 'caliper',
      resolutionMm: inches(0.0005),
      calibrationUMm: inches(0.001),
      coverageFactor: 2,
      repeatabilityMm: inches(0.0005),
      dueOn: '2026-06-30',
      note: 'Types its reading and Enter. Invented.',
    },
  },
  {
    id: 'indicator-i1',
    gauge: {
      name: 'Indicator I1',
      gaugeKind: 'indicator',
      resolutionMm: inches(0.0005),
      calibrationUMm: inches(0.00015),
      coverageFactor: 2,
      repeatabilityMm: inches(0.0001),
      dueOn: '2027-01-31',
      note: 'Invented.',
    },
  },
];
