import type { Finding } from '../../../shared/words/finding.ts';
import { type LengthUnit, listInWords, printAgainst, printLength } from '../../../shared/words/print.ts';
import type { CoverNumbers } from '../cover/coverNumbers.ts';
import { deepestCut } from '../cover/cutting/deepestCut.ts';
import { MM, placesInWords, printCut, printRoom, theMinimum } from './coverWords.ts';

function allowanceSource({ usual, allowanceMm }: CoverNumbers): string {
  return usual.allowance
    ? `the usual clean-up allowance, ${printLength(allowanceMm, 'mm', 'coarse')} (common practice); the shop has set none`
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
  const below = `${printLength(allowanceMm, unit, 'coarse')} below the darkened layer`;
  let sentence = `The least cut that cleans every mark is ${least}, to ${below}.`;
  if (numbers.input.plannedCutMm !== null) {
    sentence = clean
      ? `The planned cut cleans every mark; ${least} is the least that does.`
      : `The planned cut of ${printCut(cut.dialledMm, unit)} does not clean up ${dirtyPlaces(numbers)}; ${least} is the least that does, to ${below}.`;
  }
  return {
    id: 'cleans-up',
    title: 'Cleans up',
    status: clean ? 'pass' : 'fail',
    value: cut.dialledMm,
    limit: cleanUp.dialledMm,
    unit: MM,
    sentence,
    source: allowanceSource(numbers),
    answer: numbers.cleanUp.dialled,
  };
}

/** Fails where another cut would do and this one does not; the sentence says what to change. */
function plannedCut(numbers: CoverNumbers, unit: LengthUnit): Finding {
  const { minimum, least, cleanUp, cut } = numbers;
  const planned = printCut(cut.dialledMm, unit);
  const clean = isClean(numbers);
  const thick = minimum === null || least.wallMm >= minimum.mm - 1e-9;
  const base = {
    id: 'planned-cut',
    title: 'Planned cut',
    value: cut.dialledMm,
    limit: cleanUp.dialledMm,
    unit: MM,
    source:
      minimum === null
        ? allowanceSource(numbers)
        : `${allowanceSource(numbers)}; and the ${minimum.from}’s minimum wall`,
    answer: null,
  };
  if (clean && thick) {
    return {
      ...base,
      status: 'pass',
      sentence: `The planned cut of ${planned} ${minimum === null ? 'cleans up' : 'cleans up and leaves enough'}.`,
    };
  }
  const wrong = [
    ...(clean ? [] : [`does not clean up ${dirtyPlaces(numbers)}`]),
    ...(thick
      ? []
      : [
          `leaves ${printAgainst(least.wallMm, minimum.mm, unit)} where ${theMinimum(numbers, unit)} is wanted`,
        ]),
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
  if (minimum === null) return `Plan ${least} or more.`;
  if (cleanUp.leastWallMm < minimum.mm - 1e-9) {
    return 'No cut as chucked both cleans it and leaves enough.';
  }
  const wallsMm = stations.map(({ wallMm }) => wallMm);
  const { plainMm, sureMm } = deepestCut({ wallsMm, ways, minimumMm: minimum.mm, uncertainty, confidence });
  const most = uncertainty === null ? plainMm : sureMm;
  if (most === null || most <= cleanUp.dialledMm + 1e-9) return `Plan ${least}, the least that cleans it.`;
  const leaves =
    uncertainty === null
      ? `the deepest that leaves ${theMinimum(numbers, unit)}`
      : `the deepest that is sure enough to leave ${theMinimum(numbers, unit)}`;
  return `Plan from ${least}, the least that cleans it, up to ${printRoom(most, unit)}, ${leaves}.`;
}
