import type { Request } from 'express';
import type { Frame } from '../../../views/frame.ts';
import { listEntries } from '../../records/catalogue.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { type Fields, unitOf } from '../request/typed.ts';

/** The frame of a stud's page; a unit in the address stands before the person's own choice. */
export async function studFrame(req: Request, context: PageContext, fields: Fields): Promise<Frame> {
  const frame = await frameOf(req, context);
  return { ...frame, lengthUnit: unitOf(fields) ?? frame.lengthUnit };
}

/** What the shop has to choose from. */
export async function shelves(context: PageContext) {
  const { db } = context.shop;
  const [stacks, studs, nuts, washers, criteria] = [
    await listEntries(db, 'stack'),
    await listEntries(db, 'stud'),
    await listEntries(db, 'nut'),
    await listEntries(db, 'washer'),
    await currentCriteria(db),
  ];
  return { stacks, studs, nuts, washers, criteria: criteria.body };
}
