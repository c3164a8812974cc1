import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { type Request, type Response, Router } from 'express';
import { printTime } from '../../shared/words/day.ts';
import { Refusal } from '../../shared/words/refusal.ts';
import { RecordsPage } from '../../views/pages/backupsPage.tsx';
import { renderPage } from '../../views/render.ts';
import { doneInWords, type Step, Stopped } from '../progress.ts';
import { backUp, NO_BACKUP } from '../records/backup/backup.ts';
import { copyDue, lastCopyAway, recordCopyAway } from '../records/backup/copyAway.ts';
import { BACKUPS, listBackups } from '../records/backup/list.ts';
import { MANIFEST } from '../records/backup/manifest.ts';
import { lastFailure } from '../records/backup/schedule.ts';
import { exportTexts } from '../records/carry/export.ts';
import { photoIn } from '../records/carry/exportManifest.ts';
import { type Db, FILE_NAME, openShop } from '../records/database/database.ts';
import { BackupFailed } from '../records/database/errors.ts';
import { countByStage } from '../records/jobs/findJobs.ts';
import { fileOf } from '../records/photos/files.ts';
import { frameOf, type PageContext, rememberPreference, todayIn } from './request/pageContext.ts';
import { NoSuchPage } from './request/pageErrors.ts';
import { type Packed, sendZip } from './request/recordsZip.ts';
import { handledIn } from './request/route.ts';
import { fieldsOf } from './request/typed.ts';
import { withInitials } from './request/whoFaults.ts';
import { UnderWay } from './workUnderWay.ts';

/** How much is kept, where, and its copies: for whoever keeps the records safe. */
export function recordsRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  const work = new UnderWay();
  router.get(
    '/records',
    to((...asked) => show(work, ...asked)),
  );
  router.post(
    '/records/backups',
    to((...asked) => makeBackup(work, ...asked)),
  );
  router.get('/records/backups/:name', to(sendBackup));
  router.post(
    '/records/export',
    to((...asked) => sendExport(work, ...asked)),
  );
  router.post(
    '/records/away',
    to((...asked) => postAway(work, ...asked)),
  );
  router.post(
    '/records/stop',
    to(async (_context, _req, res) => {
      await work.stop();
      res.redirect(303, '/records#backups');
    }),
  );
  return router;
}

function backupsIn({ shop }: PageContext): string {
  return join(shop.dataDir, BACKUPS);
}

const BUSY = 'A backup or an export is being made already. Wait until it is done, or stop it.';
const NO_EXPORT = 'Nothing was exported. The shop is as it was.';

async function makeBackup(work: UnderWay, context: PageContext, req: Request, res: Response): Promise<void> {
  const { dataDir } = context.shop;
  const { databaseUrl } = context.settings;
  if (work.part) return show(work, context, req, res, 409, BUSY);
  const made = work.run(NO_BACKUP, async (step) => {
    await backUp({ dataDir, databaseUrl, now: context.now, step });
  });
  const isSaid = (error: unknown) => error instanceof BackupFailed || error instanceof Stopped;
  if (req.headers['hx-request'] === 'true') {
    // The page looks itself how far it is; without a script the answer waits for the end.
    made.catch((error: unknown) => {
      if (!isSaid(error)) console.error(error);
    });
  } else {
    try {
      await made;
    } catch (error) {
      if (!isSaid(error)) throw error;
      if (error instanceof BackupFailed) return show(work, context, req, res, 422, error.message);
    }
  }
  res.redirect(303, '/records#backups');
}

async function sendBackup(context: PageContext, req: Request, res: Response): Promise<void> {
  const name = String(req.params.name).replace(/\.zip$/, '');
  // Looked for among those there are, so that no name leads anywhere else.
  const backup = (await listBackups(backupsIn(context))).find((one) => one.name === name);
  if (backup === undefined) throw new NoSuchPage('There is no such backup. See the list under Backups.');
  const paths = [MANIFEST, ...backup.manifest.files.map((file) => file.path)];
  await sendZip(
    res,
    name,
    paths.map((path) => ({
      name: path,
      path: join(backup.folder, path),
      compress: !path.startsWith('files/'),
    })),
  );
}

