// A reading that was typed and not saved yet is kept on the tablet, and stands in its box again when the page comes back.

const PREFIX = 'coverwright.typed.';

interface Typed {
  readonly value: string;
  /** Sent again under the same id, it is saved once. */
  readonly sentId: string;
}

/** A browser may keep nothing: then the box works as without this. */
function storage(): Storage | null {
  try {
    return globalThis.localStorage;
  } catch {
    return null;
  }
}

function read(kept: Storage, key: string): Typed | null {
  try {
    const found: unknown = JSON.parse(kept.getItem(key) ?? 'null');
    const { value, sentId } = (found ?? {}) as Partial<Typed>;
    return typeof value === 'string' && typeof sentId === 'string' ? { value, sentId } : null;
  } catch {
    return null;
  }
}

/** What was typed at other places of the same study has been saved: the server asks for the next one only then. */
function forgetOthers(kept: Storage, whole: string, key: string): void {
  for (const name of Object.keys(kept)) if (name.startsWith(whole) && name !== key) kept.removeItem(name);
}

export function keepReading(): void {
  const form = document.querySelector<HTMLFormElement>('form[data-typed-of][data-typed-at]');
  const kept = storage();
  const box = form?.elements.namedItem('value');
  const id = form?.elements.namedItem('sentId');
  if (!form || !kept || !(box instanceof HTMLInputElement) || !(id instanceof HTMLInputElement)) return;
  const whole = `${PREFIX}${form.dataset.typedOf}.`;
  const key = `${whole}${form.dataset.typedAt}`;
  forgetOthers(kept, whole, key);
  const before = read(kept, key);
  if (before !== null && box.value === '') {
    box.value = before.value;
    id.value = before.sentId;
    const note = form.querySelector<HTMLElement>('[data-typed-note]');
    if (note) note.hidden = false;
  }
  box.addEventListener('input', () => {
    try {
      if (box.value === '') kept.removeItem(key);
      else kept.setItem(key, JSON.stringify({ value: box.value, sentId: id.value } satisfies Typed));
    } catch {
      // A full tablet keeps no more: what is typed still stands in the box.
    }
  });
}
