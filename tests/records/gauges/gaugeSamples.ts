import type { CatalogueGauge } from '../../../shared/words/catalogue.ts';
import type { NewMasterCheck } from '../../../src/records/gauges/masterChecks.ts';

export const gauge: CatalogueGauge = {
  name: 'Bench micrometer 1',
  gaugeKind: 'micrometer',
  resolutionMm: 0.001,
  calibrationUMm: 0.004,
  coverageFactor: 2,
  repeatabilityMm: 0.0015,
  dueOn: '2027-03-01',
  checkEveryDays: 30,
  note: '',
};

export const newCheck = (change: Partial<NewMasterCheck> = {}): NewMasterCheck => ({
  id: '00000000-0000-4000-8000-000000000001',
  gaugeId: 'm1',
  day: '2026-11-24',
  masterMm: 5,
  masterTyped: '5',
  readingMm: 5.002,
  readingTyped: '5.002',
  confirmed: false,
  ...change,
});
