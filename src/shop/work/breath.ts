import { setImmediate as turn } from 'node:timers/promises';

/** Lets others be answered in between: for work of many small steps on the thread that serves. */
export async function breath(): Promise<void> {
  await turn();
}

const STEPS = 10;

/** The same after every tenth step; `step` counts from 0. */
export async function breathEvery(step: number): Promise<void> {
  if (step % STEPS === STEPS - 1) await turn();
}
