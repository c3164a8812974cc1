import {
  askedClass,
  askedHeading,
  askedInWords,
  coverageInWords,
} from '../../../shared/measuring/askedInWords.ts';
import type { Asked, BenchState } from '../../../shared/measuring/benchState.ts';
import { samePlace } from '../../../shared/words/places.ts';
import type { Asking } from './asking.ts';
import { byId, show, tell } from './byId.ts';
import type { KnownReadings } from './knownReadings.ts';
import type { Question } from './typedKeys.ts';

/** What is asked, above the box; and where everything has been asked, the way on. */
export function drawAsked(
  state: BenchState,
  asking: Asking,
  known: KnownReadings,
  { placingMark, skipped, inDoubt }: { placingMark: boolean; skipped: number; inDoubt: number },
): void {
  const { asked } = asking;
  const heading = byId('asked', HTMLElement);
  const words = placingMark
    ? 'Heat mark: touch the drawing'
    : askedHeading(asked, state.what, { order: state.order, skipped, inDoubt });
  // It is read aloud when it changes, and only then.
  if (heading.textContent !== words) heading.textContent = words;
  heading.className = placingMark ? 'asked-mark' : askedClass(asked);
  byId('begin-mark', HTMLElement).setAttribute('aria-pressed', String(placingMark));
  tell('asked-more', placingMark ? PLACING : moreInWords(state, asking, known));
  show('to-answer', asked === null);
  show('skip', asked !== null);
  show('no-mark', asked?.kind === 'mark' && asked.at !== null);
  byId('keep-reading', HTMLElement).className = asked === null ? 'button' : 'button first';
}

const PLACING = 'Touch where it is on the friction surface, or press Heat mark again to stop.';

function moreInWords(state: BenchState, asking: Asking, known: KnownReadings): string {
  const { asked } = asking;
  if (asked === null) return coverageInWords(asking.steps, state.order, known.measured(), state.notLaidOut);
  const counts = { measured: asking.measuredCount(), all: asking.steps.length };
  return askedInWords(asked, state.unit, counts, newsOfOthers(asked, known));
}

/** What is asked never changes under a person's hands, whatever another tablet sends meanwhile; this tells of it. */
function newsOfOthers(asked: Asked, known: KnownReadings): string | null {
  if (asked.replaces !== null || asked.again) return null;
  const other = known.at(asked.kind, asked).at(-1);
  return other === undefined
    ? null
    : `${other.who} entered ${other.shown} here on another tablet. Yours is saved as a second reading, or skip.`;
}

/** In the drawing: which stations have a reading of the kind that is asked. */
export function drawStations(state: BenchState, asked: Asked | null, known: KnownReadings): void {
  const now = known.now().filter((one) => one.kind === (asked?.kind ?? 'wall'));
  for (const dot of document.querySelectorAll<SVGElement>('#measuring [data-station]')) {
    const place = state.stations[Number(dot.dataset.station)];
    const has = place !== undefined && now.some((one) => samePlace(one, place));
    dot.setAttribute('class', has ? 'st-measured' : 'st-missing');
  }
}

/** A doubted value, with its buttons and their keys. */
export function drawQuestion(question: Question | null): void {
  show('doubt', question !== null);
  if (question === null) return;
  tell('doubt-question', question.question);
  show('use-meant', question.meant !== null);
  tellButton('use-meant', `Use ${question.meant}`);
  show('is-right', question.typed !== null);
  tellButton('is-right', `${question.typed} is right`);
}

/** The words of a button, beside the letter that presses it. */
function tellButton(id: string, text: string): void {
  byId(id, HTMLElement).querySelector('span')!.textContent = text;
}

/** What is wrong with what was typed; '' where nothing is. */
export function drawWrong(text: string): void {
  tell('reading-wrong', text);
  byId('reading-wrong', HTMLElement).className = text === '' ? '' : 'field-error';
  const box = byId('reading', HTMLInputElement);
  if (text === '') box.removeAttribute('aria-invalid');
  else box.setAttribute('aria-invalid', 'true');
}
