import type { LengthUnit } from '../../shared/words/print.ts';
import { typedInDemo } from './list.ts';
import { pageWords } from './pageWords.ts';
import type { Came } from './visit.ts';

/** A figure with a unit, or a unit alone in a label, of the one kind and of the other. */
const UNITS: Readonly<Record<LengthUnit, RegExp>> = {
  mm: /\d (?:mm|cm|µm|N·m|MPa|GPa|kPa|bar|kN|N|kg|g|°C|K|m\/min|kg\/m³|g·mm|mm\/s|MW\/m²)(?![\p{L}\d·/])|(?<![\p{L}/])(?:mm|µm|N·m|MPa|GPa|kN|°C|kg\/m³|m\/min|g·mm)(?![\p{L}\d])|\bmillimeters?\b/u,
  in: /\d (?:in|thou|lb·ft|psi|ksi|lbf|°F|ft\/min|oz|oz·in|lb|µin|lb\/in³|Btu[^ ]*)(?![\p{L}\d·/])(?! (?:the|stock|all|a)\b)|, in$|\(in\)|(?<![\p{L}/])(?:lb·ft|psi|ksi|lbf|µin|ft\/min|oz·in|°F)(?![\p{L}\d])|\binch(?:es)?\b/u,
};

/** Pages that may hold both, and why. */
const BOTH_ON: readonly (readonly [path: RegExp, why: string])[] = [
  [/^\/how\/(?!words)/, 'formulas and examples of calculations, in the units their sources have'],
  [/\/(sheet|tag)\/signed/, 'printed as it was signed, in the unit of that day'],
  [/^\/api\//, 'a program is answered in the units the interface names'],
];

/** Words that may stand on a page of the other unit, and why. */
const BOTH_IN: readonly (readonly [words: RegExp, why: string])[] = [
  [/\bUse (?:mm|inches)\b/g, 'the press that changes the unit'],
  [/^(?:millimeters|inches)$/g, 'the choice of a unit'],
  [/\btyped [^);]*/g, 'a reading quoted as it was typed'],
  [/Did you mean [^?]*\?/g, 'the value probably meant, in the unit it was probably read in'],
  [/^Use [^ ]+ [^ ]+$/g, 'the press that takes the value probably meant'],
  [/such as wall \(mm\)/g, 'how a heading of a pasted table may name its own unit'],
  [/Formulas are in millimeters[^.]*\./g, 'what the pages of formulas say of themselves'],
  [/\bISO 21940-11, grade G [\d.]+ mm\/s/g, 'the name of a balance grade'],
];

/** Marked on the page: a step whose formula has constants of its own, with that said beside it. */
const IN_SI = /<span class="numbers in-si">[\s\S]*?<\/small><\/span>/g;

const typed = typedInDemo();

/** What a page or the head of a list says, piece by piece. */
function piecesOf({ type, html }: Came): string[] {
  const pieces = type.startsWith('text/html')
    ? pageWords(html.replace(IN_SI, ''))
    : type.includes('csv')
      ? (html.split('\n')[0] ?? '').split(',')
      : [];
  return pieces.map((piece) => piece.replace(/\s+/g, ' ').trim());
}

/** What stands on a page, or at the head of a list, in the unit that was not asked for. */
export function inOtherUnit(came: Came, unit: LengthUnit): string[] {
  if (BOTH_ON.some(([page]) => page.test(came.path))) return [];
  const other = UNITS[unit === 'in' ? 'mm' : 'in'];
  return piecesOf(came).filter((piece) => {
    let rest = piece;
    for (const one of typed) rest = rest.replaceAll(one, ' ');
    for (const [words] of BOTH_IN) rest = rest.replace(words, ' ');
    return other.test(rest);
  });
}

/** What a person typed and is shown as typed: quoted, told beside its figure, confirmed, or a note. */
const AS_TYPED = /"-[^"]*"|: -\S+ is right, as typed$|\btyped [^);]*|^-\S+(?: is right)?(?: y)?$|; -\d+$/g;

/** Figures below zero that a page shows with a hyphen; boxes hold what can be typed. */
export function hyphensForMinus(came: Came): string[] {
  return piecesOf(came).filter((piece) => /(?:^|[\s(=:])-\d/.test(piece.replace(AS_TYPED, '')));
}
