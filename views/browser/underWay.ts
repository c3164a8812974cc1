// Says when an answer takes long, and when there is none: nothing was saved, and what was typed stays on the page.

/** Anything faster needs no word. */
const SLOW_MS = 400;
/** A server that says nothing for so long is not reached. */
const PROBE_MS = 10_000;
/** A part of the page that shows what came of an earlier answer. */
const OLD = 'data-old';

const LOST =
  'No answer from the program. Nothing was saved. What you entered is still on this page. Check the network, then try again.';
const SIGNED_OUT = 'You are signed out. Nothing was saved. What you entered is still on this page.';
const WRONG = 'The program made a mistake. Nothing was saved. What you entered is still on this page.';

interface Asked {
  readonly elt: Element;
  readonly target?: Element | null;
  readonly xhr: XMLHttpRequest;
  readonly successful?: boolean;
  readonly requestConfig: { readonly verb: string; readonly path: string };
}

interface Failed {
  /** What asked; it may be gone when the page went on without it. */
  readonly elt: Element;
  readonly sentence: string;
  readonly again: () => void;
}

declare const htmx: {
  ajax(verb: string, path: string, context: { source: Element }): Promise<void>;
};

let failed: Failed | null = null;

const place = (id: string) => document.getElementById(id);

/** What has not been answered yet. */
const waiting = new Set<object>();

function sayWorking(text: string): void {
  const status = place('page-works');
  if (status && status.textContent !== text) status.textContent = text;
}

function begins(work: object): void {
  waiting.add(work);
  setTimeout(() => waiting.has(work) && sayWorking('Working…'), SLOW_MS);
}

function ends(work: object): void {
  waiting.delete(work);
  if (waiting.size === 0) sayWorking('');
}

/** What happened, what to do, and the button for it. */
function say(sentence: string, elt: Element, again: () => void, signIn = false): void {
  const alert = place('page-says');
  if (!alert) return;
  const said = failed?.elt === elt && failed.sentence === sentence;
  failed = { elt, sentence, again };
  // Said once, however often it fails.
  if (said) return;
  const words = document.createElement('p');
  words.textContent = sentence;
  alert.replaceChildren(words, button());
  if (signIn) words.append(' ', signInLink(), ', then come back and try again.');
}

function button(): HTMLElement {
  const made = document.createElement('button');
  made.type = 'button';
  made.className = 'button';
  made.id = 'try-again';
  made.textContent = 'Try again';
  made.addEventListener('click', () => failed?.again());
  return made;
}

/** On a page of its own, so that this one stays. */
function signInLink(): HTMLElement {
  const made = document.createElement('a');
  made.href = '/sign-in';
  made.target = '_blank';
  made.id = 'sign-in-again';
  made.textContent = 'Sign in on a new page';
  return made;
}

function saysNothing(): void {
  const focused = document.activeElement?.id === 'try-again';
  failed = null;
  place('page-says')?.replaceChildren();
  if (focused) document.querySelector<HTMLElement>('main')?.focus({ preventScroll: true });
}

/** The sentence of an error page. */
function sentenceIn(html: string): string | null {
  const page = new DOMParser().parseFromString(html, 'text/html');
  return page.querySelector('.why')?.textContent?.trim() || null;
}

const askedBy = (event: Event) => (event as CustomEvent<Asked>).detail;

/** The parts that would have been shown anew say that they are old. */
function markOld({ elt, target }: Asked): void {
  const beside = (elt.getAttribute('hx-select-oob') ?? '').split(',').map((one) => one.trim());
  const parts = beside.filter((one) => one.startsWith('#')).map((one) => place(one.slice(1)));
  for (const part of [target, ...parts]) {
    if (part && part.id !== 'unit-form' && !part.contains(elt)) part.setAttribute(OLD, '');
  }
}

function partLost(event: Event): void {
  const asked = askedBy(event);
  const { elt, xhr, requestConfig } = asked;
  if (!elt.isConnected) return;
  markOld(asked);
  const again = () => void htmx.ajax(requestConfig.verb, requestConfig.path, { source: elt }).catch(() => {});
  if (xhr.status === 401) say(SIGNED_OUT, elt, again, true);
  else if (xhr.status === 0) say(LOST, elt, again);
  else say(sentenceIn(xhr.responseText) ?? WRONG, elt, again);
}

function partThere(event: Event): void {
  const { elt, successful } = askedBy(event);
  if (!successful || failed === null) return;
  if (failed.elt === elt || !failed.elt.isConnected) saysNothing();
}

function mayBeSent(form: HTMLFormElement): void {
  delete form.dataset.sent;
  ends(form);
}

async function isReached(): Promise<boolean> {
  try {
    const answer = await fetch('/health', { cache: 'no-store', signal: AbortSignal.timeout(PROBE_MS) });
    return answer.ok;
  } catch {
    return false;
  }
}

/**
 * A form is sent once, however often it is pressed, and only when the program is reached: otherwise the browser would
 * show its own page, and what was typed would be gone.
 */
async function sendReached(form: HTMLFormElement, submitter: HTMLElement | null): Promise<void> {
  const send = () => form.requestSubmit(submitter?.isConnected ? submitter : null);
  begins(form);
  if (!(await isReached())) {
    mayBeSent(form);
    say(LOST, form, send);
    return;
  }
  if (failed?.elt === form) saysNothing();
  form.dataset.sent = 'reached';
  send();
  // What comes is a file, and the page stays.
  if (form.dataset.download !== undefined) mayBeSent(form);
}

function sendOnce(event: SubmitEvent): void {
  const { target: form, submitter } = event;
  // A script that sends it itself has said so.
  if (!(form instanceof HTMLFormElement) || event.defaultPrevented) return;
  if ((submitter?.getAttribute('formmethod') ?? form.method) !== 'post') return;
  if (form.dataset.sent === 'reached') {
    form.dataset.sent = 'yes';
    return;
  }
  event.preventDefault();
  if (form.dataset.sent !== undefined) return;
  form.dataset.sent = 'asking';
  void sendReached(form, submitter);
}

/** A page that is shown again from the browser's memory may send its forms again. */
function mayBeSentAgain(): void {
  for (const form of document.querySelectorAll<HTMLFormElement>('form[data-sent]')) mayBeSent(form);
}

/** The network is back: what failed is asked for once more, where that changes nothing. */
function backOnline(): void {
  if (failed !== null && !(failed.elt instanceof HTMLFormElement && failed.elt.method === 'post'))
    failed.again();
}

export function sayWhatIsUnderWay(): void {
  document.addEventListener('submit', sendOnce);
  window.addEventListener('pageshow', mayBeSentAgain);
  window.addEventListener('online', backOnline);
  document.addEventListener('htmx:beforeSend', (event) => begins(askedBy(event).xhr));
  // Before the swap, which may take away what asked: then the event after it reaches nobody.
  document.addEventListener('htmx:beforeOnLoad', (event) => ends(askedBy(event).xhr));
  document.addEventListener('htmx:afterRequest', (event) => ends(askedBy(event).xhr));
  document.addEventListener('htmx:afterRequest', partThere);
  document.addEventListener('htmx:sendError', partLost);
  document.addEventListener('htmx:responseError', partLost);
}
