// Focus, scroll and clicks stay where the hand is when a part or the whole page is shown anew.

const KEY = 'coverwright-hand';
const LONGEST_MS = 60_000;

interface HandAt {
  readonly path: string;
  readonly id: string;
  /** How far below the top of the screen it was. */
  readonly top: number;
  /** It only asked for another row: what is not typed yet is no error to be led to. */
  readonly adds: boolean;
  /** The box that is meant next, by its name, where what was pressed is gone. */
  readonly next: string | null;
  readonly at: number;
}

/** Remembers where a form was sent from, for the page that answers. */
function noteHand(event: SubmitEvent): void {
  const { target: form, submitter } = event;
  if (!(form instanceof HTMLFormElement)) return;
  const typingIn = document.activeElement instanceof HTMLInputElement ? document.activeElement : null;
  const at = typingIn?.form === form ? typingIn : submitter;
  if (!at?.id) return;
  const action = submitter?.getAttribute('formaction') ?? form.getAttribute('action') ?? '';
  const hand: HandAt = {
    path: new URL(action, location.href).pathname,
    id: at.id,
    top: at.getBoundingClientRect().top,
    adds: submitter?.getAttribute('name') === 'add',
    next: at.getAttribute('data-then'),
    at: Date.now(),
  };
  try {
    sessionStorage.setItem(KEY, JSON.stringify(hand));
  } catch {
    // Without room to remember it the page opens at its head.
  }
}

function handNoted(): HandAt | null {
  try {
    const kept = sessionStorage.getItem(KEY);
    sessionStorage.removeItem(KEY);
    return kept === null ? null : (JSON.parse(kept) as HandAt);
  } catch {
    return null;
  }
}

/** On a page that was asked for again: to the first box that was refused, else to where the hand was. */
function backTo(hand: HandAt | null): void {
  const stale = document.querySelector('.stale');
  const refused = stale || hand?.adds ? null : firstRefused();
  if (refused !== null) {
    show(refused);
    refused.focus({ preventScroll: true });
    refused.scrollIntoView({ block: 'center' });
    return;
  }
  if (stale !== null || hand === null || Date.now() - hand.at > LONGEST_MS) return;
  const saved = isPartOf(hand.path, location.pathname);
  if (!saved && hand.path !== location.pathname) return;
  const at = document.getElementById(hand.id) ?? boxNamed(hand.next);
  const stillThere = at?.matches('input, select, textarea, button') && at.checkVisibility();
  if (saved && !stillThere) {
    toWhatIsNext();
    return;
  }
  if (at === null) return;
  show(at);
  at.focus({ preventScroll: true });
  scrollBy(0, at.getBoundingClientRect().top - hand.top);
}

/** A form of a job, or one that makes a job: its page answers, at an address above it or below it. */
function isPartOf(sentTo: string, shown: string): boolean {
  return sentTo.startsWith(`${shown}/`) || shown.startsWith(`${sentTo}/`);
}

/** The step that is to be done, once the one before it was saved; where there is none, the heading. */
function toWhatIsNext(): void {
  // The address leads somewhere itself.
  if (location.hash !== '') return;
  const next = document.querySelector<HTMLElement>('[aria-current="step"] summary, h1');
  if (next === null) return;
  if (next.tagName === 'H1') next.tabIndex = -1;
  next.focus({ preventScroll: true });
  next.scrollIntoView({ block: 'nearest' });
}

/** What the summary of errors leads to, and the boxes marked as wrong: the first of them on the page. */
function firstRefused(): HTMLElement | null {
  const summary = document.querySelector('.faults');
  if (summary === null) return null;
  const led = [...summary.querySelectorAll<HTMLAnchorElement>('a[href^="#"]')].flatMap((link) => {
    const target = document.getElementById(decodeURIComponent(link.hash.slice(1)));
    return target ? [boxOf(target)] : [];
  });
  const marked = document.querySelectorAll<HTMLElement>('[aria-invalid="true"]');
  const all = [...led, ...marked].filter((box) => box.closest('form') !== null);
  return all.reduce<HTMLElement | null>(
    (first, box) =>
      first === null || box.compareDocumentPosition(first) & Node.DOCUMENT_POSITION_FOLLOWING ? box : first,
    null,
  );
}

/** Of several to choose from, the one that is chosen or the first. */
function boxOf(target: HTMLElement): HTMLElement {
  if (target.matches('input, select, textarea')) return target;
  return (
    target.querySelector<HTMLElement>('input:checked') ?? target.querySelector<HTMLElement>('input') ?? target
  );
}

/** Opens what it is folded into. */
export function show(target: Element): void {
  for (let at = target.parentElement; at !== null; at = at.parentElement) {
    if (at instanceof HTMLDetailsElement) at.open = true;
  }
}

/** A link of the summary of errors leads into its box, ready to be typed in. */
function toRefusedBox(event: MouseEvent): void {
  const link =
    event.target instanceof Element ? event.target.closest<HTMLAnchorElement>('.faults a[href^="#"]') : null;
  const target = link && document.getElementById(decodeURIComponent(link.hash.slice(1)));
  if (!target) return;
  event.preventDefault();
  show(target);
  const box = boxOf(target);
  box.focus({ preventScroll: true });
  box.scrollIntoView({ block: 'center' });
}

/** What is pressed and not let go yet: a part that is shown anew meanwhile would take the click away. */
let pressed: Element | null = null;
let waiting: (() => void) | null = null;

function press({ target }: PointerEvent): void {
  pressed = target instanceof Element ? target.closest('a, button, summary, label') : null;
}

function letGo(): void {
  pressed = null;
  const shown = waiting;
  waiting = null;
  // After the click itself.
  if (shown !== null) setTimeout(shown, 60);
}

/** Where the focus goes if what has it is gone from a part that is shown anew. */
let then: string | null = null;

function beforeSwap(event: Event): void {
  const { detail } = event as CustomEvent<{
    shouldSwap: boolean;
    requestConfig: { elt: Element; triggeringEvent?: Event };
  }>;
  const { elt, triggeringEvent } = detail.requestConfig;
  then = document.activeElement?.getAttribute('data-then') ?? then;
  if (pressed === null || !['input', 'change'].includes(triggeringEvent?.type ?? '')) return;
  detail.shouldSwap = false;
  waiting = () => elt.dispatchEvent(new Event('change', { bubbles: true }));
}

function afterSettle(): void {
  if (then === null || (document.activeElement !== null && document.activeElement !== document.body)) return;
  boxNamed(then)?.focus();
  then = null;
}

function boxNamed(name: string | null): HTMLElement | null {
  return name === null ? null : document.querySelector<HTMLElement>(`[name="${CSS.escape(name)}"]`);
}

export function keepHand(): void {
  document.addEventListener('submit', noteHand);
  document.addEventListener('click', toRefusedBox);
  document.addEventListener('pointerdown', press, true);
  document.addEventListener('pointerup', letGo, true);
  document.addEventListener('pointercancel', letGo, true);
  document.addEventListener('htmx:beforeSwap', beforeSwap);
  document.addEventListener('htmx:afterSettle', afterSettle);
  document.addEventListener('focusin', () => {
    then = null;
  });
  const hand = handNoted();
  backTo(hand);
  // The browser goes to the part that the address names once more when everything is there.
  if (location.hash !== '') window.addEventListener('load', () => backTo(hand));
}
