import type { Step } from '../../../../shared/words/answer.ts';
import type { Limits, ThreadGeometry, ThreadSpec } from '../../../../shared/words/stud/thread.ts';
import { preferredR40 } from './preferredR40.ts';
import { tensileStressArea } from './tensileStressArea.ts';

type MetricSpec = Extract<ThreadSpec, { system: 'metric' }>;

/** By pitch P [mm]: deviation es of position g, major tolerance Td(6), minor tolerance TD1(6), all µm; as printed. */
const BY_PITCH: ReadonlyMap<number, readonly [es: number, Td: number, TD1: number | null]> = new Map([
  [0.2, [17, 56, null]],
  [0.25, [18, 67, null]],
  [0.3, [18, 75, 85]],
  [0.35, [19, 85, 100]],
  [0.4, [19, 95, 112]],
  [0.45, [20, 100, 125]],
  [0.5, [20, 106, 140]],
  [0.6, [21, 125, 160]],
  [0.7, [22, 140, 180]],
  [0.75, [22, 140, 190]],
  [0.8, [24, 150, 200]],
  [1, [26, 180, 236]],
  [1.25, [28, 212, 265]],
  [1.5, [32, 236, 300]],
  [1.75, [34, 265, 335]],
  [2, [38, 280, 375]],
  [2.5, [42, 335, 450]],
  [3, [48, 375, 500]],
  [3.5, [53, 425, 560]],
  [4, [60, 475, 600]],
  [4.5, [63, 500, 670]],
  [5, [71, 530, 710]],
  [5.5, [75, 560, 750]],
  [6, [80, 600, 800]],
  [8, [100, 710, 1000]],
]);

/** Nominal diameter ranges of ISO 965-1, over and up to and including [mm]. */
const RANGES = [0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45, 90, 180, 355, 710] as const;

/** Where the standard's table prints another R40 number than its own formula gives: upper end of range, P, Td2(6). */
const PRINTED_OTHERWISE = [
  { upTo: 5.6, P: 0.5, Td2: 75 },
  { upTo: 90, P: 5, Td2: 250 },
  { upTo: 355, P: 3, Td2: 250 },
] as const;

/**
 * Basic and limiting diameters of an ISO metric thread, classes 6g and 6H.
 *   d2 = d − 0.649519 P   D1 = d − 1.082532 P   external minor, rounded root, for reference: d − es − 1.226869 P
 *   Td(6) = 180 ∛P² − 3.15/√P   TD1(6) = 433 P − 190 P^1.22 (P ≤ 0.8), 230 P^0.7 (P ≥ 1)   es = 15 + 11 P
 *   Td2(6) = 90 P^0.4 d^0.1 with d the geometric mean of its range   TD2(6) five R40 steps above Td2(6)
 *   d basic major diameter [mm] · P pitch [mm] · tolerances [µm], each to the nearest R40 number; a pitch of the
 *   standard takes the number its tables print, which differs from the formula in a few places.
 *   Valid: d over 0.99 up to 355 mm.   Source: ISO 724:1993; ISO 965-1:1998, tables 1, 3, 4, 5 and clause 13
 *   Example: M10 × 1.5 - 6g → pitch diameter 8.994 / 8.862 mm (published/threads.test.ts)
 */
export function metricGeometry(spec: MetricSpec): ThreadGeometry {
  const { majorMm: d, pitchMm: P } = spec;
  const printed = BY_PITCH.get(P);
  const es = printed?.[0] ?? Math.round(15 + 11 * P);
  const Td = printed?.[1] ?? preferredR40({ valueUm: 180 * Math.cbrt(P * P) - 3.15 / Math.sqrt(P) });
  const TD1 = printed?.[2] ?? preferredR40({ valueUm: P < 1 ? 433 * P - 190 * P ** 1.22 : 230 * P ** 0.7 });
  const upper = RANGES.findIndex((limit, index) => index > 0 && d <= limit + 1e-9);
  const mean = Math.sqrt(RANGES[upper - 1]! * RANGES[upper]!);
  const Td2 =
    PRINTED_OTHERWISE.find((row) => row.upTo === RANGES[upper] && row.P === P)?.Td2 ??
    preferredR40({ valueUm: 90 * P ** 0.4 * mean ** 0.1 });
  const TD2 = preferredR40({ valueUm: Td2, steps: 5 });

  const um = (mm: number): number => Math.round(mm * 1000);
  const d2 = um(d - 0.64951905 * P);
  const D1 = um(d - 1.08253175 * P);
  const how: Step[] = [];
  const say = (formula: string, numbers: string, source: string) => {
    how.push({ formula, numbers, source });
  };
  say('d2 = d − 0.649519 P', `${d} − 0.649519 · ${P} = ${inMm(d2)} mm`, 'ISO 724:1993');
  say('D1 = d − 1.082532 P', `${d} − 1.082532 · ${P} = ${inMm(D1)} mm`, 'ISO 724:1993');
  let major: Limits;
  let pitch: Limits;
  let minor: Limits;
  if (spec.class === '6g') {
    major = limits(um(d), um(d) - es, um(d) - es - Td);
    pitch = limits(d2, d2 - es, d2 - es - Td2);
    minor = limits(D1, um(d - es / 1000 - 1.226869 * P), null);
    say('major = d − es, less Td', `es ${es} µm, Td ${Td} µm: ${major.max} to ${major.min} mm`, SOURCE);
    say('pitch = d2 − es, less Td2', `Td2 ${Td2} µm: ${pitch.max} to ${pitch.min} mm`, SOURCE);
    say('minor, rounded root, for reference = d − es − 1.226869 P', `${minor.max} mm`, SOURCE);
  } else {
    major = limits(um(d), null, um(d));
    pitch = limits(d2, d2 + TD2, d2);
    minor = limits(D1, D1 + TD1, D1);
    say('pitch = D2, plus TD2', `TD2 ${TD2} µm: ${pitch.min} to ${pitch.max} mm`, SOURCE);
    say('minor = D1, plus TD1', `TD1 ${TD1} µm: ${minor.min} to ${minor.max} mm`, SOURCE);
  }
  const area = tensileStressArea(spec);
  return {
    designation: spec.designation,
    pitchMm: P,
    majorMm: major,
    pitchDiameterMm: pitch,
    minorMm: minor,
    tensileStressAreaMm2: area.value,
    how: [...how, ...area.how],
  };
}

const SOURCE = 'ISO 965-1:1998';
const inMm = (um: number): number => um / 1000;

function limits(basic: number, max: number | null, min: number | null): Limits {
  return {
    basic: inMm(basic),
    max: max === null ? null : inMm(max),
    min: min === null ? null : inMm(min),
  };
}
