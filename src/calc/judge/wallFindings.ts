import { printCut, printSure } from '../../../shared/words/cut.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { type LengthUnit, printAgainst, printLength } from '../../../shared/words/print.ts';
import type { CoverNumbers } from '../cover/coverNumbers.ts';
import type { GoverningMinimum } from '../cover/governingMinimum.ts';
import { besideMinimum, MM, theMinimum, wallInWords } from './coverWords.ts';

const TOLERANCE_MM = 1e-9;
const SETTLE = 'Take indicator readings.';

/** What is left, set against the minimum wall. Without a minimum nothing is judged, and it says so. */
export function wallFindings(numbers: CoverNumbers, unit: LengthUnit): readonly Finding[] {
  return [
    minimumWall(numbers, unit),
    wallLeft(numbers, unit),
    ...(numbers.input.plannedCutMm === null ? [] : [cleanUpCut(numbers, unit)]),
    ...(numbers.ways.length === 1 ? [] : [bounds(numbers, unit)]),
  ];
}

function minimumWall({ minimum, input }: CoverNumbers, unit: LengthUnit): Finding {
  const base = { id: 'minimum-wall', title: 'Minimum wall', unit: MM, limit: null };
  const working = input.criteria?.minimumWallWorking ?? null;
  if (minimum === null) {
    return {
      ...base,
      status: 'not-checked',
      value: null,
      sentence:
        working === null
          ? 'No minimum wall is set, the maker’s or the shop’s, so this is advice only. Set one.'
          : `${givesNone(working)} So this is advice only. Change the formula, or set a minimum for this cover type.`,
      source: working === null ? 'none set' : (input.criteria?.minimumWallSource ?? 'none set'),
      answer: null,
    };
  }
  return {
    ...base,
    status: 'pass',
    value: minimum.mm,
    limit: working === null ? null : minimum.mm,
    sentence: whichApplies(minimum, working, unit),
    source: minimum.source,
    answer: minimum.answer,
  };
}

/** `working`: how the shop’s formula gave its figure, or why it gave none; null where it has none. */
function whichApplies(
  { mm, from, otherMm }: GoverningMinimum,
  working: string | null,
  unit: LengthUnit,
): string {
  const applies = `The ${from}’s minimum of ${printLength(mm, unit)} applies`;
  const other = otherMm === null ? null : `${printLength(otherMm, unit)}, is no larger`;
  if (from === 'shop')
    return `${applies}${working === null ? '' : `: ${working}`}.${other === null ? '' : ` The maker’s, ${other}.`}`;
  if (other === null) return working === null ? `${applies}.` : `${applies}. ${givesNone(working)}`;
  return `${applies}. The shop’s, ${other}${working === null ? '' : `: ${working}`}.`;
}

const givesNone = (working: string) =>
  `The shop’s formula gives no minimum for this cover: ${endOf(working)}`;
const endOf = (sentence: string) => (sentence.endsWith('.') ? sentence : `${sentence}.`);

function against(numbers: CoverNumbers, wallMm: number): Pick<Finding, 'status' | 'limit' | 'source'> {
  const { minimum } = numbers;
  if (minimum === null) return { status: 'not-checked', limit: null, source: 'no minimum wall is set' };
  const status = wallMm < minimum.mm - TOLERANCE_MM ? 'fail' : 'pass';
  return { status, limit: minimum.mm, source: `${minimum.from}: ${minimum.source}` };
}

function wallLeft(numbers: CoverNumbers, unit: LengthUnit): Finding {
  const { least, cut } = numbers;
  return {
    id: 'wall-left',
    title: 'Wall left',
    ...against(numbers, least.wallMm),
    value: least.wallMm,
    unit: MM,
    sentence:
      least.wallMm <= 0
        ? 'The cut would go through the cover.'
        : `After the cut, ${wallInWords(least.wallMm, least.station, numbers, unit)}.`,
    answer: {
      symbol: 't',
      value: least.wallMm,
      unit: 'mm',
      how: [
        {
          formula: 't = min(tᵢ − kᵢ), kᵢ = zᵢ − c',
          numbers: `station ${least.station + 1}: ${printLength(numbers.stations[least.station]!.wallMm, 'mm')} − ${printLength(cut.cutsMm[least.station]!, 'mm')} = ${printLength(least.wallMm, 'mm')}`,
          source: 'geometry of facing, station by station; of several equally thin stations the first',
        },
      ],
      warnings: [],
    },
  };
}

/** Only beside a planned cut, to say whether another cut would do. */
function cleanUpCut(numbers: CoverNumbers, unit: LengthUnit): Finding {
  const { cleanUp } = numbers;
  return {
    id: 'clean-up-cut',
    title: 'Wall left by the least cut',
    ...against(numbers, cleanUp.leastWallMm),
    value: cleanUp.leastWallMm,
    unit: MM,
    sentence: `After the least cut that cleans up, ${wallInWords(cleanUp.leastWallMm, null, numbers, unit)}.`,
    answer: null,
  };
}

/**
 * Without indicator readings: the two ways the face may lie, and whether one cut suits both. It is never OK: nobody
 * read the face.
 */
function bounds(numbers: CoverNumbers, unit: LengthUnit): Finding {
  const [padSide, face] = [numbers.ways[0]!, numbers.ways[1]!];
  const worst = numbers.worstOfBothMm!;
  const { limit, source } = against(numbers, worst);
  const base = {
    id: 'bounds',
    title: 'Indicator readings',
    value: worst,
    limit,
    unit: MM,
    source,
    answer: null,
  };
  const say = (way: typeof face) =>
    `${printCut(way.cleanUp.dialled.value!, unit)} cleans up and leaves ${printLength(way.cleanUp.leastWallMm, unit)}`;
  const both = `No indicator readings. If the pad side runs true, ${say(padSide)}. If the face runs true, ${say(face)}.`;
  if (numbers.minimum === null) return { ...base, status: 'not-checked', sentence: `${both} ${SETTLE}` };
  const thin = (mm: number) => against(numbers, mm).status === 'fail';
  const thinWays = [padSide, face].filter((way) => thin(way.cleanUp.leastWallMm)).length;
  if (thinWays === 2) {
    const most = Math.max(padSide.cleanUp.leastWallMm, face.cleanUp.leastWallMm);
    const sentence = `Whichever way the face runs, cleaning it up leaves at most ${printAgainst(most, numbers.minimum.mm, unit)}, below ${theMinimum(numbers, unit)}.`;
    return { ...base, status: 'fail', sentence };
  }
  if (thinWays === 1) {
    return {
      ...base,
      status: 'caution',
      sentence: `${both} Only one of the two leaves enough wall. ${SETTLE}`,
    };
  }
  const larger = `The larger cut leaves ${printAgainst(worst, numbers.minimum.mm, unit)} if the face runs true, ${besideMinimum(worst, numbers, unit)}`;
  if (thin(worst)) return { ...base, status: 'caution', sentence: `${both} ${larger}. ${SETTLE}` };
  const sure = numbers.sure?.worstOfBoth ?? 1;
  if (sure < numbers.confidence - 1e-9) {
    const sentence = `${both} ${larger}: only ${printSure(sure)} sure. ${SETTLE}`;
    return { ...base, status: 'caution', sentence };
  }
  const sentence = `${both} The larger cut suits both; indicator readings may allow a smaller one.`;
  return { ...base, status: 'not-checked', sentence };
}
