import { type DefaultTreeAdapterTypes, parse } from 'parse5';

/** One box of a form as a page shows it. */
export interface Box {
  readonly name: string;
  readonly kind: 'hidden' | 'text' | 'tick' | 'choice' | 'radio';
  readonly value: string;
  readonly ticked: boolean;
  /** The unit it is labeled with: "mm", "N·m"; null where it has none. */
  readonly unit: string | null;
  /** What can be chosen. */
  readonly options: readonly string[];
}

export interface SeenForm {
  readonly id: string;
  readonly action: string;
  readonly boxes: readonly Box[];
}

type Node = DefaultTreeAdapterTypes.Node;
type Element = DefaultTreeAdapterTypes.Element;

const attributesOf = (node: Element) =>
  Object.fromEntries(node.attrs.map(({ name, value }) => [name, value]));
const textIn = (node: Node): string =>
  'value' in node ? node.value : 'childNodes' in node ? node.childNodes.map(textIn).join('') : '';

function* elementsIn(node: Node): Generator<Element> {
  if ('tagName' in node) yield node;
  if ('childNodes' in node) for (const child of node.childNodes) yield* elementsIn(child);
}

/** Every form of a page with its boxes, in the order they stand there. */
export function formsIn(html: string): SeenForm[] {
  const page = parse(html);
  const units = new Map<string, string>();
  for (const one of elementsIn(page)) {
    const { id, for: labels } = attributesOf(one);
    if (id?.endsWith('-unit')) units.set(id.slice(0, -'-unit'.length), textIn(one).trim());
    // In a table the unit stands in the label of each cell: "Wall, mm at station 1".
    const inCell = /, (mm|in|°) /.exec(`${textIn(one)} `)?.[1];
    if (one.tagName === 'label' && labels && inCell) units.set(labels, inCell);
  }
  return [...elementsIn(page)]
    .filter(({ tagName }) => tagName === 'form')
    .map((form) => {
      const { id = '', action = '' } = attributesOf(form);
      return { id, action, boxes: [...elementsIn(form)].flatMap((one) => boxOf(one, units)) };
    });
}

function boxOf(one: Element, units: ReadonlyMap<string, string>): Box[] {
  const { name, id = '', type = 'text', value = '', ...rest } = attributesOf(one);
  if (name === undefined) return [];
  const base = { name, ticked: false, unit: units.get(id) ?? null, options: [] };
  if (one.tagName === 'textarea') return [{ ...base, kind: 'text', value: textIn(one) }];
  if (one.tagName === 'select') {
    const options = [...elementsIn(one)].filter(({ tagName }) => tagName === 'option').map(attributesOf);
    const chosen = options.find((option) => 'selected' in option) ?? options[0];
    return [
      {
        ...base,
        kind: 'choice',
        value: chosen?.value ?? '',
        options: options.map((option) => option.value ?? ''),
      },
    ];
  }
  if (one.tagName !== 'input' || type === 'submit' || type === 'file') return [];
  if (type === 'checkbox' || type === 'radio') {
    return [{ ...base, kind: type === 'radio' ? 'radio' : 'tick', value, ticked: 'checked' in rest }];
  }
  return [{ ...base, kind: type === 'hidden' ? 'hidden' : 'text', value }];
}

/** What a browser sends of a form as it stands. */
export function sentAsShown({ boxes }: SeenForm): Record<string, string> {
  const sent = boxes.filter(({ kind, ticked }) => (kind === 'tick' || kind === 'radio' ? ticked : true));
  return Object.fromEntries(sent.map(({ name, value }) => [name, value]));
}
