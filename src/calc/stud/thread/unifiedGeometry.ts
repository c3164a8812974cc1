import type { Limits, ThreadGeometry, ThreadSpec } from '../../../../shared/words/stud/thread.ts';
import { tensileStressArea } from './tensileStressArea.ts';

type UnifiedSpec = Extract<ThreadSpec, { system: 'unified' }>;

/** Sizes are whole ten-thousandths of an inch until the end, so that rounding never meets float dust. */
type Tenth = number;

/**
 * Basic and limiting diameters of a Unified thread, classes 2A, 3A, 2B, 3B.
 *   Td2 = 0.0015 ∛D + 0.0015 √LE + 0.015 ∛P²  (six places)     LE = D for UNC, UNF and 4, 6, 8 UN; else 9P
 *   2A: PD tolerance Td2, allowance 0.3 Td2;  3A: 0.75 Td2, no allowance;  2B: 1.3 Td2;  3B: 0.975 Td2
 *   major tolerance (2A, 3A) 0.060 ∛P²;  external minor, rounded root, for reference: D − allowance − 1.19078 P
 *   2B minor tolerance: from 1/4 in 0.25 P − 0.4 P², above 1/4 in pitch 0.15 P; below 1/4 in
 *   0.05 ∛P² + 0.03 P/D − 0.002 within 0.25 P − 0.4 P² and 0.394 P
 *   3B minor tolerance: 0.05 ∛P² + 0.03 P/D − 0.002 within 0.23 P − 1.5 P² (0.12 P at 12 tpi and coarser) and 0.394 P
 *   D basic major diameter [in] · P pitch [in] · LE length of engagement [in]; tolerances and limits to 0.0001 in,
 *   halves to even; internal minor limits then to 0.001 in (not the 3B maximum, nor sizes below No. 6).
 *   Valid: 60° UN threads of the classes named.   Source: ASME B1.1-2003, 5.8 and 8.3, rounding as its tables print
 *   Example: 3/8-24 UNF-2A → pitch diameter 0.3468 / 0.3430 in (published/threads.test.ts)
 */
export function unifiedGeometry(spec: UnifiedSpec): ThreadGeometry {
  const { majorInch: D, threadsPerInch: n } = spec;
  const P = 1 / n;
  const external = spec.class === '2A' || spec.class === '3A';
  const coarse = spec.series === 'UNC' || spec.series === 'UNF' || (spec.series === 'UN' && n <= 8);
  const LE = coarse ? D : 9 * P;
  const Td2Millionths = Math.round(
    1e6 * (0.0015 * Math.cbrt(D) + 0.0015 * Math.sqrt(LE) + 0.015 * Math.cbrt(P * P)),
  );
  const basic = { major: tenths(D), pitch: tenths(D - 0.64951905 * P), minor: tenths(D - 1.08253175 * P) };
  const tenthsOfTd2 = (thousandths: number): Tenth => halvesToEven((Td2Millionths * thousandths) / 1e5);
  const limits = external
    ? externalLimits(spec, basic, tenthsOfTd2)
    : internalLimits(spec, basic, tenthsOfTd2);
  const area = tensileStressArea(spec);
  return {
    designation: spec.designation,
    pitchMm: 25.4 / n,
    majorMm: inMm(limits.major),
    pitchDiameterMm: inMm(limits.pitch),
    minorMm: inMm(limits.minor),
    tensileStressAreaMm2: area.value,
    how: [
      {
        formula: 'Td2 = 0.0015 ∛D + 0.0015 √LE + 0.015 ∛P²',
        numbers: `D ${D} in, LE ${coarse ? 'D' : `9P = ${LE.toFixed(4)} in`}, P 1/${n} in: Td2 = ${(Td2Millionths / 1e6).toFixed(6)} in`,
        source: SOURCE,
      },
      ...limits.how.map(([formula, numbers]) => ({ formula, numbers, source: SOURCE })),
      ...area.how,
    ],
  };
}

const SOURCE = 'ASME B1.1-2003, 8.3';

interface TenthLimits {
  basic: Tenth;
  max: Tenth | null;
  min: Tenth | null;
}

type Basic = Readonly<Record<'major' | 'pitch' | 'minor', Tenth>>;
type ClassLimits = Readonly<Record<'major' | 'pitch' | 'minor', TenthLimits>> & {
  readonly how: readonly (readonly [formula: string, numbers: string])[];
};

