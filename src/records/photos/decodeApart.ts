import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { FROM_SOURCE, scriptAt } from '../../root.ts';
import type { Decoded, ToDecode } from './decoding.ts';

/** What the process that decodes says back. */
export type Said =
  | { readonly decoded: Decoded }
  | { readonly code: string; readonly faults: readonly Fault[] }
  | { readonly error: string; readonly errno: string | undefined };

const CHILD = scriptAt('src/records/photos/decoder');
/** A process with nothing more to decode ends, and gives back all the memory it took. */
const RESTS_MS = 10_000;

let child: ChildProcess | null = null;
let resting: NodeJS.Timeout | undefined;
/** Two large pictures at once would need twice the memory: one waits for the other. */
let before: Promise<unknown> = Promise.resolve();

/**
 * Decodes a picture in a process of its own: a large one takes its memory there, and it is given back. Throws a Refusal
 * of one that is too large; another error where it cannot be decoded, or the process dies of it.
 */
export function decodeApart(asked: ToDecode): Promise<Decoded> {
  const mine = before.then(() => decodeNow(asked));
  before = mine.catch(() => undefined);
  return mine;
}

async function decodeNow(asked: ToDecode): Promise<Decoded> {
  clearTimeout(resting);
  const decoder = child ?? begin();
  try {
    const said = await answerOf(decoder, asked);
    if ('decoded' in said) return said.decoded;
    if ('faults' in said) throw new Refusal(said.code, said.faults);
    throw Object.assign(new Error(said.error), { code: said.errno });
  } finally {
    resting = setTimeout(() => decoder.disconnect(), RESTS_MS).unref();
  }
}

/** Its allocator keeps what one thread gave back for that thread alone; with one arena all threads share it. */
function begin(): ChildProcess {
  const begun = fork(CHILD, [], {
    env: { ...process.env, MALLOC_ARENA_MAX: '1' },
    execArgv: FROM_SOURCE ? ['--import', 'tsx'] : [],
  });
  // Neither keeps the program running.
  begun.unref();
  begun.channel?.unref();
  const gone = () => {
    if (child === begun) child = null;
  };
  begun.once('disconnect', gone);
  begun.once('exit', gone);
  child = begun;
  return begun;
}

async function answerOf(decoder: ChildProcess, asked: ToDecode): Promise<Said> {
  const ended = new AbortController();
  const { signal } = ended;
  decoder.channel?.ref();
  try {
    const said = once(decoder, 'message', { signal }).then(([message]) => message as Said);
    const died = once(decoder, 'exit', { signal }).then((): Said => {
      throw new Error('The process that decodes pictures ended.');
    });
    decoder.send(asked);
    return await Promise.race([said, died]);
  } finally {
    decoder.channel?.unref();
    ended.abort();
  }
}
