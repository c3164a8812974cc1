import { describe, expect, it } from 'vitest';
import { demoCovers, demoInput } from '../../data/demo/covers.ts';
import { demoFamilies } from '../../data/demo/families.ts';
import type { Verdict } from '../../shared/words/cover.ts';
import { checkCover } from '../../src/calc/cover/checkCover.ts';

const measured = demoCovers.filter(({ stations }) => stations.length > 0);

describe('the demonstration covers', () => {
  it.each(measured.map((cover) => [cover.id, cover] as const))('%s is judged as it says', (_, cover) => {
    const found = checkCover(demoInput(cover), 'in');
    expect(`${found.verdict}: ${found.because}`).toMatch(new RegExp(`^${cover.expected}: `));
  });
  it('shows every verdict that can occur, and a cover nobody has measured', () => {
    const shown = new Set(demoCovers.map(({ expected }) => expected));
    const all: (Verdict | null)[] = [
      'face',
      'face-if-sound',
      'replace',
      'measure-again',
      'plan-again',
      'advice-only',
      null,
    ];
    expect([...shown].sort()).toEqual([...all].sort());
    expect(demoCovers.some(({ stations, expected }) => stations.length === 0 && expected === null)).toBe(
      true,
    );
  });
  it('has families stamped plain, stamped ribbed and from solid, with three, four and six studs', () => {
    const kinds = new Set(demoFamilies.map(({ family }) => `${family.make} ${family.sideWall}`));
    expect(kinds).toEqual(new Set(['stamped plain', 'stamped ribbed', 'from-solid plain']));
    expect(new Set(demoFamilies.map(({ family }) => family.studCount))).toEqual(new Set([3, 4, 6]));
  });
  it('has no two with one name', () => {
    expect(new Set(demoCovers.map(({ id }) => id)).size).toBe(demoCovers.length);
    expect(new Set(demoFamilies.map(({ id }) => id)).size).toBe(demoFamilies.length);
  });
});
