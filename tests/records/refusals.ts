import { expect } from 'vitest';
import { Refusal } from '../../shared/words/refusal.ts';
import { type Step, Stopped } from '../../src/progress.ts';

/** What a promise is refused with; fails when it is not refused at all. */
export async function refusalOf(
  promise: Promise<unknown>,
): Promise<{ code: string; sentence: string; path: string }> {
  try {
    await promise;
  } catch (error) {
    if (error instanceof Refusal) {
      return { code: error.code, sentence: error.message, path: error.faults[0]?.path ?? '' };
    }
    throw error;
  }
  return expect.fail('This was taken, and had to be refused.');
}

export async function errorOf(promise: Promise<unknown> | (() => unknown)): Promise<unknown> {
  try {
    await (typeof promise === 'function' ? promise() : promise);
  } catch (error) {
    return error;
  }
  return expect.fail('This went through, and had to fail.');
}

/** Stops long work as soon as it comes to this part. */
export function stoppedAt(part: string): Step {
  return (what) => {
    if (what === part) throw new Stopped('');
  };
}
