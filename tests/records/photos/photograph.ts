import { Readable } from 'node:stream';
import type { PhotoPlace } from '../../../shared/words/photo.ts';
import type { Shop } from '../../../src/records/database/database.ts';
import { keep, receive } from '../../../src/records/photos/files.ts';
import { addPhoto } from '../../../src/records/photos/photos.ts';
import { lookAtPicture } from '../../../src/records/photos/picture.ts';
import { as } from '../samples.ts';

/** Adds a photo to a job as the program does; gives back the hash of its file. */
export async function photograph(
  shop: Shop,
  jobId: number,
  bytes: Buffer,
  place: PhotoPlace = { spot: 'job' },
): Promise<string> {
  const file = await receive(shop.dataDir, Readable.from([bytes]), 1_000_000);
  const picture = await lookAtPicture(shop.dataDir, file);
  const photo = {
    id: `p-${file.hash.slice(0, 20)}`,
    place,
    note: '=1+1',
    hash: file.hash,
    bytes: file.bytes,
    ...picture,
  };
  await addPhoto(shop.db, as('CD', 'for a test'), { jobId, photo, keepFile: () => keep(shop.dataDir, file) });
  return file.hash;
}
