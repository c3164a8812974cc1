import { type Request, type Response, Router } from 'express';
import { writingIn } from '../../../shared/quantity/fieldText.ts';
import type { Entry } from '../../../shared/words/catalogue.ts';
import {
  foundOfItem,
  type InspectedItem,
  type InspectionItem,
  type InspectionList,
  isItemOk,
  itemsOf,
  limitsOfItem,
} from '../../../shared/words/inspection.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { ListEditPage } from '../../../views/pages/inspection/listEditPage.tsx';
import { ListsPage } from '../../../views/pages/inspection/listsPage.tsx';
import type { EntryStale } from '../../../views/parts/entryHistory.tsx';
import type { DoubtedLength } from '../../../views/parts/form/askedHere.ts';
import { renderPage } from '../../../views/render.ts';
import {
  addEntry,
  entryHistory,
  getEntry,
  listEntries,
  reinstateEntry,
  retireEntry,
  reviseEntry,
} from '../../records/catalogue.ts';
import { StaleEdit } from '../../records/database/errors.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { listIsFor, listsFor } from '../../shop/inspection/listFindings.ts';
import { entryRevisionsInWords, entryStale } from '../catalogue/entryWords.ts';
import { type Column, sendCsv } from '../request/csv.ts';
import { frameOf, type PageContext, rememberPreference } from '../request/pageContext.ts';
import { NoSuchPage } from '../request/pageErrors.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf, TypedForm } from '../request/typed.ts';
import { withInitials } from '../request/whoFaults.ts';
import { itemRows, listAsTyped, readList } from './listTyped.ts';

/** The shop's inspection lists: look, add, change as a new revision, retire; and what was found on a job as CSV. */
export function inspectionRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/inspection', to(getLists));
  router.get('/inspection/new', to(getNewList));
  router.get('/inspection/:id', to(getList));
  router.get('/jobs/:number/inspection.csv', to(sendInspected));
  router.post('/inspection', to(postNewList));
  router.post('/inspection/:id', to(postList));
  router.post(
    '/inspection/:id/retire',
    to((...asked) => postUse(retireEntry, ...asked)),
  );
  router.post(
    '/inspection/:id/reinstate',
    to((...asked) => postUse(reinstateEntry, ...asked)),
  );
  return router;
}

async function getLists(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const lists = await listEntries(db, 'checklist', { retired: true });
  const families = await listEntries(db, 'family', { retired: true });
  res.send(
    renderPage(
      ListsPage({
        frame: await frameOf(req, context),
        lists: lists.map(({ id, name, retired, body }) => ({
          id,
          name,
          retired,
          items: body.items.length,
          isFor: listIsFor(body.familyIds, families),
        })),
      }),
    ),
  );
}

async function getNewList(context: PageContext, req: Request, res: Response): Promise<void> {
  await show(context, req, res, { entry: null, fields: fieldsOf(req.query) });
}

async function getList(context: PageContext, req: Request, res: Response): Promise<void> {
  const entry = await listAsked(context, req);
  await show(context, req, res, { entry, fields: listAsTyped(entry.body, await frameOf(req, context)) });
}

async function postNewList(context: PageContext, req: Request, res: Response): Promise<void> {
  await save(context, req, res, null);
}

async function postList(context: PageContext, req: Request, res: Response): Promise<void> {
  await save(context, req, res, await listAsked(context, req));
}

async function postUse(
  change: typeof retireEntry,
  context: PageContext,
  req: Request,
  res: Response,
): Promise<void> {
  const entry = await listAsked(context, req);
  const fields = fieldsOf(req.body);
  await attempt(context, req, res, { entry, fields, body: null }, () =>
    change(context.shop.db, ctxOf(context, fields), {
      kind: 'checklist',
      id: entry.id,
      fromRevision: Number(fields.from),
    }),
  );
}

async function save(
  context: PageContext,
  req: Request,
  res: Response,
  entry: Entry<'checklist'> | null,
): Promise<void> {
  const { db } = context.shop;
  const fields = fieldsOf(req.body);
  if (fields.add === 'item') {
    await show(context, req, res, { entry, fields });
    return;
  }
  const frame = await frameOf(req, context);
  const shown = entry ? listAsTyped(entry.body, writingIn(fields, frame)) : {};
  const form = new TypedForm(fields, frame, shown);
  const families = await listEntries(db, 'family', { retired: true });
  const body = readList(
    form,
    families.map(({ id }) => id),
  );
  if (body === null) {
    const faults = withInitials(form.faults, fields.who);
    await show(context, req, res, { entry, fields, faults, doubts: form.doubts });
    return;
  }
  await attempt(context, req, res, { entry, fields, body }, () =>
    entry === null
      ? addEntry(db, ctxOf(context, fields), { kind: 'checklist', body })
      : reviseEntry(db, ctxOf(context, fields), {
          kind: 'checklist',
          id: entry.id,
          fromRevision: Number(fields.from),
          body,
        }),
  );
}

