import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Joint, type StudCheckInput, SURFACE_CLASSES } from '../../shared/words/stud/stud.ts';
import { checkStud } from '../../src/calc/stud/checkStud.ts';
import { neededEngagement } from '../../src/calc/stud/engaged/neededEngagement.ts';
import { bestStuds } from '../../src/calc/stud/match/bestStuds.ts';
import { matchStuds } from '../../src/calc/stud/match/matchStuds.ts';
import { studWanted } from '../../src/calc/stud/match/studWanted.ts';
import { toleranceRows } from '../../src/calc/stud/match/toleranceRows.ts';
import { threadGeometry } from '../../src/calc/stud/thread/threadGeometry.ts';
import { EXAMPLE, metric, unified } from '../calc/stud/example.ts';
import { anyStudCheck, mm, THREADS } from './anyStud.ts';

const RUNS = { numRuns: 50 };
const changed = (input: StudCheckInput, stud: Partial<StudCheckInput['stud']>): StudCheckInput => ({
  ...input,
  stud: { ...input.stud, ...stud },
});
const GRADES = ['blind', 'pilot-shows', 'starts-by-hand'];
const finding = (input: StudCheckInput, id: string) =>
  checkStud(input).findings.find((one) => one.id === id)!;
const BADNESS = { pass: 0, caution: 1, fail: 2, 'not-checked': -1 } as const;

describe('laws of finding a stud among many', () => {
  /** A stud of about the lengths a stack wants, most of which fit. */
  const near = fc.record({ start: mm(-0.4, 2), end: mm(-0.4, 3), pilot: mm(-0.4, 4), t: mm(0, 0.3) });
  const fitting = (input: StudCheckInput, off: { start: number; end: number; pilot: number; t: number }) => {
    const stud = { ...input.stud, lengthToleranceMm: off.t };
    const ends = studWanted({ ...input, stud });
    const threadStartMm = ends.threadStartMostMm - off.start;
    const threadEndMm = Math.max(ends.threadEndLeastMm! + off.end, threadStartMm + 1);
    const { projectionLeastMm } = studWanted({ ...input, stud: { ...stud, threadEndMm } });
    const projectionMm = Math.max(projectionLeastMm + off.pilot, threadEndMm);
    return { ...stud, threadStartMm, threadEndMm, projectionMm };
  };
  const MANY = fc
    .record({
      surroundings: anyStudCheck,
      withoutNut: fc.boolean(),
      any: fc.array(anyStudCheck, { maxLength: 20 }),
      offs: fc.array(near, { minLength: 1, maxLength: 30 }),
    })
    .map(({ surroundings, withoutNut, any, offs }) => ({
      surroundings,
      withoutNut,
      studs: [...any, ...offs.map((off) => ({ stud: fitting(surroundings, off) }))],
    }));

  it('the first few are those that a check of every stud puts first, and all that are left out fit no better', () => {
    fc.assert(
      fc.property(MANY, fc.integer({ min: 1, max: 8 }), ({ surroundings, withoutNut, studs }, most) => {
        const { stud: _, ...stack } = surroundings;
        const asked = {
          ...stack,
          nut: withoutNut ? null : stack.nut,
          studs: studs.map(({ stud }, i) => ({ id: `${i}`, stud })),
        };
        const first = bestStuds(asked, most);
        const all = matchStuds(asked);
        const fit = all.filter(({ fits }) => fits !== 'no').slice(0, most);
        expect(first.slice(0, fit.length)).toEqual(fit);
        expect(first).toHaveLength(Math.min(most, all.length));
        expect(first.slice(fit.length).every(({ fits }) => fits === 'no')).toBe(true);
      }),
      { numRuns: 200 },
    );
  });
});

