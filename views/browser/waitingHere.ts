// On a job's page: readings of it that this tablet still keeps, with the way to send them.

import { TabletShelf } from './bench/tabletShelf.ts';

function tellWaiting(): void {
  const note = document.getElementById('waiting-here');
  const { job, created } = note?.dataset ?? {};
  if (!note || job === undefined || created === undefined) return;
  const waiting = new TabletShelf(job, created).waiting();
  note.hidden = waiting.length === 0;
  const count = note.querySelector('b');
  if (count) {
    count.textContent = `${waiting.length} reading${waiting.length === 1 ? '' : 's'}`;
    const rest = count.nextSibling;
    if (rest !== null && waiting.length === 1) {
      rest.textContent = (rest.textContent ?? '').replace(' are ', ' is ');
    }
  }
  const link = note.querySelector('a');
  const last = waiting.at(-1)?.entry.reading.pass;
  if (link && last) link.href = `/jobs/${encodeURIComponent(job)}/measure?pass=${last}`;
}

window.addEventListener('storage', tellWaiting);
window.addEventListener('pageshow', tellWaiting);
tellWaiting();
