/**
 * Run by the tests as a process of its own: works on a shop like a person at a tablet and says after each thing kept
 * what it was. `writer.ts <dataDir> <who> <count>`; count 0 goes on until it is killed.
 */
import { openShop } from '../../../src/records/database/database.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { addReadings } from '../../../src/records/jobs/readings.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
import { received, wall } from '../../records/samples.ts';

const [dataDir = '', who = '', count = '0'] = process.argv.slice(2);
const now = () => new Date();
const shop = openShop({ dataDir, now });

for (let i = 0; count === '0' || i < Number(count); i++) {
  const job = await createJob(shop.db, { who, now }, { received: received() });
  // The same ids from whoever comes first: the second sends them again.
  const first = await getJob(shop.db, 1);
  const shared = first
    ? await addReadings(shop.db, { who, now }, { jobId: first.id, readings: [wall(`shared-${i}`)] })
    : null;
  const readings = [wall(`${job.number}-1`), wall(`${job.number}-2`)];
  await addReadings(shop.db, { who, now }, { jobId: job.id, readings });
  const plan = { plannedCutMm: 0.25, typed: '0.25' };
  await reviseJob(shop.db, { who, now }, { jobId: job.id, fromRevision: 2, what: 'plan', body: plan });
  console.log(
    JSON.stringify({ number: job.number, readings: readings.map((r) => r.id), added: shared?.added ?? [] }),
  );
}
await shop.close();
