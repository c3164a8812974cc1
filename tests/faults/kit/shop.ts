import { createHash } from 'node:crypto';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { demoFamilies } from '../../../data/demo/families.ts';

/** One cover family of the demo shop: what jobs of these tests are about. */
const { id: familyId, family } = demoFamilies[0]!;

export const jobForm = (number: string, who = 'AK') => ({
  number,
  family: familyId,
  receivedOn: '2026-03-02',
  customer: 'van, blue',
  note: '',
  who,
});

/** Wall readings at some places of their own; the same token gives the same readings. */
export function readingsForm(token: string, places: readonly number[], who = 'AK'): Record<string, string> {
  const fields: Record<string, string> = { pass: 'before', token, unit: 'mm', who };
  for (const [i, place] of places.entries()) {
    fields[`at.${i}`] = `${place % 360}/${100 + Math.floor(place / 360)}`;
    fields[`w.${i}`] = String(family.nominalWallMm);
    fields[`was.w.${i}`] = '';
  }
  return fields;
}

export const readingIds = (token: string, places: readonly number[]) =>
  places.map((_, i) => `${token}-bw${i}-0`);

/** `replace` needs no verdict to agree with it, only a reason. */
export const decisionForm = (from: number, reason: string, who = 'AK') => ({
  from: String(from),
  decision: 'replace',
  reason,
  who,
  // Of the demo shop.
  criteria: '2',
});

export const fileIn = (dataDir: string) => join(dataDir, 'coverwright.sqlite');

/** Looks into the records with a program of its own. */
export function look<T>(dataDir: string, see: (raw: Database.Database) => T): T {
  const raw = new Database(fileIn(dataDir), { readonly: true, fileMustExist: true });
  try {
    return see(raw);
  } finally {
    raw.close();
  }
}

/** Everything that must hold of any records, whatever happened to the program; nothing when all is well. */
export function faultsIn(raw: Database.Database): string[] {
  const faults: string[] = [];
  const none = (what: string, sql: string) => {
    const rows = raw.prepare(sql).all();
    if (rows.length > 0) faults.push(`${what}: ${JSON.stringify(rows.slice(0, 3))}`);
  };
  const sound = raw.pragma('integrity_check', { simple: true });
  if (sound !== 'ok') faults.push(`integrity_check: ${sound}`);
  none('refers to nothing', 'PRAGMA foreign_key_check');
  none(
    'a job is not at its newest revision',
    `SELECT j.number FROM job j LEFT JOIN job_revision r ON r.job_id = j.id GROUP BY j.id
     HAVING j.revision IS NOT max(r.revision) OR count(r.revision) <> j.revision`,
  );
  none(
    'half of a set of readings',
    `SELECT r.job_id, r.revision FROM job_revision r WHERE r.what = 'reading' AND
       (SELECT json_group_array(id) FROM (SELECT id FROM reading WHERE job_id = r.job_id
        AND revision = r.revision ORDER BY place)) <> json_extract(r.body, '$.readings')`,
  );
  none(
    'a reading without its revision',
    `SELECT id FROM reading d WHERE NOT EXISTS (SELECT 1 FROM job_revision r WHERE r.job_id = d.job_id
     AND r.revision = d.revision AND r.what = 'reading')`,
  );
  none(
    'an entry is not at its newest revision',
    `SELECT e.kind, e.id FROM entry e LEFT JOIN entry_revision r ON r.kind = e.kind AND r.id = e.id
     GROUP BY e.kind, e.id HAVING e.revision IS NOT max(r.revision)`,
  );
  return faults;
}

/** The bytes of a file in few words. */
export function sumOf(bytes: Buffer): string {
  return createHash('sha256').update(bytes).digest('hex');
}
