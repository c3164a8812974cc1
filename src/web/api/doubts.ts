import { doubt } from '../../../shared/quantity/doubt.ts';
import type { CoverCheckInput } from '../../../shared/words/cover.ts';

/**
 * A script cannot be asked "0.49 mm? Did you mean 4.9 mm?", so a wall that looks like a slip is put down as
 * doubtful, which no verdict lets pass. Whoever sends `doubtfulReadings`, even an empty list, has looked already.
 */
export function withDoubts(input: CoverCheckInput, body: unknown): CoverCheckInput {
  const looked =
    typeof body === 'object' && body !== null && 'doubtfulReadings' in body && body.doubtfulReadings !== null;
  if (looked) return input;
  const expectedMm = input.cover.nominalWallMm;
  const doubtfulReadings = input.stations.flatMap(({ wallMm }, i) =>
    wallMm.flatMap((valueMm) => {
      const typed = String(valueMm);
      const asked = doubt({ valueMm, expectedMm, typed, unit: 'mm', decimalSign: 'point' });
      return asked && asked.meantMm !== null ? [`wall at station ${i + 1} (${asked.question})`] : [];
    }),
  );
  return { ...input, doubtfulReadings };
}
