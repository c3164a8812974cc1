import type { ShopCriteria } from '../../shared/words/catalogue.ts';
import { Refusal } from '../../shared/words/refusal.ts';
import type { Db } from '../records/database/database.ts';
import { criteriaOf } from '../records/shopCriteria.ts';

/** The shop's limits as they were seen, by their revision. */
export async function criteriaSeen(db: Db, revision: number, field: string): Promise<ShopCriteria> {
  const seen = await criteriaOf(db, revision);
  if (seen !== null) return seen.body;
  const message =
    'This did not say which shop limits the answer was shown with. Reload the job and send it from there.';
  throw new Refusal('unseen-criteria', [{ path: field, message }]);
}
