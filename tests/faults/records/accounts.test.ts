import { expect, test } from 'vitest';
import { openShop } from '../../../src/records/database/database.ts';
import { startPassword } from '../../../src/records/people/passwords.ts';
import { addPerson } from '../../../src/records/people/people.ts';
import { ask } from '../kit/http.ts';
import { newFolder, start } from '../kit/program.ts';

test('started for this computer alone on a shop with accounts, everybody signs in all the same', async () => {
  const dataDir = newFolder();
  const shop = openShop({ dataDir });
  const { password } = await startPassword();
  const tester = { name: 'Tester One', initials: 'AA', role: 'keeper' } as const;
  await addPerson(shop.db, { who: 'AA', now: () => new Date() }, tester, password);
  await shop.close();

  const program = await start({ dataDir, demo: false });
  const jobs = await ask(`${program.url}/jobs`);
  expect(jobs.status).toBe(401);
  expect(jobs.text).toContain('id="sign-in-form"');
  const api = await ask(`${program.url}/api/jobs`);
  expect(api.status).toBe(401);
  const backup = await ask(`${program.url}/records`);
  expect(backup.text).not.toContain('id="backup-now"');
  expect(program.said().out).toContain('1 person has an account: everybody signs in');
});
