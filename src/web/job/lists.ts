import { Router } from 'express';
import type { Entry, EntryKind } from '../../../shared/words/catalogue.ts';
import type { Job, Reading } from '../../../shared/words/job.ts';
import { FIT_LIMITS } from '../../../views/pages/catalogue/fitLimitsFields.tsx';
import { listEntries } from '../../records/catalogue.ts';
import { allReadings } from '../../records/jobs/history.ts';
import { placeOn } from '../../shop/jobPlaces.ts';
import { type Cell, type Column, sendCsv } from '../request/csv.ts';
import type { House } from '../request/house.ts';
import { jobNamed } from './jobRequest.ts';

/** Lists as CSV: readings of a job, and the shelves of the catalogue. */
export function listsRouter(house: House): Router {
  const router = Router();
  const { db } = house.shop;

  router.get('/jobs/:number/readings.csv', async (req, res) => {
    const job = await jobNamed(db, req);
    const all = await allReadings(db, job.id);
    const replaced = new Set(all.map((reading) => reading.replaces));
    const rows = all.map((reading) => ({ job, reading, replaced: replaced.has(reading.id) }));
    sendCsv(res, `job-${job.number}-readings`, READINGS, rows);
  });

  router.get('/catalogue/family.csv', async (_req, res) => {
    sendCsv(res, 'cover-families', FAMILIES, await listEntries(db, 'family', { retired: true }));
  });
  router.get('/catalogue/stud.csv', async (_req, res) => {
    sendCsv(res, 'studs', STUDS, await listEntries(db, 'stud', { retired: true }));
  });
  router.get('/catalogue/stack.csv', async (_req, res) => {
    const stacks = await listEntries(db, 'stack', { retired: true });
    const layers = Math.max(1, ...stacks.map(({ body }) => body.stack.layers.length));
    sendCsv(res, 'flexplate-stacks', stackColumns(layers), stacks);
  });
  router.get('/catalogue/gauge.csv', async (_req, res) => {
    sendCsv(res, 'gauges', GAUGES, await listEntries(db, 'gauge', { retired: true }));
  });

  return router;
}

interface ReadingRow {
  readonly job: Job;
  readonly reading: Reading;
  readonly replaced: boolean;
}