describe('laws of a stud in a stack', () => {
  it('a longer pilot changes no engagement and never worsens the reach', () => {
    fc.assert(
      fc.property(anyStudCheck, mm(0.01, 20), (input, more) => {
        const before = checkStud(input);
        const after = checkStud(changed(input, { projectionMm: input.stud.projectionMm + more }));
        expect(after.engagement).toEqual(before.engagement);
        expect(after.protrusionThreads).toEqual(before.protrusionThreads);
        expect(GRADES.indexOf(after.reach.grade!)).toBeGreaterThanOrEqual(
          GRADES.indexOf(before.reach.grade!),
        );
      }),
      RUNS,
    );
  });

  it('a thicker stack never lengthens the reach', () => {
    fc.assert(
      fc.property(anyStudCheck, mm(0.01, 10), (input, more) => {
        const [first, ...rest] = input.stack.layers;
        const thick = { ...first!, thicknessMm: first!.thicknessMm + more };
        const before = checkStud(input).reach;
        const after = checkStud({ ...input, stack: { ...input.stack, layers: [thick, ...rest] } }).reach;
        expect(after.pushedBackMm!).toBeLessThan(before.pushedBackMm!);
        expect(after.threadsShowing!).toBeLessThan(before.threadsShowing!);
        expect(GRADES.indexOf(after.grade!)).toBeLessThanOrEqual(GRADES.indexOf(before.grade!));
      }),
      RUNS,
    );
  });

  it('more pull-forward gap never helps; pushed back is seated less the gap', () => {
    fc.assert(
      fc.property(anyStudCheck, (input) => {
        const { reach } = checkStud(input);
        expect(reach.pushedBackMm!).toBeCloseTo(reach.seatedMm - input.pullForwardMm!, 9);
      }),
      RUNS,
    );
  });

  it('a nut that is full of thread, with some to spare, leaves its height less the gap showing when pushed back', () => {
    fc.assert(
      fc.property(anyStudCheck, (input) => {
        const { reach, protrusionThreads } = checkStud(input);
        const { heightMm, washerMm } = input.nut!;
        const P = threadGeometry(input.stud.thread).pitchMm;
        const showing = protrusionThreads!.nominal + (heightMm + washerMm - input.pullForwardMm!) / P;
        expect(reach.threadsShowing!).toBeCloseTo(showing, 6);
      }),
      RUNS,
    );
  });

  it('the worst case is never better than RSS, nor RSS than nominal', () => {
    fc.assert(
      fc.property(anyStudCheck, (input) => {
        const { engagement, protrusionThreads: out, stackMm } = checkStud(input);
        expect(engagement!.leastMm).toBeLessThanOrEqual(engagement!.nominalMm + 1e-9);
        expect(out!.leastRss).toBeLessThanOrEqual(out!.nominal + 1e-9);
        expect(out!.least).toBeLessThanOrEqual(out!.leastRss + 1e-9);
        expect(stackMm.least).toBeLessThanOrEqual(stackMm.nominal);
      }),
      RUNS,
    );
  });

  it('the least engagement is the least over every corner of the tolerances', () => {
    fc.assert(
      fc.property(anyStudCheck, (input) => {
        const { stud, nut, stack } = input;
        const S = stack.layers.reduce((sum, one) => sum + one.thicknessMm, 0) + nut!.washerMm;
        const tS = stack.layers.reduce((sum, one) => sum + one.toleranceMm, 0);
        const corners = [-1, 1].flatMap((a) =>
          [-1, 1].flatMap((b) =>
            [-1, 1].flatMap((c) =>
              [-1, 1].map((d) => {
                const start = stud.threadStartMm + a * stud.lengthToleranceMm;
                const end = stud.threadEndMm + b * stud.lengthToleranceMm;
                const grip = S + c * tS;
                const H = nut!.heightMm + d * nut!.toleranceMm;
                return Math.max(0, Math.min(end, grip + H - 0.1) - Math.max(start, grip + 0.1));
              }),
            ),
          ),
        );
        expect(checkStud(input).engagement!.leastMm).toBeCloseTo(Math.min(...corners), 9);
      }),
      RUNS,
    );
  });

  it('more engagement never weakens the joint', () => {
    fc.assert(
      fc.property(anyStudCheck, mm(0.01, 5), (input, more) => {
        const before = checkStud(input);
        const after = checkStud(changed(input, { threadStartMm: input.stud.threadStartMm - more }));
        expect(after.engagement!.nominalMm).toBeGreaterThanOrEqual(before.engagement!.nominalMm - 1e-9);
        expect(after.strength.breakingLoadN!).toBeGreaterThanOrEqual(before.strength.breakingLoadN! - 1e-6);
        const longer = changed(input, { threadStartMm: input.stud.threadStartMm - more });
        expect(BADNESS[finding(longer, 'strip-or-break').status]).toBeLessThanOrEqual(
          BADNESS[finding(input, 'strip-or-break').status],
        );
      }),
      RUNS,
    );
  });

  it('sentences in inches and in millimeters give the same numbers', () => {
    fc.assert(
      fc.property(anyStudCheck, (input) => {
        const inMm = checkStud(input, 'mm');
        const inInch = checkStud(input, 'in');
        const bare = (check: typeof inMm) => ({
          ...check,
          headline: '',
          because: '',
          findings: check.findings.map(({ sentence: _, ...rest }) => rest),
        });
        expect(bare(inInch)).toEqual(bare(inMm));
      }),
      RUNS,
    );
  });

  it('a stud with a failing or missing finding that counts is never a yes', () => {
    fc.assert(
      fc.property(anyStudCheck, (input) => {
        const { fits, findings } = checkStud(input);
        const apart = /^(joint|stud-shear|bearing-pressure)/;
        const bad = findings.filter((one) => one.status !== 'pass' && !apart.test(one.id));
        expect(fits === 'yes').toBe(bad.length === 0);
        expect(fits === 'no').toBe(bad.some((one) => one.status === 'fail'));
      }),
      RUNS,
    );
  });

  it('no number is NaN', () => {
    fc.assert(
      fc.property(anyStudCheck, (input) => {
        expect(JSON.stringify(checkStud(input), (_, v) => (Number.isNaN(v) ? 'NaN!' : v))).not.toContain(
          'NaN!',
        );
      }),
      RUNS,
    );
  });
});

