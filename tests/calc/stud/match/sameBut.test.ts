import { describe, expect, it } from 'vitest';
import { demoStuds } from '../../../../data/demo/studs.ts';
import { sameBut } from '../../../../src/calc/stud/match/sameBut.ts';

const named = demoStuds.map(({ id, entry }) => ({ id, stud: entry.stud }));
const short = named.find((one) => one.id === 'short-3-8-24')!;

describe('the same but longer', () => {
  it.each(demoStuds.filter(({ id }) => id.startsWith('short-')).map(({ id }) => id))(
    '%s has a long partner with 6.35 mm more pilot (common practice, no source: about 1/4 in)',
    (id) => {
      const stud = named.find((one) => one.id === id)!.stud;
      const [found, ...more] = sameBut(stud, named);
      expect(found?.id).toBe(id.replace('short-', 'long-'));
      expect(found?.longerMm).toBeCloseTo(6.35, 9);
      expect(more).toEqual([]);
    },
  );
  it('a stud of another strength, thread or pilot is no partner', () => {
    const other = (change: Partial<typeof short.stud>) =>
      sameBut(short.stud, [{ id: 'x', stud: { ...short.stud, projectionMm: 30, ...change } }]);
    expect(other({})).toHaveLength(1);
    expect(other({ proofMPa: 500 })).toEqual([]);
    expect(other({ threadEndMm: 24 })).toEqual([]);
    expect(other({ pilotDiameterMm: null })).toEqual([]);
    expect(other({ projectionMm: short.stud.projectionMm })).toEqual([]);
  });
});
