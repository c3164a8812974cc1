import type { CatalogueGauge, Entry, Family, ShopCriteria } from '../../shared/words/catalogue.ts';
import type { Gauge, GaugeAtHand } from '../../shared/words/cover.ts';
import type { GaugeReading, GaugeRoom } from '../../shared/words/gauges/gaugeReading.ts';
import type { ChosenGauge } from '../../shared/words/job.ts';
import { governingMinimum } from '../calc/cover/governingMinimum.ts';
import { type Calibration, calibrationUncertainty } from '../calc/measure/calibrationUncertainty.ts';
import { coverageFactor } from '../calc/measure/coverageFactor.ts';
import { heightUncertainty } from '../calc/measure/heightUncertainty.ts';
import { sureMargin } from '../calc/measure/sureMargin.ts';
import { limitsFor } from './limitsFor.ts';

const NOTHING: Gauge = {
  standardUncertaintyMm: null,
  resolutionMm: null,
  repeatabilityMm: null,
  faceStandardUncertaintyMm: null,
  cutSettingStandardUncertaintyMm: null,
};

/** What the certificate says; null where it is not kept. */
export function calibrationOf({
  calibrationUMm,
  coverageFactor,
}: Pick<CatalogueGauge, 'calibrationUMm' | 'coverageFactor'>): Calibration | null {
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

type Figures = Pick<
  CatalogueGauge,
  'gaugeKind' | 'resolutionMm' | 'calibrationUMm' | 'coverageFactor' | 'repeatabilityMm'
>;

/** How sure one reading with this gauge is, at the confidence the shop asks for, beside what it is used for. */
export function gaugeReading(
  gauge: Figures,
  { confidence, faceRunoutLimitMm }: Pick<ShopCriteria, 'confidence' | 'faceRunoutLimitMm'>,
  leastSpare: GaugeRoom | null,
): GaugeReading {
  const calibration = calibrationOf(gauge);
  const { resolutionMm: stepMm, repeatabilityMm } = gauge;
  const standard = heightUncertainty({ calibration, stepMm, repeatabilityMm })?.value ?? null;
  const indicates = gauge.gaugeKind === 'indicator';
  const runout =
    faceRunoutLimitMm === null ? null : { says: 'runout allowed after the cut', mm: faceRunoutLimitMm };
  return {
    way: indicates ? 'either' : 'above',
    confidence,
    sureMm:
      standard === null
        ? null
        : indicates
          ? coverageFactor(confidence, null) * standard
          : sureMargin({ marginsMm: [0], commonMm: standard, ownMm: [0], confidence }),
    parts: {
      calibration: calibration && calibrationUncertainty(calibration).value,
      resolution: stepMm === null ? null : stepMm / Math.sqrt(12),
      repeatability: repeatabilityMm,
    },
    room: indicates ? runout : leastSpare,
  };
}

/** The cover type with the least metal between new wall and minimum; null where none has a minimum. */
export function leastSpare(families: readonly Family[], limits: ShopCriteria): GaugeRoom | null {
  const spare = families.flatMap((family) => {
    const { criteria, makerMinimumWallMm, makerMinimumWallSource } = limitsFor(family, limits, []);
    const minimum = governingMinimum({
      makerMm: makerMinimumWallMm,
      makerSource: makerMinimumWallSource,
      shopMm: criteria?.minimumWallMm ?? null,
      shopSource: criteria?.minimumWallSource ?? null,
    });
    const mm = minimum === null ? 0 : family.nominalWallMm - minimum.mm;
    return mm > 0 ? [{ says: `new wall to minimum, ${family.name}`, mm }] : [];
  });
  return spare.reduce<GaugeRoom | null>((least, one) => (least && least.mm <= one.mm ? least : one), null);
}