async function attempt(
  context: PageContext,
  req: Request,
  res: Response,
  sent: {
    readonly entry: Entry<'checklist'> | null;
    readonly fields: Fields;
    readonly body: InspectionList | null;
  },
  change: () => Promise<Entry>,
): Promise<void> {
  const { entry, fields, body } = sent;
  try {
    await change();
  } catch (error) {
    if (error instanceof StaleEdit && entry) {
      const stale = entryStale('checklist', error, body, await frameOf(req, context));
      const theirs = await getEntry(context.shop.db, 'checklist', entry.id);
      await show(context, req, res, { entry: theirs, fields, stale });
      return;
    }
    if (!(error instanceof Refusal)) throw error;
    const faults = error.faults.map(({ path, message }) => ({
      path: path === 'name' ? 'listName' : path,
      message,
    }));
    await show(context, req, res, { entry, fields, faults: withInitials(faults, fields.who) });
    return;
  }
  rememberPreference(res, 'initials', (fields.who ?? '').trim());
  res.redirect(303, '/inspection');
}

async function show(
  context: PageContext,
  req: Request,
  res: Response,
  page: {
    readonly entry: Entry<'checklist'> | null;
    readonly fields: Fields;
    readonly faults?: readonly Fault[];
    readonly doubts?: readonly DoubtedLength[];
    readonly stale?: EntryStale;
  },
): Promise<void> {
  const { entry, fields, faults = [], doubts = [], stale = null } = page;
  const { db } = context.shop;
  const own = await frameOf(req, context);
  const address = `/inspection/${entry ? encodeURIComponent(entry.id) : 'new'}`;
  const frame = { ...own, ...writingIn(fields, own), address };
  const families = await listEntries(db, 'family');
  const history = entry
    ? entryRevisionsInWords('checklist', await entryHistory(db, 'checklist', entry.id), new Map(), frame)
    : [];
  const status = stale !== null ? 409 : faults.length > 0 ? 422 : 200;
  res.status(status).send(
    renderPage(
      ListEditPage({
        frame,
        entry,
        fields,
        rows: itemRows(fields),
        families: families.map(({ id, name }) => ({ id, name })),
        history,
        faults,
        doubts,
        stale,
      }),
    ),
  );
}

async function listAsked({ shop }: PageContext, req: Request): Promise<Entry<'checklist'>> {
  const id = String(req.params.id);
  const entry = await getEntry(shop.db, 'checklist', id);
  if (entry === null) throw new NoSuchPage(`There is no inspection list "${id.slice(0, 60)}".`);
  return entry;
}

function ctxOf(context: PageContext, fields: Fields) {
  return { who: fields.who ?? '', why: fields.why ?? '', now: context.now };
}

async function sendInspected(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const job = await jobNamed(db, String(req.params.number));
  const lists = await listsFor(db, job.sections.received?.body);
  const inspected = job.sections.inspected?.body ?? null;
  const items = itemsOf(lists, inspected);
  const present = new Set(items.map(({ of, item }) => `${of.id} ${item.id}`));
  const left = (inspected?.items ?? []).filter((one) => !present.has(`${one.listId} ${one.item.id}`));
  const { lengthUnit } = await frameOf(req, context);
  sendCsv(res, `job-${job.number}-inspection`, columnsIn(lengthUnit), [
    ...items.map(({ of, item, answer }) => ({ job: job.number, list: of.list.name, item, answer })),
    ...left.map((answer) => ({ job: job.number, list: answer.listId, item: answer.item, answer })),
  ]);
}

interface Row {
  readonly job: string;
  readonly list: string;
  readonly item: InspectionItem;
  readonly answer: InspectedItem | null;
}

const columnsIn = (unit: LengthUnit): readonly Column<Row>[] => [
  { name: 'job', of: ({ job }) => job },
  { name: 'list', of: ({ list }) => list },
  { name: 'item', of: ({ item }) => item.name },
  { name: 'needed', of: ({ item }) => limitsOfItem(item, unit) },
  { name: 'found', of: ({ answer }) => answer && foundOfItem(answer, unit) },
  { name: 'as typed', of: ({ answer }) => answer?.typed ?? null },
  { name: 'confirmed', of: ({ answer }) => answer?.confirmed ?? null },
  {
    name: 'state',
    of: ({ answer }) => (answer === null ? 'not inspected' : isItemOk(answer) ? 'OK' : 'Not OK'),
  },
  { name: 'note', of: ({ answer }) => answer?.note ?? null },
  { name: 'revision of the list', of: ({ answer }) => answer?.listRevision ?? null },
  { name: 'by', of: ({ answer }) => answer?.who ?? null },
  { name: 'at (UTC)', of: ({ answer }) => answer?.at ?? null },
];
