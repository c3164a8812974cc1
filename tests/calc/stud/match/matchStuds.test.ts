import { describe, expect, it } from 'vitest';
import type { Refusal } from '../../../../shared/words/refusal.ts';
import type { Stud } from '../../../../shared/words/stud/stud.ts';
import { checkStud } from '../../../../src/calc/stud/checkStud.ts';
import { matchStacks } from '../../../../src/calc/stud/match/matchStacks.ts';
import { matchStuds } from '../../../../src/calc/stud/match/matchStuds.ts';
import { studWanted } from '../../../../src/calc/stud/match/studWanted.ts';
import { EXAMPLE, layer, metric, NUT, STACK, STUD } from '../example.ts';

const { stud: _, ...SHARED } = EXAMPLE;
const long: Stud = { ...STUD, projectionMm: STUD.projectionMm + 6.35 };
/** Plate and casting: 11.2 ± 0.25. */
const CASTING = {
  ...STACK,
  style: 'two-piece' as const,
  layers: [layer(3.2), layer(8, { name: 'casting', toleranceMm: 0.15 })],
};
const ORDER = (studs: { id: string; stud: Stud }[], stack = STACK) =>
  matchStuds({ ...SHARED, studs, stack }).map((match) => match.id);

describe('studs for a stack, best first', () => {
  it('studs are sorted by fit, then number of fails, then size of the miss', () => {
    const studs = [
      { id: 'metric', stud: { ...STUD, thread: metric(10, 1.5, '6g') } },
      { id: 'far too short', stud: { ...STUD, threadEndMm: 8, projectionMm: 9 } },
      { id: 'too short', stud: { ...STUD, threadEndMm: 10, projectionMm: 11 } },
      { id: 'no pilot diameter', stud: { ...STUD, pilotDiameterMm: null } },
      { id: 'good', stud: STUD },
    ];
    expect(ORDER(studs)).toEqual(['good', 'no pilot diameter', 'too short', 'far too short', 'metric']);
  });
  it('a stud with one large fail comes before one with two small ones', () => {
    const stack = { ...STACK, tipRoomMm: 22.9 };
    const studs = [
      { id: 'two fails', stud: { ...STUD, pilotDiameterMm: 8.4 } },
      { id: 'one fail', stud: { ...STUD, projectionMm: 28 } },
    ];
    expect(ORDER(studs, stack)).toEqual(['one fail', 'two fails']);
  });
  it('studs that fit are sorted by worst-case margin up to one pitch, then the shorter first', () => {
    const stack = { ...STACK, tipRoomMm: 40 };
    const studs = [
      { id: 'tip 0.05 mm clear', stud: { ...STUD, projectionMm: 40 - STUD.lengthToleranceMm - 0.05 } },
      { id: 'longer', stud: { ...STUD, projectionMm: STUD.projectionMm + 5 } },
      { id: 'as drawn', stud: STUD },
    ];
    expect(matchStuds({ ...SHARED, studs, stack }).map(({ fits }) => fits)).toEqual(['yes', 'yes', 'yes']);
    expect(ORDER(studs, stack)).toEqual(['as drawn', 'longer', 'tip 0.05 mm clear']);
    // Least end: plate 3.2, nut 8.3 and one pitch, with every tolerance, or the two that start the nut; 0.1 is to spare.
    const wanted = studWanted({ ...SHARED, stack, stud: STUD }).threadEndLeastMm!;
    const scant = { ...STUD, threadEndMm: wanted + 0.1, projectionMm: wanted + 0.6 };
    expect(scant.projectionMm).toBeLessThan(STUD.projectionMm);
    const two = [
      { id: 'shorter, 0.1 mm to spare', stud: scant },
      { id: 'as drawn', stud: STUD },
    ];
    expect(matchStuds({ ...SHARED, studs: two, stack }).map(({ fits }) => fits)).toEqual(['yes', 'yes']);
    expect(ORDER(two, stack)).toEqual(['as drawn', 'shorter, 0.1 mm to spare']);
  });
  it('studs that are alike keep their order', () => {
    const two = [
      { id: 'b', stud: STUD },
      { id: 'a', stud: STUD },
    ];
    expect(ORDER(two)).toEqual(['b', 'a']);
  });
  it('an empty catalog gives an empty list', () => {
    expect(matchStuds({ ...SHARED, studs: [] })).toEqual([]);
  });
  it('a match carries the full check of its stud', () => {
    const [match] = matchStuds({ ...SHARED, studs: [{ id: 'x', stud: long }] }, 'in');
    expect(match!.check).toEqual(checkStud({ ...SHARED, stud: long }, 'in'));
    expect(match).toMatchObject({ fits: match!.check.fits, decidedBy: match!.check.decidedBy });
  });
  it('a stud that cannot be used is named', () => {
    expect.assertions(1);
    try {
      matchStuds({
        ...SHARED,
        studs: [
          { id: 'a', stud: STUD },
          { id: 'b', stud: { ...STUD, projectionMm: 1 } },
        ],
      });
    } catch (error) {
      expect((error as Refusal).faults[0]!.path).toBe('studs.1.projectionMm');
    }
  });
});

