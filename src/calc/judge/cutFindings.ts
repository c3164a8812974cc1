import type { Finding } from '../../../shared/words/finding.ts';
import { type LengthUnit, listInWords, printLength } from '../../../shared/words/print.ts';
import type { CoverNumbers } from '../cover/coverNumbers.ts';
import { placeName } from '../cover/placeNames.ts';
import { MM, printCut, printRoom, theMinimum } from './coverWords.ts';

const ALLOWANCE = 'the shop’s clean-up allowance';

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

/** "behind stud 1 and between studs 2 and 3": each place once, at most four and then a count. */
function dirtyPlaces({ cut, stations, marks, input }: CoverNumbers): string {
  const places = [
    ...cut.dirtyStations.map((i) => stations[i]!.angleDeg),
    ...cut.dirtyMarks.map((i) => marks[i]!.angleDeg),
  ].map((angle) => placeName(angle, input.cover.studCount));
  const once = [...new Set(places)];
  const more = once.length > 4 ? [`${once.length - 4} more places`] : [];
  return listInWords([...once.slice(0, 4), ...more]);
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
    source: ALLOWANCE,
    answer: numbers.ways[0]!.cleanUp.dialled,
  };
}

/** Fails where another cut would do and this one does not; the sentence says what to change. */
function plannedCut(numbers: CoverNumbers, unit: LengthUnit): Finding {
  const { minimum, least, cleanUp, cut } = numbers;
  const planned = printCut(cut.dialledMm, unit);
  const clean = isClean(numbers);
  const thick = minimum === null || least.wallMm >= minimum.mm - 1e-9;
  const room = minimum === null ? null : mostCut(numbers);
  const base = {
    id: 'planned-cut',
    title: 'Planned cut',
    value: cut.dialledMm,
    limit: room ?? cleanUp.dialledMm,
    unit: MM,
    source: minimum === null ? ALLOWANCE : `${ALLOWANCE}, and the ${minimum.from}’s minimum wall`,
    answer: null,
  };
  if (clean && thick) {
    return {
      ...base,
      status: 'pass',
      sentence: `The planned cut of ${planned} ${minimum === null ? 'cleans up' : 'cleans up and leaves enough'}.`,
    };
  }
  const range =
    room !== null && room > cleanUp.dialledMm + 1e-9
      ? `Plan from ${printCut(cleanUp.dialledMm, unit)}, which cleans it, up to ${printRoom(room, unit)}, which leaves ${theMinimum(numbers, unit)}.`
      : `Plan ${printCut(cleanUp.dialledMm, unit)}, the least that cleans it.`;
  const wrong = [
    ...(clean ? [] : [`does not clean up ${dirtyPlaces(numbers)}`]),
    ...(thick
      ? []
      : [`leaves ${printLength(least.wallMm, unit)} where ${theMinimum(numbers, unit)} is wanted`]),
  ];
  return {
    ...base,
    status: 'fail',
    sentence: `The planned cut of ${planned} ${listInWords(wrong)}. ${range}`,
  };
}

/** The deepest cut that still leaves the minimum everywhere: a station that stands lower is cut less. */
function mostCut({ ways, stations, minimum }: CoverNumbers): number {
  const most = ways.flatMap((way) => stations.map((s, i) => s.wallMm - minimum!.mm + way.downMm[i]!));
  return Math.min(...most);
}
