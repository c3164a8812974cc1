import { turned } from '../../../../shared/words/places.ts';

/** A place of one row with how deep its heat mark is; 0 where there is none. */
export interface MarkedPlace {
  readonly angleDeg: number;
  readonly depthMm: number;
}

/** Mean depth of a row, and what is deeper than it: toward one side, and behind the studs. */
export interface MarksRound {
  readonly meanMm: number;
  /** a₁ and b₁: toward 0° and toward 90°. */
  readonly towardMm: readonly [number, number];
  /** c, positive behind the studs. */
  readonly behindStudsMm: number;
}

/** Below this share of all arcs a term cannot be told from the others. */
const LEAST_PIVOT = 0.02;

/**
 * How heat marks lie round one row: least squares, each place weighed by its arc.
 *   d(θ) = d₀ + a₁·cos θ + b₁·sin θ + c·cos Nθ,   min Σ wᵢ (dᵢ − d(θᵢ))²
 *
 * d depth of the mark [mm] · θ angle from stud 1 · N studs · w arc halfway to the neighbors on both sides [deg].
 * Valid: a place behind every stud and one between every pair, so 2N or more; null where the terms cannot be told
 * apart, as with places all midway between stud and gap.
 * Source: weighted linear least squares (first principles); the terms are common practice, no source
 * Example: four studs, 0.2 mm behind each and none between → d₀ 0.1, c 0.1 mm (tests/calc/cover/marks/marksRound.test.ts)
 */
export function marksRound(places: readonly MarkedPlace[], studCount: number): MarksRound | null {
  const weights = arcs(places);
  const normal = Array.from({ length: 4 }, () => [0, 0, 0, 0, 0]);
  for (const [k, { angleDeg, depthMm }] of places.entries()) {
    const angle = (turned(angleDeg) * Math.PI) / 180;
    const terms = [1, Math.cos(angle), Math.sin(angle), Math.cos(studCount * angle), depthMm];
    for (let i = 0; i < 4; i++) {
      for (let j = 0; j < 5; j++) normal[i]![j]! += weights[k]! * terms[i]! * terms[j]!;
    }
  }
  const found = eliminated(normal);
  if (found === null) return null;
  const [meanMm, toward0, toward90, behindStudsMm] = found as [number, number, number, number];
  return { meanMm, towardMm: [toward0, toward90], behindStudsMm };
}

/** The mean of a row that has too few places for more, each weighed by its arc. */
export function meanRound(places: readonly MarkedPlace[]): number {
  const weights = arcs(places);
  return places.reduce((sum, { depthMm }, i) => sum + weights[i]! * depthMm, 0);
}

/** The share of the turn that each place stands for; places at one angle share theirs. */
function arcs(places: readonly MarkedPlace[]): readonly number[] {
  const round = places.map((place, i) => ({ i, at: turned(place.angleDeg) })).sort((a, b) => a.at - b.at);
  const found: number[] = new Array(places.length).fill(0);
  for (const [k, { i, at }] of round.entries()) {
    const last = k === round.length - 1;
    const gap = last ? round[0]!.at + 360 - at : round[k + 1]!.at - at;
    found[i]! += gap / 720;
    found[round[last ? 0 : k + 1]!.i]! += gap / 720;
  }
  return found;
}

/** Solves four equations by elimination; null where a pivot is next to nothing. */
function eliminated(rows: number[][]): readonly number[] | null {
  for (let i = 0; i < 4; i++) {
    const pivot = rows[i]![i]!;
    if (!(pivot > LEAST_PIVOT)) return null;
    for (let k = i + 1; k < 4; k++) {
      const share = rows[k]![i]! / pivot;
      for (let j = i; j < 5; j++) rows[k]![j]! -= share * rows[i]![j]!;
    }
  }
  const x = [0, 0, 0, 0];
  for (let i = 3; i >= 0; i--) {
    const known = x.reduce((sum, value, j) => (j > i ? sum + rows[i]![j]! * value : sum), 0);
    x[i] = (rows[i]![4]! - known) / rows[i]![i]!;
  }
  return x;
}
