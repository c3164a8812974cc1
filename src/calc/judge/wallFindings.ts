import type { Finding } from '../../../shared/words/finding.ts';
import { type LengthUnit, printAgainst, printLength, printShare } from '../../../shared/words/print.ts';
import type { CoverNumbers } from '../cover/coverNumbers.ts';
import { besideMinimum, MM, printCut, wallInWords } from './coverWords.ts';

const TOLERANCE_MM = 1e-9;
const SETTLE = 'Indicator readings of the face would settle it.';

/** What is left, set against the minimum wall. Without a minimum nothing is judged, and it says so. */
export function wallFindings(numbers: CoverNumbers, unit: LengthUnit): readonly Finding[] {
  return [
    minimumWall(numbers, unit),
    wallLeft(numbers, unit),
    ...(numbers.input.plannedCutMm === null ? [] : [cleanUpCut(numbers, unit)]),
    ...(numbers.ways.length === 1 ? [] : [bounds(numbers, unit)]),
  ];
}

function minimumWall({ minimum }: CoverNumbers, unit: LengthUnit): Finding {
  const base = { id: 'minimum-wall', title: 'Minimum wall', unit: MM, limit: null };
  if (minimum === null) {
    return {
      ...base,
      status: 'not-checked',
      value: null,
      sentence:
        'Neither the maker nor the shop has set a minimum wall, so nothing is judged: these figures are advice only.',
      source: 'none set',
      answer: null,
    };
  }
  const other = minimum.from === 'maker' ? 'shop' : 'maker';
  const beside =
    minimum.otherMm === null
      ? ''
      : `; the ${other}’s figure, ${printLength(minimum.otherMm, unit)}, is no larger`;
  return {
    ...base,
    status: 'pass',
    value: minimum.mm,
    sentence: `The ${minimum.from}’s minimum of ${printLength(minimum.mm, unit)} governs (${minimum.source})${beside}.`,
    source: minimum.source,
    answer: minimum.answer,
  };
}

function against(numbers: CoverNumbers, wallMm: number): Pick<Finding, 'status' | 'limit' | 'source'> {
  const { minimum } = numbers;
  if (minimum === null) return { status: 'not-checked', limit: null, source: 'no minimum wall is set' };
  const status = wallMm < minimum.mm - TOLERANCE_MM ? 'fail' : 'pass';
  return { status, limit: minimum.mm, source: `${minimum.from}: ${minimum.source}` };
}

function wallLeft(numbers: CoverNumbers, unit: LengthUnit): Finding {
  const { least, cut, input } = numbers;
  const name = input.plannedCutMm === null ? 'The least cut that cleans up' : 'The planned cut';
  const through = least.wallMm <= 0 ? ' It would cut through the cover.' : '';
  return {
    id: 'wall-left',
    title: 'Wall left',
    ...against(numbers, least.wallMm),
    value: least.wallMm,
    unit: MM,
    sentence: `${name}, ${printCut(cut.dialledMm, unit)}, leaves ${wallInWords(least.wallMm, least.station, numbers, unit)}.${through}`,
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
    title: 'Least cut that cleans up',
    ...against(numbers, cleanUp.leastWallMm),
    value: cleanUp.leastWallMm,
    unit: MM,
    sentence: `The least cut that cleans up, ${printCut(cleanUp.dialledMm, unit)}, leaves ${wallInWords(cleanUp.leastWallMm, null, numbers, unit)}.`,
    answer: null,
  };
}

/** Without indicator readings: the two ways the face may lie, and whether one dialled cut suits both. */
function bounds(numbers: CoverNumbers, unit: LengthUnit): Finding {
  const [padSide, face] = [numbers.ways[0]!, numbers.ways[1]!];
  const worst = numbers.worstOfBothMm!;
  const say = (way: typeof face) =>
    `${printCut(way.cleanUp.dialled.value!, unit)} cleans it and leaves ${printLength(way.cleanUp.leastWallMm, unit)}`;
  const both = `No indicator readings were taken. If the pad side runs flat, ${say(padSide)}; if the face runs flat, ${say(face)}.`;
  const thin = (mm: number) => against(numbers, mm).status === 'fail';
  const thinWays = [padSide, face].filter((way) => thin(way.cleanUp.leastWallMm)).length;
  const { limit, source } = against(numbers, worst);
  const base = {
    id: 'bounds',
    title: 'Face not indicated',
    value: worst,
    limit,
    unit: MM,
    source,
    answer: null,
  };
  if (numbers.minimum === null) {
    return { ...base, status: 'not-checked', sentence: `${both} Indicator readings would settle which.` };
  }
  if (thinWays === 2) {
    return { ...base, status: 'fail', sentence: `${both} Either way that is below the minimum.` };
  }
  if (thinWays === 1) {
    return {
      ...base,
      status: 'caution',
      sentence: `${both} Only one of the two is at or above the minimum. ${SETTLE}`,
    };
  }
  const larger = `Dialling the larger cut would leave ${printAgainst(worst, numbers.minimum.mm, unit)} if the face runs flat, ${besideMinimum(worst, numbers, unit)}`;
  if (thin(worst)) {
    return { ...base, status: 'caution', sentence: `${both} ${larger}. ${SETTLE}` };
  }
  const sure = numbers.sure?.worstOfBoth ?? 1;
  if (sure < numbers.confidence - 1e-9) {
    return {
      ...base,
      status: 'caution',
      sentence: `${both} ${larger}, and of that we are only ${printShare(sure)} sure. ${SETTLE}`,
    };
  }
  return {
    ...base,
    status: 'pass',
    sentence: `${both} The larger cut suits both; indicator readings would tell which cut is enough.`,
  };
}
