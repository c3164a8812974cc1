import { type Request, type Response, Router } from 'express';
import { asTyped, writingIn } from '../../../shared/quantity/fieldText.ts';
import { shopCriteriaSchema } from '../../../shared/schemas/catalogue.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import type { ShopCriteria } from '../../../shared/words/catalogue.ts';
import { CRITERIA } from '../../../shared/words/fields/criteria.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { CriteriaPage } from '../../../views/pages/catalogue/criteriaPage.tsx';
import type { EntryStale } from '../../../views/parts/entryHistory.tsx';
import { renderPage } from '../../../views/render.ts';
import { entryHistory, typedIn } from '../../records/catalogue.ts';
import { StaleEdit } from '../../records/database/errors.ts';
import { CRITERIA_ID, currentCriteria, saveCriteria } from '../../records/shopCriteria.ts';
import { boxAt, readBody } from '../request/bodyForm.ts';
import { frameOf, type PageContext, rememberPreference } from '../request/pageContext.ts';
import { type Fields, fieldsOf, TypedForm } from '../request/typed.ts';
import { entryRevisionsInWords, entryStale } from './entryWords.ts';
import { typedOf } from './typedEntry.ts';

/** The box that each place in the criteria came from. */
const boxOfPath = (path: string): string => boxAt(CRITERIA, path) ?? path;

/** The shop's own limits, each change a revision with who, when and why. */
export function criteriaRouter(context: PageContext): Router {
  const router = Router();
  const { db } = context.shop;

  router.get('/criteria', async (req, res) => {
    const now = await currentCriteria(db);
    await show(req, res, {
      revision: now.revision,
      fields: asTyped(CRITERIA, now.body, await frameOf(req, context)),
    });
  });

  router.post('/criteria', async (req, res) => {
    const fields = fieldsOf(req.body);
    const frame = await frameOf(req, context);
    const form = new TypedForm(fields, frame);
    const { writing } = form;
    const body = readCriteria(form);
    const revision = Number(fields.from);
    if (body === null) {
      await show(req, res, { revision, fields, faults: form.faults });
      return;
    }
    const typed = typedOf(
      form,
      body,
      boxOfPath,
      asTyped(CRITERIA, (await currentCriteria(db)).body, writing),
    );
    try {
      await saveCriteria(
        db,
        { who: fields.who ?? '', why: fields.why ?? '', now: context.now },
        { fromRevision: revision, body, typed },
      );
    } catch (error) {
      if (error instanceof StaleEdit) {
        const stale = entryStale('criteria', error, body, frame);
        await show(req, res, { revision: error.currentRevision, fields, stale });
        return;
      }
      if (!(error instanceof Refusal)) throw error;
      await show(req, res, { revision, fields, faults: error.faults });
      return;
    }
    rememberPreference(res, 'initials', (fields.who ?? '').trim());
    res.redirect(303, '/criteria');
  });

  async function show(
    req: Request,
    res: Response,
    page: { revision: number; fields: Fields; faults?: readonly Fault[]; stale?: EntryStale },
  ): Promise<void> {
    const { revision, fields, faults = [], stale = null } = page;
    const frame = { ...(await frameOf(req, context)), ...writingIn(fields, await frameOf(req, context)) };
    const history = await entryHistory(db, 'criteria', CRITERIA_ID);
    const typed = await typedIn(db, 'criteria', CRITERIA_ID);
    res.status(stale !== null ? 409 : faults.length > 0 ? 422 : 200).send(
      renderPage(
        CriteriaPage({
          frame,
          revision,
          fields,
          faults,
          stale,
          history: entryRevisionsInWords('criteria', history, typed, frame),
        }),
      ),
    );
  }

  return router;
}

function readCriteria(form: TypedForm): ShopCriteria | null {
  const read = readBody(form, CRITERIA);
  if (form.faults.length > 0) return null;
  // The shims there are, thinnest first, each once.
  const shimsMm = [...new Set(read.shimsMm)].sort((a, b) => a - b);
  const parsed = shopCriteriaSchema.safeParse({ ...read, shimsMm });
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), boxOfPath);
  return null;
}
