import type { Finding } from '../../shared/words/finding.ts';

const SAME = 1e-6;

/**
 * Kept findings with the sentences of today, in the reader's unit; null where one of them is found otherwise today, so
 * that they are shown as they were kept.
 */
export function retold(kept: readonly Finding[], today: readonly Finding[]): readonly Finding[] | null {
  const told = kept.map((one): Finding | null => {
    const same = today.find(
      ({ id, status, value, limit }) =>
        id === one.id && status === one.status && alike(value, one.value) && alike(limit, one.limit),
    );
    if (same === undefined) return null;
    const { title, sentence, source, answer } = same;
    return { ...one, title, sentence, source, answer };
  });
  return told.every((one) => one !== null) ? told : null;
}

function alike(a: number | null, b: number | null): boolean {
  return a === b || (a !== null && b !== null && Math.abs(a - b) <= SAME);
}
