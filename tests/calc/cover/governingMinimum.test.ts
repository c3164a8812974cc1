import { describe, expect, it } from 'vitest';
import { governingMinimum } from '../../../src/calc/cover/governingMinimum.ts';

const governs = (makerMm: number | null, shopMm: number | null) =>
  governingMinimum({ makerMm, makerSource: 'drawing, note 4', shopMm, shopSource: 'owner, 3 March' });

describe('which minimum governs', () => {
  it('the governing minimum is the larger, named with its source', () => {
    expect(governs(4.1, 4.3)).toMatchObject({
      mm: 4.3,
      from: 'shop',
      source: 'owner, 3 March',
      otherMm: 4.1,
    });
    expect(governs(4.4, 4.3)).toMatchObject({
      mm: 4.4,
      from: 'maker',
      source: 'drawing, note 4',
      otherMm: 4.3,
    });
  });
  it('the governing minimum is the maker’s where both are equal', () =>
    expect(governs(4.3, 4.3)?.from).toBe('maker'));
  it('the governing minimum is the only figure given', () => {
    expect(governs(null, 4.3)).toMatchObject({ mm: 4.3, from: 'shop', otherMm: null });
    expect(governs(4.1, null)).toMatchObject({ mm: 4.1, from: 'maker', otherMm: null });
  });
  it('the governing minimum is none where neither is given: the program has no limit of its own', () => {
    expect(governs(null, null)).toBeNull();
  });
  it('the governing minimum says where a figure came without its source', () => {
    const found = governingMinimum({ makerMm: 4.1, makerSource: null, shopMm: null, shopSource: null });
    expect(found?.source).toBe('maker’s figure, source not given');
  });
});
