import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Verdict } from '../../../shared/words/cover.ts';
import type { Finding, Status } from '../../../shared/words/finding.ts';
import type { DecisionKind, Looked, StudsChosen } from '../../../shared/words/job.ts';
import type { Shop } from '../../../src/records/database/database.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { historyOf, revisionOf } from '../../../src/records/jobs/history.ts';
import { addReadings } from '../../../src/records/jobs/readings.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
import { refusalOf } from '../refusals.ts';
import {
  as,
  crack,
  cuts,
  decision,
  finishedJob,
  looked,
  measuredJob,
  noCrackAfterAll,
  prints,
  received,
  signedJob,
  studs,
  wall,
} from '../samples.ts';
import { onEachDatabase } from '../shops.ts';

const CAUTION: Finding = {
  id: 'unbalance',
  title: 'Unbalance',
  status: 'caution',
  value: null,
  limit: null,
  unit: '',
  sentence: 'Uneven.',
  source: 'the shop',
  answer: null,
};

onEachDatabase((engine) => {
  let shop: Shop;
  beforeEach(async () => {
    shop = await engine.openEmpty();
  });
  afterEach(() => shop.close());

  describe('closing', () => {
    test('a job is closed once, and only a closed one is opened again; each says why', async () => {
      const { id } = await createJob(shop.db, as('AB'), { received: received() });
      const close = (closed: boolean, why = 'came in twice', who = 'AB') =>
        getJob(shop.db, id).then((job) =>
          reviseJob(shop.db, as(who, why), {
            jobId: id,
            fromRevision: job!.revision,
            what: 'closed',
            body: { closed },
          }),
        );
      expect(await refusalOf(close(false))).toMatchObject({
        code: 'closed-already',
        sentence: 'Job 1001 is not closed.',
      });
      expect((await refusalOf(close(true, ''))).path).toBe('why');
      expect((await close(true)).stage).toBe('closed');
      expect(await refusalOf(close(true, 'once more', 'CD'))).toMatchObject({
        code: 'closed-already',
        sentence: 'Job 1001 is closed already.',
      });
      expect((await close(false)).stage).toBe('to-look');
    });
  });

  describe('a crack', () => {
    let jobId: number;
    beforeEach(async () => {
      jobId = (await createJob(shop.db, as('AB'), { received: received() })).id;
    });
    const look = async (who: string, body: Looked) => {
      const job = await getJob(shop.db, jobId);
      return reviseJob(shop.db, as(who), { jobId, fromRevision: job?.revision ?? 0, what: 'looked', body });
    };

    test('a crack is lifted by a second person who looked again and says how and what', async () => {
      await look('AB', crack);
      const lifted = await look('CD', noCrackAfterAll);
      expect(lifted.sections.looked).toMatchObject({ who: 'CD', body: { crackTest: 'none-found' } });
      expect((await historyOf(shop.db, jobId)).map((line) => line.who)).toEqual(['AB', 'AB', 'CD']);
    });

    test.each(['AB', 'ab', ' AB ', 'ＡＢ', 'A.B.', 'a-b', 'A B'])(
      'a crack is not lifted by %j who found it',
      async (who) => {
        await look('AB', crack);
        expect((await refusalOf(look(who, noCrackAfterAll))).code).toBe('crack-second-person');
        expect((await getJob(shop.db, jobId))?.sections.looked?.body).toEqual(crack);
      },
    );

    test('a crack that is not lifted says so in a sentence', async () => {
      await look('AB', crack);
      await look('CD', { ...crack, crackNote: 'I see it too' });
      expect(await refusalOf(look('CD', noCrackAfterAll))).toEqual({
        code: 'crack-second-person',
        path: 'crackTest',
        sentence:
          'A crack was recorded by AB and CD. Only a second person’s inspection can clear it, not CD.',
      });
    });

    test('a crack is not lifted by anybody among those who recorded it', async () => {
      await look('AB', crack);
      await look('CD', { ...crack, crackNote: 'I see it too' });
      for (const who of ['AB', 'CD'])
        expect((await refusalOf(look(who, noCrackAfterAll))).code).toBe('crack-second-person');
      expect((await look('EF', noCrackAfterAll)).sections.looked?.who).toBe('EF');
    });

    test.each<[string, string, Partial<Looked>]>([
      ['leaving the test out', 'crack-stands', { crackTest: 'not-done' }],
      ['no method', 'crack-method-needed', { crackMethod: null }],
      ['no note', 'crack-method-needed', { crackNote: '  ' }],
    ])('a crack is not lifted by a second person with %s', async (_, code, changes) => {
      await look('AB', crack);
      expect((await refusalOf(look('CD', { ...noCrackAfterAll, ...changes }))).code).toBe(code);
      expect((await getJob(shop.db, jobId))?.sections.looked?.body.crackTest).toBe('found');
    });

    test('a crack lifted and found again needs another person again', async () => {
      await look('AB', crack);
      await look('CD', noCrackAfterAll);
      await look('CD', crack);
      expect((await refusalOf(look('CD', noCrackAfterAll))).code).toBe('crack-second-person');
      expect((await look('AB', noCrackAfterAll)).sections.looked?.who).toBe('AB');
      expect((await look('AB', looked({ crackTest: 'not-done' }))).sections.looked?.who).toBe('AB');
    });

    test('a second person who began before the crack was found is told first', async () => {
      await look('AB', crack);
      const late = reviseJob(shop.db, as('CD'), {
        jobId,
        fromRevision: 1,
        what: 'looked',
        body: noCrackAfterAll,
      });
      await expect(late).rejects.toMatchObject({ code: 'stale', theirs: { who: 'AB' } });
    });

    test('a crack ends the measuring, and a decision to use the cover', async () => {
      expect((await look('AB', crack)).stage).toBe('to-decide');
      for (const kind of ['face', 'face-and-ring'] as const) {
        const attempt = reviseJob(shop.db, as('CD'), {
          jobId,
          fromRevision: 2,
          what: 'decision',
          body: decision(2, { decision: kind, reason: 'it is small' }),
        });
        expect(await refusalOf(attempt)).toEqual({
          code: 'crack-found',
          path: 'decision',
          sentence: 'AB recorded a crack. The cover can only be replaced.',
        });
      }
      const replaced = await reviseJob(shop.db, as('CD'), {
        jobId,
        fromRevision: 2,
        what: 'decision',
        body: decision(2, { decision: 'replace', verdict: 'replace' }),
      });
      expect([replaced.stage, replaced.outcome]).toEqual(['to-sign', 'replace']);
    });

    test('a crack found after a decision takes the decision back', async () => {
      const job = await finishedJob(shop.db);
      jobId = job.id;
      expect(job.stage).toBe('to-sign');
      const now = await look('CD', crack);
      expect([now.stage, now.outcome]).toEqual(['to-decide', null]);
    });
  });

  describe('a decision against the verdict', () => {
    type Case = [Verdict, DecisionKind, string, string];
    const taken = 'taken';
    test.each<Case>([
      ['face', 'face', '', taken],
      ['face-if-sound', 'face', '', taken],
      ['face-and-ring', 'face-and-ring', '', taken],
      ['replace', 'replace', '', taken],
      ['face', 'face-and-ring', '', 'reason-needed'],
      ['face', 'replace', ' \n ', 'reason-needed'],
      ['face-if-sound', 'replace', '', 'reason-needed'],
      ['face-and-ring', 'face', '', 'reason-needed'],
      ['measure-again', 'face', '', 'reason-needed'],
      ['measure-again', 'replace', '', 'reason-needed'],
      ['plan-again', 'face', '', 'reason-needed'],
      ['advice-only', 'face', '', 'reason-needed'],
      ['advice-only', 'replace', '', 'reason-needed'],
      ['face', 'replace', 'the customer wants a new one', taken],
      ['face-and-ring', 'face', 'mild engine', taken],
      ['measure-again', 'face', 'measured twice', taken],
      ['plan-again', 'face-and-ring', 'light marks stay', taken],
      ['advice-only', 'face', 'no figure known', taken],
      ['replace', 'face', 'I say so', 'verdict-replace'],
      ['replace', 'face-and-ring', 'I say so', 'verdict-replace'],
    ])('a verdict of %s decided as %s with reason "%s" is %s', async (verdict, kind, reason, code) => {
      const { id: jobId } = await measuredJob(shop.db);
      const body = decision(4, { verdict, decision: kind, reason });
      const attempt = reviseJob(shop.db, as('AB'), { jobId, fromRevision: 4, what: 'decision', body });
      if (code === taken) expect((await attempt).outcome).toBe(kind);
      else {
        const refusal = await refusalOf(attempt);
        expect(refusal.code).toBe(code);
        if (code === 'verdict-replace') expect(refusal.path).toBe('decision');
      }
      expect((await getJob(shop.db, jobId))?.revision).toBe(code === taken ? 5 : 4);
    });

    test.each<[string, Partial<Finding>, DecisionKind, string]>([
      ['past a limit', { id: 'unbalance', limit: 60 }, 'face', 'reason-needed'],
      ['past a limit', { id: 'unbalance', limit: 60 }, 'replace', taken],
      ['that asks for a calibration', { id: 'gauge-due' }, 'face', 'reason-needed'],
      ['that asks for a mending', { id: 'inspection' }, 'face', 'reason-needed'],
      ['that only tells', { id: 'release-clearance' }, 'face', taken],
      ['within its limit', { id: 'unbalance', limit: 60, status: 'pass' }, 'face', taken],
    ])('over a finding %s (%o) the decision %s is %s', async (_, finding, kind, code) => {
      const { id: jobId } = await measuredJob(shop.db);
      const verdict = kind === 'replace' ? 'replace' : 'face';
      const plain = decision(4, { verdict, decision: kind, reason: '' });
      const findings = [{ ...CAUTION, ...finding }];
      const body = { ...plain, check: { ...plain.check, findings } };
      const attempt = reviseJob(shop.db, as('AB'), { jobId, fromRevision: 4, what: 'decision', body });
      if (code === taken) expect((await attempt).outcome).toBe(kind);
      else expect((await refusalOf(attempt)).code).toBe(code);
    });

    test('no reason overrules what the shop lets stop a cover, and what it chose to be a caution needs one', async () => {
      const { id: jobId } = await measuredJob(shop.db);
      const decide = (
        finding: Partial<Finding>,
        kind: DecisionKind,
        reason: string,
        verdict: Verdict = 'face',
      ) => {
        const plain = decision(4, { verdict, decision: kind, reason });
        const body = { ...plain, check: { ...plain.check, findings: [{ ...CAUTION, ...finding }] } };
        return reviseJob(shop.db, as('AB'), { jobId, fromRevision: 4, what: 'decision', body });
      };
      const stop = { id: 'gauge-due', status: 'fail', weight: 'stop' } as const;
      expect(await refusalOf(decide(stop, 'face', 'no time', 'measure-again'))).toEqual({
        code: 'stopped',
        path: 'decision',
        sentence: 'Uneven. The shop limits let no reason overrule it.',
      });
      const bends = { ...stop, id: 'stiffness' };
      expect((await refusalOf(decide(bends, 'face', 'mild engine', 'face-and-ring'))).code).toBe('stopped');
      const told = { id: 'coverage', status: 'caution', weight: 'caution' } as const;
      expect((await refusalOf(decide(told, 'face', ''))).code).toBe('reason-needed');
      expect((await decide(bends, 'face-and-ring', '', 'face-and-ring')).outcome).toBe('face-and-ring');
    });

    test.each<[Verdict, number, string | null]>([
      ['measure-again', 4.2999, 'below-minimum'],
      ['plan-again', 4.2999, 'below-minimum'],
      ['face', 4.2999, 'below-minimum'],
      ['measure-again', 4.3 - 1e-10, null],
      ['plan-again', 4.3, null],
    ])(
      'no reason overrules a wall below the minimum: %s, %d mm left of 4.3 mm',
      async (verdict, wallAfterMm, code) => {
        const { id: jobId } = await measuredJob(shop.db);
        const attempt = (kind: DecisionKind) =>
          reviseJob(shop.db, as('AB'), {
            jobId,
            fromRevision: 4,
            what: 'decision',
            body: decision(4, { verdict, wallAfterMm, decision: kind, reason: 'it will do' }),
          });
        if (code === null) expect((await attempt('face')).outcome).toBe('face');
        else expect((await refusalOf(attempt('face'))).code).toBe(code);
        if (code !== null) expect((await attempt('replace')).outcome).toBe('replace');
      },
    );

    test('a decision against the verdict without a reason is refused with both, and what is missing', async () => {
      const { id: jobId } = await measuredJob(shop.db);
      const body = decision(4, { verdict: 'measure-again' });
      const attempt = reviseJob(shop.db, as('AB'), { jobId, fromRevision: 4, what: 'decision', body });
      expect(await refusalOf(attempt)).toEqual({
        code: 'reason-needed',
        path: 'reason',
        sentence: 'The verdict is "Measure again" and the decision "Face it". Enter the reason.',
      });
    });
  });

  describe('signing', () => {
    const sign = (jobId: number, revision: number, who = 'AB') =>
      reviseJob(
        shop.db,
        as(who),
        {
          jobId,
          fromRevision: revision,
          what: 'signature',
          body: { statement: 'Measured, cut and measured again.', signedRevision: revision },
        },
        prints,
      );

    test('a signature is refused while something is missing, naming it, at every stage before', async () => {
      const { id } = await createJob(shop.db, as('AB'), { received: received() });
      expect(await refusalOf(sign(id, 1))).toEqual({
        code: 'not-ready',
        path: '',
        sentence:
          'Job 1001 cannot be signed yet: the inspection is not recorded, no wall is measured and no decision is made.',
      });
      await reviseJob(shop.db, as('AB'), { jobId: id, fromRevision: 1, what: 'looked', body: looked() });
      expect((await refusalOf(sign(id, 2))).sentence).toBe(
        'Job 1001 cannot be signed yet: no wall is measured and no decision is made.',
      );
      await addReadings(shop.db, as('AB'), { jobId: id, readings: [wall('a')] });
      expect((await refusalOf(sign(id, 3))).sentence).toBe(
        'Job 1001 cannot be signed yet: no decision is made.',
      );
      await reviseJob(shop.db, as('AB'), { jobId: id, fromRevision: 3, what: 'decision', body: decision(3) });
      expect((await refusalOf(sign(id, 4))).sentence).toBe(
        'Job 1001 cannot be signed yet: no cut is recorded.',
      );
      await reviseJob(shop.db, as('AB'), { jobId: id, fromRevision: 4, what: 'cuts', body: cuts(0.2) });
      expect((await refusalOf(sign(id, 5))).sentence).toBe(
        'Job 1001 cannot be signed yet: no wall is measured after the last cut.',
      );
      await addReadings(shop.db, as('AB'), { jobId: id, readings: [wall('b')] });
      expect((await refusalOf(sign(id, 6))).sentence).toBe(
        'Job 1001 cannot be signed yet: a new decision is needed since something changed and no wall is measured after the last cut.',
      );
      expect((await getJob(shop.db, id))?.revision).toBe(6);
    });

    test('a signature over findings after the cut needs a statement, and one without findings does not', async () => {
      const { id, revision } = await finishedJob(shop.db);
      const found = (status: Status, sentence: string): Finding => ({ ...CAUTION, status, sentence });
      const verified = [
        found('pass', 'The wall is as planned.'),
        found('caution', 'The cut was deeper than planned.'),
        found('fail', 'The face runs out by 0.3 mm.'),
      ];
      const signOver = (statement: string, of: readonly Finding[]) =>
        reviseJob(
          shop.db,
          as('AB'),
          {
            jobId: id,
            fromRevision: revision,
            what: 'signature',
            body: { statement, signedRevision: revision, verified: of },
          },
          prints,
        );
      expect(await refusalOf(signOver('  ', verified))).toEqual({
        code: 'reason-needed',
        path: 'statement',
        sentence:
          'The face runs out by 0.3 mm. There is one more like it. Enter in the statement why job 1001 is signed anyway.',
      });
      expect((await refusalOf(signOver('', verified.slice(0, 2)))).code).toBe('reason-needed');
      expect((await signOver('', verified.slice(0, 1))).stage).toBe('signed');
    });

    test('no statement covers what the shop lets stop a signature', async () => {
      const { id, revision } = await finishedJob(shop.db);
      const signOver = (finding: Partial<Finding>) =>
        reviseJob(
          shop.db,
          as('AB'),
          {
            jobId: id,
            fromRevision: revision,
            what: 'signature',
            body: { statement: 'as is', signedRevision: revision, verified: [{ ...CAUTION, ...finding }] },
          },
          prints,
        );
      const marks = { id: 'after-marks', status: 'fail', sentence: 'Still dark.' } as const;
      expect(await refusalOf(signOver({ ...marks, weight: 'stop' }))).toEqual({
        code: 'stopped',
        path: '',
        sentence: 'Still dark. Job 1001 can’t be signed until then.',
      });
      expect((await signOver({ ...marks, status: 'caution' })).stage).toBe('signed');
    });

    test('a new face over the runout limit is not signed, and one nobody read is signed with a statement', async () => {
      const { id, revision } = await finishedJob(shop.db);
      const runout = (status: Status): Finding => ({ ...CAUTION, id: 'after-runout', status, limit: 0.13 });
      const signOver = (statement: string, finding: Finding) =>
        reviseJob(
          shop.db,
          as('AB'),
          {
            jobId: id,
            fromRevision: revision,
            what: 'signature',
            body: { statement, signedRevision: revision, verified: [finding] },
          },
          prints,
        );
      expect((await refusalOf(signOver('Fit for this customer.', runout('fail')))).code).toBe('face-runout');
      expect((await refusalOf(signOver('', runout('not-checked')))).code).toBe('reason-needed');
      expect((await signOver('Read in the lathe only.', runout('not-checked'))).stage).toBe('signed');
    });

    test('a signature over studs that failed needs a statement, unless a note kept them', async () => {
      const { id, revision } = await finishedJob(shop.db);
      const failed: Finding = { ...CAUTION, status: 'fail', sentence: 'Stud 2 did not hold 20 N·m.' };
      const replaced = [
        {
          stud: 2,
          how: 'welded' as const,
          leanMm: null,
          leanAtMm: null,
          offMm: null,
          filletMm: null,
          provedNm: 20,
          heldIt: false,
          note: '',
          findings: [failed],
        },
      ];
      const check = { ...studs.check, findings: [{ ...failed, sentence: 'The joint slips.' }] };
      const choose = (fromRevision: number, body: StudsChosen) =>
        reviseJob(shop.db, as('AB'), { jobId: id, fromRevision, what: 'studs', body });
      const signOver = (statement: string, signedRevision: number) =>
        reviseJob(
          shop.db,
          as('AB'),
          {
            jobId: id,
            fromRevision: signedRevision,
            what: 'signature',
            body: { statement, signedRevision },
          },
          prints,
        );
      await choose(revision, { ...studs, replaced, note: 'kept' });
      expect((await refusalOf(signOver('', revision + 1))).sentence).toBe(
        'Stud 2 did not hold 20 N·m. Enter in the statement why job 1001 is signed anyway.',
      );
      await choose(revision + 1, { ...studs, check, note: '' });
      expect((await refusalOf(signOver('', revision + 2))).sentence).toMatch(/^The joint slips\./);
      await choose(revision + 2, { ...studs, check, note: 'kept: a lighter engine' });
      expect((await signOver('', revision + 3)).stage).toBe('signed');
    });

    test('a signature sent twice is one signature', async () => {
      const { id } = await signedJob(shop.db);
      expect((await sign(id, 7)).revision).toBe(8);
      expect((await refusalOf(sign(id, 8, 'CD'))).sentence).toBe(
        'Job 1001 is already signed by AB. It can be signed again after a change.',
      );
      expect((await getJob(shop.db, id))?.revision).toBe(8);
    });

    test('a change after signing needs a reason, and the job has to be signed again', async () => {
      const { id } = await signedJob(shop.db);
      const note = (why: string, customerReference = 'van, green', fromRevision = 8) =>
        reviseJob(shop.db, as('CD'), {
          jobId: id,
          fromRevision,
          what: 'received',
          body: received({ customerReference }),
          why,
        });
      expect(await refusalOf(note('  '))).toEqual({
        code: 'why-needed',
        path: 'why',
        sentence: 'Job 1001 was signed by AB. Enter the reason for the change; it then needs signing again.',
      });
      expect(
        (await refusalOf(addReadings(shop.db, as('CD'), { jobId: id, readings: [wall('late')] }))).code,
      ).toBe('why-needed');
      expect(
        (
          await refusalOf(
            reviseJob(shop.db, as('CD'), { jobId: id, fromRevision: 8, what: 'studs', body: studs }),
          )
        ).code,
      ).toBe('why-needed');
      expect((await getJob(shop.db, id))?.stage).toBe('signed');

      const amended = await note('the wrong van');
      expect([amended.stage, amended.outcome, amended.revision]).toEqual(['to-sign', 'face', 9]);
      expect(amended.sections.signature).toMatchObject({ revision: 8, who: 'AB' });
      expect((await refusalOf(note('', 'van, red', 9))).code).toBe('why-needed');
      const again = await sign(id, 9, 'CD');
      expect([again.stage, again.sections.signature?.who]).toEqual(['signed', 'CD']);
      expect(await revisionOf(shop.db, id, 8)).toMatchObject({
        what: 'signature',
        who: 'AB',
        body: { signedRevision: 7 },
      });
      expect(await revisionOf(shop.db, id, 9)).toMatchObject({ why: 'the wrong van' });
    });

    test('a form sent again without a change does not undo the signature', async () => {
      const { id } = await signedJob(shop.db);
      const same = await reviseJob(shop.db, as('AB'), {
        jobId: id,
        fromRevision: 8,
        what: 'received',
        body: received(),
      });
      expect([same.stage, same.revision]).toEqual(['signed', 8]);
    });

    test('an amended reading takes the decision back as well', async () => {
      const { id } = await signedJob(shop.db);
      const late = wall('late', { replaces: `${id}-w1`, valueMm: 4.6, typed: '4.6' });
      const { job } = await addReadings(shop.db, as('CD', 'misread'), { jobId: id, readings: [late] });
      expect([job.stage, job.outcome]).toEqual(['to-decide', null]);
    });

    test('a cover to be replaced is signed without a cut', async () => {
      const { id } = await measuredJob(shop.db);
      const body = decision(4, { decision: 'replace', verdict: 'replace' });
      await reviseJob(shop.db, as('AB'), { jobId: id, fromRevision: 4, what: 'decision', body });
      expect(await sign(id, 5)).toMatchObject({ stage: 'signed', outcome: 'replace' });
    });
  });
});
