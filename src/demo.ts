import { addManyJobs } from '../data/demo/manyJobs.ts';
import { seedDemo } from '../data/demo/seed.ts';
import { Refusal } from '../shared/words/refusal.ts';
import { Stopped, withBar } from './progress.ts';
import { shopOfCommand } from './records/carry/commandFolder.ts';
import { write } from './records/database/database.ts';
import { RecordsUnavailable, ShopWillNotOpen } from './records/database/errors.ts';
import { openRecords } from './records/database/open.ts';
import { startedAs } from './root.ts';
import { readSettings, SettingsRefused } from './settings.ts';
import { shopSettings } from './settingsFile.ts';
import { shopZone } from './shop/shopZone.ts';
import { stopWork } from './shop/work/apart.ts';
import { printsFor } from './web/job/papers.ts';

const MOST_JOBS = 1_000_000;
const USAGE = 'Say how many jobs to invent: npm run demo -- --jobs 1000';

/** How many jobs the words of the command ask for. Throws SettingsRefused. */
export function jobsAsked([flag, count = '', ...rest]: readonly string[]): number {
  const jobs = /^\d{1,7}$/.test(count) ? Number(count) : 0;
  if (flag === '--jobs' && rest.length === 0 && jobs >= 1 && jobs <= MOST_JOBS) return jobs;
  throw new SettingsRefused('--jobs', USAGE);
}

async function main(): Promise<void> {
  try {
    const count = jobsAsked(process.argv.slice(2));
    const settings = readSettings(shopSettings(process.env));
    const now = () => new Date();
    const shop = await openRecords({ ...shopOfCommand(process.env, { makes: true }), now });
    try {
      const print = printsFor(settings.publicUrl, { timeZone: await shopZone(shop.db, settings) });
      await write(shop.db, (trx) => seedDemo(trx, print));
      await withBar('The jobs invented so far are kept.', (step) =>
        addManyJobs(shop.db, { count, today: now(), told: (done) => step('Inventing jobs', done, count) }),
      );
      console.log(`${count} invented jobs were added to the demo shop in ${shop.where}.`);
    } finally {
      await shop.close();
      await stopWork();
    }
  } catch (error) {
    const told =
      error instanceof Refusal ||
      error instanceof Stopped ||
      error instanceof SettingsRefused ||
      error instanceof ShopWillNotOpen ||
      error instanceof RecordsUnavailable;
    if (!told) throw error;
    console.error(error.message);
    process.exitCode = 1;
  }
}

if (startedAs('demo')) await main();
