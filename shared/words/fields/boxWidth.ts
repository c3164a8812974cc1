import type { AnyField } from './field.ts';

/** How wide a box is: a small count, a figure, a day, a short name, a few words, or all there is. */
export type BoxWidth = 'count' | 'figure' | 'day' | 'name' | 'words' | 'full';

/** A box is as wide as what goes in. */
export function boxWidth(field: AnyField): BoxWidth {
  switch (field.kind) {
    case 'count':
      return field.most < 1000 ? 'count' : 'figure';
    case 'day':
      return 'day';
    case 'text':
      if (field.lines || field.most > 80) return 'full';
      return field.most > 40 ? 'words' : 'name';
    case 'formula':
      return 'full';
    case 'lengths':
    case 'choice':
      return 'words';
    default:
      return 'figure';
  }
}
