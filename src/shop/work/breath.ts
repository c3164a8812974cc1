import { setImmediate as turn } from 'node:timers/promises';

/** Lets others be answered in between: for work of many small steps on the thread that serves. */
export async function breath(): Promise<void> {
  await turn();
}
