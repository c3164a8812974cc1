import { describe, expect, it } from 'vitest';
import type { CoverCheck } from '../../../shared/words/cover.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { scrapReason } from '../../../src/calc/job/scrapReason.ts';
import { decision, looked } from '../../records/samples.ts';

const found = (beforeMm: number, ...failed: readonly string[]): CoverCheck => {
  const { check } = decision(1);
  const findings = failed.map((id) => ({ id, status: 'fail' }) as Finding);
  return { ...check, findings, leastWall: { ...check.leastWall!, beforeMm } };
};
const of = (beforeMm: number, ...failed: readonly string[]) =>
  scrapReason({ decision: 'replace', check: found(beforeMm, ...failed) }, looked());

describe('why a cover was replaced, the minimum at 4.3 mm', () => {
  it.each([
    ['a crack comes first, the wall thin or not', of(4.1, 'wall-left', 'crack'), 'crack'],
    ['4.1 mm before any cut', of(4.1, 'wall-left'), 'thin-as-received'],
    ['4.3 mm before any cut is at the minimum', of(4.3, 'clean-up-cut'), 'thin-after-cut'],
    ['4.5 mm, too thin once cut', of(4.5, 'bounds'), 'thin-after-cut'],
    ['its wall was enough, but it bent', of(4.9, 'stiffness'), 'bends'],
    ['nothing failed', of(4.9), 'chosen'],
  ])('%s', (_, reason, wanted) => expect(reason).toBe(wanted));

  it('an item beyond repair goes before its wall; a fault that can be mended does not', () => {
    const item = (final: boolean) => looked({ items: [{ item: 'pads', result: 'fault', final, note: '' }] });
    const lost = { decision: 'replace' as const, check: found(4.1, 'inspection', 'wall-left') };
    expect(scrapReason(lost, item(true))).toBe('fault-pads');
    expect(scrapReason(lost, item(false))).toBe('thin-as-received');
  });

  it('a cover that is used again was not replaced', () => {
    expect(scrapReason(decision(1), looked())).toBeNull();
  });
});
