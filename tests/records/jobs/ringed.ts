import type { Bending, BendingCase, BendingCaseId } from '../../../shared/words/bending/bending.ts';
import type { RingSize } from '../../../shared/words/bending/stiffness.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import type { Decision, Job } from '../../../shared/words/job.ts';
import type { Db } from '../../../src/records/database/database.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { addReadings } from '../../../src/records/jobs/readings.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
import { COVER } from '../../calc/plate/example.ts';
import { as, cuts, decision, looked, received, setup, wall } from '../samples.ts';

const { trackWallMm: _w, ring: _r, piston: _p, padInsetWalls: _i, peakLimit: _l, ...base } = COVER;
const SIZE: RingSize = { innerDiameterMm: 236, outerDiameterMm: 296, thicknessMm: 6 };

interface Ringed {
  /** Left out: as decisions were kept before it was asked. */
  readonly joinedToPads?: boolean | null;
  /** Wall on the track after the cut; the thinner, the farther past its limit without the ring. */
  readonly afterMm?: number;
  readonly stiffness?: Finding['status'];
}

/** How a decision with its ring welded on was kept. */
function bendingOf({ joinedToPads, afterMm = 4.4 }: Ringed): Bending {
  const size = joinedToPads === undefined ? SIZE : { ...SIZE, joinedToPads };
  const one = (id: BendingCaseId, trackWallMm: number, ringed: boolean): BendingCase => ({
    id,
    trackWallMm,
    ring: ringed ? { ...size, bonded: false } : null,
    peakOverMean: { rigid: 3.4, conforming: 1.2 },
    rippleMm: { rigid: 0.008, conforming: 0.008 },
    bossDeflectionMm: { rigid: 0.7, conforming: 0.9 },
    greatestStressMPa: { rigid: 200, conforming: 200 },
    beyondYield: null,
    heat: null,
  });
  const answer = { symbol: 'm', value: 1, unit: 'kg' as const, how: [], warnings: [] };
  return {
    calcVersion: joinedToPads === undefined ? 'plate-2' : 'plate-3',
    base,
    heat: null,
    cases: [one('new', 5, false), one('now', 4.6, true), one('after', afterMm, true)],
    other: null,
    limits: { peakOverNew: null, rippleOverNew: 1.05 },
    wallForPeakMm: null,
    marks: null,
    ring: { size, massKg: answer, unbalanceGmm: null, permissibleGmm: null, clearanceMm: answer },
    welded: true,
  };
}

/** A decision that met the shop’s limit with the ring that is on. */
export function ringedDecision(workedOutAtRevision: number, ringed: Ringed = {}): Decision {
  const kept = decision(workedOutAtRevision);
  const stiffness: Finding = {
    id: 'stiffness',
    title: 'Stiffness with its stiffening ring',
    status: ringed.stiffness ?? 'pass',
    value: 0.8,
    limit: 1.05,
    unit: '× new',
    sentence: 'With the ring the friction-surface waviness is within the limit.',
    source: 'the shop',
    answer: null,
  };
  return { ...kept, check: { ...kept.check, findings: [stiffness] }, bending: bendingOf(ringed) };
}

/** A job with its ring on and everything done but the signature. */
export async function ringedJob(db: Db, ringed: Ringed = {}): Promise<Job> {
  const { id: jobId } = await createJob(db, as('AB'), { received: received() });
  await reviseJob(db, as('AB'), { jobId, fromRevision: 1, what: 'looked', body: looked() });
  const { joinedToPads } = ringed;
  const ringWelded = { on: '2026-03-02', note: '', ...(joinedToPads === undefined ? {} : { joinedToPads }) };
  await reviseJob(db, as('AB'), { jobId, fromRevision: 2, what: 'setup', body: { ...setup, ringWelded } });
  await addReadings(db, as('AB'), { jobId, readings: [wall(`${jobId}-w1`)] });
  await reviseJob(db, as('AB'), {
    jobId,
    fromRevision: 4,
    what: 'decision',
    body: ringedDecision(4, ringed),
  });
  await reviseJob(db, as('AB'), { jobId, fromRevision: 5, what: 'cuts', body: cuts(0.25) });
  const after = wall(`${jobId}-a1`, { pass: 'after', valueMm: 4.67, typed: '4.67' });
  return (await addReadings(db, as('AB'), { jobId, readings: [after] })).job;
}

/** The same, signed by the program of an earlier day, which did not ask how a ring is joined. */
export async function signedBefore(db: Db, ringed: Ringed = {}): Promise<Job> {
  const job = await ringedJob(db, ringed);
  const revision = job.revision + 1;
  await db
    .insertInto('job_revision')
    .values({
      job_id: job.id,
      revision,
      at: '2026-03-02T12:00:00.000Z',
      who: 'AB',
      why: '',
      what: 'signature',
      body: JSON.stringify({ statement: '', signedRevision: job.revision }),
    })
    .execute();
  await db.updateTable('job').set({ revision, stage: 'signed' }).where('id', '=', job.id).execute();
  return (await getJob(db, job.id))!;
}