const READINGS: readonly Column<ReadingRow>[] = [
  { name: 'job', of: ({ job }) => job.number },
  { name: 'revision', of: ({ reading }) => reading.revision },
  { name: 'pass', of: ({ reading }) => `${reading.pass} the cut` },
  { name: 'what', of: ({ reading }) => reading.kind },
  {
    name: 'place',
    of: ({ job, reading }) => placeOn(job.sections.received?.body.family, reading.angleDeg),
  },
  { name: 'clock position (deg)', of: ({ reading }) => reading.angleDeg },
  { name: 'radius (mm)', of: ({ reading }) => reading.radiusMm },
  { name: 'value (mm)', of: ({ reading }) => reading.valueMm },
  { name: 'as typed', of: ({ reading }) => reading.typed },
  { name: 'gauge', of: ({ reading }) => reading.gauge },
  { name: 'doubted', of: ({ reading }) => reading.doubtful },
  {
    name: 'stands',
    of: ({ reading, replaced }) =>
      reading.valueMm === null ? 'withdraws another' : replaced ? 'replaced' : 'stands',
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

const FAMILIES = entryColumns<'family'>([
  { name: 'make', of: (body) => body.make },
  { name: 'side wall', of: (body) => body.sideWall },
  { name: 'studs', of: (body) => body.studCount },
  { name: 'stud circle diameter (mm)', of: (body) => body.studCircleDiameterMm },
  { name: 'track inner diameter (mm)', of: (body) => body.trackInnerDiameterMm },
  { name: 'track outer diameter (mm)', of: (body) => body.trackOuterDiameterMm },
  { name: 'wall when new (mm)', of: (body) => body.nominalWallMm },
  { name: 'boss diameter (mm)', of: (body) => body.bossDiameterMm },
  { name: 'rim diameter (mm)', of: (body) => body.rimDiameterMm },
  { name: 'pad diameter (mm)', of: (body) => body.padDiameterMm },
  { name: 'pad thickness (mm)', of: (body) => body.padThicknessMm },
  { name: 'side wall thickness (mm)', of: (body) => body.sideWallMm ?? null },
  { name: 'piston seal diameter (mm)', of: (body) => body.pistonSealDiameterMm ?? null },
  { name: 'hub diameter (mm)', of: (body) => body.hubDiameterMm ?? null },
  { name: 'lock-up pressure (MPa)', of: (body) => body.lockUpPressureMPa ?? null },
  { name: 'yield (MPa)', of: (body) => body.yieldMPa ?? null },
  { name: 'ring inner diameter (mm)', of: (body) => body.ring?.innerDiameterMm ?? null },
  { name: 'ring outer diameter (mm)', of: (body) => body.ring?.outerDiameterMm ?? null },
  { name: 'ring thickness (mm)', of: (body) => body.ring?.thicknessMm ?? null },
  { name: 'ring welded to the pads all round', of: (body) => body.ring?.joinedToPads ?? null },
  ...FIT_LIMITS.map(({ key, label }) => ({
    name: `${label.toLowerCase()} (mm)`,
    of: (body: Entry<'family'>['body']) => body.limits?.[key] ?? null,
  })),
  { name: 'source of these figures', of: (body) => body.limits?.source ?? null },
  { name: "maker's minimum wall (mm)", of: (body) => body.makerMinimumWallMm },
  { name: "source of the maker's minimum", of: (body) => body.makerMinimumWallSource },
  { name: "shop's minimum wall (mm)", of: (body) => body.shopMinimumWallMm },
  { name: "who set the shop's minimum", of: (body) => body.shopMinimumWallSource },
  { name: 'ring allowed', of: (body) => body.ringAllowed },
  { name: 'note', of: (body) => body.note },
]);

const STUDS = entryColumns<'stud'>([
  { name: 'thread', of: (body) => body.stud.thread.designation },
  { name: 'thread as typed', of: (body) => body.threadTyped },
  { name: 'first full thread (mm)', of: (body) => body.stud.threadStartMm },
  { name: 'last full thread (mm)', of: (body) => body.stud.threadEndMm },
  { name: 'tip (mm)', of: (body) => body.stud.projectionMm },
  { name: 'tolerance of the lengths (mm)', of: (body) => body.stud.lengthToleranceMm },
  { name: 'pilot diameter (mm)', of: (body) => body.stud.pilotDiameterMm },
  { name: 'tensile strength (MPa)', of: (body) => body.stud.tensileMPa },
  { name: 'proof stress (MPa)', of: (body) => body.stud.proofMPa },
  { name: 'fillet (mm)', of: (body) => body.stud.filletMm },
  { name: 'note', of: (body) => body.note },
]);

const GAUGES = entryColumns<'gauge'>([
  { name: 'kind', of: (body) => body.gaugeKind },
  { name: 'resolution (mm)', of: (body) => body.resolutionMm },
  { name: 'expanded uncertainty U (mm)', of: (body) => body.calibrationUMm },
  { name: 'coverage factor k', of: (body) => body.coverageFactor },
  { name: 'repeatability (mm)', of: (body) => body.repeatabilityMm },
  { name: 'due on', of: (body) => body.dueOn },
  { name: 'note', of: (body) => body.note },
]);

function stackColumns(layers: number): readonly Column<Entry<'stack'>>[] {
  return entryColumns<'stack'>([
    { name: 'flexplate', of: (body) => body.stack.style },
    ...Array.from({ length: layers }, (_, i): Column<Entry<'stack'>['body']>[] => [
      { name: `layer ${i + 1}`, of: (body) => body.stack.layers[i]?.name ?? null },
      { name: `layer ${i + 1} thickness (mm)`, of: (body) => body.stack.layers[i]?.thicknessMm ?? null },
      { name: `layer ${i + 1} tolerance (mm)`, of: (body) => body.stack.layers[i]?.toleranceMm ?? null },
      { name: `layer ${i + 1} hole (mm)`, of: (body) => body.stack.layers[i]?.holeDiameterMm ?? null },
      { name: `layer ${i + 1} chamfer (mm)`, of: (body) => body.stack.layers[i]?.chamferMm ?? null },
    ]).flat(),
    { name: 'holes', of: (body) => body.stack.holeCount },
    { name: 'hole circle diameter (mm)', of: (body) => body.stack.holeCircleDiameterMm },
    { name: "room for the stud's tip (mm)", of: (body) => body.stack.tipRoomMm },
    { name: 'nut thread', of: (body) => body.nut?.thread?.designation ?? null },
    { name: 'nut height (mm)', of: (body) => body.nut?.heightMm ?? null },
    { name: 'nut tolerance (mm)', of: (body) => body.nut?.toleranceMm ?? null },
    { name: 'nut countersink (mm)', of: (body) => body.nut?.countersinkMm ?? null },
    { name: 'nut bearing diameter (mm)', of: (body) => body.nut?.bearingOuterDiameterMm ?? null },
    { name: 'nut proof stress (MPa)', of: (body) => body.nut?.proofMPa ?? null },
    { name: 'nut tensile strength (MPa)', of: (body) => body.nut?.tensileMPa ?? null },
    { name: 'washer (mm)', of: (body) => body.nut?.washerMm ?? null },
    { name: 'prevailing nut', of: (body) => body.nut?.prevailing ?? null },
    { name: 'pull-forward gap (mm)', of: (body) => body.pullForwardMm },
    { name: 'note', of: (body) => body.note },
  ]);
}
