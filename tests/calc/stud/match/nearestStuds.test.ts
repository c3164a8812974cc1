import { describe, expect, it } from 'vitest';
import { demoStuds } from '../../../../data/demo/studs.ts';
import type { StudLengths } from '../../../../shared/words/stud/choices.ts';
import { nearestStuds } from '../../../../src/calc/stud/match/nearestStuds.ts';

const studs = demoStuds
  .filter(({ id }) => id.endsWith('-3-8-24'))
  .map(({ id, entry }) => ({ id, stud: entry.stud }));
const NONE: StudLengths = {
  threadStartMm: null,
  threadEndMm: null,
  projectionMm: null,
  pilotDiameterMm: null,
};

describe('the studs of the catalog beside the one in the hand', () => {
  // 0.945 in and 0.25 in more: 24.003 and 30.353 mm.
  it('come nearest first, each with what it differs by', () => {
    const found = nearestStuds({ ...NONE, projectionMm: 24.1 }, studs);
    expect(found.map(({ id }) => id)).toEqual(['short-3-8-24', 'long-3-8-24']);
    expect(found.map(({ off }) => off.map(({ what, mm }) => [what, Number(mm.toFixed(3))]))).toEqual([
      [['projectionMm', 0.097]],
      [['projectionMm', -6.253]],
    ]);
    expect(nearestStuds({ ...NONE, projectionMm: 30 }, studs)[0]?.id).toBe('long-3-8-24');
  });

  it('are compared by every length that was measured, and by no other', () => {
    const [first] = nearestStuds({ ...NONE, projectionMm: 24, threadEndMm: 20, pilotDiameterMm: 8 }, studs);
    expect(first?.off.map(({ what }) => what)).toEqual(['projectionMm', 'threadEndMm', 'pilotDiameterMm']);
    expect(first?.farMm).toBeCloseTo(0.003 + (22.987 - 20) + 0.001, 6);
  });

  it('a stud that lacks what was measured comes after one that has it', () => {
    const [stud] = studs;
    const without = { id: 'without', stud: { ...stud!.stud, pilotDiameterMm: null } };
    const found = nearestStuds({ ...NONE, pilotDiameterMm: stud!.stud.pilotDiameterMm }, [without, stud!]);
    expect(found.map(({ id }) => id)).toEqual([stud!.id, 'without']);
  });
});
