import type { Answer } from '../../../../shared/words/answer.ts';
import { type LengthUnit, printLength, printNumber } from '../../../../shared/words/print.ts';
import {
  type Layer,
  PILOT_LEAD_MM,
  type StudCheck,
  type StudCheckInput,
} from '../../../../shared/words/stud/stud.ts';
import { type Checked, notKnown } from '../numbers/checked.ts';
import { atLeast } from '../numbers/inWords.ts';
import { lengthMargin, spreadInWords } from '../numbers/lengthMargin.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';

// About 1/4 in (6.35 mm) longer; the page names no figure, which would stand in the other unit.
const LINES_UP_SOURCE =
  'common practice, no source: a long stud has the short one’s thread and a longer stud pilot, for the two-piece flexplate';

/** The flexplate's pieces, converter side first: a shim travels with the pads and is none. */
function piecesOf(layers: readonly Layer[]): readonly Layer[] {
  return layers.filter((layer) => kindOf(layer) !== 'shim');
}

/** What a layer is, where nobody said it, by its name. */
export function kindOf({ kind, name }: Pick<Layer, 'kind' | 'name'>): NonNullable<Layer['kind']> {
  if (kind != null) return kind;
  return /\bshims?(?![a-z])/i.test(name) ? 'shim' : /cast/i.test(name) ? 'casting' : 'plate';
}

/** The pieces the stud pilot is to line up, and how far it is to lead; null with one piece. */
export function piecesToLineUp({ stack, criteria }: Pick<StudCheckInput, 'stack' | 'criteria'>) {
  const pieces = piecesOf(stack.layers);
  const before = pieces.slice(0, -1);
  if (before.length === 0) return null;
  return {
    pieces,
    beforeMm: before.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0),
    leadMm: criteria.pilotLeadMm ?? PILOT_LEAD_MM,
    tolerancesMm: before.map(({ toleranceMm }) => toleranceMm),
  };
}

/** The lengths the stud pilot is judged by; null with one piece. */
export function pilotLead({ input }: Pick<StudNumbers, 'input'>) {
  const { stud } = input;
  const found = piecesToLineUp(input);
  if (found === null) return null;
  const intoMm = stud.projectionMm - stud.threadEndMm - found.beforeMm;
  const tolerancesMm = [stud.lengthToleranceMm, stud.lengthToleranceMm, ...found.tolerancesMm];
  return { ...found, intoMm, tolerancesMm };
}

/**
 * Does the stud pilot line the flexplate's pieces up before the thread enters the first?   m = Lp − E, wanted ≥ lead
 *   Lp = projection − threadEnd, the stud pilot · E thickness of the pieces before the last, in the order the stud meets
 *   them, shims left out · m how far the pilot is in the last piece's hole when the thread comes to the first [mm]
 *   While the housing closes the gap cancels out: the end enters the last piece projection − g − E from closed, the thread
 *   the first threadEnd − g. Worst case m − 2 t_l − Σ t_E.
 *   Out of line the holes may be u = (H₁ − a)/2 + (H_n − b)/2: a, b the pilot's diameter or the thread's, whichever is in
 *   the first and the last hole.
 *   Valid: pieces in their order, converter side first. One piece passes; more never fail, they caution.
 *   Source: first principles; that it is wanted, and by how much, is common practice, no source
 *   Example: pilot 7.35, plate 3.2 → m 4.15 mm; pilot 1.0 → −2.2 mm, with care (calc/stud/holes/pilotLinesUp.test.ts)
 */
