import { type Request, type Response, Router } from 'express';
import { isDay } from '../../../shared/words/day.ts';
import { MARK_PATTERN_WORD, MARK_PATTERNS } from '../../../shared/words/heatMarks.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { SCRAP_WORD } from '../../../shared/words/trends/trends.ts';
import {
  type ComebackShare,
  type Histogram,
  type TrendsShown,
  tooFew,
} from '../../../shared/words/trends/trendsShown.ts';
import { DECISION_WORD } from '../../../shared/words/verdicts.ts';
import { TrendsPage } from '../../../views/pages/trends/trendsPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { listEntries } from '../../records/catalogue.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import type { TrendQuestion } from '../../records/trends/trendFigures.ts';
import { trendsOf } from '../../shop/trends/trendsOf.ts';
import { figureIn } from '../request/bodyColumns.ts';
import { type Column, sendCsv } from '../request/csv.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { NoSuchPage } from '../request/pageErrors.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf } from '../request/typed.ts';

/** What comes in, what becomes of it and what comes back: drawn, and each list as CSV. */
export function trendsRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/trends', to(getTrends));
  router.get('/trends/:part.csv', to(sendPart));
  return router;
}

async function getTrends(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const frame = await frameOf(req, context);
  const fields = askedFields(fieldsOf(req.query));
  const families = await listEntries(db, 'family', { retired: true });
  const { question, faults } = questionOf(fields);
  const { body } = await currentCriteria(db);
  const trends = faults.length > 0 ? null : await trendsOf(db, question, body, frame.lengthUnit);
  const named = families.map(({ id, name }) => ({ id, name }));
  res
    .status(faults.length > 0 ? 422 : 200)
    .send(renderPage(TrendsPage({ frame, fields, faults, families: named, trends })));
}

const ASKED = ['family', 'from', 'to'];

function askedFields(fields: Fields): Fields {
  return Object.fromEntries(Object.entries(fields).filter(([name]) => ASKED.includes(name)));
}

function questionOf(fields: Fields): { question: TrendQuestion; faults: readonly Fault[] } {
  const faults: Fault[] = [];
  const day = (name: 'from' | 'to', label: string) => {
    const typed = (fields[name] ?? '').trim();
    if (typed === '' || isDay(typed)) return typed || undefined;
    faults.push({
      path: name,
      message: `${label}: "${typed.slice(0, 40)}" is not a date. Write it like 2026-11-24.`,
    });
    return undefined;
  };
  const [from, to] = [day('from', 'Received from'), day('to', 'to')];
  if (from !== undefined && to !== undefined && from > to) {
    faults.push({ path: 'to', message: 'The last day is before the first. Enter a later one.' });
  }
  return { question: { familyId: fields.family || undefined, from, to }, faults };
}

/** A list of figures as CSV. */
type Sent = (trends: TrendsShown, unit: LengthUnit, res: Response) => void;

const length = (mm: number, unit: LengthUnit) => figureIn(mm, 'length', unit);

