import { expect } from 'vitest';

/** Every value an attribute has in a piece of HTML, in order. */
export function valuesOf(html: string, attribute: string): string[] {
  return [...html.matchAll(new RegExp(`\\s${attribute}="([^"]*)"`, 'g'))].map((match) => match[1] ?? '');
}

/** Start tags of one element, or of those of it that carry a class. */
export function tagsOf(html: string, element: string, className?: string): string[] {
  return [...html.matchAll(new RegExp(`<${element}(?:\\s[^>]*)?>`, 'g'))]
    .map((match) => match[0])
    .filter(
      (tag) => className === undefined || (valuesOf(tag, 'class')[0] ?? '').split(' ').includes(className),
    );
}

export function numberOf(tag: string, attribute: string): number {
  const [value] = valuesOf(tag, attribute);
  expect(value, `${attribute} of ${tag}`).toBeDefined();
  return Number(value);
}

/** What a strict content policy would block, and what a reader's tools trip over. */
export function expectSound(html: string): void {
  expect(html).not.toMatch(/\sstyle=/);
  expect(html).not.toMatch(/\son[a-z]+=/);
  expect(html).not.toContain('undefined');
  expect(html).not.toContain('NaN');
  const ids = valuesOf(html, 'id');
  expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  for (const attribute of ['aria-labelledby', 'aria-describedby', 'for']) {
    for (const list of valuesOf(html, attribute)) {
      for (const id of list.split(' ')) expect(ids, `${attribute} leads to ${id}`).toContain(id);
    }
  }
  for (const [, id] of html.matchAll(/url\(#([^)]+)\)/g)) expect(ids).toContain(id);
}
