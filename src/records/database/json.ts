import { isDeepStrictEqual } from 'node:util';
import { refuse } from './errors.ts';
import { refuseNul } from './writing.ts';

/**
 * A body as it is kept. What JSON would change on the way (NaN becomes null, undefined in a list too) is refused:
 * a record must read back as what was given.
 */
export function toJson(body: object): string {
  look(body, '');
  return JSON.stringify(body);
}

function look(value: unknown, path: string): void {
  if (value === null || typeof value === 'boolean') return;
  if (typeof value === 'string') {
    refuseNul(path, value);
  } else if (typeof value === 'number') {
    if (!Number.isFinite(value)) {
      throw refuse('not-a-number', path, `The value of ${path} is ${value}; it must be a finite number.`);
    }
  } else if (typeof value === 'object' && (Array.isArray(value) || isPlain(value))) {
    for (const [name, inner] of Object.entries(value)) {
      refuseNul(path, name);
      // A field left out and a field that is undefined are the same thing.
      if (inner === undefined && !Array.isArray(value)) continue;
      look(inner, path === '' ? name : `${path}.${name}`);
    }
  } else {
    throw refuse(
      'not-plain',
      path,
      `The value of ${path} is of a kind that can't be saved (${typeof value}).`,
    );
  }
}

function isPlain(value: object): boolean {
  const prototype = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}

/** Whether two kept bodies say the same, whatever the order of their fields. */
export function sayTheSame(a: string, b: string): boolean {
  return a === b || isDeepStrictEqual(JSON.parse(a), JSON.parse(b));
}
