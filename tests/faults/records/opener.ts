/**
 * Run by the tests as a process of its own: opens a shop as the account given. `opener.ts <dataDir> <uid>`.
 * One is opened in memory first: it reads all it needs of the program, whose folder that account may not be let into.
 */
import { openShop, openShopInMemory } from '../../../src/records/database/database.ts';
import { ShopWillNotOpen } from '../../../src/records/database/errors.ts';

const [dataDir = '', uid = ''] = process.argv.slice(2);
await openShopInMemory().close();
if (uid !== '') process.setuid?.(Number(uid));
try {
  await openShop({ dataDir }).close();
  console.log('opened');
} catch (error) {
  if (!(error instanceof ShopWillNotOpen)) throw error;
  console.log(`${error.code}: ${error.message}`);
}
