// The one script of our own: what a page cannot do by itself. Every page works without it.

document.addEventListener('click', (event) => {
  if (event.target instanceof Element && event.target.closest('[data-print]')) window.print();
});

// A link to a folded section opens it.
function openTarget() {
  const target =
    location.hash.length > 1 ? document.getElementById(decodeURIComponent(location.hash.slice(1))) : null;
  if (!target) return;
  const folded = target.querySelector(':scope > details') ?? target.closest('details');
  if (folded) folded.open = true;
  target.scrollIntoView({ block: 'start' });
}
window.addEventListener('hashchange', openTarget);
document.addEventListener('DOMContentLoaded', openTarget);

// Enter in a table of readings goes to the next box instead of sending the form: a gauge types its reading and Enter.
document.addEventListener('keydown', (event) => {
  const box = event.target;
  if (event.key !== 'Enter' || !(box instanceof HTMLInputElement)) return;
  const table = box.closest('table.entry');
  if (!table) return;
  event.preventDefault();
  const column = box.name.split('.')[0];
  const boxes = [...table.querySelectorAll(`input[name^="${column}."]`)];
  const next = boxes[boxes.indexOf(box) + 1];
  if (next instanceof HTMLInputElement) {
    next.focus();
    next.select();
  }
});

// A form is sent once, however often it is pressed.
document.addEventListener('submit', (event) => {
  const form = event.target;
  if (!(form instanceof HTMLFormElement)) return;
  if ((event.submitter?.getAttribute('formmethod') ?? form.method) !== 'post') return;
  if (form.dataset.sent === 'yes') event.preventDefault();
  form.dataset.sent = 'yes';
});
window.addEventListener('pageshow', () => {
  for (const form of document.querySelectorAll('form[data-sent]')) delete form.dataset.sent;
});
