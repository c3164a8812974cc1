import type { CatalogueGauge, Entry } from '../../shared/words/catalogue.ts';
import type { Gauge, GaugeAtHand } from '../../shared/words/cover.ts';
import type { ChosenGauge } from '../../shared/words/job.ts';
import { type Calibration, calibrationUncertainty } from '../calc/measure/calibrationUncertainty.ts';
import { heightUncertainty } from '../calc/measure/heightUncertainty.ts';

const NOTHING: Gauge = {
  standardUncertaintyMm: null,
  resolutionMm: null,
  repeatabilityMm: null,
  faceStandardUncertaintyMm: null,
  cutSettingStandardUncertaintyMm: null,
};

/** What the certificate says; null where it is not kept. */
export function calibrationOf({ calibrationUMm, coverageFactor }: CatalogueGauge): Calibration | null {
  return calibrationUMm === null ? null : { expandedMm: calibrationUMm, coverageFactor };
}

function calibrationMm(gauge: CatalogueGauge): number | null {
  const calibration = calibrationOf(gauge);
  return calibration && calibrationUncertainty(calibration).value;
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

function heightMm(indicator: CatalogueGauge): number | null {
  const { resolutionMm, repeatabilityMm } = indicator;
  const found = heightUncertainty({
    calibration: calibrationOf(indicator),
    stepMm: resolutionMm,
    repeatabilityMm,
  });
  return found?.value ?? null;
}

/** The gauges of the catalog that read walls, for the question which of them would settle a doubt. */
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
