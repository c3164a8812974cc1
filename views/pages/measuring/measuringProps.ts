import type { Asked, BenchState, StandingReading } from '../../../shared/measuring/benchState.ts';
import type { Order } from '../../../shared/measuring/steps.ts';
import type { Doubt } from '../../../shared/quantity/doubt.ts';
import type { Job, Pass } from '../../../shared/words/job.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { Frame } from '../../frame.ts';
import type { CoverDrawingShape } from '../../parts/coverAnswer.tsx';

/** What is asked, and where the links of the page without its script lead from there. */
export interface AskedHere extends Asked {
  /** The step asked, as an address carries it; null for a mark between stations. */
  readonly step: string | null;
  readonly back: string | null;
}

/** A step that was passed over. */
export interface SkippedStep {
  readonly step: string;
  readonly label: string;
}

/** A reading to be looked at once more, with the question where there is one. */
export interface ToCheck {
  readonly reading: StandingReading;
  readonly doubt: Doubt | null;
}

export interface MeasuringProps {
  readonly frame: Frame;
  readonly job: Job;
  readonly pass: Pass;
  readonly order: Order;
  readonly shape: CoverDrawingShape;
  readonly stations: BenchState['stations'];
  readonly asked: AskedHere | null;
  readonly skipped: readonly SkippedStep[];
  readonly toCheck: readonly ToCheck[];
  /** How much is measured, in words. */
  readonly coverage: string;
  readonly notLaidOut: readonly string[];
  readonly standing: readonly StandingReading[];
  readonly expected: BenchState['expected'];
  readonly gauge: string;
  readonly id: string;
  readonly typed: string;
  readonly faults: readonly Fault[];
  /** A question about what was typed; it may be confirmed only where it can be a reading as it stands. */
  readonly doubt: {
    readonly question: string;
    readonly meant: string | null;
    readonly mayConfirm: boolean;
  } | null;
  readonly fields: Readonly<Record<string, string>>;
  readonly counts: { readonly measured: number; readonly all: number };
}

/** The measuring page as it is now, with something else asked for. */
export function measuringHref(
  { job, pass, order, skipped }: Pick<MeasuringProps, 'job' | 'pass' | 'order' | 'skipped'>,
  more: Readonly<Record<string, string>> = {},
): string {
  const passed = skipped.map((one) => one.step).join(',');
  const kept = { pass, ...orderFields(order), ...(passed !== '' && { skipped: passed }) };
  return `/jobs/${encodeURIComponent(job.number)}/measure?${new URLSearchParams({ ...kept, ...more })}`;
}

/** The order of measuring as a form and an address carry it. */
export function orderFields({ round, by, asks, times, repeats }: Order): Record<string, string> {
  return { round, by, asks, times: String(times), repeats };
}
