import { EXAMPLE, NUT } from '../../../data/examples/studExample.ts';
import type { Nut, Stack, Stud, StudCheckInput } from '../../../shared/words/stud/stud.ts';

export * from '../../../data/examples/studExample.ts';

export const withStud = (stud: Partial<Stud>, input: StudCheckInput = EXAMPLE): StudCheckInput => ({
  ...input,
  stud: { ...input.stud, ...stud },
});
export const withNut = (nut: Partial<Nut>, input: StudCheckInput = EXAMPLE): StudCheckInput => ({
  ...input,
  nut: { ...NUT, ...input.nut, ...nut },
});
export const withStack = (stack: Partial<Stack>, input: StudCheckInput = EXAMPLE): StudCheckInput => ({
  ...input,
  stack: { ...input.stack, ...stack },
});
