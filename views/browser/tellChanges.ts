// What changed in a part that is shown anew is said to whoever hears the page. A live region that comes with the part
// is a new one each time, and most programs that read aloud pass over it: this one stays.

const sentences = () =>
  [...document.querySelectorAll('[data-tell]')]
    .filter((one) => one.checkVisibility())
    .map((one) => (one.textContent ?? '').replace(/\s+/g, ' ').trim())
    .filter((text) => text !== '');

let known: ReadonlySet<string> = new Set();

function tellChanged(event: Event): void {
  const now = sentences();
  const fresh = now.filter((text) => !known.has(text));
  known = new Set(now);
  const { triggeringEvent } = (event as CustomEvent<{ requestConfig: { triggeringEvent?: Event } }>).detail
    .requestConfig;
  const place = document.getElementById('page-tells');
  // What only came into sight was asked for by nobody.
  if (place && fresh.length > 0 && triggeringEvent?.type !== 'intersect') place.textContent = fresh.join(' ');
}

export function tellChanges(): void {
  known = new Set(sentences());
  document.addEventListener('htmx:afterSettle', tellChanged);
}
