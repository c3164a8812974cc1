import { openShop, type Shop } from './database.ts';

/** Opens the shop where the settings say it is: in the database named, else in a file in the data folder. */
export async function openRecords(options: {
  readonly dataDir: string;
  readonly databaseUrl: string | null;
  readonly now: () => Date;
}): Promise<Shop> {
  const { dataDir, databaseUrl, now } = options;
  if (databaseUrl === null) return openShop({ dataDir, now });
  // Its driver is loaded where it is used: a shop in a file starts without it.
  const { openPostgres } = await import('./postgres.ts');
  return openPostgres({ url: databaseUrl, dataDir, now });
}
