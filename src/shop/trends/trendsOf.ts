import type { Family, ShopCriteria } from '../../../shared/words/catalogue.ts';
import type { DecisionKind } from '../../../shared/words/job.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import {
  BIN_NM,
  type ComebackShare,
  type Histogram,
  type Intake,
  type TrendsShown,
  type WallsReceived,
} from '../../../shared/words/trends/trendsShown.ts';
import { wilsonInterval } from '../../calc/measure/wilsonInterval.ts';
import { listEntries } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';
import { TREND_VERSION } from '../../records/trends/keepTrend.ts';
import {
  type BinCount,
  notGathered,
  peaksKept,
  type TrendFigures,
  type TrendQuestion,
  trendFigures,
  wallsUnder,
} from '../../records/trends/trendFigures.ts';
import { limitsFor } from '../limitsFor.ts';

/** More months than this are drawn by year. */
const MOST_MONTHS = 36;
const NM_PER_MM = 1e6;

/** What the shop's jobs amount to, in bins that are round in the reader's unit. */
export async function trendsOf(
  db: Db,
  question: TrendQuestion,
  criteria: ShopCriteria,
  unit: LengthUnit,
): Promise<TrendsShown> {
  const width = BIN_NM[unit];
  const families = await listEntries(db, 'family', { retired: true });
  const minimums = families.flatMap(({ id, body }) => {
    const minimumMm = minimumOf(body, criteria);
    return minimumMm === null ? [] : [{ familyId: id, minimumMm }];
  });
  const figures = await trendFigures(db, question, width);
  const under = await wallsUnder(db, question, minimums);
  const months = intakeOf(figures.months, 7);
  const byYear = months.length > MOST_MONTHS;
  return {
    jobs: figures.jobs,
    notGathered: await notGathered(db, TREND_VERSION),
    months,
    byYear,
    intake: byYear ? intakeOf(figures.months, 4) : months,
    scrapped: figures.scrapped,
    walls: families.flatMap(({ id, name, body }) =>
      wallsOf(figures, id, width.wallNm).map(
        (bins): WallsReceived => ({
          familyId: id,
          name,
          measured: bins.bins.reduce((sum, { n }) => sum + n, 0),
          histogram: bins,
          nominalMm: body.nominalWallMm,
          minimumMm: minimums.find(({ familyId }) => familyId === id)?.minimumMm ?? null,
          under: under.find(({ familyId }) => familyId === id)?.under ?? null,
        }),
      ),
    ),
    cuts: histogram(figures.cuts, width.cutNm),
    days: figures.days.map(({ bin, n }) => ({ days: bin, n })),
    comebacks: comebacksOf(figures, width.leftNm),
    bending: await peaksKept(db, question),
    patterns: families.flatMap(({ id, name }) => {
      const own = figures.patterns.filter(({ familyId }) => familyId === id);
      const counts = Object.fromEntries(own.map(({ pattern, n }) => [pattern, n]));
      return own.length === 0 ? [] : [{ familyId: id, name, counts }];
    }),
    patternsBack: figures.patternsBack,
  };
}

/** The minimum wall of a cover type today: the larger of the maker's figure and the shop's. */
function minimumOf(family: Family, limits: ShopCriteria): number | null {
  const { criteria, makerMinimumWallMm } = limitsFor(family, limits, []);
  const both = [criteria?.minimumWallMm ?? null, makerMinimumWallMm].filter((mm) => mm !== null);
  return both.length === 0 ? null : Math.max(...both);
}

function intakeOf(counted: TrendFigures['months'], letters: number): readonly Intake[] {
  const periods = new Map<string, Record<DecisionKind | 'open', number>>();
  for (const { month, outcome, n } of counted) {
    const period = month.slice(0, letters);
    const outcomes = periods.get(period) ?? { face: 0, 'face-and-ring': 0, replace: 0, open: 0 };
    outcomes[outcome ?? 'open'] += n;
    periods.set(period, outcomes);
  }
  return withNone([...periods].map(([period, outcomes]) => ({ period, outcomes })));
}

/** Periods in which nothing came in stand between the others. */
function withNone(some: readonly Intake[]): readonly Intake[] {
  const [first, last] = [some[0], some.at(-1)];
  if (first === undefined || last === undefined) return [];
  const known = new Map(some.map((one) => [one.period, one]));
  const all: Intake[] = [];
  for (let period = first.period; period <= last.period && all.length < 2400; period = after(period)) {
    all.push(known.get(period) ?? { period, outcomes: { face: 0, 'face-and-ring': 0, replace: 0, open: 0 } });
  }
  return all;
}

/** `2026-12` → `2027-01`; `2026` → `2027`. */
function after(period: string): string {
  const [year = '', month] = period.split('-');
  const next = (value: number, digits: number) => String(value).padStart(digits, '0');
  if (month === undefined) return next(Number(year) + 1, 4);
  return month === '12' ? `${next(Number(year) + 1, 4)}-01` : `${year}-${next(Number(month) + 1, 2)}`;
}

function wallsOf({ walls }: TrendFigures, id: string, nm: number): readonly Histogram[] {
  const own = walls.filter(({ familyId }) => familyId === id);
  return own.length === 0 ? [] : [histogram(own, nm)];
}

function histogram(bins: readonly BinCount[], nm: number): Histogram {
  return {
    widthMm: nm / NM_PER_MM,
    bins: bins.map(({ bin, n }) => ({ fromMm: (bin * nm) / NM_PER_MM, n })),
  };
}

function comebacksOf(
  { byDecision, byWallLeft, patterns }: TrendFigures,
  nm: number,
): TrendsShown['comebacks'] {
  const ofPattern = new Map<
    TrendFigures['patterns'][number]['pattern'],
    { released: number; back: number }
  >();
  for (const { pattern, released, back } of patterns) {
    const sum = ofPattern.get(pattern) ?? { released: 0, back: 0 };
    ofPattern.set(pattern, { released: sum.released + released, back: sum.back + back });
  }
  return {
    byDecision: byDecision.map(({ decision, ...counts }) => ({ decision, ...shareOf(counts) })),
    byWallLeft: byWallLeft.map(({ bin, ...counts }) => ({
      fromMm: (bin * nm) / NM_PER_MM,
      toMm: ((bin + 1) * nm) / NM_PER_MM,
      ...shareOf(counts),
    })),
    byPattern: [...ofPattern]
      .filter(([, { released }]) => released > 0)
      .map(([pattern, counts]) => ({ pattern, ...shareOf(counts) })),
  };
}

function shareOf({ released, back }: { readonly released: number; readonly back: number }): ComebackShare {
  return { released, back, interval: released === 0 ? null : wilsonInterval(back, released) };
}
