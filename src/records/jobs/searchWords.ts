import type { Job, Received } from '../../../shared/words/job.ts';
import type { NewPhoto } from '../../../shared/words/photo.ts';
import { DECISION_WORD } from '../../../shared/words/verdicts.ts';
import { isShown } from '../begun.ts';
import type { Db } from '../database/database.ts';
import { write } from '../database/database.ts';
import { key } from '../database/writing.ts';
import { getJob } from './readJob.ts';

/** A job's row says with this that every word of it can be found; another where there are more words to find. */
const WHOLE = 'job number ';
const AT_A_TIME = 50;

/** What a job just received is found by: its number, however it is written, what it is, whose, and who took it in. */
export function receivedWords(number: string, received: Received, who: string): string {
  const { family, customerReference, coverNumber = '', note } = received;
  return [`${WHOLE}${number}`, family.name, customerReference, who, coverNumber, note].map(key).join('\n');
}

/** What people wrote beside the photos of a job. */
async function photoNotes(db: Db, jobId: number): Promise<readonly string[]> {
  const rows = await db
    .selectFrom('job_revision')
    .select('body')
    .where('job_id', '=', jobId)
    .where('what', '=', 'photo')
    .orderBy('revision')
    .execute();
  return rows.map(({ body }) => (JSON.parse(body) as Pick<NewPhoto, 'note'>).note);
}

/** The same of a job as it stands, with its decision, everybody who worked on it, their notes and statements. */
export async function searchOf(db: Db, job: Job): Promise<string> {
  return wordsOfJob(job, await photoNotes(db, job.id));
}

/** What `searchOf` gathers, of a job and the notes of its photos. */
export function wordsOfJob(
  { number, outcome, readings, sections }: Job,
  photos: Awaited<ReturnType<typeof photoNotes>>,
): string {
  const { received, looked, inspected, setup, decision, cuts, studs, signature, closed } = sections;
  const who = new Set(Object.values(sections).flatMap((kept) => kept?.who ?? []));
  for (const one of readings) who.add(one.who);
  const words = [
    `${WHOLE}${number}`,
    received?.body.family.name,
    received?.body.customerReference,
    received?.body.coverNumber,
    [...who].join(' '),
    outcome && DECISION_WORD[outcome],
    received?.body.note,
    looked?.body.crackNote,
    ...(looked?.body.items ?? []).map(({ note }) => note),
    ...(inspected?.body.items ?? []).map(({ note }) => note),
    decision?.body.reason,
    ...(cuts?.body.cuts ?? []).map(({ note }) => note),
    setup?.body.ringWelded?.note,
    studs?.body.note,
    studs?.body.retightening?.note,
    ...(studs?.body.replaced ?? []).map(({ note }) => note),
    ...photos,
    signature?.body.statement,
    closed?.why,
  ];
  return words
    .map((one) => key(one ?? ''))
    .filter((one) => one !== '')
    .join('\n');
}

/** Jobs kept before all their words could be found: their rows in the list are made anew, the records stay as they are. */
export async function renewSearch(db: Db): Promise<void> {
  for (;;) {
    const rows = await db
      .selectFrom('job')
      .select('id')
      .where('search', 'not like', `${WHOLE}%`)
      .where(isShown)
      .limit(AT_A_TIME)
      .execute();
    if (rows.length === 0) return;
    await write(db, async (trx) => {
      for (const { id } of rows) {
        const job = await getJob(trx, id);
        if (job === null) continue;
        await trx
          .updateTable('job')
          .set({ search: await searchOf(trx, job) })
          .where('id', '=', id)
          .execute();
      }
    });
  }
}
