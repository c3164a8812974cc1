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

// Moments are kept in UTC; here they are read on this tablet's clock, with its zone named and UTC on hovering.
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
function tellLocalTimes(within) {
  for (const time of within.querySelectorAll('time[datetime$="Z"]:not([title])')) {
    const at = new Date(time.dateTime);
    if (Number.isNaN(at.getTime())) continue;
    const zone = new Intl.DateTimeFormat('en-GB', { timeZoneName: 'short' })
      .formatToParts(at)
      .find((part) => part.type === 'timeZoneName')?.value;
    const two = (n) => String(n).padStart(2, '0');
    time.title = time.textContent;
    time.textContent = `${at.getDate()} ${MONTHS[at.getMonth()]} ${at.getFullYear()} ${two(at.getHours())}:${two(at.getMinutes())} ${zone ?? ''}`;
  }
}
document.addEventListener('DOMContentLoaded', () => tellLocalTimes(document));
document.addEventListener('htmx:afterSwap', () => tellLocalTimes(document));
