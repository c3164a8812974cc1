import type { Request, Response } from 'express';
import { writingIn } from '../../../shared/quantity/fieldText.ts';
import { type CatalogueKind, isCatalogueKind } from '../../../shared/words/terms.ts';
import { EntryDrawnPage } from '../../../views/pages/catalogue/entryDrawnPage.tsx';
import type { EntryTyped } from '../../../views/parts/entryDrawnPart.tsx';
import { renderPage } from '../../../views/render.ts';
import { getEntry, listEntries } from '../../records/catalogue.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import { keepingUnits } from '../request/otherUnit.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { NoSuchPage } from '../request/pageErrors.ts';
import { fieldsOf, TypedForm } from '../request/typed.ts';
import { coverDrawn } from './coverDrawn.ts';
import { entryAsTyped } from './entryForm.ts';
import { gaugeDrawn } from './gaugeDrawn.ts';
import { nutDrawn, studDrawn, washerDrawn } from './partsDrawn.ts';

/** The entry of a form, drawn while it is typed. Looks, and keeps nothing. */
export async function getEntryDrawn(context: PageContext, req: Request, res: Response): Promise<void> {
  const { entry: entryId, ...fields } = fieldsOf(req.query);
  const { kind } = req.params;
  const own = await frameOf(req, context);
  const kept = entryId && isCatalogueKind(kind) ? await getEntry(context.shop.db, kind, entryId) : null;
  const form = new TypedForm(fields, own, kept ? entryAsTyped(kept, writingIn(fields, own)) : {});
  const typed = isCatalogueKind(kind) ? await entryDrawn(context, kind, form) : null;
  if (typed === null)
    throw new NoSuchPage('This has no drawing. Open the catalog, and choose an entry there.');
  res.send(renderPage(EntryDrawnPage({ frame: keepingUnits(own, form), typed })));
}

/** What can be drawn of what is in these boxes; null for what has no drawing here. */
export async function entryDrawn(
  context: PageContext,
  kind: CatalogueKind,
  form: TypedForm,
): Promise<EntryTyped | null> {
  switch (kind) {
    case 'family':
      return coverDrawn(form);
    case 'stud':
      return studDrawn(form);
    case 'nut':
      return nutDrawn(form);
    case 'washer':
      return washerDrawn(form);
    case 'gauge': {
      const { db } = context.shop;
      const families = await listEntries(db, 'family');
      const limits = (await currentCriteria(db)).body;
      return gaugeDrawn(form, limits, families);
    }
    default:
      return null;
  }
}
