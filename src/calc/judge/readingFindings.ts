import type { Finding } from '../../../shared/words/finding.ts';
import { type LengthUnit, listInWords } from '../../../shared/words/print.ts';
import type { CoverNumbers } from '../cover/coverNumbers.ts';
import { printRadius } from './coverWords.ts';

const NO_NUMBER = { value: null, limit: null, unit: '', answer: null } as const;

/** Were enough places read, and can the readings be relied on? */
export function readingFindings(numbers: CoverNumbers, unit: LengthUnit): readonly Finding[] {
  return [coverageFinding(numbers, unit), doubtful(numbers.input.doubtfulReadings)];
}

function coverageFinding({ coverage }: CoverNumbers, unit: LengthUnit): Finding {
  const { missingPlaces, secondRing } = coverage;
  const complete = missingPlaces.length === 0 && secondRing;
  const missing = [
    ...(missingPlaces.length > 0
      ? [
          `Not measured on the ring at radius ${printRadius(coverage.ringRadiusMm, unit)}: ${missingPlaces.join('; ')}.`,
        ]
      : []),
    ...(secondRing ? [] : ['Not measured: a second ring.']),
  ];
  return {
    id: 'coverage',
    title: 'Places measured',
    ...NO_NUMBER,
    status: complete ? 'pass' : 'fail',
    sentence: complete
      ? 'Measured behind every stud and between every pair, and on a second ring.'
      : `${missing.join(' ')} Measure there too.`,
    source: 'common practice, no source: heat marks sit behind the studs',
  };
}

function doubtful(readings: readonly string[]): Finding {
  const some = readings.length > 0;
  return {
    id: 'doubtful-readings',
    title: 'Doubtful readings',
    ...NO_NUMBER,
    status: some ? 'fail' : 'pass',
    sentence: some
      ? `Doubted when typed, and not confirmed since: ${listInWords(readings)}. Read again, or confirm.`
      : 'No reading is in doubt.',
    source: 'readings far from what the family leads one to expect are asked about',
  };
}

/** How it was held, and stations that are not on the track; these decide nothing by themselves. */
export function holdingFindings({ input, stations }: CoverNumbers): readonly Finding[] {
  const { chucking, cover } = input;
  const held = {
    id: 'chucking',
    title: 'Chucking',
    ...NO_NUMBER,
    source: 'as recorded when the face was indicated',
  };
  const offTrack = stations.filter(
    ({ radiusMm }) =>
      radiusMm < cover.trackInnerDiameterMm / 2 - 1e-9 || radiusMm > cover.trackOuterDiameterMm / 2 + 1e-9,
  ).length;
  return [
    chucking === 'side-wall-jaws'
      ? {
          ...held,
          status: 'caution',
          sentence:
            'Held by its side wall: the tilt seen belongs to the chucking, and dialling in is not offered.',
        }
      : chucking === null
        ? {
            ...held,
            status: 'not-checked',
            sentence:
              'It was not said how the cover was held; pads and pilot trued in the chuck are assumed.',
          }
        : { ...held, status: 'pass', sentence: 'Held with pads and pilot trued in the chuck.' },
    ...(offTrack === 0
      ? []
      : [
          {
            id: 'off-track',
            title: 'Off the track',
            ...NO_NUMBER,
            status: 'caution' as const,
            value: offTrack,
            sentence: `${offTrack === 1 ? 'One station lies' : `${offTrack} stations lie`} off the track; ${offTrack === 1 ? 'its wall counts' : 'their walls count'} all the same.`,
            source: 'the track’s diameters as given',
          },
        ]),
  ];
}