async function sendExport(work: UnderWay, context: PageContext, req: Request, res: Response): Promise<void> {
  if (work.part) return show(work, context, req, res, 409, BUSY);
  const texts = join(context.shop.dataDir, `exporting-${randomUUID()}`);
  try {
    let packed: readonly Packed[] = [];
    await work.run(NO_EXPORT, async (step) => {
      packed = await packedExport(context, texts, step);
    });
    // From here on the browser shows the download, and can end it.
    await sendZip(res, `coverwright-export-${todayIn(context)}`, packed);
  } catch (error) {
    if (!(error instanceof Stopped)) throw error;
    res.redirect(303, '/records#backups');
  } finally {
    await rm(texts, { recursive: true, force: true });
  }
}

async function packedExport(context: PageContext, texts: string, step: Step): Promise<readonly Packed[]> {
  const { dataDir, engine } = context.shop;
  // A reader of its own where the records are one file: everybody would wait for the export.
  const inFile = engine === 'sqlite' && existsSync(join(dataDir, FILE_NAME));
  const reader = inFile ? openShop({ dataDir }) : null;
  const manifest = await exportTexts(reader ?? context.shop, texts, context.now, step).finally(() =>
    reader?.close(),
  );
  const written = await readdir(texts, { recursive: true, withFileTypes: true });
  return [
    ...written
      .filter((one) => one.isFile())
      .map((one) => join(one.parentPath, one.name))
      .map((path) => ({ name: path.slice(texts.length + 1), path, compress: true })),
    ...manifest.photos.map((hash) => ({
      name: photoIn(manifest, hash),
      path: join(dataDir, fileOf(hash)),
      compress: false,
    })),
  ];
}

async function postAway(work: UnderWay, context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.body);
  const ctx = { who: fields.who ?? '', now: context.now };
  try {
    await recordCopyAway(context.shop.db, ctx, fields.whither ?? '');
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const faults = withInitials(error.faults, fields.who);
    await show(work, context, req, res, 422, null, { fields, faults });
    return;
  }
  rememberPreference(res, 'initials', (fields.who ?? '').trim());
  res.redirect(303, '/records#away');
}

async function show(
  work: UnderWay,
  context: PageContext,
  req: Request,
  res: Response,
  status = 200,
  refused: string | null = null,
  awayRefused: Parameters<typeof RecordsPage>[0]['awayRefused'] = null,
): Promise<void> {
  const { db, dataDir, engine, where } = context.shop;
  const { at = null, kept = null } = context.backups ?? {};
  const jobs = await countOf(db, 'job');
  const found = Object.values(await countByStage(db)).reduce((sum, count) => sum + count, 0);
  const page = RecordsPage({
    frame: await frameOf(req, context),
    counts: {
      jobs,
      putAway: jobs - found,
      readings: await countOf(db, 'reading'),
      photos: await countOf(db, 'photo'),
    },
    where,
    inPostgres: engine === 'postgres',
    daily: at && printTime(at),
    kept,
    backups: (await listBackups(backupsIn(context))).map(({ name, bytes, manifest }) => ({
      name,
      bytes,
      at: manifest.at,
      reason: manifest.reason,
      jobs: manifest.counts.job ?? 0,
      missing: manifest.missing.length,
    })),
    failure: await lastFailure(dataDir),
    refused,
    underWay: work.part && { words: doneInWords(work.part), done: work.part.done, of: work.part.of },
    stopped: refused === null ? work.failure : null,
    lastAway: await lastCopyAway(db),
    copyDue: await copyDue(db, context.now(), context.settings.timeZone),
    awayRefused,
  });
  res.status(status).send(renderPage(page));
}

async function countOf(db: Db, table: 'job' | 'reading' | 'photo'): Promise<number> {
  const row = await db
    .selectFrom(table)
    .select((eb) => eb.fn.countAll().as('n'))
    .executeTakeFirstOrThrow();
  return Number(row.n);
}
