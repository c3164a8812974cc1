import type { EntryBodies } from '../../../shared/words/catalogue.ts';
import { listInWords } from '../../../shared/words/print.ts';
import {
  partsOf,
  type SlipCount,
  type SlipPart,
  type StockChanged,
  type StockedKind,
  slipName,
} from '../../../shared/words/stud/slip.ts';
import { getEntry, reviseEntry } from '../catalogue.ts';
import { type Db, write } from '../database/database.ts';
import { NotInRecords, refuse } from '../database/errors.ts';
import { toJson } from '../database/json.ts';
import { type Ctx, type Signed, signed } from '../database/writing.ts';
import { getSlip } from './slips.ts';

/** The refusal of a count for which too few lie on the shelf: it may be confirmed. */
export const TOO_FEW = 'too-few';

/** How often the parts of a slip were counted out, and back, oldest first. */
export async function countsOf(db: Db, number: number): Promise<readonly SlipCount[]> {
  const rows = await db
    .selectFrom('slip_count')
    .selectAll()
    .where('slip_number', '=', number)
    .orderBy('place')
    .execute();
  return rows.map(({ what, at, who, why, body }) => ({ what, at, who, why, ...JSON.parse(body) }));
}

/**
 * Takes the parts of a slip out of stock: all of them, or nothing. Where fewer lie on the shelf than the slip hands over
 * it refuses (TOO_FEW), unless whoever counts has said that the shelf is to be counted to zero.
 */
export async function countOut(
  db: Db,
  ctx: Ctx,
  asked: { readonly number: number; readonly toZero?: boolean },
): Promise<SlipCount> {
  const by = signed(ctx, undefined);
  const name = slipName(asked.number);
  return write(db, async (trx) => {
    const { slip, counts } = await standing(trx, asked.number);
    if (counts.at(-1)?.what === 'out')
      throw refuse('counted', '', `The parts of slip ${name} are out of stock already. Nothing was changed.`);
    const parts = partsOf(slip);
    if (parts === null)
      throw refuse('no-count', '', `Slip ${name} does not say how many. Change the stock in the catalog.`);
    const lines: StockChanged[] = [];
    for (const part of parts) {
      const from = await stockOf(trx, part);
      if (from !== null) lines.push({ ...part, from, to: Math.max(0, from - part.count) });
    }
    if (lines.length === 0)
      throw refuse(
        'not-counted',
        '',
        'The catalog counts none of these parts. Enter their stock there first.',
      );
    const short = lines.filter(({ from, count }) => from < count);
    if (short.length > 0 && asked.toZero !== true) throw refuse(TOO_FEW, 'toZero', tooFew(short));
    for (const line of lines) await changeStock(trx, ctx, line, line.to, `Taken out with slip ${name}`);
    return keep(trx, asked.number, counts.length + 1, by, { what: 'out', why: '', lines });
  });
}

/** Puts back what a slip took, with the reason. */
export async function countBack(
  db: Db,
  ctx: Ctx,
  asked: { readonly number: number; readonly why: string },
): Promise<SlipCount> {
  const by = signed(ctx, asked.why);
  const name = slipName(asked.number);
  return write(db, async (trx) => {
    const { counts } = await standing(trx, asked.number);
    const last = counts.at(-1);
    if (last?.what !== 'out')
      throw refuse('not-out', '', `The parts of slip ${name} are not out of stock. Nothing was changed.`);
    if (by.why === '') throw refuse('why-needed', 'why', 'Enter why the parts go back on the shelf.');
    const lines: StockChanged[] = [];
    for (const { from, to, ...part } of last.lines) {
      const now = await stockOf(trx, part);
      if (now === null) continue;
      const line = { ...part, from: now, to: now + from - to };
      lines.push(line);
      await changeStock(trx, ctx, line, line.to, `Put back from slip ${name}: ${by.why}`);
    }
    return keep(trx, asked.number, counts.length + 1, by, { what: 'back', why: by.why, lines });
  });
}

async function standing(trx: Db, number: number) {
  const slip = await getSlip(trx, number);
  if (slip === null) throw new NotInRecords('number', `There is no slip ${slipName(number)}.`);
  return { slip, counts: await countsOf(trx, number) };
}

/** null where nobody counts it, or it is not in the catalog. */
async function stockOf(trx: Db, { kind, id }: Pick<SlipPart, 'kind' | 'id'>): Promise<number | null> {
  return (await getEntry(trx, kind, id))?.body.stock ?? null;
}

function tooFew(short: readonly StockChanged[]): string {
  const told = short.map(({ name, from, count, shelf }) => {
    const place = shelf === '' ? '' : ` on shelf ${shelf}`;
    return `${from} of the ${count} ${name}${place}`;
  });
  return `The catalog has only ${listInWords(told)}. Look on the shelf. Set the stock to zero, or correct it first.`;
}

async function changeStock(
  trx: Db,
  ctx: Ctx,
  { kind, id }: { readonly kind: StockedKind; readonly id: string },
  stock: number,
  why: string,
): Promise<void> {
  const now = await getEntry(trx, kind, id);
  if (now === null) return;
  const body: EntryBodies[StockedKind] = { ...now.body, stock };
  await reviseEntry(trx, ctx, { kind, id, fromRevision: now.revision, body, why });
}

async function keep(
  trx: Db,
  number: number,
  place: number,
  { who, at }: Signed,
  { what, why, lines }: Pick<SlipCount, 'what' | 'why' | 'lines'>,
): Promise<SlipCount> {
  const row = { slip_number: number, place, what, at, who, why, body: toJson({ lines }) };
  await trx.insertInto('slip_count').values(row).execute();
  return { what, at, who, why, lines };
}
