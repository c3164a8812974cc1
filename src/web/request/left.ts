import { setMaxListeners } from 'node:events';
import type { Response } from 'express';

/** Aborts when whoever asked is gone before the answer: a page that was left, a slider that moved on. */
export function leftSignal(res: Response): AbortSignal {
  const left = new AbortController();
  // One page waits for a dozen answers.
  setMaxListeners(50, left.signal);
  res.on('close', () => {
    if (!res.writableFinished) left.abort();
  });
  return left.signal;
}
