import { shownInList } from '../../../shared/measuring/askedInWords.ts';
import type { BenchState, StandingReading } from '../../../shared/measuring/benchState.ts';
import type { ReadingKind } from '../../../shared/words/job.ts';
import type { Target } from './asking.ts';
import { byId, show, tell } from './byId.ts';
import { type KnownReadings, mmOf } from './knownReadings.ts';
import type { TabletShelf, Waiting } from './tabletShelf.ts';

export interface ListsParts {
  readonly state: BenchState;
  readonly shelf: TabletShelf;
  readonly known: KnownReadings;
  readonly takeOff: (key: string) => void;
  readonly correct: (target: Target, one: StandingReading) => void;
  readonly repeat: (target: Target) => void;
}

/** Below the drawing: what waits on this tablet, what the server has, and the trouble in between. */
export function drawLists(parts: ListsParts, trouble: string): void {
  const waiting = parts.shelf.waiting();
  const here = waiting.filter(({ entry }) => entry.reading.pass === parts.state.pass || entry.refused);
  tell('waiting-count', String(waiting.length));
  show('nothing-waits', waiting.length === 0);
  byId('on-tablet', HTMLElement).replaceChildren(...here.map((one) => waitingLine(parts, one)));
  const onServer = [...parts.known.onServer].reverse();
  tell('server-count', String(onServer.length));
  byId('on-server', HTMLElement).replaceChildren(...onServer.map((one) => serverLine(parts, one)));
  tell(
    'trouble',
    troubleInWords(parts.shelf, waiting.length - here.length, waiting.length > 0 ? trouble : ''),
  );
}

function troubleInWords(shelf: TabletShelf, ofOtherPass: number, trouble: string): string {
  const leaks = shelf.leaks
    ? 'This tablet cannot store readings (storage full or off). Leave this page open until none is waiting. '
    : '';
  const also =
    ofOtherPass > 0
      ? `Also waiting, from the other measuring page of this job (before or after the cut): ${ofOtherPass}. `
      : '';
  return `${leaks}${also}${trouble}`;
}

function waitingLine({ state, takeOff }: ListsParts, { key, entry }: Waiting): HTMLElement {
  const line = listItem(entry.reading.id);
  const { kind, typed } = entry.reading;
  const valueMm = mmOf(entry.reading);
  line.append(inWords(state, { kind, place: entry.place, at: entry.at, shown: typed, valueMm, who: '' }));
  if (entry.refused) {
    const why = document.createElement('span');
    why.className = 'field-error';
    why.textContent = `Not saved: ${entry.refused} `;
    line.append(
      why,
      quietButton('remove from this tablet', () => takeOff(key)),
    );
  }
  return line;
}

function serverLine({ state, correct, repeat }: ListsParts, one: StandingReading): HTMLElement {
  const line = listItem(one.id);
  const at = one.at < 0 ? null : one.at;
  const target: Target = { ...one, at };
  const acts = document.createElement('span');
  acts.className = 'reading-acts';
  acts.append(quietButton('correct', () => correct(target, one), ` ${one.shown}`));
  if (one.kind === 'wall') acts.append(quietButton('repeat', () => repeat(target), ` ${one.place}`));
  line.append(inWords(state, { ...one, at }), acts);
  return line;
}

function listItem(id: string): HTMLElement {
  const line = document.createElement('li');
  line.dataset.id = id;
  return line;
}

interface InList {
  readonly kind: ReadingKind;
  readonly place: string;
  readonly at: number | null;
  readonly shown: string;
  readonly valueMm: number;
  readonly who: string;
  readonly doubtful?: boolean;
}

/** "**4** wall between studs 2 and 3: **4.83 mm**, AK" */
function inWords(state: BenchState, one: InList): HTMLElement {
  const { kind, place, at, who, doubtful } = one;
  const line = document.createElement('span');
  if (at !== null) line.append(bold(String(at + 1)), ' ');
  line.append(`${state.what[kind].toLowerCase()} ${place}: `, bold(shownInList(one, state.unit)));
  if (who !== '') line.append(`, ${who}`);
  if (doubtful) line.append(bold(', not confirmed'));
  return line;
}

function bold(text: string): HTMLElement {
  const made = document.createElement('b');
  made.textContent = text;
  return made;
}

/** `unseen` tells a listener which reading it is. */
function quietButton(text: string, does: () => void, unseen = ''): HTMLElement {
  const made = document.createElement('button');
  made.type = 'button';
  made.className = 'button quiet';
  made.textContent = text;
  if (unseen !== '') {
    const more = document.createElement('span');
    more.className = 'unseen';
    more.textContent = unseen;
    made.append(more);
  }
  made.addEventListener('click', does);
  return made;
}

/** Readings of other jobs that this tablet still keeps: said, with the way to them. */
export function tellOtherJobs(shelf: TabletShelf): void {
  const jobs = [...shelf.otherJobs()];
  show('elsewhere', jobs.length > 0);
  if (jobs.length === 0) return;
  const links = jobs.flatMap((job) => {
    const link = document.createElement('a');
    link.href = `/jobs/${encodeURIComponent(job)}/measure`;
    link.textContent = `job ${job}`;
    return [link, ' '];
  });
  byId('elsewhere', HTMLElement).replaceChildren(
    'This tablet still holds readings of ',
    ...links,
    '– open it to send them.',
  );
}
