/** Half a sector between a line of symmetry at angle 0 and one at the last angle. Lines rise. */
export interface PlateMesh {
  readonly radiiMm: Float64Array;
  readonly anglesRad: Float64Array;
}

const SAMPLES = 64;

/**
 * Mesh lines through every break, with gaps that follow a wanted size.   count = ⌈∫ dx/size(x)⌉ in each interval
 *
 * Lines between two breaks lie at equal steps of ∫ dx/size, so that neighbors never differ much in width.
 * Valid: breaks rise; size > 0.   Source: first principles (equal share of the density of lines)
 * Example: an even size gives even lines (tests/calc/plate/elements/mesh.test.ts)
 */
export function gradedLines({
  breaks,
  sizeAt,
}: {
  readonly breaks: readonly number[];
  readonly sizeAt: (x: number) => number;
}): Float64Array {
  const lines = [breaks[0]!];
  const summed = new Float64Array(SAMPLES + 1);
  for (let i = 1; i < breaks.length; i++) {
    const [from, to] = [breaks[i - 1]!, breaks[i]!];
    const step = (to - from) / SAMPLES;
    for (let s = 0; s < SAMPLES; s++) {
      summed[s + 1] = summed[s]! + step / sizeAt(from + (s + 0.5) * step);
    }
    const total = summed[SAMPLES]!;
    // A count just above a whole number does not deserve another line.
    const count = Math.max(1, Math.ceil(total - 0.05));
    let s = 0;
    for (let k = 1; k < count; k++) {
      const wanted = (total * k) / count;
      while (summed[s + 1]! < wanted) s++;
      lines.push(from + step * (s + (wanted - summed[s]!) / (summed[s + 1]! - summed[s]!)));
    }
    lines.push(to);
  }
  return Float64Array.from(lines);
}

/**
 * Breaks in rising order, those of the first list before those of the second where two nearly meet: a sliver of an
 * element would cost more exactness than the line is worth.
 */
export function distinctBreaks({
  must,
  may,
  closest,
}: {
  readonly must: readonly number[];
  readonly may: readonly number[];
  readonly closest: number;
}): number[] {
  const [least, most] = [Math.min(...must), Math.max(...must)];
  const kept: number[] = [least, most];
  for (const line of [...must, ...may]) {
    if (line < least || line > most) continue;
    if (kept.every((other) => Math.abs(other - line) > closest)) kept.push(line);
  }
  return kept.sort((a, b) => a - b);
}
