import type { Entry, ShopCriteria, TypedInEntry } from '../../shared/words/catalogue.ts';
import { addEntry, entryHistory, getEntry, reviseEntry } from './catalogue.ts';
import { type Db, write } from './database/database.ts';
import type { Ctx } from './database/writing.ts';

/** Where the shop's criteria are kept: one entry, whose revisions say who set what when. */
export const CRITERIA_ID = 'shop';

/** What applies while the shop has set nothing. */
export const STARTING_LIMITS: ShopCriteria = {
  shopName: 'The shop',
  minimumWallMm: null,
  minimumWallFormula: null,
  cleanUpAllowanceMm: 0.05,
  faceRunoutLimitMm: null,
  confidence: 0.95,
  typicalCutMm: null,
  protrusionThreads: 1,
  startThreads: 2,
  lengthUnit: 'mm',
  decimalSign: 'point',
  lathe: null,
  balance: null,
  bending: null,
  heat: null,
};

export interface CurrentCriteria {
  /** 0 while none have been saved: the ones the program starts with. */
  readonly revision: number;
  readonly at: string | null;
  readonly who: string | null;
  readonly body: ShopCriteria;
}

export async function currentCriteria(db: Db): Promise<CurrentCriteria> {
  return filledIn(await getEntry(db, 'criteria', CRITERIA_ID));
}

/** The criteria of a revision, 0 for those the program starts with; null when there is none such. */
export async function criteriaOf(db: Db, revision: number): Promise<CurrentCriteria | null> {
  if (revision === 0) return filledIn(null);
  const saved = await getEntry(db, 'criteria', CRITERIA_ID, revision);
  return saved && filledIn(saved);
}

/** The criteria that were in force at a moment (UTC, ISO 8601), to show an earlier state of a job with them. */
export async function criteriaAt(db: Db, at: string): Promise<CurrentCriteria> {
  const history = await entryHistory(db, 'criteria', CRITERIA_ID);
  return filledIn(history.findLast((entry) => entry.at <= at) ?? null);
}

/** Criteria saved before a limit existed get the program's starting value for it. */
function filledIn(saved: Entry<'criteria'> | null): CurrentCriteria {
  if (saved === null) return { revision: 0, at: null, who: null, body: STARTING_LIMITS };
  const { revision, at, who, body } = saved;
  return { revision, at, who, body: { ...STARTING_LIMITS, ...body } };
}

/** Sets the shop's criteria; `fromRevision` is the one shown when the person began, 0 for the first time. */
export async function saveCriteria(
  db: Db,
  ctx: Ctx,
  edit: {
    readonly fromRevision: number;
    readonly body: ShopCriteria;
    readonly typed?: TypedInEntry | null;
    readonly why?: string;
  },
): Promise<Entry<'criteria'>> {
  return write(db, async (trx) => {
    const saved = await getEntry(trx, 'criteria', CRITERIA_ID);
    if (saved === null && edit.fromRevision === 0) {
      const first = {
        kind: 'criteria',
        id: CRITERIA_ID,
        body: edit.body,
        typed: edit.typed ?? null,
      } as const;
      return addEntry(trx, { ...ctx, why: edit.why ?? ctx.why ?? '' }, first);
    }
    return reviseEntry(trx, ctx, { ...edit, kind: 'criteria', id: CRITERIA_ID });
  });
}
