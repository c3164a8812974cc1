import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { BendingCase, PistonRange } from '../../../shared/words/bending/bending.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { VERDICT_WORD } from '../../../shared/words/verdicts.ts';
import { checkCover, checkWhatIsThere } from '../../../src/calc/cover/checkCover.ts';
import {
  bendingAnswersOtherwise,
  coverAnswersOtherwise,
  type Otherwise,
  studAnswersOtherwise,
} from '../../../src/calc/judge/answersOtherwise.ts';
import { gaugeFindings } from '../../../src/calc/judge/gaugeFindings.ts';
import { masterFindings } from '../../../src/calc/judge/masterFindings.ts';
import { stiffnessFindings } from '../../../src/calc/judge/stiffnessFindings.ts';
import { checkStud } from '../../../src/calc/stud/checkStud.ts';
import { replacedStud } from '../../../src/calc/stud/holes/replacedStud.ts';
import { studWanted } from '../../../src/calc/stud/match/studWanted.ts';
import { toleranceRows } from '../../../src/calc/stud/match/toleranceRows.ts';
import { whatWouldMend } from '../../../src/calc/stud/match/whatWouldMend.ts';
import { pullForward } from '../../../src/calc/stud/reach/pullForward.ts';
import { coverInput } from '../cover/sets.ts';
import { anyCover, gaugesUsed } from './covers.ts';
import { figure, open, Told } from './record.ts';
import { anyStud } from './studs.ts';

const unitOf = (i: number) => (i % 3 === 2 ? 'in' : 'mm');
const COVERS = fc.sample(anyCover, { seed: 20_261_206, numRuns: 40 });

test('what is said of a lost cover without a wall is as written down', async () => {
  const told = new Told();
  const lines = COVERS.map(({ input }, i) => {
    const lost = {
      ...input,
      stations: [],
      marks: [],
      crackTest: i % 2 === 0 ? ('found' as const) : input.crackTest,
    };
    try {
      const { findings, headline, because, minimumWall } = checkWhatIsThere(lost, unitOf(i));
      for (const finding of findings) told.finding(finding);
      return `${i + 1}. ${headline} ${because} ${JSON.stringify(minimumWall)} ${open(findings)}`;
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
      return `${i + 1}. refused: ${thrown.message}`;
    }
  });
  await expect(`${lines.join('\n')}\n\n${told}`).toMatchFileSnapshot('lost.txt');
});

test('what is said of 150 gauges and their masters is as written down', async () => {
  const told = new Told();
  const any = fc.record({ gaugesUsed, measuredOn: fc.constantFrom(null, '2026-03-02') });
  const lines = fc.sample(any, { seed: 20_261_210, numRuns: 150 }).map((used, i) => {
    const findings = [...masterFindings(used, unitOf(i)), ...gaugeFindings({ ...coverInput(), ...used })];
    for (const finding of findings) told.finding(finding);
    return `${i + 1}. ${findings.map(({ status, sentence }) => `${status}: ${sentence}`).join(' | ')}`;
  });
  await expect(`${lines.join('\n')}\n\n${told}`).toMatchFileSnapshot('masters.txt');
});

const FITS = {
  fits: { yes: 'fits', 'with-care': 'fits with care', no: 'does not fit' },
  holds: { yes: 'holds', no: 'does not hold', 'not-checked': 'not checked' },
} as const;
const piston = fc.record({
  rigid: fc.constantFrom(1.2, 1.2004, 1.5, 2.1),
  conforming: fc.constantFrom(1.1, 1.2, 1.6),
});
const RINGS = [null, true, false] as const;
const bendingCase = (id: BendingCase['id']): fc.Arbitrary<BendingCase> =>
  fc.record({
    id: fc.constant(id),
    trackWallMm: fc.constantFrom(4, 4.4),
    ring: fc.constantFrom(...RINGS).map((joined) =>
      joined === null || !id.startsWith('ring')
        ? null
        : {
            innerDiameterMm: 200,
            outerDiameterMm: 280,
            thicknessMm: 6,
            bonded: id === 'ring-bonded',
            joinedToPads: joined,
          },
    ),
    peakOverMean: piston,
    rippleMm: piston.map(
      (range): PistonRange => ({ rigid: range.rigid / 100, conforming: range.conforming / 100 }),
    ),
    bossDeflectionMm: fc.constantFrom(0.8, 2.6).map((mm) => ({ rigid: mm, conforming: mm })),
    greatestStressMPa: fc.constantFrom(180, 400).map((MPa) => ({ rigid: MPa, conforming: MPa + 20 })),
    beyondYield: fc.constantFrom(null, null, { rigid: false, conforming: true } as never),
    heat: fc.constant(null),
  }) as fc.Arbitrary<BendingCase>;

