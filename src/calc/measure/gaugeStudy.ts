import type { Answer, Step } from '../../../shared/words/answer.ts';
import type { GaugeStudy, VarianceRow } from '../../../shared/words/gauges/gaugeStudies.ts';
import { printNumber } from '../../../shared/words/print.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { fisherShare } from './fisherShare.ts';
import { meanOfRepeats } from './meanOfRepeats.ts';

/** Readings of a study by cover, then person, then round [mm]. */
export type StudyReadings = readonly (readonly (readonly number[])[])[];

const SOURCE =
  'two-way analysis of variance, ISO 22514-7 and Measurement Systems Analysis, 4th ed., from memory';

/**
 * Repeatability and reproducibility of a gauge from a crossed study: every person reads every cover in every round.
 *   s_r² = MS_within, s_pc² = (MS_pc − MS_within)/r, s_p² = (MS_p − MS_pc)/(n r), s_c² = (MS_c − MS_pc)/(k r);
 *   interaction not significant: MS_pool = (SS_pc + SS_within)/(ν_pc + ν_within) stands for MS_within and MS_pc, s_pc = 0
 *   reproducibility² = s_p² + s_pc²,  both² = s_r² + reproducibility²,  total² = both² + s_c²
 *   categories = ⌊1.41 · s_c / both⌋
 *
 * n covers · k people · r rounds · SS sums of squares [mm²], MS = SS/ν · p people, c covers, pc people by cover ·
 * s standard deviations [mm]. Pooled where chance alone gives so large an F = MS_pc/MS_within in more than 5 of 100.
 * Valid: at least 2 covers, 2 people and 2 rounds, nothing missing. A variance that comes out negative counts as 0 and
 * the answer says so.
 * Throws: where a reading is missing, or there are too few covers, people or rounds.
 * Source: ISO 22514-7 and Measurement Systems Analysis reference manual, 4th ed., analysis of variance, from memory
 * Example: ten parts, three people, three rounds → repeatability 0.199933, both 0.302372 (tests/published/gaugeStudy.test.ts)
 */
export function gaugeStudy(readings: StudyReadings, significance = 0.05): GaugeStudy {
  const [n, k, r] = refuseGaps(readings);
  const squares = sumsOfSquares(readings);
  const row = (ss: number, nu: number) => ({ squares: ss, degreesOfFreedom: nu, mean: ss / nu });
  const people = row(squares.people, k - 1);
  const covers = row(squares.covers, n - 1);
  const interaction = row(squares.interaction, (n - 1) * (k - 1));
  const within = row(squares.within, n * k * (r - 1));
  const chance = against(interaction, within).chance;
  const pooled = chance === null || chance > significance;
  const pool = row(
    interaction.squares + within.squares,
    interaction.degreesOfFreedom + within.degreesOfFreedom,
  );
  const [error, crossed] = pooled ? [pool, pool] : [within, interaction];

  const repeatability = deviation('s_r', error.mean, pooled ? 's_r = √MS_pool' : 's_r = √MS_within');
  const peopleByCover = pooled
    ? deviation('s_pc', 0, 's_pc = 0: counted with the repeats')
    : deviation('s_pc', (interaction.mean - within.mean) / r, 's_pc = √((MS_pc − MS_within)/r)');
  const betweenPeople = deviation(
    's_p',
    (people.mean - crossed.mean) / (n * r),
    's_p = √((MS_p − MS_pc)/(n r))',
  );
  const betweenCovers = deviation(
    's_c',
    (covers.mean - crossed.mean) / (k * r),
    's_c = √((MS_c − MS_pc)/(k r))',
  );
  const reproducibility = together('s_R', [betweenPeople, peopleByCover]);
  const both = together('GRR', [repeatability, reproducibility]);
  const total = together('TV', [both, betweenCovers]);
  return {
    people: { ...rowOf(people), ...against(people, crossed) },
    covers: { ...rowOf(covers), ...against(covers, crossed) },
    interaction: { ...rowOf(interaction), ...against(interaction, within) },
    within: { ...rowOf(within), fRatio: null, chance: null },
    totalSquares: squares.total,
    pooled,
    repeatability,
    betweenPeople,
    peopleByCover,
    reproducibility,
    both,
    betweenCovers,
    total,
    share: shareOf(both, total),
    categories: both.value! > 0 ? Math.floor((1.41 * betweenCovers.value!) / both.value! + 1e-9) : null,
    repeatabilityDegreesOfFreedom: error.degreesOfFreedom,
  };
}

