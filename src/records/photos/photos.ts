import type { Selectable } from 'kysely';
import { LOOK_ITEMS } from '../../../shared/words/job.ts';
import {
  LIST_ITEM,
  type NewPhoto,
  PHOTO_KINDS,
  type Photo,
  type PhotoPlace,
} from '../../../shared/words/photo.ts';
import { type Db, write } from '../database/database.ts';
import { refuse } from '../database/errors.ts';
import { toJson } from '../database/json.ts';
import type { Tables } from '../database/tables.ts';
import { type Ctx, hasControls, printable, refuseNul, signed } from '../database/writing.ts';
import { jobRow, noJob, partsOf, toJob } from '../jobs/readJob.ts';
import { addToJob, refuseUnexplained } from '../jobs/reviseJob.ts';
import { refuseClosed } from '../jobs/rules.ts';

const LONGEST_NOTE = 500;
const LONGEST_MM = 10_000;

type PhotoRow = Selectable<Tables['photo']>;

/** The photos a job had at a revision, in the order they came. */
export async function photosOf(db: Db, jobId: number, revision: number): Promise<readonly Photo[]> {
  const rows = await db
    .selectFrom('photo')
    .selectAll()
    .where('job_id', '=', jobId)
    .where('revision', '<=', revision)
    .orderBy('revision')
    .execute();
  return rows.map(toPhoto);
}

/** Whether any job has a photo of this content. */
export async function isPhoto(db: Db, hash: string): Promise<boolean> {
  const row = await db.selectFrom('photo').select('id').where('hash', '=', hash).limit(1).executeTakeFirst();
  return row !== undefined;
}

/**
 * Adds a photo to a job, as a revision of it. Sending it again is harmless. `keepFile` puts the file in its place; it is
 * called once nothing more can be refused, and before the row is written, so that no row is without its file.
 */
export async function addPhoto(
  db: Db,
  ctx: Ctx,
  sent: { readonly jobId: number; readonly photo: NewPhoto; readonly keepFile: () => Promise<void> },
): Promise<{ readonly added: boolean }> {
  const by = signed(ctx, undefined);
  const photo = checked(sent.photo);
  return write(db, async (trx) => {
    const row = await jobRow(trx, sent.jobId);
    if (!row) throw noJob(sent.jobId);
    const parts = await partsOf(trx, row.id, row.revision);
    const job = toJob(row, parts);
    const known = await trx.selectFrom('photo').selectAll().where('id', '=', photo.id).executeTakeFirst();
    if (known) {
      if (known.job_id === row.id && known.hash === photo.hash) return { added: false };
      throw refuse(
        'photo-differs',
        'file',
        'This page already sent another photo. Reload it and send the photo again.',
      );
    }
    refuseClosed(job);
    refuseUnexplained(job, by);
    await sent.keepFile();
    const { revision } = await addToJob(trx, by, row, { what: 'photo', body: toJson(photo) }, parts);
    await trx
      .insertInto('photo')
      .values(toRow(row.id, { ...photo, revision, who: by.who, at: by.at }))
      .execute();
    return { added: true };
  });
}

function checked(photo: NewPhoto): NewPhoto {
  if (!/^[\w-]{1,64}$/.test(photo.id)) {
    throw refuse(
      'bad-photo',
      'id',
      `"${printable(photo.id)}" can't be the id of a photo. Reload the page and send it again.`,
    );
  }
  if (!/^[0-9a-f]{64}$/.test(photo.hash) || !PHOTO_KINDS.includes(photo.kind)) {
    throw refuse('bad-photo', 'file', 'Only part of the photo arrived. Send it again.');
  }
  const note = photo.note.trim();
  if (note.length > LONGEST_NOTE) {
    throw refuse(
      'bad-photo',
      'note',
      `The note has ${note.length} characters; at most ${LONGEST_NOTE} are allowed.`,
    );
  }
  refuseNul('note', note);
  refusePlace(photo.place);
  return { ...photo, note };
}

function refusePlace(place: PhotoPlace): void {
  if (place.spot === 'job') return;
  if (place.spot === 'item') {
    const { item } = place;
    if (LOOK_ITEMS.some((one) => one === item)) return;
    const name = item.startsWith(LIST_ITEM) ? item.slice(LIST_ITEM.length) : '';
    if (name !== '' && name.length <= 80 && !hasControls(name)) return;
    throw refuse('bad-photo', 'place', 'Choose from the list what the photo shows.');
  }
  const { angleDeg, radiusMm } = place;
  if (Math.abs(angleDeg) <= 360 && radiusMm > 0 && radiusMm < LONGEST_MM) return;
  throw refuse(
    'bad-photo',
    'place',
    `There is no station at ${angleDeg}° and ${radiusMm} mm. The angle must be 0° to 360°, the radius 0 to 10 m.`,
  );
}

function toPhoto(row: PhotoRow): Photo {
  return {
    id: row.id,
    revision: row.revision,
    place: placeOf(row),
    hash: row.hash,
    kind: row.kind,
    bytes: row.bytes,
    width: row.width,
    height: row.height,
    note: row.note,
    who: row.who,
    at: row.at,
  };
}

function placeOf({ spot, angle_deg, radius_mm, item }: PhotoRow): PhotoPlace {
  if (spot === 'station' && angle_deg !== null && radius_mm !== null) {
    return { spot, angleDeg: angle_deg, radiusMm: radius_mm };
  }
  return spot === 'item' && item !== null ? { spot, item } : { spot: 'job' };
}

function toRow(jobId: number, photo: Photo): PhotoRow {
  const { place } = photo;
  return {
    id: photo.id,
    job_id: jobId,
    revision: photo.revision,
    spot: place.spot,
    angle_deg: place.spot === 'station' ? place.angleDeg : null,
    radius_mm: place.spot === 'station' ? place.radiusMm : null,
    item: place.spot === 'item' ? place.item : null,
    hash: photo.hash,
    kind: photo.kind,
    bytes: photo.bytes,
    width: photo.width,
    height: photo.height,
    note: photo.note,
    who: photo.who,
    at: photo.at,
  };
}
