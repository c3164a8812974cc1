import type { ThreadSpec } from '../words/stud/thread.ts';
import { readMetricThread } from './readMetricThread.ts';
import { readUnifiedThread } from './readUnifiedThread.ts';
import { sizesNear } from './sizesNear.ts';
import { quoted, tidy } from './tidy.ts';

/** Whether the thread is on a stud, in a nut, or may be either. Without a class in the callout: 2A or 6g, 2B or 6H. */
export type ThreadRole = 'external' | 'internal' | 'either';

export type ThreadRead =
  | { readonly ok: true; readonly thread: ThreadSpec }
  | {
      readonly ok: false;
      readonly message: string;
      readonly meant?: string;
      /** Callouts it may be, for a person to choose one. */
      readonly choices?: readonly string[];
    };

const EXAMPLES = '3/8-24, 7/16-20 UNF-2A, #10-32, M10x1.25 or M10';
const LONGEST = 40;
/** `LH` or `left-hand`, standing alone: `3/8-24 LH`, `M10x1.5-LH`, `3/8-24LH`. */
const LEFT_HAND = /(?<![a-z])(?:lh|l\.h\.?|left(?:[ -]?hand(?:ed)?)?)(?![a-z])/i;

/**
 * A thread callout: `3/8-24`, `7/16-20 UNF-2A`, `#10-32`, `M10x1.25`, `M10×1.5-6g`; `M10` is the coarse pitch of
 * ISO 261. Sizes to 1-1/2 in and M3 to M30. The series follows from size and threads per inch (ASME B1.1); one that
 * contradicts them is refused, and so are a nut's class on a stud and a left-hand thread.
 */
export function readThread(typed: string, role: ThreadRole = 'either'): ThreadRead {
  const refuse = (
    message: string,
    more: { meant?: string; choices?: readonly string[] } = {},
  ): ThreadRead => ({
    ok: false,
    message,
    ...more,
  });
  const text = tidy(typed);
  if (text === '') return refuse(`Thread: nothing was typed. Type a callout such as ${EXAMPLES}.`);
  if (text.length > LONGEST)
    return refuse(`Thread: ${quoted(typed)} is too long. Type a callout such as ${EXAMPLES}.`);
  if (LEFT_HAND.test(text))
    return refuse(
      `Thread: ${quoted(typed)} is a left-hand thread, which can’t be checked here. If the thread is right-hand, leave out the LH.`,
    );
  const read = /^m/i.test(text) ? readMetricThread(text, role) : readUnifiedThread(text, role);
  if (read.ok) return read;
  const { ok: _, why, ...more } = read;
  const near = more.choices ? [] : sizesNear(text);
  if (near.length === 0) return refuse(`Thread: ${quoted(typed)} ${why}`, more);
  return refuse(
    `Thread: ${quoted(typed)} is a diameter without a pitch. It may be ${near.join(', ')}. Count the threads, or measure over ten.`,
    { choices: near },
  );
}
