import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { seedDemo } from '../../data/demo/seed.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import { FILE_NAME, openShop } from '../../src/records/database/database.ts';
import { printsFor } from '../../src/web/job/papers.ts';

const made = new Map<LengthUnit, Promise<Buffer>>();

/** The file of the demo shop, made once in each unit: playing all its jobs takes longer than most tests. */
export function demoFile(lengthUnit: LengthUnit): Promise<Buffer> {
  const found = made.get(lengthUnit) ?? make(lengthUnit);
  made.set(lengthUnit, found);
  return found;
}

async function make(lengthUnit: LengthUnit): Promise<Buffer> {
  const dataDir = mkdtempSync(join(tmpdir(), 'coverwright-demo-'));
  try {
    const shop = openShop({ dataDir });
    await seedDemo(shop.db, printsFor(null, { timeZone: 'UTC' }), { lengthUnit });
    await shop.close();
    const raw = new Database(join(dataDir, FILE_NAME));
    // A copy that is opened in memory may belong to no log.
    raw.pragma('journal_mode = DELETE');
    const bytes = raw.serialize();
    raw.close();
    return bytes;
  } finally {
    rmSync(dataDir, { recursive: true, force: true });
  }
}
