import { type Request, type Response, Router } from 'express';
import { type CoverCheck, isMeasured } from '../../../shared/words/cover.ts';
import { CUT, PLAN } from '../../../shared/words/fields/job.ts';
import { CutDrawnPage, StudDrawnPage } from '../../../views/pages/job/drawnPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { listEntries } from '../../records/catalogue.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { passTried } from '../../shop/afterCut.ts';
import { jobInput } from '../../shop/jobInput.ts';
import { jobUnder } from '../../shop/jobUnder.ts';
import { quickCheck } from '../../shop/quickCover.ts';
import { keepingUnits } from '../request/otherUnit.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { askerOf } from '../request/requestGone.ts';
import { handledIn } from '../request/route.ts';
import { fieldsOf, TypedForm, unitOf } from '../request/typed.ts';
import { addressOf } from './jobRequest.ts';
import { jobStuds } from './jobStuds.ts';

/** What is typed into a form of the job, drawn beside it. Looks, and keeps nothing. */
export function drawnRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/jobs/:number/pass-drawn', to(getPassDrawn));
  router.get('/jobs/:number/plan-drawn', to(getPlanDrawn));
  router.get('/jobs/:number/stud-drawn', to(getStudDrawn));
  return router;
}

/** Another pass of this depth, on the walls as they stand; none before a depth is typed. */
async function getPassDrawn(context: PageContext, req: Request, res: Response): Promise<void> {
  const { job, form, frame } = await asked(context, req);
  const depthMm = form.length(CUT.depthMm.box, CUT.depthMm.label);
  const check = form.faults.length > 0 ? null : passTried(job, depthMm ?? 0, frame.lengthUnit);
  sendCut(res, { job, form, frame, check, drawn: 'pass' });
}

/** The cut as typed; where nothing is, the least that cleans up. */
async function getPlanDrawn(context: PageContext, req: Request, res: Response): Promise<void> {
  const { job, form, frame } = await asked(context, req);
  const cutMm = form.length(PLAN.plannedCutMm.box, PLAN.plannedCutMm.label);
  const { criteria, atHand } = await jobUnder(context.shop.db, job, frame);
  const { input } = jobInput(job, criteria, atHand, frame.timeZone);
  const usable = input !== null && form.faults.length === 0 && (cutMm === null || cutMm > 0);
  const tried = usable ? { ...input, plannedCutMm: cutMm } : null;
  const { check } = await quickCheck(tried, frame.lengthUnit, askerOf(req, res));
  sendCut(res, { job, form, frame, check, drawn: 'plan' });
}

type Asked = Awaited<ReturnType<typeof asked>>;

async function asked(context: PageContext, req: Request) {
  const fields = fieldsOf(req.query);
  const job = await jobNamed(context.shop.db, String(req.params.number));
  const own = await frameOf(req, context);
  const frame = { ...own, lengthUnit: unitOf(fields) ?? own.lengthUnit };
  return { job, fields, frame, form: new TypedForm(fields, frame) };
}

function sendCut(
  res: Response,
  {
    job,
    form,
    frame,
    check,
    drawn,
  }: Omit<Asked, 'fields'> & { check: CoverCheck | null; drawn: 'pass' | 'plan' },
): void {
  const family = job.sections.received?.body.family ?? null;
  const shown =
    check !== null && isMeasured(check) && family
      ? { check, shape: { ...family, densityKgPerM3: null } }
      : null;
  const back = `${addressOf(job)}#${drawn === 'pass' ? 'cut' : 'decide'}`;
  res.send(
    renderPage(
      CutDrawnPage({
        frame: keepingUnits(frame, form),
        drawn,
        shown,
        why: form.faults[0]?.message ?? null,
        back,
      }),
    ),
  );
}

/** The stud that is chosen, in the stack it is held against. */
async function getStudDrawn(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const { job, fields, form, frame } = await asked(context, req);
  const { criteria, criteriaRevision } = await jobUnder(db, job, frame);
  const [stacks, studs] = [await listEntries(db, 'stack'), await listEntries(db, 'stud')];
  const held = jobStuds({ job, fields, stacks, studs, criteria, criteriaRevision, frame });
  const back = `${addressOf(job)}#studs`;
  res.send(renderPage(StudDrawnPage({ frame: keepingUnits(frame, form), drawn: drawnOf(held), back })));
}

function drawnOf(held: ReturnType<typeof jobStuds>) {
  const choice = held.choices.find(({ match }) => match.id === held.fields.stud) ?? held.choices[0];
  const stack = held.stacks.find(({ id }) => id === held.stackId)?.stack;
  return choice && stack ? { choice, stack, pullForwardMm: held.pullForwardMm } : null;
}
