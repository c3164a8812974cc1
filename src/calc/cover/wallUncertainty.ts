import type { Answer } from '../../../shared/words/answer.ts';
import type { Gauge } from '../../../shared/words/cover.ts';
import { printNumber } from '../../../shared/words/print.ts';
import { coverageFactor } from '../measure/coverageFactor.ts';
import {
  type Contribution,
  combinedUncertainty,
  effectiveDegreesOfFreedom,
} from '../measure/effectiveDegreesOfFreedom.ts';
import { pooledRepeatability } from '../measure/pooledRepeatability.ts';

export interface WallUncertainty {
  /** Shared by every station: a gauge that reads thin reads thin everywhere. */
  readonly commonMm: number;
  /** Each station's own. */
  readonly ownMm: readonly number[];
  /** Spread of one reading, and where it comes from. */
  readonly repeatability: { readonly mm: number; readonly from: 'given' | 'pooled' } | null;
  /** Standard uncertainty at the station asked about. */
  readonly standard: Answer;
  readonly expanded: Answer;
  /** null is infinite. */
  readonly degreesOfFreedom: number | null;
  /** What was not given, in words; it counts as zero. */
  readonly missing: readonly string[];
}

/**
 * Uncertainty of the wall left, station by station.
 *   u_c² = u_cal² + u_cut²,   uᵢ² = (a/√12)² + (s/√nᵢ)² + u_z²,   u² = u_c² + uᵢ²,   U = t_p(ν)·u
 *
 * Common to all: u_cal gauge calibration, u_cut cut setting. Each station's own: a resolution, s spread of one
 * reading over nᵢ readings, u_z the indicator's (only where the face was indicated). All [mm].
 * A given s has infinite degrees of freedom; without it, and with repeats, the pooled one has Σ(nᵢ − 1).
 * Valid: independent errors. null when nothing is known.   Source: JCGM 100:2008, 4.2, 4.3.7, 5.1.2, G.4
 * Example: a 0.001, s 0.003, n 2, u_cal 0.005, u_cut 0.005, u_z 0.002 → u 0.00766 (tests/calc/cover/wallUncertainty.test.ts)
 */
export function wallUncertainty({
  gauge,
  walls,
  indicated,
  station,
  confidence,
}: {
  readonly gauge: Gauge | null;
  /** Every reading at every station. */
  readonly walls: readonly (readonly number[])[];
  readonly indicated: boolean;
  readonly station: number;
  readonly confidence: number;
}): WallUncertainty | null {
  const pooled = pooledRepeatability(walls);
  const known = knownOf(gauge, indicated, pooled);
  if (Object.values(known.parts).every((part) => part === null)) return null;

  const common = commonOf(known);
  const here = [...common, ...ownOf(known, walls[station]!.length)];
  const u = combinedUncertainty(here);
  const nu = effectiveDegreesOfFreedom(here);
  const missing = missingOf(known, indicated);
  const warnings =
    missing.length > 0
      ? [{ code: 'not-given', text: `Not entered, so counted as zero: ${missing.join(', ')}.` }]
      : [];
  const { spread } = known.parts;
  return {
    commonMm: combinedUncertainty(common),
    ownMm: walls.map((readings) => combinedUncertainty(ownOf(known, readings.length))),
    repeatability: spread === null ? null : { mm: spread, from: known.spreadFrom },
    standard: {
      symbol: 'u',
      value: u,
      unit: 'mm',
      how: [
        ...(known.spreadFrom === 'pooled' && pooled ? pooled.answer.how : []),
        {
          formula: 'u = √(Σ uᵢ²)',
          numbers: `√(${here.map((one) => `${mm(one.standardUncertaintyMm)}² (${one.name})`).join(' + ')}) = ${mm(u)} mm`,
          source: 'JCGM 100:2008, 5.1.2; resolution as in 4.3.7',
        },
      ],
      warnings,
    },
    expanded: { ...expandedAnswer(u, nu, confidence), warnings },
    degreesOfFreedom: nu,
    missing,
  };
}

const mm = (x: number) => printNumber(x, 5);

/** What is known of the means of measuring, each as a standard uncertainty [mm] or what one is made of; null is unknown. */
interface Known {
  readonly parts: Readonly<Record<'calibration' | 'cut' | 'resolution' | 'spread' | 'face', number | null>>;
  readonly spreadFrom: 'given' | 'pooled';
  /** Degrees of freedom of the spread; null is infinite. */
  readonly spreadNu: number | null;
}

function knownOf(
  gauge: Gauge | null,
  indicated: boolean,
  pooled: ReturnType<typeof pooledRepeatability>,
): Known {
  const given = gauge?.repeatabilityMm ?? null;
  return {
    parts: {
      calibration: gauge?.standardUncertaintyMm ?? null,
      cut: gauge?.cutSettingStandardUncertaintyMm ?? null,
      resolution: gauge?.resolutionMm ?? null,
      spread: given ?? pooled?.standardDeviationMm ?? null,
      face: indicated ? (gauge?.faceStandardUncertaintyMm ?? null) : null,
    },
    spreadFrom: given === null ? 'pooled' : 'given',
    spreadNu: given === null ? (pooled?.degreesOfFreedom ?? null) : null,
  };
}

function contribution(name: string, mm: number | null, nu: number | null = null): Contribution[] {
  return mm === null ? [] : [{ name, standardUncertaintyMm: mm, degreesOfFreedom: nu }];
}

/** Common to all stations. */
function commonOf({ parts }: Known): Contribution[] {
  return [
    ...contribution('gauge calibration', parts.calibration),
    ...contribution('depth of cut', parts.cut),
  ];
}

/** A station's own, with so many readings. */
function ownOf({ parts, spreadNu }: Known, readings: number): Contribution[] {
  const { resolution, spread } = parts;
  return [
    ...contribution('resolution a/√12', resolution === null ? null : resolution / Math.sqrt(12)),
    ...contribution(
      `repeatability s/√${readings}`,
      spread === null ? null : spread / Math.sqrt(readings),
      spreadNu,
    ),
    ...contribution('indicator', parts.face),
  ];
}

function missingOf({ parts }: Known, indicated: boolean): string[] {
  return [
    ...(parts.calibration === null ? ['gauge calibration'] : []),
    ...(parts.resolution === null ? ['gauge resolution'] : []),
    ...(parts.spread === null ? ['gauge repeatability'] : []),
    ...(indicated && parts.face === null ? ['indicator uncertainty'] : []),
    ...(parts.cut === null ? ['depth-of-cut uncertainty'] : []),
  ];
}

function expandedAnswer(u: number, nu: number | null, confidence: number): Omit<Answer, 'warnings'> {
  const factor = coverageFactor(confidence, nu);
  return {
    symbol: 'U',
    value: factor * u,
    unit: 'mm',
    how: [
      {
        formula: 'ν = u⁴/Σ(uᵢ⁴/νᵢ),  U = t_p(ν)·u',
        numbers: `ν ${nu === null ? 'infinite' : printNumber(nu, 1)}, p ${confidence}: U = ${printNumber(factor, 3)} · ${mm(u)} = ${mm(factor * u)} mm`,
        source: 'JCGM 100:2008, G.4.1 and G.3, two-sided',
      },
    ],
  };
}
