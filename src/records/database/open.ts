import { openShop, type Shop } from './database.ts';
import { openPostgres } from './postgres.ts';

/** Opens the shop where the settings say it is: in the database named, else in a file in the data folder. */
export async function openRecords(options: {
  readonly dataDir: string;
  readonly databaseUrl: string | null;
  readonly now: () => Date;
}): Promise<Shop> {
  const { dataDir, databaseUrl, now } = options;
  return databaseUrl === null ? openShop({ dataDir, now }) : openPostgres({ url: databaseUrl, dataDir, now });
}
