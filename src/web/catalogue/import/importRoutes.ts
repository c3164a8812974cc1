import { setTimeout as pause } from 'node:timers/promises';
import { type Request, type Response, Router } from 'express';
import { type Fault, Refusal } from '../../../../shared/words/refusal.ts';
import { type CatalogueKind, isCatalogueKind } from '../../../../shared/words/terms.ts';
import { ImportPage, type ImportState } from '../../../../views/pages/catalogue/importPage.tsx';
import { renderPage } from '../../../../views/render.ts';
import { doneInWords, Stopped } from '../../../progress.ts';
import { StaleEdit } from '../../../records/database/errors.ts';
import { unfitInitials } from '../../../records/database/writing.ts';
import { entriesMark, importEntries } from '../../../records/importEntries.ts';
import { readFormWithBytes } from '../../request/filesForm.ts';
import { frameOf, type PageContext, rememberPreference, todayIn } from '../../request/pageContext.ts';
import { NoSuchPage } from '../../request/pageErrors.ts';
import { type Fields, fieldsOf } from '../../request/typed.ts';
import { CsvUnreadable, MOST_CSV_BYTES, readCsv } from './csvFile.ts';
import { entriesGiven, previewOf } from './importPreview.ts';
import { importSeen } from './importSeen.ts';
import { type Held, ImportsHeld } from './importsHeld.ts';

/** Lists of the catalog from a CSV file: sent, looked at, and kept whole or not at all. */
export function importRouter(context: PageContext): Router {
  const router = Router();
  const imports = new ImportsHeld();
  router.get('/import/:kind', (req, res) => show(context, req, res, { kind: kindOf(req) }));
  router.post('/import/:kind', (req, res) => postFile(imports, context, req, res));
  router.get('/import/:kind/:id', (req, res) => getPreview(imports, context, req, res));
  router.post('/import/:kind/:id', (req, res) => postKeep(imports, context, req, res));
  router.post('/import/:kind/:id/stop', async (req, res) => {
    const held = heldOf(imports, req);
    await held.work.stop();
    res.redirect(303, addressOf(held));
  });
  return router;
}

const NOTHING_SAVED = 'Nothing was saved. Send the file again to go on.';
/** Whoever waits no longer than this sees the answer at once, and no progress bar before it. */
const AT_ONCE_MS = 700;

async function postFile(
  imports: ImportsHeld,
  context: PageContext,
  req: Request,
  res: Response,
): Promise<void> {
  const kind = kindOf(req);
  const { file, tooLarge } = await readFormWithBytes(req, MOST_CSV_BYTES);
  const refused = tooLarge
    ? `The file has more than ${MOST_CSV_BYTES / 1_048_576} MB. Send it in parts.`
    : file === null
      ? 'No file was chosen, or it is empty. Choose a CSV file.'
      : null;
  if (refused !== null || file === null) {
    await show(context, req, res, { kind, status: 422, faults: [{ path: 'file', message: refused ?? '' }] });
    return;
  }
  const held = imports.add(kind, file);
  await goneOn(look(held, context, req));
  res.redirect(303, addressOf(held));
}

/** Waits for work a moment; it goes on by itself where it takes longer. */
async function goneOn(work: Promise<void>): Promise<void> {
  let waited = true;
  const told = work.catch((error: unknown) => {
    if (waited) throw error;
    console.error(error);
  });
  await Promise.race([told, pause(AT_ONCE_MS, undefined, { ref: false })]).finally(() => {
    waited = false;
  });
}

/** Holds the file against the catalog as it is now. What goes wrong with it is remembered beside it. */
async function look(held: Held, context: PageContext, req: Request): Promise<void> {
  const { db } = context.shop;
  const writing = await frameOf(req, context);
  const { kind, confirmed } = held;
  held.preview = null;
  try {
    await held.work.run(NOTHING_SAVED, async (step) => {
      if (held.bytes !== null) held.table = await readCsv(held.bytes, step);
      held.bytes = null;
      if (held.table === null) return;
      const asked = { kind, table: held.table, writing, today: todayIn(context), confirmed };
      held.preview = await previewOf(db, asked, step);
    });
  } catch (error) {
    if (error instanceof CsvUnreadable) held.unreadable = error.message;
    else if (!(error instanceof Stopped)) throw error;
  }
}

async function getPreview(
  imports: ImportsHeld,
  context: PageContext,
  req: Request,
  res: Response,
): Promise<void> {
  const held = heldOf(imports, req);
  const now = held.preview !== null && held.kept === null && held.work.part === null;
  if (now && (await entriesMark(context.shop.db, held.kind)) !== held.preview?.mark)
    await goneOn(look(held, context, req));
  await show(context, req, res, { kind: held.kind, held });
}

