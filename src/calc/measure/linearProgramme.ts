import { solve } from 'yalps';

/** Σ coefficient·variable, at most or at least a bound. */
export interface Limit {
  readonly of: Readonly<Record<string, number>>;
  readonly atMost?: number;
  readonly atLeast?: number;
}

const PRECISION = 1e-10;
/** Far more than the few hundred that 400 stations ever take; stops a solver that cycles. */
const MOST_PIVOTS = 20_000;

/**
 * Solves a linear program whose variables may take either sign. null when it has no solution.
 *
 * Valid: numbers near 1; scale lengths and slopes before they come here.
 * Source: simplex method, package yalps; each free variable is the difference of two that are not negative
 * Example: the planes of tests/calc/measure/planes.test.ts
 */
export function linearProgramme({
  goal,
  direction,
  limits,
}: {
  readonly goal: Readonly<Record<string, number>>;
  readonly direction: 'minimize' | 'maximize';
  readonly limits: readonly Limit[];
}): Readonly<Record<string, number>> | null {
  const names = new Set([...Object.keys(goal), ...limits.flatMap((limit) => Object.keys(limit.of))]);
  const constraints = new Map(
    limits.map(({ atMost, atLeast }, index) => [
      `${index}`,
      {
        ...(atMost === undefined ? {} : { max: atMost }),
        ...(atLeast === undefined ? {} : { min: atLeast }),
      },
    ]),
  );
  const variables = new Map<string, Map<string, number>>();
  for (const name of names) {
    for (const sign of [1, -1]) {
      const column = new Map([['goal', sign * (goal[name] ?? 0)]]);
      for (const [index, limit] of limits.entries()) {
        const coefficient = limit.of[name] ?? 0;
        if (coefficient !== 0) column.set(`${index}`, sign * coefficient);
      }
      variables.set(`${sign > 0 ? '+' : '-'}${name}`, column);
    }
  }
  const found = solve(
    { direction, objective: 'goal', constraints, variables },
    { precision: PRECISION, maxPivots: MOST_PIVOTS, includeZeroVariables: true },
  );
  if (found.status !== 'optimal') return null;
  const value = new Map(found.variables);
  return Object.fromEntries(
    [...names].map((name) => [name, (value.get(`+${name}`) ?? 0) - (value.get(`-${name}`) ?? 0)]),
  );
}
