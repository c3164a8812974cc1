import { describe, expect, it } from 'vitest';
import { changedIn } from '../../../src/records/database/changedIn.ts';

describe('the columns in which a row differs', () => {
  it('are those that say something else, null and 0 told apart', () => {
    const row = { stage: 'to-cut', outcome: null as string | null, cut: 0 as number | null };
    expect(changedIn(row, { ...row })).toEqual({});
    expect(changedIn(row, { stage: 'to-cut', outcome: 'face' })).toEqual({ outcome: 'face' });
    expect(changedIn(row, { cut: null })).toEqual({ cut: null });
  });
});
