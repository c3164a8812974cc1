import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber, printShare } from '../../../../shared/words/print.ts';
import type { StudCheckInput } from '../../../../shared/words/stud/stud.ts';
import { pilotLead } from '../holes/pilotLinesUp.ts';
import { studNumbers } from '../numbers/studNumbers.ts';
import { refuseStud } from '../refuseStud.ts';

export interface StudTolerances {
  readonly draws: number;
  readonly seed: number;
  /** Shares of the draws; null where the nut, the gap or the room for the tip was not given. */
  readonly clamps: number;
  readonly fullyEngaged: number | null;
  readonly protrudes: number | null;
  readonly startsByHand: number | null;
  /** The tip stands out of the stack with the converter pushed back. */
  readonly tipShows: number | null;
  /** With the converter pushed back the tip is already past the flexplate's face. */
  readonly entersHole: number | null;
  /** Pads seated, the tip stays clear of the engine side. */
  readonly tipClears: number | null;
  /** The stud pilot lines the flexplate's pieces up; null with one piece. */
  readonly linesUp: number | null;
  /** Share in which none fails; a nut that only starts with the converter drawn forward is no failure. */
  readonly noneFails: number;
  /** Share in which every check passes that could be made. */
  readonly allWell: number;
  readonly answer: Answer;
}

/**
 * How often a stud would be well if every size fell anywhere within its tolerance.
 *   share = draws in which the check passes/all draws; each size even between nominal − t and nominal + t
 *   Valid: sizes independent and evenly spread, which says more harm than a centered process does; 100 000 draws know a
 *   share to ± 0.3 % (two standard errors, at worst).   Between nominal and worst case, and no third rule.
 *   Source: Monte Carlo after JCGM 101:2008; even spread where only limits are known, JCGM 100:2008, 4.3.7
 *   Throws: a Refusal that names each field it cannot work with (refuseStud.ts).
 *   Example: two even spreads of ± 0.1 stay within + 0.1 in 7/8 of the draws (calc/stud/match/studTolerances.test.ts)
 */
export function studTolerances(
  input: StudCheckInput,
  { draws = 100_000, seed = 1 }: { readonly draws?: number; readonly seed?: number } = {},
): StudTolerances {
  refuseStud(input);
  const { nut, pullForwardMm: g } = input;
  const room = input.stack.tipRoomMm;
  const count = wellIn(input, draws, seed);
  const allWell = count.all / draws;
  return {
    draws,
    seed,
    clamps: count.clamps / draws,
    fullyEngaged: nut ? count.engaged / draws : null,
    protrudes: nut ? count.protrudes / draws : null,
    startsByHand: g === null ? null : count.starts / draws,
    tipShows: g === null ? null : count.shows / draws,
    entersHole: g === null ? null : count.enters / draws,
    tipClears: room === null ? null : count.clears / draws,
    linesUp: pilotLead({ input }) === null ? null : count.lines / draws,
    noneFails: count.none / draws,
    allWell,
    answer: {
      symbol: 'P',
      value: allWell,
      unit: '',
      how: [
        {
          formula: 'P = draws in which every check passes/all draws',
          numbers: `${count.all} of ${draws} (seed ${seed}) = ${printShare(allWell)}; ± ${printNumber(200 * Math.sqrt((allWell * (1 - allWell)) / draws), 2)} %`,
          source: 'JCGM 101:2008; even spread, JCGM 100:2008, 4.3.7',
        },
      ],
      warnings: [],
    },
  };
}

/** In how many draws each check passes; what was not given passes in all of them. */
function wellIn(input: StudCheckInput, draws: number, seed: number) {
  const { stud, stack, nut, criteria, pullForwardMm: g } = input;
  const room = stack.tipRoomMm;
  const { pitchMm: P, layerTolerancesMm, washerMm, stackMm } = studNumbers(input);
  const lead = pilotLead({ input });
  const before = new Set((lead?.pieces ?? []).slice(0, -1).map((piece) => stack.layers.indexOf(piece)));
  const random = seeded(seed);
  const spread = (t: number): number => (t === 0 ? 0 : t * (2 * random() - 1));
  const tl = stud.lengthToleranceMm;
  const cs = nut?.countersinkMm ?? 0;
  const count = {
    clamps: 0,
    engaged: 0,
    protrudes: 0,
    starts: 0,
    shows: 0,
    enters: 0,
    clears: 0,
    lines: 0,
    none: 0,
    all: 0,
  };
  for (let i = 0; i < draws; i++) {
    let S = stackMm.nominal;
    let E = lead?.beforeMm ?? 0;
    for (const [at, t] of layerTolerancesMm.entries()) {
      const off = spread(t);
      S += off;
      if (before.has(at)) E += off;
    }
    const start = stud.threadStartMm + spread(tl);
    const end = stud.threadEndMm + spread(tl);
    const tip = stud.projectionMm + spread(tl);
    const top = S + washerMm + (nut ? nut.heightMm + spread(nut.toleranceMm) : 0);
    const clamps = S + washerMm - start >= P - 1e-9;
    const engaged = nut === null || (end >= top - cs - 1e-9 && start <= S + washerMm + cs + 1e-9);
    const protrudes = nut === null || end - top >= criteria.protrusionThreads * P - 1e-9;
    const shows = g === null || tip - g - S > 1e-9;
    const enters = g === null || tip - g > 1e-9;
    const clears = room === null || room - tip > 1e-9;
    const starts =
      g === null || (!nut?.prevailing && shows && end - g - S >= criteria.startThreads * P - 1e-9);
    if (clamps) count.clamps++;
    if (engaged) count.engaged++;
    if (protrudes) count.protrudes++;
    if (starts) count.starts++;
    if (shows) count.shows++;
    if (enters) count.enters++;
    const lines = lead === null || tip - end - E >= lead.leadMm - 1e-9;
    if (clears) count.clears++;
    if (lines) count.lines++;
    // A tip that shows is past the flexplate's face.
    const rest = clamps && engaged && protrudes && clears;
    if (rest && shows) count.none++;
    if (rest && starts && lines) count.all++;
  }
  return count;
}

/** A 32-bit generator with a seed: the same draws every time, on every machine. */
function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let x = Math.imul(state ^ (state >>> 15), 1 | state);
    x = (x + Math.imul(x ^ (x >>> 7), 61 | x)) ^ x;
    return ((x ^ (x >>> 14)) >>> 0) / 2 ** 32;
  };
}