/** How many covers, people and rounds. */
function refuseGaps(readings: StudyReadings): readonly [number, number, number] {
  const [n, k, r] = [readings.length, readings[0]?.length ?? 0, readings[0]?.[0]?.length ?? 0];
  const refuse = (code: string, message: string) => new Refusal(code, [{ path: 'readings', message }]);
  if (n < 2 || k < 2 || r < 2)
    throw refuse('study-small', 'A study needs at least 2 covers, 2 people and 2 rounds. Choose more.');
  const whole = readings.every((one) => one.length === k && one.every((cell) => cell.length === r));
  if (!whole)
    throw refuse('study-gaps', 'A reading is missing. Every person reads every cover in every round.');
  return [n, k, r];
}

interface Mean {
  readonly squares: number;
  readonly degreesOfFreedom: number;
  readonly mean: number;
}

const rowOf = ({ squares, degreesOfFreedom }: Mean) => ({ squares, degreesOfFreedom });

/** Deviations from means keep their digits where readings differ in the last place only. */
function sumsOfSquares(readings: StudyReadings) {
  const [n, k, r] = [readings.length, readings[0]!.length, readings[0]![0]!.length];
  const all = meanOfRepeats(readings.flat(2));
  const ofCover = readings.map((one) => meanOfRepeats(one.flat()));
  const ofPerson = Array.from({ length: k }, (_, p) => meanOfRepeats(readings.flatMap((one) => one[p]!)));
  const sum = { people: 0, covers: 0, interaction: 0, within: 0, total: 0 };
  for (const mean of ofCover) sum.covers += k * r * (mean - all) ** 2;
  for (const mean of ofPerson) sum.people += n * r * (mean - all) ** 2;
  for (const [c, one] of readings.entries()) {
    for (const [p, cell] of one.entries()) {
      const mean = meanOfRepeats(cell);
      sum.interaction += r * (mean - ofCover[c]! - ofPerson[p]! + all) ** 2;
      for (const reading of cell) {
        sum.within += (reading - mean) ** 2;
        sum.total += (reading - all) ** 2;
      }
    }
  }
  return sum;
}

function against(one: Mean, other: Mean): Pick<VarianceRow, 'fRatio' | 'chance'> {
  if (other.mean === 0) return { fRatio: null, chance: one.mean === 0 ? null : 0 };
  const fRatio = one.mean / other.mean;
  return { fRatio, chance: fisherShare(fRatio, [one.degreesOfFreedom, other.degreesOfFreedom]) };
}

const print = (mm: number) => `${printNumber(mm, 5)} mm`;

function deviation(symbol: string, variance: number, formula: string): Answer {
  const value = Math.sqrt(Math.max(0, variance));
  const how: Step[] = [
    { formula, numbers: `${symbol} = √(${variance.toExponential(3)} mm²) = ${print(value)}`, source: SOURCE },
  ];
  if (variance >= 0) return { symbol, value, unit: 'mm', how, warnings: [] };
  const text = `The variance ${symbol}² came out below zero and counts as 0: smaller than the readings can show.`;
  const numbers = `${symbol}² = ${variance.toExponential(3)} mm², counted as 0`;
  return {
    symbol,
    value,
    unit: 'mm',
    how: [{ formula, numbers, source: SOURCE }],
    warnings: [{ code: 'negative', text }],
  };
}

function together(symbol: string, parts: readonly [Answer, Answer]): Answer {
  const value = Math.hypot(parts[0].value!, parts[1].value!);
  const [a, b] = parts;
  return {
    symbol,
    value,
    unit: 'mm',
    how: [
      {
        formula: `${symbol} = √(${a.symbol}² + ${b.symbol}²)`,
        numbers: `${symbol} = √((${print(a.value!)})² + (${print(b.value!)})²) = ${print(value)}`,
        source: SOURCE,
      },
    ],
    warnings: [],
  };
}

function shareOf(both: Answer, total: Answer): Answer {
  const value = total.value === 0 ? null : (100 * both.value!) / total.value!;
  const numbers = `100 · ${print(both.value!)} / ${print(total.value!)}`;
  return {
    symbol: '%GRR',
    value,
    unit: '%',
    how: [
      {
        formula: '%GRR = 100 · GRR / TV',
        numbers: value === null ? numbers : `${numbers} = ${printNumber(value, 2)} %`,
        source: SOURCE,
      },
    ],
    warnings:
      value === null
        ? [{ code: 'no-spread', text: 'All readings are alike; there is nothing to compare.' }]
        : [],
  };
}