describe('laws of a joint and of tolerances', () => {
  const joints = fc.record({
    torqueNm: mm(5, 200),
    nutFactor: mm(0.08, 0.4),
    scatter: mm(0, 0.5),
    friction: mm(0.05, 0.6),
    engineTorqueNm: mm(50, 2000),
    serviceFactor: mm(1, 4),
    studCount: fc.integer({ min: 2, max: 12 }),
    surface: fc.constantFrom(...SURFACE_CLASSES),
  });
  const tightened = (joint: Partial<Joint>) =>
    checkStud({ ...EXAMPLE, joint: { ...EXAMPLE.joint!, ...joint } });

  it('twice the studs hold twice the torque at the same preload each', () => {
    fc.assert(
      fc.property(joints, (joint) => {
        const one = tightened(joint).joint!;
        const two = tightened({ ...joint, studCount: 2 * joint.studCount }).joint!;
        expect(two.preloadN).toEqual(one.preloadN);
        expect(two.slipTorqueNm.least!).toBeCloseTo(2 * one.slipTorqueNm.least!, 6);
        expect(two.slipTorqueNm.nominal!).toBeCloseTo(2 * one.slipTorqueNm.nominal!, 6);
      }),
      RUNS,
    );
  });

  it('a rougher surface never leaves more preload, and settling never depends on the torque', () => {
    fc.assert(
      fc.property(joints, (joint) => {
        const lost = SURFACE_CLASSES.map((surface) => tightened({ ...joint, surface }).joint!);
        for (const [i, rougher] of lost.slice(1).entries()) {
          expect(rougher.embeddingLossN!).toBeGreaterThan(lost[i]!.embeddingLossN!);
          expect(rougher.preloadN.least!).toBeLessThanOrEqual(lost[i]!.preloadN.least!);
        }
        const { embeddingLossN } = tightened({ ...joint, torqueNm: 2 * joint.torqueNm }).joint!;
        expect(embeddingLossN).toBe(tightened(joint).joint!.embeddingLossN);
      }),
      RUNS,
    );
  });

  it('the least preload is never more than the nominal, nor the nominal than the most', () => {
    fc.assert(
      fc.property(joints, (joint) => {
        const { preloadN, slipTorqueNm } = tightened(joint).joint!;
        expect(preloadN.least!).toBeLessThanOrEqual(preloadN.nominal);
        expect(preloadN.nominal).toBeLessThanOrEqual(preloadN.most);
        expect(slipTorqueNm.least!).toBeGreaterThanOrEqual(0);
      }),
      RUNS,
    );
  });

  it('the share of failures lies between nominal and worst case, whatever the stud and the stack', () => {
    fc.assert(
      fc.property(anyStudCheck, (input) => {
        for (const { id, nominalMm, rssMm, worstMm, failShare } of toleranceRows(input).rows) {
          expect(worstMm).toBeLessThanOrEqual(rssMm + 1e-9);
          expect(rssMm).toBeLessThanOrEqual(nominalMm + 1e-9);
          if (worstMm >= 1e-9) expect(failShare, `${id} passes at its worst`).toBe(0);
          const spread = nominalMm - worstMm;
          // As far beyond its nominal as its worst case is short of it, nothing passes.
          if (nominalMm < -spread - 1e-9) expect(failShare, `${id} fails at its best`).toBe(1);
          if (nominalMm < -1e-6) expect(failShare, `${id} fails as drawn`).toBeGreaterThan(0.48);
        }
      }),
      { numRuns: 12 },
    );
  });
});