/** A stud's, 2A or 3A. */
function externalLimits(
  { majorInch: D, threadsPerInch: n, class: of }: UnifiedSpec,
  basic: Basic,
  tenthsOfTd2: (thousandths: number) => Tenth,
): ClassLimits {
  const P = 1 / n;
  // The tables print 0.3 of Td2 as already rounded to 0.0001 in: 5/8-11 has 0.0016, not the 0.0017 of six places.
  const allowance = of === '2A' ? halvesToEven(0.3 * tenthsOfTd2(1000)) : 0;
  const majorMax = tenths(D - allowance / 1e4);
  const majorMin = majorMax - tenths(0.06 * Math.cbrt(P * P));
  const pitchMax = tenths(D - allowance / 1e4 - 0.64951905 * P);
  const pitchMin = pitchMax - tenthsOfTd2(of === '2A' ? 1000 : 750);
  const minorMax = tenths(D - allowance / 1e4 - 1.19078 * P);
  return {
    major: { basic: basic.major, max: majorMax, min: majorMin },
    pitch: { basic: basic.pitch, max: pitchMax, min: pitchMin },
    minor: { basic: basic.minor, max: minorMax, min: null },
    how: [
      ['allowance = 0.3 Td2 (2A), 0 (3A)', inch(allowance)],
      ['major = D − allowance, less 0.060 ∛P²', `${inch(majorMax)} to ${inch(majorMin)}`],
      [
        `pitch = D − allowance − 0.649519 P, less ${of === '2A' ? '' : '0.75 '}Td2`,
        `${inch(pitchMax)} to ${inch(pitchMin)}`,
      ],
      ['minor, rounded root, for reference = D − allowance − 1.19078 P', inch(minorMax)],
    ],
  };
}

/** A nut's, 2B or 3B. */
function internalLimits(
  { majorInch: D, threadsPerInch: n, class: of }: UnifiedSpec,
  basic: Basic,
  tenthsOfTd2: (thousandths: number) => Tenth,
): ClassLimits {
  const toThousandth = (x: Tenth): Tenth => (D < 0.138 ? x : 10 * halvesToEven(x / 10));
  const pitchMax = basic.pitch + tenthsOfTd2(of === '2B' ? 1300 : 975);
  const minorMin = toThousandth(basic.minor);
  const widest = basic.minor + tenths(minorTolerance(of === '3B', D, n));
  const minorMax = of === '2B' ? toThousandth(widest) : widest;
  return {
    major: { basic: basic.major, max: null, min: basic.major },
    pitch: { basic: basic.pitch, max: pitchMax, min: basic.pitch },
    minor: { basic: basic.minor, max: minorMax, min: minorMin },
    how: [
      [
        `pitch = D − 0.649519 P, plus ${of === '2B' ? '1.3' : '0.975'} Td2`,
        `${inch(basic.pitch)} to ${inch(pitchMax)}`,
      ],
      ['minor = D − 1.082532 P, plus its tolerance', `${inch(minorMin)} to ${inch(minorMax)}`],
    ],
  };
}

function minorTolerance(class3: boolean, D: number, n: number): number {
  const P = 1 / n;
  const bySize = 0.05 * Math.cbrt(P * P) + (0.03 * P) / D - 0.002;
  const within = (least: number) => Math.min(Math.max(bySize, least), 0.394 * P);
  if (class3) return within(n > 12 ? 0.23 * P - 1.5 * P * P : 0.12 * P);
  if (D < 0.25) return within(0.25 * P - 0.4 * P * P);
  return P <= 0.25 ? 0.25 * P - 0.4 * P * P : 0.15 * P;
}

function halvesToEven(x: number): number {
  const below = Math.floor(x);
  const rest = x - below;
  if (Math.abs(rest - 0.5) > 1e-6) return Math.round(x);
  return below % 2 === 0 ? below : below + 1;
}

const tenths = (inches: number): Tenth => halvesToEven(inches * 1e4);
const inch = (x: Tenth): string => `${(x / 1e4).toFixed(4)} in`;
/** 0.0001 in is 0.00254 mm exactly, so six decimals lose nothing and drop the float dust. */
const mm = (x: Tenth): number => Number((x * 0.00254).toFixed(6));

function inMm({ basic, max, min }: TenthLimits): Limits {
  return { basic: mm(basic), max: max === null ? null : mm(max), min: min === null ? null : mm(min) };
}
