import { describe, expect, it } from 'vitest';
import type { BendingCase, BendingCaseId, PistonRange } from '../../../shared/words/bending/bending.ts';
import { stiffnessFindings } from '../../../src/calc/judge/stiffnessFindings.ts';
import { verdict } from '../../../src/calc/judge/verdict.ts';

const even = (value: number): PistonRange => ({ rigid: value, conforming: value });
function one(id: BendingCaseId, peak: PistonRange, ripple: PistonRange = even(10)): BendingCase {
  return {
    id,
    trackWallMm: 4,
    ring: id.startsWith('ring')
      ? { innerDiameterMm: 1, outerDiameterMm: 2, thicknessMm: 1, bonded: false, joinedToPads: true }
      : null,
    peakOverMean: peak,
    rippleMm: ripple,
    bossDeflectionMm: even(0),
    greatestStressMPa: even(0),
    beyondYield: null,
    heat: null,
  };
}
const judge = (
  cases: readonly BendingCase[],
  more: Partial<Parameters<typeof stiffnessFindings>[0]> & { welded?: boolean } = {},
) => {
  const { welded = false, ...rest } = more;
  return stiffnessFindings({
    limits: { peakOverNew: 1.1, rippleOverNew: null },
    bending: { cases, welded, base: BASE },
    why: null,
    ringAllowed: true,
    unit: 'mm',
    ...rest,
  }).map(({ id, status, value }) => `${id} ${status} ${value === null ? '' : value.toFixed(3)}`);
};
const BASE = { wallMm: 4.4, yieldMPa: 320 };
const NEW = one('new', { rigid: 2, conforming: 1.2 });

