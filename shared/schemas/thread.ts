import * as z from 'zod';
import { readThread, type ThreadRole } from '../quantity/readThread.ts';
import { strict } from './fields.ts';

/** A thread callout as text, read into its parts: `3/8-24`, `7/16-20 UNF-2A`, `M10x1.25`, `M10`. */
export function threadCallout(role: ThreadRole) {
  return z
    .string({ error: 'The thread must be a callout in text, such as "7/16-20 UNF-2A" or "M10x1.25".' })
    .describe('A thread callout: 3/8-24, 7/16-20 UNF-2A, #10-32, M10x1.25; M10 is the coarse pitch.')
    .transform((typed, ctx) => {
      const read = readThread(typed, role);
      if (read.ok) return read.thread;
      ctx.addIssue({ code: 'custom', message: read.message });
      return z.NEVER;
    });
}

/** What `POST /api/thread` takes. */
export const threadSchema = strict('The request', { thread: threadCallout('either') });
