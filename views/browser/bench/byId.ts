/** An element without which the page's script cannot work. */
export function byId<E extends Element>(id: string, kind: { new (): E }): E {
  const found: Element | null = document.getElementById(id);
  if (found instanceof kind) return found;
  throw new Error(`This page has no ${kind.name} "${id}".`);
}

/** The text of an element, put in place of what it said. */
export function tell(id: string, text: string): void {
  byId(id, HTMLElement).textContent = text;
}

export function show(id: string, shown: boolean): void {
  byId(id, HTMLElement).hidden = !shown;
}