async function postKeep(
  imports: ImportsHeld,
  context: PageContext,
  req: Request,
  res: Response,
): Promise<void> {
  const held = heldOf(imports, req);
  const { kind } = held;
  const fields = fieldsOf(req.body);
  if (held.work.part !== null || held.kept !== null || held.table === null) {
    res.redirect(303, addressOf(held));
    return;
  }
  const isStale = (await entriesMark(context.shop.db, kind)) !== fields.seen;
  const confirms = takeConfirmed(held, fields);
  if (isStale || confirms || held.preview === null) await look(held, context, req);
  const again = { kind, held, fields };
  if (isStale) return show(context, req, res, { ...again, status: 409, stale: CHANGED });
  const { preview } = held;
  if (preview === null) return show(context, req, res, { ...again, status: 422 });
  const left = preview.rows.filter(({ is }) => is === 'refused').length;
  const entries = entriesGiven(preview);
  const faults: Fault[] = [];
  if (left > 0)
    faults.push({
      path: '',
      message: `${left} row${left === 1 ? ' is' : 's are'} refused or not confirmed. Correct the file, or confirm each question.`,
    });
  if (entries.some(({ fromRevision }) => fromRevision > 0) && (fields.why ?? '').trim() === '')
    faults.push({ path: 'why', message: 'Enter why these entries change.' });
  faults.push(...(unfitInitials(fields.who ?? '')?.faults ?? []));
  if (faults.length > 0) return show(context, req, res, { ...again, status: 422, faults });

  const ctx = { who: fields.who ?? '', why: fields.why ?? '', now: context.now };
  let failed: unknown = null;
  const keeping = held.work
    .run(NOTHING_SAVED, async (step) => {
      step('Saving', 0, entries.length);
      const { mark } = preview;
      await importEntries(context.shop.db, ctx, {
        ...{ kind, mark, entries },
        step: (done, of) => step('Saving', done, of),
      });
      const added = entries.filter(({ fromRevision }) => fromRevision === 0).length;
      held.kept = { added, changed: entries.length - added };
    })
    .catch((error: unknown) => {
      failed = error;
    });
  await goneOn(keeping);
  if (failed instanceof StaleEdit) {
    await look(held, context, req);
    return show(context, req, res, { ...again, status: 409, stale: CHANGED });
  }
  if (failed instanceof Refusal)
    return show(context, req, res, { ...again, status: 422, faults: failed.faults });
  if (failed !== null && !(failed instanceof Stopped)) throw failed;
  rememberPreference(res, 'initials', (fields.who ?? '').trim());
  res.redirect(303, addressOf(held));
}

const CHANGED =
  'Somebody changed this shelf of the catalog while you looked. Below is the file against the catalog as it is now.';

/** What was asked about and is right; whether any of it is new. */
function takeConfirmed({ confirmed }: Held, fields: Fields): boolean {
  let any = false;
  for (const [name, text] of Object.entries(fields)) {
    const [, row, box] = /^ok\.(\d{1,6})\.(.+)$/.exec(name) ?? [];
    if (row === undefined || box === undefined || confirmed.get(Number(row))?.[box] === text) continue;
    confirmed.set(Number(row), { ...confirmed.get(Number(row)), [box]: text });
    any = true;
  }
  return any;
}

async function show(
  context: PageContext,
  req: Request,
  res: Response,
  page: {
    readonly kind: CatalogueKind;
    readonly held?: Held;
    readonly status?: number;
    readonly stale?: string;
    readonly fields?: Fields;
    readonly faults?: readonly Fault[];
  },
): Promise<void> {
  const { kind, held, status = 200, stale = null, fields = {}, faults = [] } = page;
  const frame = await frameOf(req, context);
  const props = {
    frame: { ...frame, address: held ? addressOf(held) : `/import/${kind}` },
    kind,
    id: held?.id ?? null,
    state: stateOf(held, frame),
    failure: stale ?? held?.unreadable ?? (held?.preview ? null : (held?.work.failure ?? null)),
    stale: stale !== null,
    fields,
    faults,
  };
  res.status(status).send(renderPage(ImportPage(props)));
}

function stateOf(held: Held | undefined, writing: Awaited<ReturnType<typeof frameOf>>): ImportState {
  const part = held?.work.part;
  if (part) return { is: 'under-way', words: doneInWords(part), done: part.done, of: part.of };
  if (held?.kept) return { is: 'kept', ...held.kept };
  return held?.preview ? { is: 'seen', seen: importSeen(held.preview, writing) } : { is: 'empty' };
}

function addressOf({ kind, id }: Held): string {
  return `/import/${kind}/${id}`;
}

function heldOf(imports: ImportsHeld, req: Request): Held {
  const held = imports.find(kindOf(req), String(req.params.id));
  if (held !== null) return held;
  throw new NoSuchPage(
    'This file is no longer held, and nothing of it was saved. Send it again from the catalog.',
  );
}

function kindOf(req: Request): CatalogueKind {
  const { kind } = req.params;
  if (isCatalogueKind(kind)) return kind;
  throw new NoSuchPage('There is no such shelf in the catalog. Open the catalog and choose one.');
}
