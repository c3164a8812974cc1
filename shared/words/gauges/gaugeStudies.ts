import type { Answer } from '../answer.ts';

/** What is read in a study, and by whom; told to whoever reads one place at a time. */
export interface StudyPlan {
  /** Numbered from 1, as they lie on the bench. */
  readonly covers: number;
  /** On each cover, evenly spaced from stud 1. */
  readonly stations: number;
  /** Initials. */
  readonly people: readonly string[];
  /** How often each person reads each station. */
  readonly rounds: number;
}

/** One reading that is asked for; all three are counted from 0. */
export interface StudyTurn {
  /** Of a cover: cover 1 first, its stations in turn. */
  readonly station: number;
  readonly person: number;
  readonly round: number;
}

export interface StudyReading {
  /** Made by whoever sends it. */
  readonly id: string;
  /** Of the order, from 0. */
  readonly place: number;
  /** UTC, ISO 8601. */
  readonly at: string;
  /** Whoever saved it: the person whose turn it was, where nobody signs in. */
  readonly who: string;
  readonly valueMm: number;
  readonly typed: string;
  /** Asked about, and confirmed. */
  readonly confirmed: boolean;
  readonly withdrawn: { readonly who: string; readonly at: string; readonly why: string } | null;
}

/** A study of one gauge: several people read the same covers several times, without seeing what was read before. */
export interface KeptStudy {
  readonly number: number;
  readonly gaugeId: string;
  /** UTC, ISO 8601. */
  readonly at: string;
  /** Of the shop, `2026-11-24`. */
  readonly day: string;
  readonly who: string;
  readonly plan: StudyPlan;
  /** Drawn by lot when it was set up, and kept. */
  readonly order: readonly StudyTurn[];
  /** In the order they were saved, withdrawn ones too. */
  readonly readings: readonly StudyReading[];
  readonly stopped: { readonly who: string; readonly at: string; readonly why: string } | null;
}

/** Which cover, counted from 1, and where on it. */
export function stationOf(
  { stations }: Pick<StudyPlan, 'stations'>,
  station: number,
): { readonly cover: number; readonly angleDeg: number } {
  return { cover: Math.floor(station / stations) + 1, angleDeg: (360 * (station % stations)) / stations };
}

/** The reading that counts at each place of the order; null where there is none. */
export function standingReadings({
  order,
  readings,
}: Pick<KeptStudy, 'order' | 'readings'>): readonly (StudyReading | null)[] {
  const standing: (StudyReading | null)[] = order.map(() => null);
  for (const reading of readings) if (reading.withdrawn === null) standing[reading.place] = reading;
  return standing;
}

/** The place that is read next; null where every place has been read, or the study was stopped. */
export function nextPlace(study: KeptStudy): number | null {
  if (study.stopped !== null) return null;
  const next = standingReadings(study).indexOf(null);
  return next < 0 ? null : next;
}

/** One row of the analysis of variance. */
export interface VarianceRow {
  readonly squares: number;
  readonly degreesOfFreedom: number;
  /** null where there is none to hold it against. */
  readonly fRatio: number | null;
  /** How often chance alone would give so large a ratio; null where there is no ratio. */
  readonly chance: number | null;
}

export interface GaugeStudy {
  readonly people: VarianceRow;
  readonly covers: VarianceRow;
  readonly interaction: VarianceRow;
  readonly within: VarianceRow;
  readonly totalSquares: number;
  /** The interaction is no larger than chance would make it, and is counted with the repeats. */
  readonly pooled: boolean;
  /** Standard deviations. */
  readonly repeatability: Answer;
  readonly betweenPeople: Answer;
  /** How differently people read different covers; 0 where it is counted with the repeats. */
  readonly peopleByCover: Answer;
  /** What a change of hands adds: between people, and people by cover. */
  readonly reproducibility: Answer;
  readonly both: Answer;
  readonly betweenCovers: Answer;
  readonly total: Answer;
  /** Repeatability and reproducibility as a share of the total [%]. */
  readonly share: Answer;
  /** Sizes the gauge can tell apart among these covers; null where the readings do not spread. */
  readonly categories: number | null;
  readonly repeatabilityDegreesOfFreedom: number;
}

/** What the readings of a study say so far: of whole rounds alone, where it was stopped early. */
export interface StudyAnswer {
  /** Rounds in which every person read every station. */
  readonly rounds: number;
  /** Readings of a round that was not finished. */
  readonly leftOver: number;
  /** null with fewer than two whole rounds. */
  readonly variance: GaugeStudy | null;
  /** What repeats alone say where there is no more; null without a repeat. */
  readonly repeatsOnly: { readonly repeatability: Answer; readonly degreesOfFreedom: number } | null;
  /** Readings taken again after the figures could be seen. */
  readonly takenAgain: number;
}

/** How far above the minimum one reading must be, to be as sure as the shop asks. */
export interface StudyMeans {
  readonly confidence: number;
  /** Repeatability as the catalog has it of the gauge now; null where it has none. */
  readonly enteredMm: number | null;
  readonly marginEnteredMm: number;
  readonly marginFoundMm: number;
}

/** What ordinary jobs say of a gauge: repeats at one station of one job, pooled. */
export interface RepeatsTold {
  readonly jobs: number;
  readonly stations: number;
  readonly repeatability: Answer;
  readonly degreesOfFreedom: number;
}
