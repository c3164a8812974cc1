import { type DefaultTreeAdapterTypes, parse } from 'parse5';

type Node = DefaultTreeAdapterTypes.Node;

export interface Element {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** Of this element alone, not of those inside it. */
  readonly text: string;
}

export interface Field {
  readonly name: string;
  readonly value: string;
  /** `text` for whatever takes any words, hidden fields too; `choice` for what offers its own; `file`. */
  readonly kind: 'text' | 'choice' | 'file';
}

export interface Form {
  readonly action: string;
  readonly method: 'get' | 'post';
  readonly multipart: boolean;
  readonly fields: readonly Field[];
}

export interface Page {
  readonly elements: readonly Element[];
  readonly comments: readonly string[];
  readonly links: readonly string[];
  readonly forms: readonly Form[];
}

/** A page as a browser reads it, whatever is wrong with it. */
export function readPage(html: string, address: string): Page {
  const elements: Element[] = [];
  const comments: string[] = [];
  const forms: { form: Element; inside: Element[] }[] = [];
  const apart: Element[] = [];

  const walk = (node: Node, form: Element[] | null): void => {
    let within = form;
    if (node.nodeName === '#comment' && 'data' in node) comments.push(node.data);
    if ('attrs' in node) {
      const element: Element = {
        tag: node.tagName,
        attributes: Object.fromEntries(node.attrs.map(({ name, value }) => [name, value])),
        text: node.childNodes.map((child) => ('value' in child ? child.value : '')).join(''),
      };
      elements.push(element);
      if (node.tagName === 'form') {
        within = [];
        forms.push({ form: element, inside: within });
      } else if (element.attributes.form !== undefined) apart.push(element);
      else within?.push(element);
    }
    if ('content' in node) walk(node.content, within);
    if ('childNodes' in node) for (const child of node.childNodes) walk(child, within);
  };
  walk(parse(html), null);
  for (const one of apart) {
    forms.find(({ form }) => form.attributes.id === one.attributes.form)?.inside.push(one);
  }
  const path = (to: string) => {
    const url = URL.canParse(to, address) ? new URL(to, address) : null;
    return url?.origin === new URL(address).origin ? url.pathname + url.search : null;
  };
  return {
    elements,
    comments,
    links: elements
      .filter(({ tag }) => tag === 'a')
      .map(({ attributes }) => path(attributes.href ?? ''))
      .filter((to) => to !== null),
    forms: forms.map(({ form, inside }) => ({
      action: path(form.attributes.action ?? '') ?? '/',
      method: form.attributes.method?.toLowerCase() === 'post' ? 'post' : 'get',
      multipart: form.attributes.enctype === 'multipart/form-data',
      fields: fieldsIn(inside),
    })),
  };
}

function fieldsIn(elements: readonly Element[]): Field[] {
  const fields: Field[] = [];
  let select: string | undefined;
  let chosen = false;
  for (const { tag, attributes, text } of elements) {
    const { name, type = 'text', value = '' } = attributes;
    if (tag === 'select') {
      select = name;
      chosen = false;
    } else if (tag === 'option' && select !== undefined) {
      const marked = 'selected' in attributes;
      const before = fields.findIndex((field) => field.name === select);
      if ((before === -1 || fields[before]?.value === '' || marked) && !chosen) {
        if (before !== -1) fields.splice(before, 1);
        fields.push({ name: select, value: attributes.value ?? text, kind: 'choice' });
      }
      chosen ||= marked;
    } else if (name === undefined || 'disabled' in attributes) continue;
    else if (tag === 'textarea') fields.push({ name, value: text, kind: 'text' });
    else if (tag === 'input' && type === 'file') fields.push({ name, value, kind: 'file' });
    else if (tag === 'input' && (type === 'radio' || type === 'checkbox')) {
      const before = fields.findIndex((field) => field.name === name);
      if (before === -1 || 'checked' in attributes) {
        if (before !== -1) fields.splice(before, 1);
        // A box that is not ticked sends nothing.
        fields.push({
          name,
          value: type === 'radio' || 'checked' in attributes ? value : '',
          kind: 'choice',
        });
      }
    } else if (tag === 'input' && type !== 'submit') fields.push({ name, value, kind: 'text' });
  }
  return fields;
}
