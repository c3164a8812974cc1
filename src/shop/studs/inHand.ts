import type { CatalogueStud } from '../../../shared/words/catalogue.ts';
import type { StudInHand, StudLengths, ThreadsFound } from '../../../shared/words/stud/choices.ts';
import type { ThreadSpec } from '../../../shared/words/stud/thread.ts';
import { nearestStuds } from '../../calc/stud/match/nearestStuds.ts';
import { type NamedEntry, soundStuds } from '../studChoices.ts';
import { sameThread } from './threads.ts';

/** A stud of the shelf is like the one in the hand while no length is off by more; this program’s own figure. */
const ALIKE_MM = 0.5;

/** The stud in the hand beside those of the shelf, and the one that is checked in every stack. */
export function studInHand(
  measured: {
    readonly threads: ThreadsFound | null;
    readonly thread: ThreadSpec | null;
    readonly lengths: StudLengths;
    /** Measured in full. */
    readonly entry: CatalogueStud | null;
  },
  studs: readonly NamedEntry<CatalogueStud>[],
): StudInHand {
  const { threads, thread, lengths, entry } = measured;
  const mayBe = thread ? [thread] : (threads?.mayBe.map((one) => one.thread) ?? []);
  const ofThread = soundStuds(studs).filter(({ body }) =>
    mayBe.some((one) => sameThread(body.stud.thread, one)),
  );
  const near = nearestStuds(
    lengths,
    ofThread.map(({ id, body }) => ({ id, stud: body.stud })),
  );
  const shelf = near.flatMap((one) => {
    const found = ofThread.find(({ id }) => id === one.id)?.body;
    const alike = one.off.length > 0 && one.off.every(({ mm }) => Math.abs(mm) <= ALIKE_MM);
    return found ? [{ ...one, entry: found, alike }] : [];
  });
  const like = thread === null ? undefined : shelf.find(({ alike }) => alike);
  return {
    threads,
    thread,
    shelf,
    checked: entry ? { id: IN_HAND, entry } : like ? { id: like.id, entry: like.entry } : null,
  };
}

/** In place of a stud’s id: it is in no catalog. */
export const IN_HAND = 'own';