describe('stacks for the stud in hand', () => {
  it('stacks for a stud come best first, each with its own nut and gap', () => {
    const found = matchStacks({
      stud: STUD,
      criteria: EXAMPLE.criteria,
      joint: null,
      coverStudCount: null,
      coverStudCircleDiameterMm: null,
      stacks: [
        { id: 'thick', stack: { ...CASTING, layers: [layer(25)] }, nut: NUT, pullForwardMm: 4 },
        { id: 'no gap', stack: STACK, nut: NUT, pullForwardMm: null },
        { id: 'plain', stack: STACK, nut: NUT, pullForwardMm: 4 },
      ],
    });
    expect(found.map((match) => [match.id, match.fits])).toEqual([
      ['plain', 'yes'],
      ['no gap', 'with-care'],
      ['thick', 'no'],
    ]);
    for (const { check, fits, decidedBy, byMm } of found)
      expect([fits, decidedBy, byMm]).toEqual([check.fits, check.decidedBy, check.byMm]);
    expect(found.map(({ decidedBy }) => decidedBy)).toEqual([null, 'pullForwardMm', 'threadEndMm']);
  });
  it('a stack that cannot be used is named', () => {
    expect.assertions(1);
    try {
      matchStacks({
        ...SHARED,
        stud: STUD,
        stacks: [{ id: 'x', stack: { ...STACK, layers: [] }, nut: null, pullForwardMm: null }],
      });
    } catch (error) {
      expect((error as Refusal).faults[0]!.path).toBe('stacks.0.stack.layers');
    }
  });
});

describe('common practice, no source', () => {
  // A short stud suits a one-piece flexplate; a two-piece one wants the long stud, which has no more thread, only about
  // 6.35 mm more pilot.
  const short: Stud = { ...STUD, threadStartMm: 1, threadEndMm: 24.5, projectionMm: 24.6 };
  const longer: Stud = { ...short, projectionMm: short.projectionMm + 6.35 };
  const two = { ...CASTING, layers: [layer(3.2), layer(11, { name: 'casting' })], tipRoomMm: 45 };
  const pair = [
    { id: 'short', stud: short },
    { id: 'long', stud: longer },
  ];
  const nut = { ...NUT, heightMm: 8.3 };
  it('the short stud fits a one-piece flexplate', () => {
    const found = matchStuds({ ...SHARED, studs: pair, stack: STACK, nut });
    expect(found.find((match) => match.id === 'short')!.fits).toBe('yes');
  });
  it('the short stud is lost in the casting of a two-piece flexplate pushed back far, and the long one shows its pilot', () => {
    const found = matchStuds({ ...SHARED, studs: pair, stack: two, nut, pullForwardMm: 10.5 });
    expect(found.map((match) => [match.id, match.fits])).toEqual([
      ['long', 'with-care'],
      ['short', 'no'],
    ]);
    expect(found[1]).toMatchObject({ decidedBy: 'projectionMm' });
    expect(found[0]!.check.reach.grade).toBe('pilot-shows');
  });
  it('a stack of 3.2 ± 0.1 and 8.0 ± 0.15 is 11.2 mm, 10.95 to 11.45', () => {
    const { stackMm } = checkStud({ ...EXAMPLE, stack: CASTING });
    expect(stackMm.nominal).toBeCloseTo(11.2, 9);
    expect(stackMm.least).toBeCloseTo(10.95, 9);
    expect(stackMm.most).toBeCloseTo(11.45, 9);
  });
});
