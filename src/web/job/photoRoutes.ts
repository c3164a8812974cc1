import { randomUUID } from 'node:crypto';
import { type Request, type Response, Router } from 'express';
import { type Job, LOOK_ITEMS } from '../../../shared/words/job.ts';
import { LIST_ITEM, type PhotoPlace } from '../../../shared/words/photo.ts';
import { readPlace } from '../../../shared/words/places.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import type { CopySize } from '../../records/photos/decoding.ts';
import { discard, keep } from '../../records/photos/files.ts';
import { addPhoto, isPhoto } from '../../records/photos/photos.ts';
import { copyOf, lookAtPicture } from '../../records/photos/picture.ts';
import { type FormWithFile, MOST_BYTES, readFormWithFile } from '../request/filesForm.ts';
import { frameOf, type PageContext, rememberPreference } from '../request/pageContext.ts';
import { NoSuchPage } from '../request/pageErrors.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, TypedForm } from '../request/typed.ts';
import { withInitials } from '../request/whoFaults.ts';
import { whoOf } from '../request/whoSignedIn.ts';
import { jobPage } from './jobPage.ts';

/** Photos of jobs: taken in, and handed out as pictures that can be nothing else. */
export function filesRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.post('/jobs/:number/photos', to(postPhoto));
  router.get('/photos/:name', to(getPhoto));
  return router;
}

async function postPhoto(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db, dataDir } = context.shop;
  const job = await jobNamed(db, String(req.params.number));
  const sent = await readFormWithFile(req, dataDir);
  try {
    await add(context, req, job, sent);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    await refuse(context, req, res, { job, fields: sent.fields, faults: error.faults });
    return;
  } finally {
    if (sent.file) await discard(sent.file);
  }
  rememberPreference(res, 'initials', (sent.fields.who ?? '').trim());
  res.redirect(303, `/jobs/${encodeURIComponent(job.number)}#${sectionOf(sent.fields)}`);
}

async function getPhoto(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db, dataDir } = context.shop;
  const named = /^([0-9a-f]{64})(-small)?\.jpg$/.exec(String(req.params.name));
  if (named === null || !(await isPhoto(db, named[1]!))) {
    throw new NoSuchPage('There is no such photo in this shop. Open the job it belongs to.');
  }
  const [hash, size] = [named[1]!, named[2] === undefined ? 'shown' : 'small'] as const;
  await sendCopy(res, await copyOf(dataDir, hash, size), { hash, size });
}

async function add(
  context: PageContext,
  req: Request,
  job: Job,
  { fields, file, tooLarge }: FormWithFile,
): Promise<void> {
  const { db, dataDir } = context.shop;
  if (tooLarge) {
    throw fault('file', `The photo has more than ${MOST_BYTES / 1_048_576} MB. Send it smaller.`);
  }
  if (file === null) throw fault('file', 'No photo was chosen. Choose one, or take one.');
  const place = photoPlaceOf(new TypedForm(fields, await frameOf(req, context)));
  const picture = await lookAtPicture(dataDir, file);
  await addPhoto(
    db,
    { who: whoOf(req, fields.who), why: fields.why ?? '', now: context.now },
    {
      jobId: job.id,
      photo: {
        // A form that is sent again with another photo adds that one too.
        id: `${(fields.token ?? randomUUID()).slice(0, 40)}-${file.hash.slice(0, 16)}`,
        place,
        hash: file.hash,
        bytes: file.bytes,
        note: fields.note ?? '',
        ...picture,
      },
      keepFile: () => keep(dataDir, file),
    },
  );
}

async function refuse(
  context: PageContext,
  req: Request,
  res: Response,
  { job, fields, faults }: { job: Job; fields: Fields; faults: readonly Fault[] },
): Promise<void> {
  const all = withInitials(faults, whoOf(req, fields.who));
  const refused = { section: 'photos', fields, faults: all, stale: null } as const;
  const frame = await frameOf(req, context);
  const token = randomUUID();
  // The page it was sent from: what else is in its address belongs to a form that only asks.
  const page = { ...frame, address: `/jobs/${encodeURIComponent(job.number)}` };
  res.status(422).send(await jobPage(context, page, job, { fields: {}, refused, token }));
}

async function sendCopy(
  res: Response,
  path: string,
  { hash, size }: { hash: string; size: CopySize },
): Promise<void> {
  res.set({
    'Content-Type': 'image/jpeg',
    'X-Content-Type-Options': 'nosniff',
    'Content-Security-Policy': "default-src 'none'; sandbox",
    'Content-Disposition': `inline; filename="photo-${hash.slice(0, 12)}${size === 'small' ? '-small' : ''}.jpg"`,
    // The content names the address, so it never changes; only this person's browser keeps it.
    'Cache-Control': 'private, max-age=31536000, immutable',
  });
  await new Promise<void>((done, failed) => {
    res.sendFile(path, { cacheControl: false, dotfiles: 'allow' }, (error) =>
      error && !res.headersSent ? failed(error) : done(),
    );
  });
}

function sectionOf(fields: Fields): 'look' | 'measure' {
  return fields.in === 'measure' ? 'measure' : 'look';
}

/** `job`, `item:welds`, `station:45/110`, or `own` with a clock position and a radius typed beside it. */
function photoPlaceOf(form: TypedForm): PhotoPlace {
  const typed = form.text('place');
  const item = LOOK_ITEMS.find((one) => typed === `item:${one}`);
  if (item !== undefined) return { spot: 'item', item };
  const ofList = `item:${LIST_ITEM}`;
  if (typed.startsWith(ofList) && typed.length > ofList.length && typed.length <= ofList.length + 80)
    return { spot: 'item', item: `${LIST_ITEM}${typed.slice(ofList.length)}` };
  if (typed === 'job') return { spot: 'job' };
  const station = typed.startsWith('station:') ? readPlace(typed.slice('station:'.length)) : null;
  if (station) return { spot: 'station', ...station };
  if (typed !== 'own') throw fault('place', 'Choose from the list what the photo shows.');
  const angleDeg = form.needed(
    form.angle('angle', 'The angle from stud 1'),
    'angle',
    'The angle from stud 1',
  );
  const radiusMm = form.needed(form.length('radius', 'The radius'), 'radius', 'The radius');
  if (angleDeg === null || radiusMm === null) throw new Refusal('bad-photo', form.faults);
  return { spot: 'station', angleDeg, radiusMm };
}

function fault(path: string, message: string): Refusal {
  return new Refusal('bad-photo', [{ path, message }]);
}
