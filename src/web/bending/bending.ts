import { type Request, type Response, Router } from 'express';
import type { Bending } from '../../../shared/words/bending/bending.ts';
import { type CoverCheck, isMeasured } from '../../../shared/words/cover.ts';
import { type BendingDrawn, BendingPage } from '../../../views/pages/bending/bendingPage.tsx';
import { caseName } from '../../../views/parts/bendingPart.tsx';
import { planMarks } from '../../../views/parts/coverAnswer.tsx';
import { renderPage } from '../../../views/render.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { bendingFor, bothPistons } from '../../shop/bending/bendings.ts';
import { jobAnswer } from '../../shop/jobAnswer.ts';
import { jobUnder } from '../../shop/jobUnder.ts';
import { quickCheck } from '../../shop/quickCover.ts';
import type { Asker } from '../../shop/work/workPool.ts';
import { readQuickForm } from '../cover/cover.ts';
import { keepingUnits } from '../request/otherUnit.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { askerOf } from '../request/requestGone.ts';
import { handledIn } from '../request/route.ts';
import { fieldsOf, unitOf } from '../request/typed.ts';

const DRAWN = ['new', 'now', 'after', 'ring-unbonded'] as const;
const NOTHING_YET = 'Nothing to draw yet. Measure the wall first.';

/** The drawings of the advice on bending, asked for when somebody opens them. */
export function bendingRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/cover/bending', to(getCoverBending));
  router.get('/jobs/:number/bending', to(getJobBending));
  return router;
}

async function getCoverBending(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.query);
  const own = await frameOf(req, context);
  const frame = {
    ...own,
    lengthUnit: unitOf(fields) ?? own.lengthUnit,
  };
  const asker = askerOf(req, res);
  const { form, input, bent } = await readQuickForm(context, fields, frame);
  const { check } = await quickCheck(input, frame.lengthUnit, asker);
  const measured = check && isMeasured(check) ? check : null;
  const told =
    measured &&
    (await bendingFor({
      ...bent,
      check: measured,
      unit: frame.lengthUnit,
      only: DRAWN,
      asker,
    }));
  const drawn = measured && told?.bending ? await drawnOf(told.bending, measured, asker) : null;
  const back = `/cover?${new URLSearchParams(fields)}`;
  res.send(
    renderPage(
      BendingPage({
        frame: keepingUnits(frame, form),
        drawn,
        why: told?.why ?? NOTHING_YET,
        back,
        here: 'covers',
      }),
    ),
  );
}

async function getJobBending(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const job = await jobNamed(db, String(req.params.number));
  const frame = await frameOf(req, context);
  const asker = askerOf(req, res);
  const answer = await jobAnswer(job, await jobUnder(db, job, frame), { asker });
  const bending = answer.bending?.bending ?? null;
  const drawn = bending && answer.stands ? await drawnOf(bending, answer.stands, asker) : null;
  const back = `/jobs/${encodeURIComponent(job.number)}#decide`;
  const why = answer.bending?.why ?? NOTHING_YET;
  res.send(renderPage(BendingPage({ frame, drawn, why, back, here: 'jobs' })));
}

async function drawnOf(bending: Bending, check: CoverCheck, asker: Asker): Promise<BendingDrawn | null> {
  const cases = bending.cases.filter(({ id }) => DRAWN.some((one) => one === id));
  const answers = await Promise.all(
    cases.map(({ id, trackWallMm, ring }) =>
      bothPistons({ id, base: bending.base, trackWallMm, ring }, asker),
    ),
  );
  const now = answers[cases.findIndex(({ id }) => id === 'now')];
  if (now === undefined) return null;
  return {
    bending,
    now,
    curves: cases.map(({ id }, i) => ({
      label: caseName(bending, id),
      section: answers[i]!.conforming.section,
    })),
    marks: planMarks(check),
  };
}
