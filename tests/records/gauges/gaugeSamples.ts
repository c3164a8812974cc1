import type { CatalogueGauge } from '../../../shared/words/catalogue.ts';
import type { NewMasterCheck } from '../../../src/records/gauges/masterChecks.ts';
import type { NewStudy, NewStudyReading } from '../../../src/records/gauges/studies.ts';

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

/** Two covers, two people, two rounds. */
export const newStudy = (change: Partial<NewStudy> = {}): NewStudy => ({
  sentId: '00000000-0000-4000-8000-000000000010',
  gaugeId: 'm1',
  day: '2026-11-24',
  plan: { covers: 2, stations: 1, people: ['AA', 'BB'], rounds: 2 },
  order: [0, 1].flatMap((round) =>
    [0, 1].flatMap((person) => [0, 1].map((station) => ({ station, person, round }))),
  ),
  ...change,
});

export const newStudyReading = (change: Partial<NewStudyReading> = {}): NewStudyReading => ({
  id: '00000000-0000-4000-8000-000000000011',
  place: 0,
  valueMm: 4.91,
  typed: '4.91',
  confirmed: false,
  ...change,
});
