import type { MarksHeld, PistonRange } from '../../../shared/words/bending/bending.ts';
import type { PressureMap, StiffnessAnswer } from '../../../shared/words/bending/stiffness.ts';

interface Mark {
  readonly angleDeg: number;
  readonly radiusMm: number;
  readonly depthMm: number;
}

/** Of the friction surface’s area; the marks must lie on pressed metal by so much more often than chance, or they do not say it. */
const CLEARLY = 0.15;
const FEWEST = 3;

/**
 * Do the marks sit where the lining presses? Of the darkening, weighed by depth, the share that lies where p > p_m,
 * beside the share of the friction surface’s area where p > p_m.
 *   agree: yes where it is more by 0.15 under both pistons, one where under one of them, no where it is more under
 *   neither, unclear between
 *
 * Valid: three marks or more, else null. Source: this program’s own; the 0.15 is its choice
 * Example: marks behind the studs and outside agree, in mid friction surface under one piston, between studs not (tests/calc/plate/marksHeld.test.ts)
 */
export function marksHeld({
  marks,
  studCount,
  answers,
}: {
  readonly marks: readonly Mark[];
  readonly studCount: number;
  readonly answers: Readonly<Record<keyof PistonRange, StiffnessAnswer>>;
}): MarksHeld | null {
  const deep = marks.filter(({ depthMm }) => depthMm > 0);
  if (deep.length < FEWEST) return null;
  const total = deep.reduce((sum, { depthMm }) => sum + depthMm, 0);
  const onPressed = (answer: StiffnessAnswer) =>
    deep.reduce(
      (sum, mark) =>
        pressureUnder(answer.pressureMap, mark, studCount) > answer.meanPressureMPa
          ? sum + mark.depthMm
          : sum,
      0,
    ) / total;
  const held: PistonRange = {
    rigid: onPressed(answers.rigid),
    conforming: onPressed(answers.conforming),
  };
  const area: PistonRange = {
    rigid: pressedArea(answers.rigid),
    conforming: pressedArea(answers.conforming),
  };
  const more = [held.rigid - area.rigid, held.conforming - area.conforming];
  return { count: deep.length, onPressed: held, pressedArea: area, agree: agreement(more) };
}

function agreement(more: readonly number[]): MarksHeld['agree'] {
  if (more.every((by) => by >= CLEARLY)) return 'yes';
  if (more.some((by) => by >= CLEARLY)) return 'one';
  return more.every((by) => by <= 0) ? 'no' : 'unclear';
}

/** Bilinear between the points of the map; beside the friction surface, its nearest edge. */
function pressureUnder(map: PressureMap, { angleDeg, radiusMm }: Mark, studCount: number): number {
  const pitch = 360 / studCount;
  const turned = ((angleDeg % pitch) + pitch) % pitch;
  const folded = Math.min(turned, pitch - turned);
  const [row, above] = between(map.radiiMm, radiusMm);
  const [column, right] = between(map.anglesDeg, folded);
  const at = (i: number, j: number) => map.pressureMPa[i]![j]!;
  const low = at(row, column) * (1 - right) + at(row, column + 1) * right;
  const high = at(row + 1, column) * (1 - right) + at(row + 1, column + 1) * right;
  return low * (1 - above) + high * above;
}

function between(steps: readonly number[], value: number): readonly [number, number] {
  const last = steps.length - 2;
  let i = 0;
  while (i < last && steps[i + 1]! < value) i++;
  const share = (value - steps[i]!) / (steps[i + 1]! - steps[i]!);
  return [i, Math.min(1, Math.max(0, share))];
}

function pressedArea({ pressureMap: { radiiMm, pressureMPa }, meanPressureMPa }: StiffnessAnswer): number {
  let [pressed, all] = [0, 0];
  for (const [i, row] of pressureMPa.entries()) {
    const edge = i === 0 || i === radiiMm.length - 1 ? 0.5 : 1;
    for (const [j, pressure] of row.entries()) {
      const area = radiiMm[i]! * edge * (j === 0 || j === row.length - 1 ? 0.5 : 1);
      all += area;
      if (pressure > meanPressureMPa) pressed += area;
    }
  }
  return pressed / all;
}
