import { type DefaultTreeAdapterTypes, parse } from 'parse5';

type Node = DefaultTreeAdapterTypes.Node;

/** These stand within a line of text; everything else begins a new one. */
const INLINE = new Set(
  'a abbr b br code data em i kbd mark output q small span strong sub sup time tspan u var'.split(' '),
);
const SILENT = new Set(['script', 'style', 'template']);
/** A formula, and what stands small below a symbol, run on without a blank between. */
const IN_ONE = new Set(['math', 'sub']);
/** Attributes that are shown, or read out. */
const SHOWN = ['aria-label', 'alt', 'title', 'placeholder', 'data-confirm', 'hx-confirm'];

/** What a person reads on a page, piece by piece in its order. */
export function pageWords(html: string): string[] {
  const pieces: string[] = [];
  let line = '';
  const end = () => {
    if (line.trim() !== '') pieces.push(line);
    line = '';
  };
  const walk = (node: Node, typed: boolean): void => {
    if ('value' in node && node.nodeName === '#text') {
      // A text close behind an element, without a blank: it stands apart on the page.
      if (/\p{L}$/u.test(line) && /^\p{L}/u.test(node.value)) end();
      if (!typed) line += node.value;
      return;
    }
    if ('tagName' in node) {
      if (SILENT.has(node.tagName)) return;
      if (IN_ONE.has(node.tagName)) {
        if (!typed) line += textIn(node);
        return;
      }
      const attributes = new Map(node.attrs.map(({ name, value }) => [name, value]));
      // A sign's word is read out before whatever it stands at.
      const inline = INLINE.has(node.tagName) && !/unseen/.test(attributes.get('class') ?? '');
      // One element close to the next, as figure and unit: two pieces.
      if (!inline || (line !== '' && node.tagName !== 'br' && startsFresh(node))) end();
      for (const name of SHOWN) if (attributes.has(name)) pieces.push(attributes.get(name)!);
      const type = attributes.get('type');
      if (node.tagName === 'input' && (type === 'submit' || type === 'button'))
        pieces.push(attributes.get('value') ?? '');
      for (const child of node.childNodes) walk(child, typed || node.tagName === 'textarea');
      if (!inline) end();
      return;
    }
    if ('childNodes' in node) for (const child of node.childNodes) walk(child, typed);
  };
  walk(parse(html, { scriptingEnabled: false }), false);
  end();
  return pieces;
}

function textIn(node: Node): string {
  if ('value' in node) return node.value;
  return 'childNodes' in node ? node.childNodes.map(textIn).join('') : '';
}

function startsFresh(node: DefaultTreeAdapterTypes.Element): boolean {
  const siblings = node.parentNode?.childNodes ?? [];
  const before = siblings[siblings.indexOf(node) - 1];
  return before !== undefined && 'tagName' in before && node.tagName !== 'tspan' && node.tagName !== 'sub';
}

const TOLD = new Set([
  'message',
  'sentence',
  'question',
  'summary',
  'description',
  'source',
  'warning',
  'title',
  'says',
]);
const TOLD_LISTS = new Set(['warnings', 'working', 'sentences', 'cautions']);

/** The words of a JSON answer: whatever stands where a sentence or a description stands. */
export function jsonWords(value: unknown, told = false): string[] {
  if (typeof value === 'string') return told ? [value] : [];
  if (Array.isArray(value)) return value.flatMap((one) => jsonWords(one, told));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, one]) =>
    jsonWords(one, typeof one === 'string' ? TOLD.has(key) : TOLD_LISTS.has(key)),
  );
}
