import { Refusal } from '../../../shared/words/refusal.ts';
import type { Said } from './decodeApart.ts';
import { decode, type ToDecode } from './decoding.ts';

// The process that decodes pictures, one after another, for the program that began it; it ends with it.
process.on('message', async (asked: ToDecode) => {
  process.send?.(await saidOf(asked));
});
process.on('disconnect', () => process.exit(0));

async function saidOf(asked: ToDecode): Promise<Said> {
  try {
    return { decoded: await decode(asked) };
  } catch (error) {
    if (error instanceof Refusal) return { code: error.code, faults: error.faults };
    const { message, code } = error as NodeJS.ErrnoException;
    return { error: message, errno: code };
  }
}
