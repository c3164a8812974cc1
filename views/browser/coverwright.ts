// On every page: what a page cannot do by itself. Every page works without it.

import { keepHand, show } from './hand.ts';
import { keepReading } from './keepReading.ts';
import { keepRows } from './keepRows.ts';
import { tellChanges } from './tellChanges.ts';
import { sayWhatIsUnderWay } from './underWay.ts';

function printWhereAsked(event: Event): void {
  if (event.target instanceof Element && event.target.closest('[data-print]')) window.print();
}

/** A link to a folded section opens it. */
function openTarget(): void {
  const target =
    location.hash.length > 1 ? document.getElementById(decodeURIComponent(location.hash.slice(1))) : null;
  if (!target) return;
  const folded =
    target instanceof HTMLDetailsElement
      ? target
      : target.querySelector<HTMLDetailsElement>(':scope > details');
  if (folded) {
    folded.open = true;
    folded.querySelector<HTMLElement>(':scope > summary')?.focus({ preventScroll: true });
  }
  show(target);
  target.scrollIntoView({ block: 'start' });
}

/** Another choice than the usual one opens the boxes it needs. */
function opensWhatItNeeds({ target }: Event): void {
  if (!(target instanceof HTMLInputElement)) return;
  const { opens, unless } = target.closest<HTMLElement>('[data-opens]')?.dataset ?? {};
  const folded = opens === undefined || target.value === unless ? null : document.getElementById(opens);
  if (folded instanceof HTMLDetailsElement) folded.open = true;
}

/** Enter in a table of readings goes to the next box instead of sending the form: a gauge types its reading and Enter. */
function enterGoesDown(event: KeyboardEvent): void {
  const box = event.target;
  if (event.key !== 'Enter' || !(box instanceof HTMLInputElement)) return;
  const table = box.closest('table.entry');
  if (!table) return;
  event.preventDefault();
  const column = box.name.split('.')[0];
  const boxes = [...table.querySelectorAll<HTMLInputElement>(`input[name^="${column}."]`)];
  const next = boxes[boxes.indexOf(box) + 1];
  next?.focus();
  next?.select();
}

/** Measuring pages kept for working without the network are gone with whoever signs out. */
function forgetKeptPages(): void {
  if (!('caches' in globalThis)) return;
  void caches.keys().then((names) => {
    for (const name of names) if (name.startsWith('coverwright.measuring.')) void caches.delete(name);
  });
}

function signsOut(event: SubmitEvent): void {
  const form = event.target;
  // By its attribute: a form may hold a box named action.
  if (form instanceof HTMLFormElement && form.getAttribute('action') === '/sign-out') forgetKeptPages();
}

document.addEventListener('submit', signsOut);
if (document.querySelector('form[action="/sign-in"]')) forgetKeptPages();
document.addEventListener('click', printWhereAsked);
document.addEventListener('change', opensWhatItNeeds);
document.addEventListener('keydown', enterGoesDown);
window.addEventListener('hashchange', openTarget);
// A module runs when the page has been read.
openTarget();
// The browser goes to the part that the address names once more when everything is there, and takes the focus along.
window.addEventListener('load', openTarget);
keepHand();
keepRows();
keepReading();
tellChanges();
sayWhatIsUnderWay();