test('where an answer worked out again differs, what is said is as written down', async () => {
  const lines: string[] = [];
  const say = (of: string, found: readonly Otherwise[]) =>
    lines.push(
      `${of}: ${found.map(({ what, kept, now }) => `${what}, kept ${kept}, now ${now}`).join('; ')}`,
    );
  const covers = COVERS.map(({ input }) => checkCover(input));
  for (const [i, kept] of covers.entries())
    say('cover', coverAnswersOtherwise(kept, covers[(i + 1) % 40]!, VERDICT_WORD, unitOf(i)));
  const lost = { ...covers[0]!, cut: null, leastWall: null, conformanceProbability: null };
  say('lost then', coverAnswersOtherwise(lost, covers[2]!, VERDICT_WORD, 'mm'));
  say('lost now', coverAnswersOtherwise(covers[2]!, lost, VERDICT_WORD, 'mm'));
  say('lost both', coverAnswersOtherwise(lost, lost, VERDICT_WORD, 'mm'));
  const studs = fc.sample(anyStud, { seed: 20_261_207, numRuns: 40 }).flatMap((input) => {
    try {
      return [checkStud(input)];
    } catch {
      return [];
    }
  });
  for (const [i, kept] of studs.entries())
    say('stud', studAnswersOtherwise(kept, studs[(i + 1) % studs.length]!, FITS, unitOf(i)));
  const bent = fc.sample(bendingCase('after'), { seed: 20_261_208, numRuns: 40 });
  for (const [i, kept] of bent.entries())
    say('bending', bendingAnswersOtherwise(kept, bent[(i + 1) % 40]!, unitOf(i)));
  await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('otherwise.txt');
});

const judged = fc.record({
  fresh: bendingCase('new'),
  after: bendingCase('after'),
  ring: bendingCase('ring-unbonded'),
  has: fc.constantFrom(3, 3, 3, 2, 1, 0),
  welded: fc.boolean(),
  size: fc.constantFrom(undefined, null),
  yieldMPa: fc.constantFrom(250, 420),
  limits: fc.record({
    peakOverNew: fc.constantFrom(null, 1, 1.1, 1.5),
    rippleOverNew: fc.constantFrom(null, 1.05, 1.3),
  }),
  why: fc.constantFrom(null, 'The piston is not given.'),
  ringAllowed: fc.boolean(),
});

test('what limits on bending say of 120 covers is as written down', async () => {
  const told = new Told();
  const lines = fc.sample(judged, { seed: 20_261_209, numRuns: 120 }).map((drawn, i) => {
    const { fresh, after, ring, has, welded, size, yieldMPa, limits, why, ringAllowed } = drawn;
    const base = { wallMm: 4.4, yieldMPa };
    const cases = [fresh, after, ring].slice(0, has);
    const bending = has === 0 ? null : { cases, welded, base, ...(size === undefined ? {} : { ring: null }) };
    const findings = stiffnessFindings({ limits, bending, why, ringAllowed, unit: unitOf(i) });
    for (const finding of findings) told.finding(finding);
    return `${i + 1}. ${findings.map(({ id, status, value }) => `${id} ${status} ${value?.toFixed(4)}`).join('; ')}`;
  });
  await expect(`${lines.join('\n')}\n\n${told}`).toMatchFileSnapshot('bending.txt');
});

