import { type Request, type Response, Router } from 'express';
import { linesOf } from '../../../shared/quantity/fieldLines.ts';
import { asTyped } from '../../../shared/quantity/fieldText.ts';
import { COSTS } from '../../../shared/words/fields/costs.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import type { Costs } from '../../../shared/words/trends/costs.ts';
import { CostsPage } from '../../../views/pages/trends/costsPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { StaleEdit } from '../../records/database/errors.ts';
import { costHistory, saveCosts } from '../../records/trends/costs.ts';
import { readBody } from '../request/bodyForm.ts';
import { differences } from '../request/fieldLines.ts';
import { frameOf, type PageContext, rememberPreference } from '../request/pageContext.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf, TypedForm } from '../request/typed.ts';
import { withInitials } from '../request/whoFaults.ts';

/** What each way costs the shop, each change a revision. */
export function costsRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get(
    '/criteria/costs',
    to((...asked) => show(...asked)),
  );
  router.post('/criteria/costs', to(postCosts));
  return router;
}

async function postCosts(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.body);
  const form = new TypedForm(fields, await frameOf(req, context));
  const body: Costs = readBody(form, COSTS);
  const faults = outOfBounds(form, body);
  if (faults.length > 0) {
    await show(context, req, res, { status: 422, fields, faults: withInitials(faults, fields.who) });
    return;
  }
  const ctx = { who: fields.who ?? '', why: fields.why ?? '', now: context.now };
  try {
    const revision = await saveCosts(context.shop.db, ctx, { fromRevision: Number(fields.from), body });
    rememberPreference(res, 'initials', (fields.who ?? '').trim());
    res.redirect(303, `/criteria/costs?saved=${revision}`);
  } catch (error) {
    if (error instanceof StaleEdit) {
      await show(context, req, res, {
        status: 409,
        fields,
        faults: [{ path: '', message: error.message }],
        yours: body,
      });
      return;
    }
    if (!(error instanceof Refusal)) throw error;
    await show(context, req, res, { status: 422, fields, faults: withInitials(error.faults, fields.who) });
  }
}

/** What was typed, where it is no cost or no share. */
function outOfBounds(form: TypedForm, body: Costs): readonly Fault[] {
  for (const [key, field] of Object.entries(COSTS)) {
    const value = body[key as keyof Costs];
    if (value === null || (value >= field.least && value <= field.most)) continue;
    const bounds =
      field.kind === 'share' ? 'from 0 to 100 %' : `from $0 to $${field.most.toLocaleString('en-US')}`;
    form.fault(key, `${field.label}: enter a figure ${bounds}.`);
  }
  return form.faults;
}

async function show(
  context: PageContext,
  req: Request,
  res: Response,
  sent: {
    readonly status?: number;
    readonly fields?: Fields;
    readonly faults?: readonly Fault[];
    readonly yours?: Costs;
  } = {},
): Promise<void> {
  const frame = { ...(await frameOf(req, context)), address: '/criteria/costs' };
  const history = await costHistory(context.shop.db);
  const now = history.at(-1);
  const lines = (body: Costs) => linesOf(COSTS, body, frame);
  const page = CostsPage({
    frame,
    revision: now?.revision ?? 0,
    fields: sent.fields ?? asTyped(COSTS, now?.body, frame),
    faults: sent.faults ?? [],
    theirs: sent.yours && now ? differences(lines(now.body), lines(sent.yours)) : [],
    saved: now !== undefined && Number(req.query.saved) === now.revision,
    history: history.toReversed().map(({ body, ...one }) => ({ ...one, lines: lines(body) })),
  });
  res.status(sent.status ?? 200).send(renderPage(page));
}
