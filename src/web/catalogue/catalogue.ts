import { type Request, type Response, Router } from 'express';
import { writingIn } from '../../../shared/quantity/fieldText.ts';
import type { Entry, EntryBodies, TypedInEntry } from '../../../shared/words/catalogue.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import {
  type CatalogueKind,
  CataloguePage,
  EntryPage,
  KIND_WORD,
} from '../../../views/pages/catalogue/cataloguePage.tsx';
import type { EntryStale } from '../../../views/parts/entryHistory.tsx';
import { renderPage } from '../../../views/render.ts';
import {
  addEntry,
  entryHistory,
  getEntry,
  listEntries,
  reinstateEntry,
  retireEntry,
  reviseEntry,
  typedIn,
} from '../../records/catalogue.ts';
import { StaleEdit } from '../../records/database/errors.ts';
import { NoSuchPage } from '../request/errors.ts';
import { frameOf, type PageContext, rememberPreference } from '../request/pageContext.ts';
import { type Fields, fieldsOf, TypedForm } from '../request/typed.ts';
import { layerRows } from '../stud/stackForm.ts';
import { entryAsTyped, entryBox, readEntry } from './entryForm.ts';
import { entryRevisionsInWords, entryStale } from './entryWords.ts';
import { typedOf } from './typedEntry.ts';

/** Cover families, studs, stacks and gauges: look, add, change as a new revision, retire. */
export function catalogueRouter(context: PageContext): Router {
  const router = Router();
  const { db } = context.shop;

  router.get('/catalogue', async (req, res) => {
    res.send(
      renderPage(
        CataloguePage({
          frame: await frameOf(req, context),
          families: await listEntries(db, 'family', { retired: true }),
          studs: await listEntries(db, 'stud', { retired: true }),
          stacks: await listEntries(db, 'stack', { retired: true }),
          gauges: await listEntries(db, 'gauge', { retired: true }),
        }),
      ),
    );
  });

  router.get('/catalogue/:kind/new', async (req, res) => {
    await show(req, res, { kind: kindOf(req), entry: null, fields: {} });
  });

  router.post('/catalogue/:kind', async (req, res) => {
    const kind = kindOf(req);
    await save(req, res, kind, null, async (fields, body, typed) => {
      await addEntry(db, ctxOf(fields), { kind, body, typed });
    });
  });

  router.get('/catalogue/:kind/:id', async (req, res) => {
    const kind = kindOf(req);
    const entry = await mustFind(kind, String(req.params.id));
    const frame = await frameOf(req, context);
    await show(req, res, { kind, entry, fields: entryAsTyped(entry, frame) });
  });

  router.post('/catalogue/:kind/:id', async (req, res) => {
    const kind = kindOf(req);
    const entry = await mustFind(kind, String(req.params.id));
    await save(req, res, kind, entry, async (fields, body, typed) => {
      const fromRevision = Number(fields.from);
      await reviseEntry(db, ctxOf(fields), { kind, id: entry.id, fromRevision, body, typed });
    });
  });

  for (const [word, change] of [
    ['retire', retireEntry],
    ['reinstate', reinstateEntry],
  ] as const) {
    router.post(`/catalogue/:kind/:id/${word}`, async (req, res) => {
      const kind = kindOf(req);
      const entry = await mustFind(kind, String(req.params.id));
      const fields = fieldsOf(req.body);
      await attempt(req, res, { kind, entry, fields, body: null }, () =>
        change(db, ctxOf(fields), { kind, id: entry.id, fromRevision: Number(fields.from) }),
      );
    });
  }

  async function save(
    req: Request,
    res: Response,
    kind: CatalogueKind,
    entry: Entry<CatalogueKind> | null,
    write: (fields: Fields, body: EntryBodies[CatalogueKind], typed: TypedInEntry | null) => Promise<void>,
  ): Promise<void> {
    const fields = fieldsOf(req.body);
    const frame = await frameOf(req, context);
    const form = new TypedForm(fields, frame);
    if (fields.add === 'layer') {
      await show(req, res, { kind, entry, fields });
      return;
    }
    const body = readEntry(kind, form);
    if (body === null) {
      await show(req, res, { kind, entry, fields, faults: form.faults });
      return;
    }
    const shown = entry ? entryAsTyped(entry, form.writing) : {};
    const typed = typedOf(form, body, entryBox(kind, form), shown);
    await attempt(req, res, { kind, entry, fields, body }, () => write(fields, body, typed));
  }

  async function attempt(
    req: Request,
    res: Response,
    sent: {
      kind: CatalogueKind;
      entry: Entry<CatalogueKind> | null;
      fields: Fields;
      /** null where only its use changes. */
      body: EntryBodies[CatalogueKind] | null;
    },
    change: () => Promise<unknown>,
  ): Promise<void> {
    const { kind, entry, fields, body } = sent;
    try {
      await change();
    } catch (error) {
      if (error instanceof StaleEdit && entry) {
        const stale = entryStale(kind, error, body, await frameOf(req, context));
        await show(req, res, { kind, entry: await mustFind(kind, entry.id), fields, stale });
        return;
      }
      if (!(error instanceof Refusal)) throw error;
      await show(req, res, { kind, entry, fields, faults: error.faults });
      return;
    }
    rememberPreference(res, 'initials', (fields.who ?? '').trim());
    res.redirect(303, `/catalogue#${kind}`);
  }

  async function show(
    req: Request,
    res: Response,
    page: {
      kind: CatalogueKind;
      entry: Entry<CatalogueKind> | null;
      fields: Fields;
      faults?: readonly Fault[];
      stale?: EntryStale;
    },
  ): Promise<void> {
    const { kind, entry, fields, faults = [], stale = null } = page;
    const own = await frameOf(req, context);
    const address = `/catalogue/${kind}/${entry ? encodeURIComponent(entry.id) : 'new'}`;
    const frame = { ...own, ...writingIn(fields, own), address };
    const told = async ({ id }: Entry) =>
      entryRevisionsInWords(kind, await entryHistory(db, kind, id), await typedIn(db, kind, id), frame);
    res.status(stale !== null ? 409 : faults.length > 0 ? 422 : 200).send(
      renderPage(
        EntryPage({
          frame,
          kind,
          entry,
          history: entry ? await told(entry) : [],
          fields,
          layerRows: layerRows(new TypedForm(fields, frame)),
          faults,
          stale,
        }),
      ),
    );
  }

  async function mustFind(kind: CatalogueKind, id: string): Promise<Entry<CatalogueKind>> {
    const entry = await getEntry(db, kind, id);
    if (entry === null)
      throw new NoSuchPage(`There is no ${KIND_WORD[kind].one} "${id.slice(0, 60)}" in the catalogue.`);
    return entry;
  }

  function ctxOf(fields: Fields) {
    return { who: fields.who ?? '', why: fields.why ?? '', now: context.now };
  }

  return router;
}

function kindOf(req: Request): CatalogueKind {
  const { kind } = req.params;
  if (kind === 'family' || kind === 'stud' || kind === 'stack' || kind === 'gauge') return kind;
  throw new NoSuchPage('The catalogue holds cover families, studs, stacks and gauges. Choose one of them.');
}
