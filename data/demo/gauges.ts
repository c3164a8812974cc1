import type { CatalogueGauge } from '../../shared/words/catalogue.ts';

/** Invented gauges: one of each kind, one past its date. */
export const demoGauges: readonly { readonly id: string; readonly gauge: CatalogueGauge }[] = [
  {
    id: 'micrometer-m2',
    gauge: {
      name: 'Micrometer M2',
      gaugeKind: 'micrometer',
      resolutionMm: 0.001,
      calibrationUMm: 0.004,
      coverageFactor: 2,
      repeatabilityMm: 0.002,
      dueOn: '2027-05-31',
      note: 'Tube micrometer with ball ends. Invented.',
    },
  },
  {
    id: 'caliper-c1',
    gauge: {
      name: 'Caliper C1',
      gaugeKind: 'caliper',
      resolutionMm: 0.01,
      calibrationUMm: 0.03,
      coverageFactor: 2,
      repeatabilityMm: 0.01,
      dueOn: '2026-06-30',
      note: 'Types its reading and Enter. Invented.',
    },
  },
  {
    id: 'indicator-i1',
    gauge: {
      name: 'Indicator I1',
      gaugeKind: 'indicator',
      resolutionMm: 0.002,
      calibrationUMm: 0.004,
      coverageFactor: 2,
      repeatabilityMm: 0.001,
      dueOn: '2027-01-31',
      note: 'Invented.',
    },
  },
];
