import type { CatalogueGauge, Entry } from '../../shared/words/catalogue.ts';
import type { Gauge, GaugeAtHand } from '../../shared/words/cover.ts';
import type { ChosenGauge } from '../../shared/words/job.ts';

const NOTHING: Gauge = {
  standardUncertaintyMm: null,
  resolutionMm: null,
  repeatabilityMm: null,
  faceStandardUncertaintyMm: null,
  cutSettingStandardUncertaintyMm: null,
};

/** Standard uncertainty of the calibration, U/k; null where the certificate's figures are not kept. */
function calibrationMm({ calibrationUMm, coverageFactor }: CatalogueGauge): number | null {
  return calibrationUMm === null ? null : calibrationUMm / coverageFactor;
}

/** What is known of the measuring: as typed, and where nothing was typed, as the chosen gauges have it. */
export function figuresOf(typed: Gauge | null, chosen: readonly ChosenGauge[]): Gauge | null {
  if (typed === null && chosen.length === 0) return null;
  const wall = chosen.find((one) => one.use === 'wall')?.gauge;
  const face = chosen.find((one) => one.use === 'face')?.gauge;
  const figures = typed ?? NOTHING;
  return {
    standardUncertaintyMm: figures.standardUncertaintyMm ?? (wall ? calibrationMm(wall) : null),
    resolutionMm: figures.resolutionMm ?? wall?.resolutionMm ?? null,
    repeatabilityMm: figures.repeatabilityMm ?? wall?.repeatabilityMm ?? null,
    faceStandardUncertaintyMm: figures.faceStandardUncertaintyMm ?? (face ? heightMm(face) : null),
    cutSettingStandardUncertaintyMm: figures.cutSettingStandardUncertaintyMm,
  };
}

/**
 * Standard uncertainty of one height by indicator; null where nothing is known.   u = √( (U/k)² + a²/12 + s² )
 *
 * U/k of the certificate, a smallest step of the dial, s spread of repeats [mm]. Reading to the nearest step leaves an
 * error spread evenly over ± a/2. Source: JCGM 100:2008 (GUM), 4.3.7 and 5.1.2,
 * from memory.
 */
function heightMm(indicator: CatalogueGauge): number | null {
  const parts = [
    calibrationMm(indicator),
    indicator.resolutionMm === null ? null : indicator.resolutionMm / Math.sqrt(12),
    indicator.repeatabilityMm,
  ].filter((part) => part !== null);
  return parts.length === 0 ? null : Math.hypot(...parts);
}

/** The gauges of the catalogue that read walls, for the question which of them would settle a doubt. */
export function gaugesAtHand(gauges: readonly Entry<'gauge'>[]): GaugeAtHand[] {
  return gauges
    .filter(({ body }) => body.gaugeKind !== 'indicator' && body.calibrationUMm !== null)
    .map(({ body }) => ({
      name: body.name,
      standardUncertaintyMm: calibrationMm(body),
      resolutionMm: body.resolutionMm,
      repeatabilityMm: body.repeatabilityMm,
    }));
}

/** The figures somebody typed: those that the chosen gauges do not have by themselves. */
export function figuresTyped(figures: Gauge | null, chosen: readonly ChosenGauge[]): Gauge | null {
  const own = figuresOf(null, chosen);
  if (figures === null || own === null) return figures;
  const rest = Object.entries(figures).map(([key, mm]) => [key, mm === own[key as keyof Gauge] ? null : mm]);
  return Object.fromEntries(rest) as unknown as Gauge;
}
