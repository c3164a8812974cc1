import { isDeepStrictEqual } from 'node:util';
import type { Entry } from '../../shared/words/catalogue.ts';
import { ofDemo } from '../../shared/words/demo.ts';
import type { Job } from '../../shared/words/job.ts';
import type { CatalogueKind } from '../../shared/words/terms.ts';
import { entryHistory } from '../records/catalogue.ts';
import type { Db } from '../records/database/database.ts';

/** What an entry is called, what is said of it and how many lie on the shelf: none of it is a figure of the part. */
const NO_FIGURES = ['name', 'note', 'stock'];

/**
 * Whether the figures of an entry are the demo's: the demo entered it, and the shop has changed none of them. `upTo`
 * leaves out revisions that came later than what is asked about.
 */
export async function demoFigures(
  db: Db,
  kind: CatalogueKind,
  id: string,
  upTo: (one: Entry<CatalogueKind>) => boolean = () => true,
): Promise<boolean> {
  const history = await entryHistory(db, kind, id);
  const [first] = history;
  const last = history.findLast(upTo);
  if (first === undefined || last === undefined || !ofDemo(first.at)) return false;
  return isDeepStrictEqual(figuresOf(first), figuresOf(last));
}

/** Whether a job of the shop has its figures from a cover type while they were the demo's. */
export async function madeUpCover(db: Db, { demo, sections }: Job): Promise<boolean> {
  const received = sections.received?.body;
  if (demo || received === undefined) return false;
  return demoFigures(db, 'family', received.familyId, ({ revision }) => revision <= received.familyRevision);
}

function figuresOf({ body }: Entry<CatalogueKind>) {
  const said = ([key, value]: [string, unknown]) =>
    !NO_FIGURES.includes(key) && value !== null && value !== undefined && value !== '';
  return Object.fromEntries(Object.entries(body).filter(said));
}
