import type { Entry } from '../../shared/words/catalogue.ts';
import type { UnitAndZone } from '../../shared/words/day.ts';
import type { MasterCheck } from '../../shared/words/gauges/masterChecks.ts';
import type { Job } from '../../shared/words/job.ts';
import { listEntries } from '../records/catalogue.ts';
import type { Db } from '../records/database/database.ts';
import { masterChecksOf } from '../records/gauges/masterChecks.ts';
import { criteriaAt, currentCriteria } from '../records/shopCriteria.ts';
import { gaugesAtHand } from './gauges.ts';
import { listsFor } from './inspection/listFindings.ts';
import type { JobUnder } from './jobAnswer.ts';

/** What a job is worked out under, as it is read from the records. */
export interface UnderRead extends JobUnder {
  readonly criteriaRevision: number;
  readonly gauges: readonly Entry<'gauge'>[];
}

/** Today's criteria and gauges for the job as it stands; for an earlier state the criteria of that day. */
export async function jobUnder(
  db: Db,
  job: Job,
  { lengthUnit, timeZone }: UnitAndZone,
  asItWas: number | null = null,
): Promise<UnderRead> {
  const { revision, body } = await (asItWas === null ? currentCriteria(db) : criteriaAt(db, job.changedAt));
  const gauges = await listEntries(db, 'gauge');
  const writing = { lengthUnit, timeZone };
  const masterChecks = await checksOfGaugesUsed(db, job);
  const atHand = gaugesAtHand(gauges);
  // What an earlier state lacked of a list of today says nothing.
  const lists = asItWas === null ? await listsFor(db, job.sections.received?.body) : [];
  return { criteria: body, criteriaRevision: revision, gauges, atHand, masterChecks, lists, writing };
}

/** Checks on a master of the gauges a job was measured with. */
export async function checksOfGaugesUsed(db: Db, job: Job): Promise<readonly MasterCheck[]> {
  return masterChecksOf(db, [...new Set((job.sections.setup?.body.gauges ?? []).map(({ id }) => id))]);
}
