// A row of an answer stays as it was left while the answer is shown anew.

interface RowLeft {
  readonly open: boolean;
  readonly status: string;
}

const left = new Map<string, RowLeft>();

const rows = () => document.querySelectorAll<HTMLDetailsElement>('details:is(.answer-row, .row-rest)[id]');

function note(): void {
  for (const row of rows()) left.set(row.id, { open: row.open, status: row.dataset.status ?? '' });
}

/** One that has become not OK meanwhile opens all the same. */
function restore(): void {
  for (const row of rows()) {
    const was = left.get(row.id);
    if (was === undefined || (row.open && was.status !== row.dataset.status)) continue;
    if (row.open !== was.open) row.open = was.open;
  }
}

/** On paper there is nothing to press: everything is there, and closed again afterwards. */
function openAll(): void {
  note();
  for (const row of rows()) row.open = true;
}

function closeAgain(): void {
  for (const row of rows()) row.open = left.get(row.id)?.open ?? row.open;
}

export function keepRows(): void {
  document.addEventListener('htmx:beforeSwap', note);
  document.addEventListener('htmx:oobAfterSwap', restore);
  document.addEventListener('htmx:afterSwap', restore);
  window.addEventListener('beforeprint', openAll);
  window.addEventListener('afterprint', closeAgain);
}
