import { type Request, type Response, Router } from 'express';
import type { Entry, EntryKind } from '../../../shared/words/catalogue.ts';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import { GAUGE } from '../../../shared/words/fields/gauge.ts';
import {
  CATALOGUE_NUT,
  CATALOGUE_STACK,
  CATALOGUE_STUD,
  CATALOGUE_WASHER,
  LAYER,
} from '../../../shared/words/fields/stud.ts';
import type { Job, Reading } from '../../../shared/words/job.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import { listEntries } from '../../records/catalogue.ts';
import { allReadings } from '../../records/jobs/history.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { placeOn } from '../../shop/placesOfJob.ts';
import { columnsOf, figureIn } from '../request/bodyColumns.ts';
import { type Cell, type Column, sendCsv } from '../request/csv.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { handledIn, type Route } from '../request/route.ts';

/** Lists as CSV, in the reader’s units: readings of a job, and the shelves of the catalog. */
export function listsRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/jobs/:number/readings.csv', to(getReadings));
  router.get('/catalogue/family.csv', to(shelf('family', 'cover-types', familyColumns)));
  router.get('/catalogue/stud.csv', to(shelf('stud', 'studs', studColumns)));
  router.get('/catalogue/stack.csv', to(shelf('stack', 'flexplate-stacks', stackColumns)));
  router.get('/catalogue/nut.csv', to(shelf('nut', 'nuts', nutColumns)));
  router.get('/catalogue/washer.csv', to(shelf('washer', 'washers-and-shims', washerColumns)));
  router.get('/catalogue/gauge.csv', to(shelf('gauge', 'gauges', gaugeColumns)));
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
function shelf<K extends EntryKind>(
  kind: K,
  name: string,
  columns: (unit: LengthUnit, entries: readonly Entry<K>[]) => readonly Column<Entry<K>>[],
): Route {
  return async (context, req, res) => {
    const { lengthUnit } = await frameOf(req, context);
    const entries = await listEntries(context.shop.db, kind, { retired: true });
    sendCsv(res, name, columns(lengthUnit, entries), entries);
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

function entryColumns<K extends EntryKind>(
  own: readonly Column<Entry<K>['body']>[],
): readonly Column<Entry<K>>[] {
  return [
    { name: 'id', of: (entry) => entry.id },
    { name: 'name', of: (entry) => entry.name },
    { name: 'revision', of: (entry) => entry.revision },
    { name: 'retired', of: (entry) => entry.retired },
    ...own.map(({ name, of }) => ({ name, of: (entry: Entry<K>): Cell => of(entry.body) })),
    { name: 'changed by', of: (entry) => entry.who },
    { name: 'changed at (UTC)', of: (entry) => entry.at },
    { name: 'why', of: (entry) => entry.why },
  ];
}

type Body<K extends EntryKind> = Entry<K>['body'];

const { name: _family, ...FAMILY_REST } = FAMILY;
const familyColumns = (unit: LengthUnit) =>
  entryColumns<'family'>(columnsOf(FAMILY_REST, (body: Body<'family'>) => body, unit));

const { name: _gauge, ...GAUGE_REST } = GAUGE;
const gaugeColumns = (unit: LengthUnit) =>
  entryColumns<'gauge'>(columnsOf(GAUGE_REST, (body: Body<'gauge'>) => body, unit));

const { name: _stud, stud, threadTyped, ...STUD_REST } = CATALOGUE_STUD;
const studColumns = (unit: LengthUnit) =>
  entryColumns<'stud'>([
    ...columnsOf(stud.fields, (body: Body<'stud'>) => body.stud, unit, {
      thread: [
        { name: 'thread', of: (body) => body.stud.thread.designation },
        { name: 'thread as typed', of: (body) => body.threadTyped },
      ],
    }),
    ...columnsOf(STUD_REST, (body: Body<'stud'>) => body, unit),
  ]);

const { name: _nut, nut: ownNut, threadTyped: _nutThread, ...NUT_REST } = CATALOGUE_NUT;
const nutColumns = (unit: LengthUnit) =>
  entryColumns<'nut'>([
    ...columnsOf(ownNut.fields, (body: Body<'nut'>) => body.nut, unit, {
      thread: [
        { name: 'thread', of: (body) => body.nut.thread?.designation ?? null },
        { name: 'thread as typed', of: (body) => body.threadTyped },
      ],
    }),
    ...columnsOf(NUT_REST, (body: Body<'nut'>) => body, unit),
  ]);

const { name: _washer, ...WASHER_REST } = CATALOGUE_WASHER;
const washerColumns = (unit: LengthUnit) =>
  entryColumns<'washer'>(columnsOf(WASHER_REST, (body: Body<'washer'>) => body, unit));

const { name: _stack, stack, nut, nutThreadTyped, ...STACK_REST } = CATALOGUE_STACK;

function stackColumns(
  unit: LengthUnit,
  stacks: readonly Entry<'stack'>[],
): readonly Column<Entry<'stack'>>[] {
  const most = Math.max(1, ...stacks.map(({ body }) => body.stack.layers.length));
  const layers = Array.from({ length: most }, (_, i) => {
    const [layer, ...figures] = columnsOf(LAYER, (body: Body<'stack'>) => body.stack.layers[i], unit);
    return [
      ...(layer ? [{ ...layer, name: `layer ${i + 1}` }] : []),
      ...figures.map(({ name, of }) => ({ name: `layer ${i + 1} ${name}`, of })),
    ];
  }).flat();
  return entryColumns<'stack'>([
    ...columnsOf(stack.fields, (body: Body<'stack'>) => body.stack, unit, { layers }),
    ...columnsOf(nut.fields, (body: Body<'stack'>) => body.nut, unit, {
      thread: [{ name: 'nut thread', of: (body) => body.nut?.thread?.designation ?? null }],
    }),
    ...columnsOf(STACK_REST, (body: Body<'stack'>) => body, unit),
  ]);
}
