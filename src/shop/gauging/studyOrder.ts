import type { StudyPlan, StudyTurn } from '../../../shared/words/gauges/gaugeStudies.ts';

/**
 * Who reads what, and when, drawn by lot: round by round, in each the people in an order of their own, and each of them
 * all stations in an order of their own. Nobody reads the same station twice in a row.
 */
export function studyOrder(
  { covers, stations, people, rounds }: StudyPlan,
  random: (below: number) => number,
): readonly StudyTurn[] {
  const turns: StudyTurn[] = [];
  for (let round = 0; round < rounds; round++) {
    for (const person of shuffled(people.length, random)) {
      const own = shuffled(covers * stations, random);
      const last = turns.at(-1);
      if (last?.person === person && last.station === own[0]) own.push(own.shift()!);
      turns.push(...own.map((station) => ({ station, person, round })));
    }
  }
  return turns;
}

/** 0 to n − 1, each order as likely as any other (Fisher and Yates). */
function shuffled(n: number, random: (below: number) => number): number[] {
  const all = Array.from({ length: n }, (_, i) => i);
  for (let i = n - 1; i > 0; i--) {
    const j = random(i + 1);
    [all[i], all[j]] = [all[j]!, all[i]!];
  }
  return all;
}
