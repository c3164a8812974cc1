import type { Finding } from '../../../shared/words/finding.ts';
import { listInWords } from '../../../shared/words/print.ts';
import type { CoverNumbers } from '../cover/coverNumbers.ts';
import { onRow } from './coverWords.ts';

const NO_NUMBER = { value: null, limit: null, unit: '', answer: null } as const;

/** Were enough stations measured, and can the readings be relied on? */
export function readingFindings(numbers: CoverNumbers): readonly Finding[] {
  return [coverageFinding(numbers), doubtful(numbers.input.doubtfulReadings)];
}

function coverageFinding({ coverage, stations }: CoverNumbers): Finding {
  const { missingPlaces, secondRing, ringStation } = coverage;
  const row = onRow(stations, ringStation);
  const complete = missingPlaces.length === 0 && secondRing;
  const missing = [
    ...(missingPlaces.length > 0
      ? [`Not measured${row === '' ? '' : ` ${row}`}: ${missingPlaces.join('; ')}.`]
      : []),
    ...(secondRing ? [] : ['No second row is measured.']),
  ];
  return {
    id: 'coverage',
    title: 'Stations measured',
    ...NO_NUMBER,
    status: complete ? 'pass' : 'fail',
    sentence: complete
      ? 'Measured behind every stud, between every pair of studs, and on a second row.'
      : `${missing.join(' ')} Measure there too.`,
    source: 'common practice, no source: heat marks lie behind the studs',
  };
}

function doubtful(readings: readonly string[]): Finding {
  const some = readings.length > 0;
  return {
    id: 'doubtful-readings',
    title: 'Readings confirmed',
    ...NO_NUMBER,
    status: some ? 'fail' : 'pass',
    sentence: some ? notConfirmed(readings) : 'No reading is in doubt.',
    source: 'compared with what was expected there',
  };
}

/** "The wall at station 3 looks like a slip. Measure it again, or confirm it." */
export function notConfirmed(readings: readonly string[]): string {
  return readings.length === 1
    ? `Looks wrong: ${readings[0]}. Measure it again, or confirm it.`
    : `These look wrong: ${listInWords(readings)}. Measure them again, or confirm them.`;
}

/** How it was held, and stations that are not on the friction surface; these decide nothing by themselves. */
export function holdingFindings(numbers: CoverNumbers): readonly Finding[] {
  return [chuckingFinding(numbers.input.chucking), ...offTrack(numbers)];
}

function chuckingFinding(chucking: CoverNumbers['input']['chucking']): Finding {
  const base = {
    id: 'chucking',
    title: 'Chucking',
    ...NO_NUMBER,
    source: 'as recorded when the face was indicated',
  };
  switch (chucking) {
    case 'side-wall-jaws':
      return {
        ...base,
        status: 'caution',
        sentence:
          'Held in side-wall jaws: the tilt measured is the chuck’s. To use shims, hold the cover by its pads and crank pilot.',
      };
    case 'pads-and-pilot-trued':
      return { ...base, status: 'pass', sentence: 'Held with pads and crank pilot trued in the chuck.' };
    case null:
      return {
        ...base,
        status: 'not-checked',
        sentence:
          'How the cover was held is not recorded. Pads and crank pilot trued in the chuck are assumed.',
      };
  }
}

function offTrack({ input: { cover }, stations }: CoverNumbers): readonly Finding[] {
  const off = stations.filter(
    ({ radiusMm }) =>
      radiusMm < cover.trackInnerDiameterMm / 2 - 1e-9 || radiusMm > cover.trackOuterDiameterMm / 2 + 1e-9,
  ).length;
  if (off === 0) return [];
  return [
    {
      id: 'off-track',
      title: 'Stations on the friction surface',
      ...NO_NUMBER,
      status: 'caution',
      value: off,
      sentence:
        off === 1
          ? '1 station is off the friction surface. Its wall still counts.'
          : `${off} stations are off the friction surface. Their walls still count.`,
      source: 'the friction surface diameters as entered',
    },
  ];
}
