import { type Request, type Response, Router } from 'express';
import type { Job, Reading } from '../../../shared/words/job.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { CatalogueKind } from '../../../shared/words/terms.ts';
import { listEntries } from '../../records/catalogue.ts';
import { allReadings } from '../../records/jobs/history.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { placeOn } from '../../shop/placesOfJob.ts';
import { listColumns } from '../catalogue/entryColumns.ts';
import { figureIn } from '../request/bodyColumns.ts';
import { type Column, sendCsv } from '../request/csv.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { handledIn, type Route } from '../request/route.ts';

/** Lists as CSV, in the reader’s units: readings of a job, and the shelves of the catalog. */
export function listsRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/jobs/:number/readings.csv', to(getReadings));
  router.get('/catalogue/family.csv', to(shelf('family', 'cover-types')));
  router.get('/catalogue/stud.csv', to(shelf('stud', 'studs')));
  router.get('/catalogue/stack.csv', to(shelf('stack', 'flexplate-stacks')));
  router.get('/catalogue/nut.csv', to(shelf('nut', 'nuts')));
  router.get('/catalogue/washer.csv', to(shelf('washer', 'washers-and-shims')));
  router.get('/catalogue/gauge.csv', to(shelf('gauge', 'gauges')));
  router.get('/catalogue/steel.csv', to(shelf('steel', 'steels')));
  router.get('/catalogue/lining.csv', to(shelf('lining', 'linings')));
  router.get('/catalogue/lathe.csv', to(shelf('lathe', 'lathes')));
  return router;
}

async function getReadings(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const job = await jobNamed(db, String(req.params.number));
  const all = await allReadings(db, job.id);
  const replaced = new Set(all.map((reading) => reading.replaces));
  const rows = all.map((reading) => ({ job, reading, replaced: replaced.has(reading.id) }));
  const { lengthUnit } = await frameOf(req, context);
  sendCsv(res, `job-${job.number}-readings`, readingColumns(lengthUnit), rows);
}

/** One shelf of the catalog, retired entries too. */
function shelf(kind: CatalogueKind, name: string): Route {
  return async (context, req, res) => {
    const { lengthUnit } = await frameOf(req, context);
    const entries = await listEntries(context.shop.db, kind, { retired: true });
    sendCsv(res, name, listColumns(kind, lengthUnit, entries), entries);
  };
}

interface ReadingRow {
  readonly job: Job;
  readonly reading: Reading;
  readonly replaced: boolean;
}

const readingColumns = (unit: LengthUnit): readonly Column<ReadingRow>[] => [
  { name: 'job', of: ({ job }) => job.number },
  { name: 'revision', of: ({ reading }) => reading.revision },
  { name: 'pass', of: ({ reading }) => `${reading.pass} the cut` },
  { name: 'what', of: ({ reading }) => reading.kind },
  {
    name: 'station',
    of: ({ job, reading }) => placeOn(job.sections.received?.body.family, reading.angleDeg),
  },
  { name: 'angle from stud 1 (deg)', of: ({ reading }) => reading.angleDeg },
  { name: `radius (${unit})`, of: ({ reading }) => figureIn(reading.radiusMm, 'length', unit) },
  {
    name: `value (${unit})`,
    of: ({ reading: { valueMm } }) => (valueMm === null ? null : figureIn(valueMm, 'length', unit)),
  },
  { name: 'as typed', of: ({ reading }) => reading.typed },
  { name: 'gauge', of: ({ reading }) => reading.gauge },
  { name: 'doubted', of: ({ reading }) => reading.doubtful },
  { name: 'confirmed', of: ({ reading }) => reading.confirmed ?? null },
  {
    name: 'status',
    of: ({ reading, replaced }) =>
      reading.valueMm === null ? 'withdraws another' : replaced ? 'replaced' : 'counts',
  },
  { name: 'reading id', of: ({ reading }) => reading.id },
  { name: 'replaces reading id', of: ({ reading }) => reading.replaces },
  { name: 'who', of: ({ reading }) => reading.who },
  { name: 'at (UTC)', of: ({ reading }) => reading.at },
];