// The rule is this program’s own: both bounds of the piston must keep the shop’s limit, the ring counts at its worse bound.
describe('limits of the shop on bending', () => {
  it('bending has no finding while the shop has no limit on it', () => {
    expect(judge([NEW, NEW], { limits: { peakOverNew: null, rippleOverNew: null } })).toEqual([]);
  });

  it.each([
    [{ rigid: 2.2, conforming: 1.2 }, 'stiffness pass 1.100'],
    [{ rigid: 2.2001, conforming: 1.2 }, 'stiffness fail 1.100'],
    [{ rigid: 2, conforming: 1.4 }, 'stiffness fail 1.167'],
  ])('bending is judged by the larger of both pistons: %o → %s', (peak, wanted) => {
    expect(judge([NEW, one('after', peak)])).toEqual([wanted]);
  });

  it('bending fails where either limit is passed, and the worst against its limit is told', () => {
    const limits = { peakOverNew: 1.1, rippleOverNew: 1.5 };
    const after = one('after', { rigid: 2.1, conforming: 1.2 }, even(16));
    const [finding] = stiffnessFindings({
      limits,
      bending: { cases: [NEW, after], welded: false, base: BASE },
      why: null,
      ringAllowed: false,
      unit: 'mm',
    });
    expect(finding).toMatchObject({ status: 'fail', value: 1.6, limit: 1.5 });
    expect(finding!.sentence).toBe(
      'After the cut, peak lining pressure is 5 % more than new, within the limit of 10 %. Friction-surface waviness is 60 % more than new, over the limit of 50 %.',
    );
  });

  it('bending with a ring is judged unbonded where the family allows one, never bonded', () => {
    const bare = one('after', { rigid: 3, conforming: 1.2 });
    const ringed = one('ring-unbonded', { rigid: 1.9, conforming: 1.1 });
    const bonded = one('ring-bonded', { rigid: 1, conforming: 1 });
    expect(judge([NEW, bare, ringed, bonded])).toEqual([
      'stiffness fail 1.500',
      'stiffness-with-ring pass 0.969',
    ]);
    expect(judge([NEW, bare, ringed], { ringAllowed: false })).toEqual(['stiffness fail 1.500']);
    expect(judge([NEW, bare, bonded])).toEqual(['stiffness fail 1.500']);
  });

  it('the finding with a ring says that the bare cover is past the limit', () => {
    const cases = [
      NEW,
      one('after', { rigid: 3, conforming: 1.2 }),
      one('ring-unbonded', { rigid: 1.9, conforming: 1.1 }),
    ];
    const limits = { peakOverNew: 1.1, rippleOverNew: null };
    const found = stiffnessFindings({
      limits,
      bending: { cases, welded: false, base: BASE },
      why: null,
      ringAllowed: true,
      unit: 'mm',
    });
    expect(found[1]!.sentence).toBe(
      'Without a ring, after the cut, peak lining pressure is 50 % more than new, over the limit of 10 %. With the ring at its least stiff, peak lining pressure is 3 % less than new, within the limit of 10 %.',
    );
  });

  it('the ring’s worse bound is widened by 9 % of the ripple and 2 % of the peak', () => {
    const cases = [
      NEW,
      one('after', { rigid: 3, conforming: 1.2 }, even(20)),
      one('ring-unbonded', { rigid: 2.15, conforming: 1.2 }, even(14)),
    ];
    const limits = { peakOverNew: 1.1, rippleOverNew: null };
    expect(judge(cases, { limits })).toEqual(['stiffness fail 1.500', 'stiffness-with-ring pass 1.097']);
    const ripple = { peakOverNew: null, rippleOverNew: 1.5 };
    // 1.4 × new as computed, 1.526 widened.
    expect(judge(cases, { limits: ripple })).toEqual([
      'stiffness fail 2.000',
      'stiffness-with-ring fail 1.526',
    ]);
  });

  const size = { innerDiameterMm: 1, outerDiameterMm: 2, thicknessMm: 1 };
  it.each([
    ['not joined to the pads', false, /is not welded to the pads, so it does not count/],
    ['not recorded as joined', null, /it is not recorded as welded .* Record it with the cover type/],
    ['kept before that was asked', undefined, /it is not recorded as welded/],
  ])('a ring that is %s gets no credit', (_, joinedToPads, why) => {
    for (const welded of [false, true]) {
      const found = stiffnessFindings({
        limits: { peakOverNew: 1.1, rippleOverNew: null },
        bending: {
          cases: [NEW, one('after', { rigid: 3, conforming: 1.2 })],
          welded,
          base: BASE,
          ring: { size: { ...size, joinedToPads } },
        },
        why: null,
        ringAllowed: true,
        unit: 'mm',
      });
      expect(found.map(({ id, status }) => `${id} ${status}`)).toEqual([
        'stiffness fail',
        'stiffness-with-ring not-checked',
      ]);
      expect(found[1]!.sentence).toMatch(why);
      expect(found[0]!.sentence).toMatch(why);
      expect(verdict(found).verdict).toBe('replace');
    }
  });

  it('a cover with its ring on is judged by that alone', () => {
    expect(judge([NEW, one('after', { rigid: 3, conforming: 1.2 })], { welded: true })).toEqual([
      'stiffness fail 1.500',
    ]);
  });

  it.each<[string, Partial<BendingCase>, 'mm' | 'in', string]>([
    [
      'beyond yield',
      { beyondYield: true, greatestStressMPa: { rigid: 300, conforming: 340 } },
      'mm',
      'the greatest stress reaches 340 MPa, above the yield strength of 320 MPa.',
    ],
    [
      'where the boss moves more than half the wall',
      { largeDeflection: true, bossDeflectionMm: { rigid: 2.1, conforming: -2.5 } },
      'in',
      'the center moves 0.098 in, more than half the wall of 0.157 in.',
    ],
  ])(
    'bending numbers %s neither fail nor pass a cover, and are said not to be relied on',
    (_, far, unit, why) => {
      const found = (peak: number) =>
        stiffnessFindings({
          limits: { peakOverNew: 1.1, rippleOverNew: null },
          bending: { cases: [NEW, { ...one('after', even(peak)), ...far }], welded: false, base: BASE },
          why: null,
          ringAllowed: false,
          unit,
        })[0]!;
      expect(found(1).status).toBe('caution');
      expect(found(3)).toMatchObject({ id: 'stiffness', status: 'caution', value: 2.5, limit: 1.1 });
      expect(found(3).sentence).toBe(
        `After the cut, peak lining pressure is 150 % more than new, over the limit of 10 %. Do not rely on these numbers: ${why} They decide nothing. Check the cover type’s figures and the shop limits, and judge the cover yourself.`,
      );
    },
  );

  it('bending numbers are not relied on where those of the new cover are not', () => {
    const soft = { ...NEW, beyondYield: true, greatestStressMPa: even(400) };
    const cases = [soft, one('after', even(3)), one('ring-unbonded', even(1))];
    expect(judge(cases)).toEqual(['stiffness caution 2.500', 'stiffness-with-ring caution 0.850']);
    const [finding] = stiffnessFindings({
      limits: { peakOverNew: 1.1, rippleOverNew: null },
      bending: { cases, welded: false, base: BASE },
      why: null,
      ringAllowed: false,
      unit: 'mm',
    });
    expect(finding!.sentence).toContain('numbers: of the new cover the greatest stress reaches 400 MPa');
  });

  it('bending is not checked where it could not be worked out, and the finding says why', () => {
    const [finding] = stiffnessFindings({
      limits: { peakOverNew: 1.1, rippleOverNew: null },
      bending: null,
      why: 'The family does not say its hub diameter.',
      ringAllowed: true,
      unit: 'mm',
    });
    expect(finding).toMatchObject({ id: 'stiffness', status: 'not-checked' });
    expect(finding!.sentence).toContain('hub diameter');
  });

  it('a ratio past its limit never prints as the limit itself', () => {
    const [finding] = stiffnessFindings({
      limits: { peakOverNew: 1.1, rippleOverNew: null },
      bending: { cases: [NEW, one('after', { rigid: 2.2004, conforming: 1.2 })], welded: false, base: BASE },
      why: null,
      ringAllowed: true,
      unit: 'mm',
    });
    expect(finding!.sentence).toContain('10.02 % more than new, over the limit of 10 %');
  });
});
