import type { Answer } from '../answer.ts';
import type { CatalogueStack } from '../catalogue.ts';
import type { Finding } from '../finding.ts';
import type { StudChoice } from './choices.ts';

export interface PullForwardInput {
  /** Bell housing face to the pads, converter fully back on the pump. */
  readonly padDepthMm: number;
  /** Flexplate's pad side beyond the engine's face, toward the transmission; negative when it lies deeper. */
  readonly flexplateStandsOutMm: number;
  /** A plate between engine and bell housing. */
  readonly separatorPlateMm: number;
  /** Equal shims under every pad. */
  readonly shimMm: number;
  /** Hub in the pump with the converter fully back; null when not measured. */
  readonly hubEngagementMm: number | null;
  readonly hubEngagementLeastMm: number | null;
  /** The maker's gap; null for the usual one. */
  readonly makersGapMm: { readonly least: number; readonly most: number } | null;
}

export interface PullForward {
  readonly bareGapMm: number;
  readonly gapMm: number;
  readonly addedToStackMm: number;
  readonly hubEngagementAfterMm: number | null;
  readonly gapLimitsMm: { readonly least: number; readonly most: number };
  /** The widest gap at which the hub is still deep enough in the pump; null when that is not judged. */
  readonly hubAllowsGapMm: number | null;
  /** Equal shims that bring the gap within its limits and keep the hub deep enough; null when none can. */
  readonly shimsMm: { readonly least: number; readonly most: number } | null;
  readonly findings: readonly Finding[];
  readonly answers: Readonly<Record<'gapMm' | 'hubEngagementAfterMm', Answer | null>>;
}

export interface ShimChoice {
  /** Under each pad: one shim, or two on top of each other; empty where none is needed. */
  readonly thicknessesMm: readonly number[];
  readonly totalMm: number;
  readonly gapMm: number;
}

/** The depths a gap follows from, before any shim. */
export type GapMeasured = Omit<PullForwardInput, 'shimMm'>;

/** What the form of the gap holds. */
export interface GapTyped extends Omit<GapMeasured, 'makersGapMm'> {
  readonly leastGapMm: number | null;
  readonly mostGapMm: number | null;
  /** Those in stock; empty for the shop's. */
  readonly shimsMm: readonly number[];
  /** The one chosen, at each pad; null for the one recommended. */
  readonly shimMm: number | null;
}

export interface GapFound {
  readonly measured: GapMeasured;
  readonly shimMm: number;
  /** The one that suits best first; empty where none of those there are does. */
  readonly recommended: readonly ShimChoice[];
  readonly found: PullForward;
  /** The stack asked for, with these shims in it; null until one is chosen. */
  readonly stack: CatalogueStack | null;
  /** The stack a stud can be held against at this gap; null without a stack, or with no gap left. */
  readonly usable: CatalogueStack | null;
  /** The stud that then suits best. */
  readonly choice: StudChoice | null;
}
