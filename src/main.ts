import { createServer } from 'node:http';
import { basename } from 'node:path';
import { seedDemo } from '../data/demo/seed.ts';
import { backUpBeforeUpgrade } from './records/backup/backup.ts';
import { sweepLeftOver } from './records/backup/leftOver.ts';
import { scheduleBackups, shopBegan } from './records/backup/schedule.ts';
import { write } from './records/database/database.ts';
import { BackupFailed, RecordsUnavailable, ShopWillNotOpen } from './records/database/errors.ts';
import { openRecords } from './records/database/open.ts';
import { holdShop } from './records/database/restoreGuard.ts';
import { renewSearch } from './records/jobs/searchWords.ts';
import { listPeople } from './records/people/people.ts';
import { renewTrends } from './records/trends/renewTrends.ts';
import { backupsOf, readSettings, SettingsRefused } from './settings.ts';
import { shopSettings } from './settingsFile.ts';
import { shopZone } from './shop/shopZone.ts';
import { stopWork } from './shop/work/apart.ts';
import { breath } from './shop/work/breath.ts';
import { startCode, startLines } from './startLines.ts';
import { app } from './web/app.ts';
import { printsFor } from './web/job/papers.ts';
import { addressesToType } from './web/request/addresses.ts';
import { FirstCode } from './web/request/firstCode.ts';

/** A form of four hundred stations in an address. */
const MOST_HEADER_BYTES = 128 * 1024;
const STOP_MS = 5000;

async function start(): Promise<void> {
  const env = shopSettings(process.env);
  const asked = readSettings(env);
  const backups = backupsOf(env);
  const now = () => new Date();
  const leftOver = sweepLeftOver(asked.dataDir);
  const held = holdShop(asked.dataDir);
  const before = await backUpBeforeUpgrade({ ...asked, now });
  const shop = await openRecords({ ...asked, now });
  await renewSearch(shop.db);
  // All of it or nothing, also when two programs start at once.
  const people = await listPeople(shop.db);
  // From the first keeper on everybody signs in, whatever the settings.
  const settings = { ...asked, accounts: asked.accounts || people.length > 0 };
  const print = printsFor(settings.publicUrl, { timeZone: await shopZone(shop.db, settings) });
  if (settings.demo) await write(shop.db, (trx) => seedDemo(trx, print));
  const firstCode = settings.accounts && people.length === 0 ? new FirstCode() : undefined;
  const server = createServer(
    { maxHeaderSize: MOST_HEADER_BYTES, requestTimeout: 60_000 },
    app({ shop, settings, backups, now, ...(firstCode && { firstCode }) }),
  );

  server.on('error', (error: NodeJS.ErrnoException) => {
    const why =
      error.code === 'EADDRINUSE'
        ? `Port ${settings.port} is used by another program. Stop that program, or set PORT to another number (0 picks a free one).`
        : `The program can't listen on ${settings.host}, port ${settings.port} (${error.code ?? error.message}). Set HOST and PORT to ones this computer has.`;
    console.error(why);
    process.exitCode = 1;
    void shop.close();
  });
  server.listen(settings.port, settings.host, () => {
    const address = server.address();
    const port = typeof address === 'object' && address !== null ? address.port : settings.port;
    const addresses = addressesToType(settings, port);
    const lines = startLines({
      settings,
      port,
      addresses,
      people: people.filter(({ retired }) => !retired).length,
      code: firstCode?.typed ?? null,
      where: shop.where,
      inPostgres: shop.engine !== 'sqlite',
      beforeUpgrade: before === null ? null : basename(before.folder),
      leftOver,
    });
    for (const line of lines) console.log(line);
    if (process.stdout.isTTY) void startCode(addresses).then((code) => console.log(code));
  });

  const daily =
    backups.at !== null
      ? scheduleBackups({
          ...backups,
          at: backups.at,
          timeZone: () => shopZone(shop.db, settings),
          dataDir: shop.dataDir,
          databaseUrl: settings.databaseUrl,
          since: await shopBegan(shop.db),
          now,
        })
      : null;

  let stopping = false;
  // Pages are served meanwhile; the trends say how many jobs are not counted yet.
  const counting = renewTrends(shop.db, async () => {
    await breath();
    return stopping;
  }).catch((error: unknown) => console.error(error));
  // Whoever goes on asking on a connection that is open already would keep a program that stops for as long as it may.
  server.prependListener('request', (_req, res) => {
    if (stopping) res.shouldKeepAlive = false;
  });
  const stop = () => {
    if (stopping) return;
    stopping = true;
    daily?.stop();
    server.close(
      () =>
        void stopWork()
          .then(() => counting)
          .then(() => shop.close())
          .then(() => held.release()),
    );
    server.closeIdleConnections();
    setTimeout(() => server.closeAllConnections(), STOP_MS).unref();
  };
  process.on('SIGTERM', stop);
  process.on('SIGINT', stop);
}

function isForPeople(error: unknown): error is Error {
  return (
    error instanceof SettingsRefused ||
    error instanceof ShopWillNotOpen ||
    error instanceof RecordsUnavailable ||
    error instanceof BackupFailed
  );
}

try {
  await start();
} catch (error) {
  if (isForPeople(error)) console.error(error.message);
  else console.error(error);
  process.exitCode = 1;
}