describe('laws of a thread', () => {
  const pairs = fc
    .record({ d: mm(4, 60), share: mm(0.05, 0.3) })
    .map(({ d, share }) => ({ d, P: Math.max(0.2, d * share) }));

  it('any metric nut and stud never overlap, and their limits are in order', () => {
    fc.assert(
      fc.property(pairs, ({ d, P }) => {
        const stud = threadGeometry(metric(d, P, '6g'));
        const nut = threadGeometry(metric(d, P, '6H'));
        expect(stud.majorMm.min!).toBeLessThan(stud.majorMm.max!);
        expect(stud.pitchDiameterMm.min!).toBeLessThan(stud.pitchDiameterMm.max!);
        expect(stud.pitchDiameterMm.max!).toBeLessThan(nut.pitchDiameterMm.min!);
        expect(nut.minorMm.min!).toBeLessThan(nut.minorMm.max!);
        expect(stud.minorMm.max!).toBeLessThan(nut.minorMm.min!);
      }),
      RUNS,
    );
  });

  it('any Unified nut and stud never overlap, their limits are in order, and 3A is tighter than 2A', () => {
    fc.assert(
      fc.property(mm(0.19, 2), fc.constantFrom(8, 11, 13, 16, 18, 20, 24, 28, 32), (D, n) => {
        fc.pre(1 / n < 0.3 * D);
        const of = (c: '2A' | '3A' | '2B' | '3B') => threadGeometry(unified(D, n, c, 'UNS'));
        const width = (c: '2A' | '3A' | '2B' | '3B') => {
          const { max, min } = of(c).pitchDiameterMm;
          return max! - min!;
        };
        expect(of('2A').pitchDiameterMm.max!).toBeLessThan(of('2B').pitchDiameterMm.min!);
        expect(width('3A')).toBeLessThan(width('2A'));
        expect(width('3B')).toBeLessThan(width('2B'));
        expect(of('2A').minorMm.max!).toBeLessThan(of('2B').minorMm.min!);
      }),
      RUNS,
    );
  });

  it('a weaker nut never needs less engagement', () => {
    fc.assert(
      fc.property(fc.constantFrom(...THREADS), mm(300, 1200), mm(1, 600), ([a, b], nutMPa, less) => {
        const stud = threadGeometry(a);
        const nut = threadGeometry(b);
        const needed = (MPa: number) =>
          neededEngagement({ stud, nut, studTensileMPa: 827, nutTensileMPa: MPa }).needed.value;
        expect(needed(Math.max(1, nutMPa - less))).toBeGreaterThanOrEqual(needed(nutMPa) - 1e-9);
      }),
      RUNS,
    );
  });
});
