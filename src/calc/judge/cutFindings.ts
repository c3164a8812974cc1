import { printCut, printRequired, printRoom } from '../../../shared/words/cut.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { type LengthUnit, listInWords, printAgainst, printLength } from '../../../shared/words/print.ts';
import type { CoverNumbers } from '../cover/coverNumbers.ts';
import { deepestCut } from '../cover/cutting/deepestCut.ts';
import { MM, placesInWords, theMinimum } from './coverWords.ts';

function allowanceSource({ usual, allowanceMm }: CoverNumbers, unit: LengthUnit): string {
  return usual.allowance
    ? `the usual clean-up allowance, ${printLength(allowanceMm, unit, 'coarse')} (common practice, no source); the shop has set none`
    : 'the shop’s clean-up allowance';
}

/** Does the cut clean, and is it a cut to make? */
export function cutFindings(numbers: CoverNumbers, unit: LengthUnit): readonly Finding[] {
  return [
    cleansUp(numbers, unit),
    ...(numbers.input.plannedCutMm === null ? [] : [plannedCut(numbers, unit)]),
  ];
}

export function isClean({ cut }: CoverNumbers): boolean {
  return cut.dirtyStations.length === 0 && cut.dirtyMarks.length === 0;
}

function dirtyPlaces({ cut, stations, marks, input }: CoverNumbers): string {
  const angles = [
    ...cut.dirtyStations.map((i) => stations[i]!.angleDeg),
    ...cut.dirtyMarks.map((i) => marks[i]!.angleDeg),
  ];
  return placesInWords(angles, input.cover.studCount);
}

function cleansUp(numbers: CoverNumbers, unit: LengthUnit): Finding {
  const { cut, cleanUp, allowanceMm } = numbers;
  const clean = isClean(numbers);
  const least = printCut(cleanUp.dialledMm, unit);
  let sentence = `The least cut that cleans up the whole face is ${least}, with ${printLength(allowanceMm, unit, 'coarse')} to spare.`;
  if (numbers.input.plannedCutMm !== null) {
    sentence = clean
      ? `The planned cut cleans up the whole face. The least cut that does is ${least}.`
      : `The planned cut of ${printCut(cut.dialledMm, unit)} does not clean up ${dirtyPlaces(numbers)}. At least ${least} is needed.`;
  }
  return {
    id: 'cleans-up',
    title: 'Clean-up',
    status: clean ? 'pass' : 'fail',
    value: cut.dialledMm,
    limit: cleanUp.dialledMm,
    unit: MM,
    sentence,
    source: allowanceSource(numbers, unit),
    answer: numbers.cleanUp.dialled,
  };
}

/** Fails where another cut would do and this one does not; the sentence says what to change. */
function plannedCut(numbers: CoverNumbers, unit: LengthUnit): Finding {
  const { minimum, least, cleanUp, cut } = numbers;
  const planned = printCut(cut.dialledMm, unit);
  const clean = isClean(numbers);
  const thick = minimum === null || least.wallMm >= minimum.mm - 1e-9;
  const allowance = allowanceSource(numbers, unit);
  const base = {
    id: 'planned-cut',
    title: 'Planned cut',
    value: cut.dialledMm,
    limit: cleanUp.dialledMm,
    unit: MM,
    source: minimum === null ? allowance : `${allowance}; and the ${minimum.from}’s minimum wall`,
    answer: null,
  };
  if (clean && thick) {
    return {
      ...base,
      status: 'pass',
      sentence: `The planned cut of ${planned} cleans up${minimum === null ? '' : ' and leaves enough wall'}.`,
    };
  }
  const wrong = [
    ...(clean ? [] : [`does not clean up ${dirtyPlaces(numbers)}`]),
    ...(thick
      ? []
      : [`leaves ${printAgainst(least.wallMm, minimum.mm, unit)}, below ${theMinimum(numbers, unit)}`]),
  ];
  return {
    ...base,
    status: 'fail',
    sentence: `The planned cut of ${planned} ${listInWords(wrong)}. ${whatToPlan(numbers, unit)}`,
  };
}

/** The cuts that would do, from the least that cleans to the deepest that leaves enough; or that there is none. */
function whatToPlan(numbers: CoverNumbers, unit: LengthUnit): string {
  const { minimum, cleanUp, ways, stations, uncertainty, confidence } = numbers;
  const least = printCut(cleanUp.dialledMm, unit);
  if (minimum === null) return `Cut at least ${least}.`;
  if (cleanUp.leastWallMm < minimum.mm - 1e-9) {
    return 'As chucked, no cut cleans up and leaves enough wall.';
  }
  const wallsMm = stations.map(({ wallMm }) => wallMm);
  const { plainMm, sureMm } = deepestCut({ wallsMm, ways, minimumMm: minimum.mm, uncertainty, confidence });
  const most = uncertainty === null ? plainMm : sureMm;
  if (most === null || most <= cleanUp.dialledMm + 1e-9) return `Cut ${least}, the least that cleans up.`;
  const sure = uncertainty === null ? '' : `, to be ${printRequired(confidence)} sure of the minimum`;
  return `Cut at least ${least} and at most ${printRoom(most, unit)}${sure}.`;
}
