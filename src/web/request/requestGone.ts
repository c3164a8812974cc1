import { setMaxListeners } from 'node:events';
import type { Response } from 'express';

/** Aborts when whoever asked is gone before the answer: a page that was left, a slider that moved on. */
export function requestGoneSignal(res: Response): AbortSignal {
  const gone = new AbortController();
  // One page waits for a dozen answers.
  setMaxListeners(50, gone.signal);
  res.on('close', () => {
    if (!res.writableFinished) gone.abort();
  });
  return gone.signal;
}