export function pilotLinesUp(
  numbers: StudNumbers,
  unit: LengthUnit,
): Checked & { readonly pilot: NonNullable<StudCheck['pilot']> } {
  const { stud, stack } = numbers.input;
  const lengthMm = stud.projectionMm - stud.threadEndMm;
  const found = pilotLead(numbers);
  const base = {
    id: 'pilot-lines-up',
    title: 'Lining up the pieces',
    limit: found?.leadMm ?? null,
    unit: 'mm',
    source: LINES_UP_SOURCE,
  };
  const none = { lengthMm, intoLastPieceMm: null, outOfLineMm: null };
  if (found === null && stack.style === 'two-piece') {
    const told = {
      sentence:
        'A two-piece flexplate is entered as one layer, so lining up can’t be checked. Measure plate and casting apart.',
      field: 'projectionMm',
      short: 'plate and casting measured apart',
      mend: '',
    };
    return { ...notKnown(base, told), pilot: none };
  }
  if (found === null) {
    const sentence = 'One piece: there is nothing to line up.';
    const finding = { ...base, status: 'pass', value: null, sentence, answer: null } as const;
    return {
      finding,
      field: 'projectionMm',
      missMm: 0,
      short: '',
      mend: '',
      counts: true,
      answers: {},
      pilot: none,
    };
  }
  const { intoMm, leadMm, tolerancesMm } = found;
  const margin = lengthMargin({ marginMm: intoMm - leadMm, tolerancesMm });
  const answer = workedOut(numbers, found, lengthMm);
  const first = found.pieces[0]?.name ?? 'first piece';
  const last = found.pieces.at(-1)?.name ?? 'last piece';
  const least = leadMm + margin.worstMm;
  const mm = (x: number) => printLength(x, unit, 'coarse');
  return {
    pilot: {
      lengthMm,
      intoLastPieceMm: { nominal: intoMm, least },
      outOfLineMm: outOfLine(numbers, found),
    },
    finding: {
      ...base,
      status: margin.status === 'pass' ? 'pass' : 'caution',
      value: intoMm,
      sentence:
        intoMm < -1e-9
          ? `The stud pilot is ${mm(-intoMm)} short of the ${last} when the thread comes to the ${first}. It does not line the two up.`
          : `The stud pilot is ${mm(intoMm)} into the ${last} when the thread comes to the ${first}; ${mm(leadMm)} is needed.${spreadInWords(margin, unit, 'that')}`,
      answer,
    },
    field: 'projectionMm',
    missMm: margin.status === 'pass' ? 0 : -margin.worstMm,
    short: 'its stud pilot does not line the pieces up',
    mend: `Needs a stud pilot at least ${atLeast(-margin.worstMm, unit)} longer.`,
    counts: true,
    answers: { pilotIntoLastPieceMm: answer },
  };
}

type Lead = NonNullable<ReturnType<typeof pilotLead>>;

function workedOut({ input: { stud } }: StudNumbers, { beforeMm, intoMm }: Lead, lengthMm: number): Answer {
  const p = (x: number) => printNumber(x, 2);
  return {
    symbol: 'm',
    value: intoMm,
    unit: 'mm',
    how: [
      {
        formula: 'm = Lp − E; Lp = projection − end',
        numbers: `m = (${p(stud.projectionMm)} − ${p(stud.threadEndMm)}) − ${p(beforeMm)} = ${p(lengthMm)} − ${p(beforeMm)} = ${p(intoMm)} mm`,
        source: 'first principles',
      },
    ],
    warnings: [],
  };
}

/** How far the first and the last hole may be out of line while the pilot, then the thread, is in them. */
function outOfLine({ input: { stud }, thread, diameterMm }: StudNumbers, { pieces, intoMm }: Lead) {
  const [first, last] = [pieces[0]?.holeDiameterMm ?? null, pieces.at(-1)?.holeDiameterMm ?? null];
  const pilot = stud.pilotDiameterMm;
  if (first === null || last === null || pilot === null) return null;
  const d = thread.majorMm.max ?? diameterMm;
  const play = (a: number, b: number) => (first - a) / 2 + (last - b) / 2;
  return {
    pilot: intoMm < 0 ? null : play(pilot, pilot),
    entering: play(d, pilot),
    seated: play(d, d),
  };
}