const PARTS: Readonly<Record<string, Sent>> = {
  intake: ({ months }, _, res) => {
    sendCsv(
      res,
      'intake-and-outcome',
      [
        { name: 'month', of: ({ period }) => period },
        { name: DECISION_WORD.face, of: ({ outcomes }) => outcomes.face },
        { name: DECISION_WORD['face-and-ring'], of: ({ outcomes }) => outcomes['face-and-ring'] },
        { name: DECISION_WORD.replace, of: ({ outcomes }) => outcomes.replace },
        { name: 'not decided', of: ({ outcomes }) => outcomes.open },
      ],
      months,
    );
  },
  scrapped: ({ scrapped }, _, res) => {
    sendCsv(
      res,
      'reasons-for-replacing',
      [
        { name: 'reason', of: ({ reason }) => SCRAP_WORD[reason] },
        { name: 'covers', of: ({ n }) => n },
      ],
      scrapped,
    );
  },
  walls: ({ walls }, unit, res) => {
    const rows = walls.flatMap((one) => one.histogram.bins.map((bin) => ({ ...one, ...bin })));
    sendCsv(
      res,
      'wall-as-received',
      [
        { name: 'cover type', of: ({ name }) => name },
        {
          name: `new wall (${unit})`,
          of: ({ nominalMm }) => (nominalMm === null ? null : length(nominalMm, unit)),
        },
        {
          name: `minimum (${unit})`,
          of: ({ minimumMm }) => (minimumMm === null ? null : length(minimumMm, unit)),
        },
        { name: 'measured', of: ({ measured }) => measured },
        { name: 'below the minimum', of: ({ under }) => under },
        { name: `from (${unit})`, of: ({ fromMm }) => length(fromMm, unit) },
        {
          name: `less than (${unit})`,
          of: ({ fromMm, histogram }) => length(fromMm + histogram.widthMm, unit),
        },
        { name: 'covers', of: ({ n }) => n },
      ],
      rows,
    );
  },
  cuts: ({ cuts }, unit, res) => sendCsv(res, 'depth-of-cut', binColumns(cuts, unit), cuts.bins),
  times: ({ days }, _, res) => {
    sendCsv(
      res,
      'days-to-sign',
      [
        { name: 'whole days', of: (one) => one.days },
        { name: 'jobs', of: ({ n }) => n },
      ],
      days,
    );
  },
  comebacks: ({ comebacks }, unit, res) => {
    const { byDecision, byWallLeft } = comebacks;
    type Row = ComebackShare & { readonly by: string; readonly fromMm?: number; readonly toMm?: number };
    const rows: readonly Row[] = [
      ...byDecision.map((one) => ({ ...one, by: DECISION_WORD[one.decision] })),
      ...byWallLeft.map((one) => ({ ...one, by: 'wall left' })),
    ];
    sendCsv(
      res,
      'comebacks',
      [
        { name: 'by', of: ({ by }) => by },
        { name: `from (${unit})`, of: ({ fromMm }) => (fromMm === undefined ? null : length(fromMm, unit)) },
        { name: `less than (${unit})`, of: ({ toMm }) => (toMm === undefined ? null : length(toMm, unit)) },
        ...SHARES,
      ],
      rows,
    );
  },
  bending: ({ bending }, _, res) => {
    sendCsv(
      res,
      'bending-and-comebacks',
      [
        { name: 'covers released', of: ({ what }) => what },
        { name: 'with bending worked out', of: ({ n }) => n },
        { name: 'mean peak lining pressure (times new)', of: ({ mean }) => mean && figure(mean) },
        { name: 'highest peak lining pressure (times new)', of: ({ most }) => most && figure(most) },
      ],
      [
        { what: 'came back', ...bending.back },
        { what: 'did not', ...bending.stayed },
      ],
    );
  },
  patterns: ({ patterns }, _, res) => {
    sendCsv(
      res,
      'heat-marks-by-cover-type',
      [
        { name: 'cover type', of: ({ name }) => name },
        ...MARK_PATTERNS.map((pattern) => ({
          name: MARK_PATTERN_WORD[pattern],
          of: ({ counts }: TrendsShown['patterns'][number]) => counts[pattern] ?? 0,
        })),
      ],
      patterns,
    );
  },
  'pattern-comebacks': ({ comebacks }, _, res) => {
    sendCsv(
      res,
      'comebacks-by-heat-marks',
      [{ name: 'heat marks', of: ({ pattern }) => MARK_PATTERN_WORD[pattern] }, ...SHARES],
      comebacks.byPattern,
    );
  },
};

const SHARES: readonly Column<ComebackShare>[] = [
  { name: 'released', of: ({ released }) => released },
  { name: 'came back', of: ({ back }) => back },
  { name: 'share', of: ({ interval }) => interval && figure(interval.share) },
  { name: '95 % from', of: ({ interval }) => interval && figure(interval.low) },
  { name: '95 % to', of: ({ interval }) => interval && figure(interval.high) },
  { name: 'too few to tell', of: ({ interval }) => interval === null || tooFew(interval) },
];

const figure = (share: number) => Number(share.toPrecision(6));

function binColumns({ widthMm }: Histogram, unit: LengthUnit): readonly Column<Histogram['bins'][number]>[] {
  return [
    { name: `from (${unit})`, of: ({ fromMm }) => length(fromMm, unit) },
    { name: `less than (${unit})`, of: ({ fromMm }) => length(fromMm + widthMm, unit) },
    { name: 'covers', of: ({ n }) => n },
  ];
}

async function sendPart(context: PageContext, req: Request, res: Response): Promise<void> {
  const part = String(req.params.part);
  const send = Object.hasOwn(PARTS, part) ? PARTS[part] : undefined;
  if (send === undefined) throw new NoSuchPage('There is no such list. Go back to Trends.');
  const { db } = context.shop;
  const { question, faults } = questionOf(askedFields(fieldsOf(req.query)));
  if (faults.length > 0) throw new NoSuchPage('That is no day. Go back to Trends.');
  const { lengthUnit } = await frameOf(req, context);
  const { body } = await currentCriteria(db);
  send(await trendsOf(db, question, body, lengthUnit), lengthUnit, res);
}
