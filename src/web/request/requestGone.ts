import { setMaxListeners } from 'node:events';
import type { Request, Response } from 'express';
import type { Asker } from '../../shop/work/workPool.ts';
import { signedInOf } from './whoSignedIn.ts';

/** Whoever asked, while they wait: by the person where people sign in, else by their address. */
export function askerOf(req: Request, res: Response, lane: Asker['lane'] = 'people'): Asker {
  const caller = signedInOf(req)?.person.name ?? req.ip ?? '';
  return { signal: requestGoneSignal(res), caller: `${lane} ${caller}`, lane };
}

/** Aborts when whoever asked is gone before the answer: a page that was left, a slider that moved on. */
function requestGoneSignal(res: Response): AbortSignal {
  const gone = new AbortController();
  // One page waits for a dozen answers.
  setMaxListeners(50, gone.signal);
  res.on('close', () => {
    if (!res.writableFinished) gone.abort();
  });
  return gone.signal;
}
