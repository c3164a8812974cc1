import type { Request, Response } from 'express';
import { refuseBoth } from '../../../shared/schemas/catalogue.ts';
import type { ShopCriteria } from '../../../shared/words/catalogue.ts';
import { CRITERIA } from '../../../shared/words/fields/criteria.ts';
import { MinimumGivenPage } from '../../../views/pages/catalogue/minimumGivenPage.tsx';
import type { MinimumGiven } from '../../../views/parts/minimumGivenPart.tsx';
import { renderPage } from '../../../views/render.ts';
import { listEntries } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import { minimumsByType, typesWithoutMinimum } from '../../shop/limits/minimumByType.ts';
import { readBody } from '../request/bodyForm.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { fieldsOf, TypedForm } from '../request/typed.ts';

const { minimumWallMm, minimumWallFormula } = CRITERIA;
const MINIMUM = { minimumWallMm, minimumWallFormula };

/** What the minimum that is typed gives, for the form of the limits. Looks, and keeps nothing. */
export async function getMinimumGiven(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const own = await frameOf(req, context);
  const form = new TypedForm(fieldsOf(req.query), own);
  const given = await minimumGiven(db, form, (await currentCriteria(db)).body);
  const frame = { ...own, ...form.writing, address: '/criteria' };
  res.send(renderPage(MinimumGivenPage({ frame, given })));
}

/** null where no formula stands and none is typed. */
export async function minimumGiven(
  db: Db,
  form: TypedForm,
  standing: ShopCriteria,
): Promise<MinimumGiven | null> {
  const read = readBody(form, MINIMUM);
  if (!form.has(minimumWallFormula.box) && (standing.minimumWallFormula ?? null) === null) return null;
  refuseBoth(read, (message) => form.addFaults([{ path: minimumWallFormula.box, message }], (path) => path));
  const types = await listEntries(db, 'family');
  const { lengthUnit } = form.writing;
  const formula = read.minimumWallFormula;
  const without = formula === null ? null : typesWithoutMinimum(formula, types, lengthUnit);
  if (without !== null) form.fault(minimumWallFormula.box, `${minimumWallFormula.label}: ${without}`);
  const fault = form.faults[0]?.message ?? null;
  const then = { ...standing, ...read };
  return { fault, types: fault === null ? minimumsByType(types, standing, then, lengthUnit) : [] };
}
