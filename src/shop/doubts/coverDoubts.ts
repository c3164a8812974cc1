import { doubtsAmong, type Expected, type ReadingInDoubt } from '../../../shared/measuring/readingDoubt.ts';
import type { CoverCheck, CoverCheckInput, Gauge } from '../../../shared/words/cover.ts';
import type { DoubtedReading } from '../../../shared/words/finding.ts';
import { checkWhatIsThere } from '../../calc/cover/checkCover.ts';

interface Placed {
  readonly path: string;
  /** "wall at station 3", for the sentence of the finding. */
  readonly place: string;
  readonly reading: ReadingInDoubt;
}

/** What a cover’s readings are held against: its new wall, and what its gauge is known to do. */
export function expectedOf(nominalWallMm: number, gauge: Gauge | null): Expected {
  return {
    nominalWallMm,
    repeatabilityMm: gauge?.repeatabilityMm ?? null,
    resolutionMm: gauge?.resolutionMm ?? null,
    cut: null,
  };
}

/**
 * Judges a cover of which nobody can be asked "0.49 mm? Did you mean 4.9 mm?": what looks like a slip is put down as
 * doubtful, which no verdict lets pass, and told with its question. Only `confirmed` lifts; what the sender itself calls
 * doubtful stays so.
 */
export function checkAsked(input: CoverCheckInput, confirmed: readonly string[]): CoverCheck {
  const lifted = new Set(confirmed);
  const readings = readingsOf(input);
  const isLifted = (i: number) => {
    const { path } = readings[i]!;
    return lifted.has(path) || lifted.has(path.replace(/\.\d+$/, ''));
  };
  const asked = doubtsAmong(
    readings.map(({ reading }) => reading),
    expectedOf(input.cover.nominalWallMm, input.gauge),
    isLifted,
  ).map(({ index, doubt }) => ({ ...readings[index]!, doubt }));
  const doubtfulReadings = [
    ...input.doubtfulReadings,
    ...asked.map(({ place, doubt }) => `${place} (${doubt.question})`),
  ];
  const check = checkWhatIsThere({ ...input, doubtfulReadings });
  const doubts = asked.map(
    ({ path, reading, doubt }): DoubtedReading => ({
      path,
      valueMm: reading.valueMm,
      probablyMm: doubt.meantMm,
      question: doubt.question,
    }),
  );
  const findings = check.findings.map((one) => (one.id === 'doubtful-readings' ? { ...one, doubts } : one));
  return { ...check, findings };
}

function readingsOf({ stations, marks }: CoverCheckInput): readonly Placed[] {
  const sent = (
    path: string,
    place: string,
    reading: Pick<ReadingInDoubt, 'kind' | 'valueMm' | 'angleDeg' | 'radiusMm'>,
  ): Placed => ({
    path,
    place,
    reading: { ...reading, typed: String(reading.valueMm), unit: 'mm', decimalSign: 'point' },
  });
  const atStations = stations.flatMap(({ angleDeg, radiusMm, wallMm, faceMm, markDepthMm }, i): Placed[] => {
    const [at, place, where] = [`stations.${i}`, `at station ${i + 1}`, { angleDeg, radiusMm }];
    return [
      ...wallMm.map((valueMm, j) =>
        sent(`${at}.wallMm.${j}`, `wall ${place}`, { ...where, kind: 'wall', valueMm }),
      ),
      ...(faceMm === null
        ? []
        : [sent(`${at}.faceMm`, `indicator reading ${place}`, { ...where, kind: 'face', valueMm: faceMm })]),
      ...(markDepthMm === null
        ? []
        : [
            sent(`${at}.markDepthMm`, `heat mark ${place}`, { ...where, kind: 'mark', valueMm: markDepthMm }),
          ]),
    ];
  });
  const between = marks.map(({ depthMm: valueMm, angleDeg, radiusMm }, i) =>
    sent(`marks.${i}.depthMm`, `heat mark ${i + 1}`, { angleDeg, radiusMm, kind: 'mark', valueMm }),
  );
  return [...atStations, ...between];
}
