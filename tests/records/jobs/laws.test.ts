import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { DecisionKind, Job, NewReading } from '../../../shared/words/job.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import type { Shop } from '../../../src/records/database/database.ts';
import { StaleEdit } from '../../../src/records/database/errors.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { historyOf } from '../../../src/records/jobs/history.ts';
import { addReadings } from '../../../src/records/jobs/readings.ts';
import { getJob, jobAtRevision } from '../../../src/records/jobs/readJob.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
import {
  as,
  crack,
  cuts,
  decision,
  looked,
  noCrackAfterAll,
  prints,
  received,
  setup,
  studs,
  wall,
} from '../samples.ts';
import { onEachDatabase } from '../shops.ts';

/** One thing somebody tries, perhaps from an old page, perhaps something that must not be. */
interface Attempt {
  readonly who: string;
  readonly why: string;
  /** How many revisions ago the page was opened. */
  readonly late: number;
  readonly what:
    | 'received'
    | 'crack'
    | 'looked'
    | 'setup'
    | 'decision'
    | 'cuts'
    | 'studs'
    | 'signature'
    | 'reading';
  readonly n: number;
}

const attempt: fc.Arbitrary<Attempt> = fc.record({
  who: fc.constantFrom('AB', 'CD', 'EF'),
  why: fc.constantFrom('', '', 'because'),
  late: fc.constantFrom(0, 0, 0, 1, 2),
  what: fc.constantFrom(
    'received',
    'crack',
    'looked',
    'setup',
    'decision',
    'cuts',
    'studs',
    'signature',
    'reading',
    'reading',
  ),
  n: fc.nat({ max: 5 }),
});

async function attempted(shop: Shop, jobId: number, { who, why, late, what, n }: Attempt): Promise<Job> {
  const revision = (await getJob(shop.db, jobId))?.revision ?? 0;
  const ctx = as(who, why);
  const edit = { jobId, fromRevision: Math.max(1, revision - late) };
  switch (what) {
    case 'received':
      return reviseJob(shop.db, ctx, {
        ...edit,
        what,
        body: received({ familyRevision: 1 + (n % 2), note: `${n}` }),
      });
    case 'crack':
      return reviseJob(shop.db, ctx, { ...edit, what: 'looked', body: crack });
    case 'looked':
      return reviseJob(shop.db, ctx, {
        ...edit,
        what,
        body: n % 2 ? noCrackAfterAll : looked({ crackNote: `${n}` }),
      });
    case 'setup':
      return reviseJob(shop.db, ctx, { ...edit, what, body: { ...setup, gauge: `gauge ${n}` } });
    case 'decision': {
      const kind: DecisionKind = n === 0 ? 'replace' : 'face';
      return reviseJob(shop.db, ctx, {
        ...edit,
        what,
        body: decision(edit.fromRevision, { decision: kind, reason: 'so' }),
      });
    }
    case 'cuts':
      return reviseJob(shop.db, ctx, {
        ...edit,
        what,
        body: cuts(...Array.from({ length: n % 3 }, () => 0.1)),
      });
    case 'studs':
      return reviseJob(shop.db, ctx, { ...edit, what, body: { ...studs, note: `${n}` } });
    case 'signature':
      return reviseJob(
        shop.db,
        ctx,
        {
          ...edit,
          what,
          body: { statement: '', signedRevision: edit.fromRevision },
        },
        prints,
      );
    case 'reading': {
      const reading: NewReading = wall(`r${n}`, {
        pass: n % 2 ? 'after' : 'before',
        replaces: n > 3 ? `r${n - 3}` : null,
        valueMm: n === 5 ? null : 4.9,
      });
      return (await addReadings(shop.db, ctx, { jobId, readings: [reading] })).job;
    }
  }
}

onEachDatabase((engine) => {
  test('any job stays readable as it was, and its line in the lists is what it is now, whatever is tried', async () => {
    const stages = new Set<string>();
    await fc.assert(
      fc.asyncProperty(fc.array(attempt, { minLength: 1, maxLength: 30 }), async (attempts) => {
        const shop = await engine.openEmpty();
        const seen = new Map<number, string>();
        const remember = (job: Job) => {
          const text = JSON.stringify(job);
          // A job handed out for a revision is always the same one.
          expect(seen.get(job.revision) ?? text).toBe(text);
          seen.set(job.revision, text);
          stages.add(job.stage);
        };
        const job = await createJob(shop.db, as('AB'), { received: received() });
        remember(job);
        for (const each of attempts) {
          const before = seen.size;
          try {
            remember(await attempted(shop, job.id, each));
          } catch (error) {
            if (!(error instanceof Refusal) && !(error instanceof StaleEdit)) throw error;
            expect((await getJob(shop.db, job.id))?.revision).toBe(before);
          }
        }
        for (const [revision, text] of seen) {
          expect(JSON.stringify(await jobAtRevision(shop.db, job.id, revision))).toBe(text);
        }
        const now = await getJob(shop.db, job.id);
        const line = await shop.db.selectFrom('job').selectAll().executeTakeFirstOrThrow();
        expect([line.revision, line.stage, line.outcome, line.changed_at, line.family_name]).toEqual([
          now?.revision,
          now?.stage,
          now?.outcome,
          now?.changedAt,
          now?.sections.received?.body.family.name,
        ]);
        expect((await historyOf(shop.db, job.id)).map((h) => h.revision)).toEqual(
          [...seen.keys()].sort((a, b) => a - b),
        );
        if (now?.outcome && now.outcome !== 'replace')
          expect(now.sections.looked?.body.crackTest).not.toBe('found');
        await shop.close();
      }),
      // Every question goes over a line there; the same attempts were made on SQLite, and more.
      { numRuns: engine.name === 'SQLite' ? 60 : 15, seed: 11 },
    );
    // The attempts really went everywhere.
    if (engine.name === 'SQLite')
      expect([...stages].sort()).toEqual([
        'signed',
        'to-cut',
        'to-decide',
        'to-look',
        'to-measure',
        'to-sign',
        'to-verify',
      ]);
  });
});