const replaced = fc.record({
  leanMm: fc.constantFrom(null, 0, 0.1, 0.4),
  leanAtMm: fc.constantFrom(null, 20, 25),
  offMm: fc.constantFrom(null, 0, 0.1, 0.6),
  stackMm: fc.constantFrom(3.2, 12.7),
  tightestHoleMm: fc.constantFrom(null, 10.3, 11),
  studMostMm: fc.constant(9.5),
  provedNm: fc.constantFrom(null, 40, 60),
  heldIt: fc.constantFrom(null, true, false),
  how: fc.constantFrom('welded' as const, 'pressed' as const),
  limits: fc.constantFrom(
    null,
    { leanAt25Mm: 0.15, offMm: 0.2, proofNm: 50 },
    { leanAt25Mm: null, offMm: null, proofNm: null },
  ),
});

test('what is said of 120 studs welded or pressed in anew is as written down', async () => {
  const told = new Told();
  const lines = fc.sample(replaced, { seed: 20_261_211, numRuns: 120 }).map((stud, i) => {
    try {
      const findings = replacedStud(stud, unitOf(i));
      for (const finding of findings) told.finding(finding);
      return `${i + 1}. ${open(findings)}`;
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
      return `${i + 1}. refused: ${thrown.faults.map(({ path, message }) => `${path} ${message}`).join(' ')}`;
    }
  });
  await expect(`${lines.join('\n')}\n\n${told}`).toMatchFileSnapshot('replaced.txt');
});

test('what a stack wants of 60 studs, what would mend them and their tolerances are as written down', async () => {
  const lines = fc.sample(anyStud, { seed: 20_261_212, numRuns: 60 }).map((input, i) => {
    try {
      const wanted = Object.values(studWanted(input)).map(figure);
      const mended = whatWouldMend(input, unitOf(i)).map((mend) => JSON.stringify(mend, rounded));
      const { rows } = toleranceRows(input);
      const margins = rows.map(
        (row) => `${row.id} ${[row.nominalMm, row.rssMm, row.worstMm].map(figure).join(' ')}`,
      );
      return `${i + 1}. ${wanted.join(' ')}; ${margins.join(', ')}\n   ${mended.join('\n   ')}`;
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
      return `${i + 1}. refused: ${thrown.message}`;
    }
  });
  await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('wanted.txt');
});

const gap = fc.record({
  padDepthMm: fc.constantFrom(28, 26, -1),
  flexplateStandsOutMm: fc.constantFrom(22, 25.5, 27),
  separatorPlateMm: fc.constantFrom(0, 2),
  shimMm: fc.constantFrom(0, 1.5, 4),
  hubEngagementMm: fc.constantFrom(null, 20, 13),
  hubEngagementLeastMm: fc.constantFrom(null, 12, 0),
  makersGapMm: fc.constantFrom(null, { least: 2, most: 4 }, { least: 4, most: 2 }),
});

test('what is said of 80 pull-forward gaps is as written down', async () => {
  const told = new Told();
  const lines = fc.sample(gap, { seed: 20_261_213, numRuns: 80 }).map((input, i) => {
    try {
      const found = pullForward(input as Parameters<typeof pullForward>[0], unitOf(i));
      for (const finding of found.findings) told.finding(finding);
      return `${i + 1}. ${figure(found.gapMm)} ${figure(found.bareGapMm)} ${open(found.findings)}`;
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
      return `${i + 1}. refused: ${thrown.faults.map(({ path, message }) => `${path} ${message}`).join(' ')}`;
    }
  });
  await expect(`${lines.join('\n')}\n\n${told}`).toMatchFileSnapshot('gaps.txt');
});

const rounded = (_key: string, value: unknown) =>
  typeof value === 'number' ? Number(value.toFixed(6)) : value;
