import { withUnit } from '../../../shared/measuring/askedInWords.ts';
import type { BenchState } from '../../../shared/measuring/benchState.ts';
import type { Step } from '../../../shared/measuring/steps.ts';
import type { Doubt } from '../../../shared/quantity/doubt.ts';
import { byId, show, tell } from './byId.ts';
import type { Known } from './knownReadings.ts';

export interface InDoubt {
  readonly reading: Known;
  readonly doubt: Doubt | null;
}

export interface LeftParts {
  readonly state: BenchState;
  readonly turnToStep: (step: Step) => void;
  readonly measureAgain: (one: Known) => void;
  /** Puts a reading in the place of one that was doubted; `confirmed` where it is the same again. */
  readonly settle: (one: Known, typed: string, confirmed: boolean) => void;
}

/** What was passed over, and what the other readings show to be off. */
export function drawLeft(parts: LeftParts, skipped: readonly Step[], toCheck: readonly InDoubt[]): void {
  show('skipped', skipped.length > 0);
  tell('skipped-count', String(skipped.length));
  byId('skipped-list', HTMLElement).replaceChildren(...skipped.map((step) => skippedLine(parts, step)));
  show('to-check', toCheck.length > 0);
  tell('to-check-count', String(toCheck.length));
  byId('to-check-list', HTMLElement).replaceChildren(...toCheck.map((one) => checkLine(parts, one)));
}

function skippedLine({ state, turnToStep }: LeftParts, step: Step): HTMLElement {
  const line = document.createElement('li');
  const text = `${state.what[step.kind]} ${state.stations[step.at]?.name ?? ''}`;
  line.append(button(text, () => turnToStep(step)));
  return line;
}

function checkLine({ state, measureAgain, settle }: LeftParts, { reading, doubt }: InDoubt): HTMLElement {
  const line = document.createElement('li');
  line.className = 'doubt';
  const said = document.createElement('p');
  const shown = withUnit(reading.shown, state.unit);
  const station = reading.at >= 0 ? `${reading.at + 1} ` : '';
  said.textContent = `${station}${state.what[reading.kind].toLowerCase()} ${reading.place}: ${doubt?.question ?? `${shown}, not confirmed.`}`;
  const acts = document.createElement('div');
  acts.className = 'actions';
  const meant = doubt?.meantTyped ?? null;
  if (meant !== null) acts.append(button(`Use ${meant}`, () => settle(reading, meant, false)));
  acts.append(
    button(`${shown} is right`, () => settle(reading, reading.shown, true)),
    button('Measure again', () => measureAgain(reading)),
  );
  line.append(said, acts);
  return line;
}

function button(text: string, does: () => void): HTMLElement {
  const made = document.createElement('button');
  made.type = 'button';
  made.className = 'button';
  made.textContent = text;
  made.addEventListener('click', does);
  return made;
}
