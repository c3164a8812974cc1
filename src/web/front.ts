import { Router } from 'express';
import { demoCovers } from '../../data/demo/covers.ts';
import { type JobLine, STAGES, type Stage } from '../../shared/words/job.ts';
import { FrontPage } from '../../views/pages/frontPage.tsx';
import { renderPage } from '../../views/render.ts';
import { listEntries } from '../records/catalogue.ts';
import { findJobs } from '../records/jobs/findJobs.ts';
import { frameOf, type House, rememberPreference } from './request/house.ts';
import { inOtherUnit } from './request/otherUnit.ts';
import { ownAddress } from './request/ownAddress.ts';
import { fieldsOf, unitOf } from './request/typed.ts';

const SHOWN = 8;
const OPEN: readonly Stage[] = STAGES.filter((stage) => stage !== 'signed');

/** The front page, and what a person chooses for this tablet. */
export function frontRouter(house: House): Router {
  const router = Router();

  router.get('/', async (req, res) => {
    const { jobs } = await findJobs(house.shop.db, { stage: OPEN, limit: 200 });
    const families = await listEntries(house.shop.db, 'family');
    const example = demoCovers.find(
      (cover) => cover.expected === 'face' && families.some((family) => family.id === cover.familyId),
    );
    res.send(
      renderPage(
        FrontPage({
          frame: await frameOf(req, house),
          open: nextFirst(jobs).slice(0, SHOWN),
          exampleHref: example ? `/cover/example/${example.id}` : null,
        }),
      ),
    );
  });

  router.post('/preferences', (req, res) => {
    const fields = fieldsOf(req.body);
    const unit = unitOf(fields);
    if (unit) rememberPreference(res, 'unit', unit);
    const initials = (fields.initials ?? '').trim();
    if (/^[\p{L}\p{N}.-]{1,8}$/u.test(initials)) rememberPreference(res, 'initials', initials);
    const back = ownAddress(fields.back);
    res.redirect(303, unit ? inOtherUnit(back, unit) : back);
  });

  return router;
}

/** What is nearest to done first, and among those the longest here. */
function nextFirst(jobs: readonly JobLine[]): JobLine[] {
  return [...jobs].sort(
    (a, b) =>
      STAGES.indexOf(b.stage) - STAGES.indexOf(a.stage) ||
      a.receivedOn.localeCompare(b.receivedOn) ||
      a.id - b.id,
  );
}
