import { readingDoubt } from '../../../shared/measuring/readingDoubt.ts';
import type { CoverCheck, CoverCheckInput } from '../../../shared/words/cover.ts';
import type { DoubtedReading } from '../../../shared/words/finding.ts';
import type { ReadingKind } from '../../../shared/words/job.ts';
import { checkCover } from '../../calc/cover/checkCover.ts';

interface Placed {
  readonly path: string;
  readonly kind: ReadingKind;
  readonly valueMm: number;
  /** "wall at station 3", for the sentence of the finding. */
  readonly place: string;
}

/**
 * Judges a cover of which nobody can be asked "0.49 mm? Did you mean 4.9 mm?": what looks like a slip is put down as
 * doubtful, which no verdict lets pass, and told with its question. Only `confirmed` lifts; what the sender itself calls
 * doubtful stays so.
 */
export function checkAsked(input: CoverCheckInput, confirmed: readonly string[]): CoverCheck {
  const lifted = new Set(confirmed);
  const asked = readingsOf(input).flatMap((reading) => {
    const doubted = doubtedOf(reading, input.cover.nominalWallMm);
    const isLifted = lifted.has(reading.path) || lifted.has(reading.path.replace(/\.\d+$/, ''));
    return doubted === null || isLifted ? [] : [{ doubted, place: reading.place }];
  });
  const doubtfulReadings = [
    ...input.doubtfulReadings,
    ...asked.map(({ doubted, place }) => `${place} (${doubted.question})`),
  ];
  const check = checkCover({ ...input, doubtfulReadings });
  const doubts = asked.map(({ doubted }) => doubted);
  const findings = check.findings.map((one) => (one.id === 'doubtful-readings' ? { ...one, doubts } : one));
  return { ...check, findings };
}

function readingsOf({ stations, marks }: CoverCheckInput): readonly Placed[] {
  const atStations = stations.flatMap(({ wallMm, faceMm, markDepthMm }, i): Placed[] => {
    const [at, place] = [`stations.${i}`, `at station ${i + 1}`];
    const walls = wallMm.map(
      (valueMm, j): Placed => ({ path: `${at}.wallMm.${j}`, kind: 'wall', valueMm, place: `wall ${place}` }),
    );
    const face: Placed[] =
      faceMm === null
        ? []
        : [{ path: `${at}.faceMm`, kind: 'face', valueMm: faceMm, place: `indicator reading ${place}` }];
    const mark: Placed[] =
      markDepthMm === null
        ? []
        : [{ path: `${at}.markDepthMm`, kind: 'mark', valueMm: markDepthMm, place: `heat mark ${place}` }];
    return [...walls, ...face, ...mark];
  });
  const between = marks.map(
    ({ depthMm }, i): Placed => ({
      path: `marks.${i}.depthMm`,
      kind: 'mark',
      valueMm: depthMm,
      place: `heat mark ${i + 1}`,
    }),
  );
  return [...atStations, ...between];
}

function doubtedOf({ path, kind, valueMm }: Placed, nominalWallMm: number): DoubtedReading | null {
  const typed = String(valueMm);
  const asked = readingDoubt({ kind, valueMm, typed, unit: 'mm', decimalSign: 'point', nominalWallMm });
  return asked && { path, valueMm, probablyMm: asked.meantMm, question: asked.question };
}
