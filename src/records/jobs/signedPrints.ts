import type { Job } from '../../../shared/words/job.ts';
import {
  PAPERS,
  type Paper,
  type PrintedPart,
  type Prints,
  type SignedPrint,
} from '../../../shared/words/paper.ts';
import type { Db } from '../database/database.ts';
import { refuseNul } from '../database/writing.ts';

/** Prints a job as it is signed, reading through `trx` only: the signature is not kept before its papers are. */
export type PrintSigned = (trx: Db, signed: Job) => Promise<Prints>;

/** Keeps what a signature is printed on. Inside the write that keeps the signature. */
export async function keepPrints(trx: Db, signed: Job, print: PrintSigned): Promise<void> {
  const { html, parts } = await print(trx, signed);
  await keepParts(trx, parts);
  for (const paper of PAPERS) {
    refuseNul('', html[paper]);
    await trx
      .insertInto('printed')
      .values({ job_id: signed.id, revision: signed.revision, paper, html: html[paper] })
      .execute();
  }
}

/** Style and type of a paper, each once. Inside the write that keeps the paper. */
export async function keepParts(trx: Db, parts: readonly PrintedPart[]): Promise<void> {
  for (const part of parts) {
    await trx
      .insertInto('printed_part')
      .values(part)
      .onConflict((conflict) => conflict.column('hash').doNothing())
      .execute();
  }
}

/** The signatures of a job whose papers were kept, newest first. */
export async function signedPrints(db: Db, jobId: number): Promise<readonly SignedPrint[]> {
  return db
    .selectFrom('printed')
    .innerJoin('job_revision', (join) =>
      join
        .onRef('job_revision.job_id', '=', 'printed.job_id')
        .onRef('job_revision.revision', '=', 'printed.revision'),
    )
    .select(['job_revision.revision', 'job_revision.who', 'job_revision.at'])
    .where('printed.job_id', '=', jobId)
    .where('printed.paper', '=', 'sheet')
    .orderBy('job_revision.revision', 'desc')
    .execute();
}

/** A paper of the signature at a revision, byte for byte; null where none was kept. */
export async function printedAt(
  db: Db,
  jobId: number,
  { paper, revision }: { readonly paper: Paper; readonly revision: number },
): Promise<string | null> {
  const row = await db
    .selectFrom('printed')
    .select('html')
    .where('job_id', '=', jobId)
    .where('revision', '=', revision)
    .where('paper', '=', paper)
    .executeTakeFirst();
  return row?.html ?? null;
}

export async function printedPart(db: Db, hash: string): Promise<PrintedPart | null> {
  const row = await db.selectFrom('printed_part').selectAll().where('hash', '=', hash).executeTakeFirst();
  return row ?? null;
}
