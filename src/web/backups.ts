import { randomUUID } from 'node:crypto';
import { readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { type Request, type Response, Router } from 'express';
import { printTime } from '../../shared/words/day.ts';
import { RecordsPage } from '../../views/pages/backupsPage.tsx';
import { renderPage } from '../../views/render.ts';
import { backUp } from '../records/backup/backup.ts';
import { BACKUPS, listBackups } from '../records/backup/list.ts';
import { MANIFEST } from '../records/backup/manifest.ts';
import { lastFailure } from '../records/backup/schedule.ts';
import { exportTexts } from '../records/carry/export.ts';
import { photoIn } from '../records/carry/exportManifest.ts';
import type { Db } from '../records/database/database.ts';
import { BackupFailed } from '../records/database/errors.ts';
import { countByStage } from '../records/jobs/findJobs.ts';
import { fileOf } from '../records/photos/files.ts';
import { NoSuchPage } from './request/errors.ts';
import { frameOf, type PageContext, todayIn } from './request/pageContext.ts';
import { sendZip } from './request/recordsZip.ts';
import { handledIn } from './request/route.ts';

/** How much is kept, where, and its copies: for whoever keeps the records safe. */
export function recordsRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/records', to(showRecords));
  router.post('/records/backups', to(makeBackup));
  router.get('/records/backups/:name', to(sendBackup));
  router.post('/records/export', to(sendExport));
  return router;
}

function backupsIn({ shop }: PageContext): string {
  return join(shop.dataDir, BACKUPS);
}

async function showRecords(context: PageContext, req: Request, res: Response): Promise<void> {
  await show(context, req, res, 200, null);
}

async function makeBackup(context: PageContext, req: Request, res: Response): Promise<void> {
  const { dataDir } = context.shop;
  const { databaseUrl } = context.settings;
  try {
    await backUp({ dataDir, databaseUrl, now: context.now });
  } catch (error) {
    if (!(error instanceof BackupFailed)) throw error;
    await show(context, req, res, 422, error.message);
    return;
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

async function sendExport(context: PageContext, _req: Request, res: Response): Promise<void> {
  const { dataDir } = context.shop;
  const texts = join(dataDir, `exporting-${randomUUID()}`);
  try {
    const manifest = await exportTexts(context.shop, texts, context.now);
    const written = await readdir(texts, { recursive: true, withFileTypes: true });
    await sendZip(res, `coverwright-export-${todayIn(context)}`, [
      ...written
        .filter((one) => one.isFile())
        .map((one) => join(one.parentPath, one.name))
        .map((path) => ({ name: path.slice(texts.length + 1), path, compress: true })),
      ...manifest.photos.map((hash) => ({
        name: photoIn(manifest, hash),
        path: join(dataDir, fileOf(hash)),
        compress: false,
      })),
    ]);
  } finally {
    await rm(texts, { recursive: true, force: true });
  }
}

async function show(
  context: PageContext,
  req: Request,
  res: Response,
  status: number,
  refused: string | null,
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
