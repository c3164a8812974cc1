import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Role } from '../../../shared/words/people.ts';
import { addEntry } from '../../../src/records/catalogue.ts';
import { historyOf } from '../../../src/records/jobs/history.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { issueToken } from '../../../src/records/people/tokens.ts';
import { currentCriteria, saveCriteria } from '../../../src/records/shopCriteria.ts';
import { alder, criteria } from '../../records/samples.ts';
import { type Lan, openLan, PEOPLE } from '../lan.ts';
import { PLACES, readingsForm } from '../steps.ts';

/** Ways round what nobody may overrule, through pages and JSON, where people sign in. */
let lan: Lan;
const bearer: Partial<Record<Role, string>> = {};
beforeEach(async () => {
  lan = await openLan({ demo: false });
  const ctx = { who: 'AK', why: 'to begin with', now: () => lan.now };
  await saveCriteria(lan.shop.db, ctx, { fromRevision: 0, body: { ...criteria, minimumWallMm: 4.3 } });
  const family = { ...alder, shopMinimumWallMm: null, shopMinimumWallSource: null };
  await addEntry(lan.shop.db, ctx, { kind: 'family', id: 'alder', body: family });
  const thin = { ...family, name: 'Alder 11 thin', shopMinimumWallMm: 4, shopMinimumWallSource: 'the owner' };
  await addEntry(lan.shop.db, ctx, { kind: 'family', id: 'thin', body: thin });
  for (const role of ['recorder', 'keeper'] as const) {
    const personId = lan.people[role].id;
    bearer[role] = await issueToken(lan.shop.db, ctx, { name: `script of ${role}`, personId, role });
  }
});
afterEach(() => lan.close());

const job = async () => (await getJob(lan.shop.db, '1001'))!;
const lastLine = async () => (await historyOf(lan.shop.db, 1)).at(-1)!;

/** A form of the job's page, as its own people send it; whatever initials are typed into it. */
async function page(role: Role, section: string, fields: Record<string, string>) {
  const { revision } = (await getJob(lan.shop.db, '1001')) ?? { revision: 0 };
  const { revision: seen } = await currentCriteria(lan.shop.db);
  const form = { from: String(revision), criteria: String(seen), ...fields };
  return lan.askAs(role, `/jobs/1001/${section}`, { form });
}

/** The same as JSON, with a token. */
async function json(role: Role, section: string, body: Record<string, unknown>) {
  const { revision: fromRevision } = await job();
  const headers = { authorization: `Bearer ${bearer[role]}` };
  const asked = { method: 'PUT', headers, json: { fromRevision, ...body } };
  const reply = await lan.ask(`/api/jobs/1001/${section}`, asked);
  return { ...reply, body: JSON.parse(reply.text) };
}

async function received(): Promise<void> {
  const form = { family: 'alder', receivedOn: '2026-11-24', who: 'XX' };
  expect((await lan.askAs('recorder', '/jobs', { form })).status).toBe(303);
}
async function measured(wall: string): Promise<void> {
  const walls = PLACES.map(() => wall);
  expect((await page('recorder', 'readings', readingsForm('before', walls))).status).toBe(303);
}

const sound = { crackTest: 'none-found', crackMethod: 'dye', crackNote: 'dye twice, a scratch' };
const cracked = { crackTest: 'found', crackMethod: 'dye', crackNote: 'from stud 2 inward' };
const { keeper, recorder } = PEOPLE;

describe('a crack', () => {
  beforeEach(async () => {
    await received();
    expect((await page('recorder', 'looked', { ...cracked, who: keeper.initials })).status).toBe(303);
    expect((await job()).sections.looked?.who).toBe(recorder.initials);
    await measured('4.90');
  });

  test('is not lifted by whoever found it, under whatever name: by page, by session and by token', async () => {
    const looked = { ...sound, items: [] };
    for (const who of [keeper.initials, 'cd', 'C.D.', 'c d', 'ZZ']) {
      const typed = await page('recorder', 'looked', { ...sound, who });
      expect([who, typed.status]).toEqual([who, 422]);
      expect(typed.text).toContain('Only a second person’s inspection can clear it');
      const token = await json('recorder', 'looked', { who, looked });
      expect([who, token.status, token.body.error.fields[0].path]).toEqual([who, 422, 'looked.crackTest']);
    }
    const session = await lan.askAs('recorder', '/api/jobs/1001/looked', {
      method: 'PUT',
      json: { fromRevision: (await job()).revision, who: keeper.initials, looked },
    });
    expect(session.status).toBe(422);
    expect((await job()).sections.looked?.body.crackTest).toBe('found');
  });

  test('is overruled by nobody: only replacing is taken, whoever decides and whatever the reason', async () => {
    for (const role of ['recorder', 'keeper'] as const) {
      const decision = { decision: 'face', reason: 'it is small, and the customer insists' };
      const typed = await page(role, 'decision', decision);
      expect([role, typed.status]).toEqual([role, 422]);
      expect(typed.text).toContain('no figure overrules a crack');
      const sent = await json(role, 'decision', { decision: { ...decision, criteriaRevision: 1 } });
      expect([role, sent.status]).toEqual([role, 422]);
    }
    expect((await job()).sections.decision).toBeNull();
    const replace = { decision: 'replace', reason: '' };
    expect((await page('recorder', 'decision', replace)).status).toBe(303);
  });

  test('is lifted by a second person who says how and what was seen; JSON needs no initials, the token has them', async () => {
    const looked = { ...sound, items: [] };
    expect((await page('keeper', 'looked', { ...sound, crackNote: '' })).status).toBe(422);
    expect((await json('keeper', 'looked', { looked: { ...looked, crackNote: ' ' } })).status).toBe(422);
    const not = { ...looked, crackTest: 'not-done', crackMethod: null };
    expect((await json('keeper', 'looked', { looked: not })).status).toBe(422);
    expect((await json('keeper', 'looked', { looked })).status).toBe(200);
    expect((await job()).sections.looked).toMatchObject({
      who: keeper.initials,
      body: { crackTest: 'none-found' },
    });
  });

  test('found in a signed job takes the signature’s force, and whoever found it does not bring it back', async () => {
    expect((await page('keeper', 'looked', sound)).status).toBe(303);
    expect((await page('recorder', 'decision', { decision: 'face' })).status).toBe(303);
    expect((await page('recorder', 'cuts', { depth: '0.05' })).status).toBe(303);
    const after = readingsForm(
      'after',
      PLACES.map(() => '4.85'),
    );
    expect((await page('recorder', 'readings', after)).status).toBe(303);
    expect((await page('recorder', 'signature', { statement: 'checked' })).status).toBe(303);
    expect((await job()).stage).toBe('signed');

    // An amendment says why, by page and by JSON.
    expect((await page('recorder', 'looked', cracked)).status).toBe(422);
    const looked = { ...cracked, items: [] };
    expect((await json('recorder', 'looked', { looked })).status).toBe(422);
    expect((await json('recorder', 'looked', { looked, why: 'came back' })).status).toBe(200);
    expect([(await job()).stage, (await job()).outcome]).toEqual(['to-decide', null]);
    const why = 'looked at it again';
    expect((await page('recorder', 'looked', { ...sound, why })).status).toBe(422);
    expect((await page('recorder', 'signature', { statement: 'all the same', why })).status).toBe(422);
    expect((await page('recorder', 'decision', { decision: 'face', reason: why, why })).status).toBe(422);
  });
});

test('a cover nobody looked for cracks in is decided and cut, but not released, by page or by JSON', async () => {
  await received();
  const unseen = { crackTest: 'not-done' };
  expect((await page('recorder', 'looked', unseen)).status).toBe(303);
  await measured('4.90');
  const face = { decision: 'face', reason: '' };
  expect((await page('recorder', 'decision', face)).status).toBe(303);
  const cut = (await job()).sections.decision!.body.check.cut!.dialledMm;
  expect((await page('recorder', 'cuts', { depth: String(cut) })).status).toBe(303);
  const left = PLACES.map(() => (4.9 - cut).toFixed(3));
  expect((await page('recorder', 'readings', readingsForm('after', left))).status).toBe(303);
  expect((await job()).stage).toBe('to-look');
  const { text } = await lan.askAs('recorder', '/jobs/1001');
  expect(text).toContain('cannot be signed for use until the crack test is done');

  const sign = async () => (await page('recorder', 'signature', { statement: 'it looks good' })).status;
  const refused = await page('recorder', 'signature', { statement: 'it looks good' });
  expect(refused.status).toBe(422);
  expect(refused.text).toContain('Job 1001 cannot be signed yet: the crack test is not done.');
  const signature = { signedRevision: (await job()).revision, statement: 'it looks good' };
  expect((await json('recorder', 'signature', { signature })).status).toBe(422);

  expect((await page('recorder', 'looked', sound)).status).toBe(303);
  expect((await job()).stage).toBe('to-decide');
  expect((await page('recorder', 'decision', face)).status).toBe(303);
  expect(await sign()).toBe(303);
  expect((await job()).stage).toBe('signed');
});

test('a caution that asks for something first is passed over only by saying why, by page and by JSON', async () => {
  await received();
  const bent = { ...sound, 'result.pads': 'fault', 'note.pads': 'bent' };
  expect((await page('recorder', 'looked', bent)).status).toBe(303);
  await measured('4.90');
  const typed = await page('recorder', 'decision', { decision: 'face', reason: ' ' });
  expect(typed.status).toBe(422);
  expect(typed.text).toContain(
    'The inspection found a fault to repair before the cover is used: pads. Enter the reason it is used anyway.',
  );
  const { revision: criteriaRevision } = await currentCriteria(lan.shop.db);
  const face = { decision: 'face', reason: '', criteriaRevision };
  const sent = await json('recorder', 'decision', { decision: face });
  expect([sent.status, sent.body.error.fields[0].path]).toEqual([422, 'decision.reason']);
  const reason = 'straightened on the press, within 0.05 mm';
  expect((await page('recorder', 'decision', { decision: 'face', reason })).status).toBe(303);
});

test('a caution that only tells is passed over without a word', async () => {
  await received();
  expect((await page('recorder', 'looked', sound)).status).toBe(303);
  await measured('4.40');
  expect((await page('recorder', 'decision', { decision: 'face', reason: '' })).status).toBe(303);
  const { findings } = (await job()).sections.decision!.body.check;
  expect(findings.filter(({ status }) => status === 'caution').map(({ id }) => id)).toEqual(['cuts-left']);
});

describe('a wall below the minimum', () => {
  beforeEach(async () => {
    await received();
    expect((await page('recorder', 'looked', sound)).status).toBe(303);
    await measured('4.20');
  });
  const face = { decision: 'face', reason: 'it has always held' };
  const refused = async () => {
    for (const role of ['recorder', 'keeper'] as const) {
      const typed = await page(role, 'decision', face);
      expect([role, typed.status]).toEqual([role, 422]);
      const { revision } = await currentCriteria(lan.shop.db);
      const sent = await json(role, 'decision', { decision: { ...face, criteriaRevision: revision } });
      expect([role, sent.status]).toEqual([role, 422]);
    }
    expect((await job()).sections.decision).toBeNull();
  };

  test('is overruled by no reason and by no other cut, whoever decides', async () => {
    await refused();
    expect((await page('recorder', 'plan', { cut: '0.001', 'ok.cut': '0.001' })).status).toBe(303);
    await refused();
  });

  test('is not got round by calling it another family: that says why, and stands in the history', async () => {
    const form = { family: 'thin', receivedOn: '2026-11-24' };
    const typed = await page('recorder', 'received', form);
    expect(typed.status).toBe(422);
    expect(typed.text).toContain('was inspected or measured as Alder 11 plain (revision 1)');
    expect(typed.text).toContain('Why it changes');
    const asked = { familyId: 'thin', customerReference: '', receivedOn: '2026-11-24', note: '' };
    expect((await json('recorder', 'received', { received: asked })).status).toBe(422);
    expect((await job()).sections.received?.body.familyId).toBe('alder');
    const why = 'the stamp under the paint says so';
    expect((await page('recorder', 'received', { ...form, why })).status).toBe(303);
    expect(await lastLine()).toMatchObject({ what: 'received', who: recorder.initials, why });
    expect((await page('recorder', 'decision', face)).status).toBe(303);
  });

  test('asks no reason for correcting a reference or a note', async () => {
    const form = { family: 'alder', receivedOn: '2026-11-24', customer: 'counter 4' };
    expect((await page('recorder', 'received', form)).status).toBe(303);
  });

  test('gives way to a changed criterion alone, which only a keeper sets, who says why', async () => {
    const form = {
      shopName: 'Heron Lane Rebuilds',
      minimum: '4.0',
      allowance: '0.05',
      runout: '0.13',
      confidence: '95',
      typical: '0.25',
      protrusion: '1',
      start: '2',
      lengthUnit: 'mm',
      decimalSign: 'point',
      from: '1',
    };
    expect((await lan.askAs('recorder', '/criteria', { form: { ...form, why: 'mine' } })).status).toBe(403);
    expect((await lan.askAs('keeper', '/criteria', { form })).status).toBe(422);
    await refused();
    const why = 'measured the spread of a year';
    // The job in hand would be answered otherwise: that is shown first, and nothing is saved.
    const shown = await lan.askAs('keeper', '/criteria', { form: { ...form, why } });
    expect([shown.status, shown.text.includes('One open job changes its answer')]).toEqual([200, true]);
    await refused();
    const seen = /name="seen" value="(\w+)"/.exec(shown.text)?.[1] ?? '';
    const saved = await lan.askAs('keeper', '/criteria', { form: { ...form, why, seen } });
    expect([saved.status, saved.headers.location]).toEqual([303, '/criteria?saved=2']);
    expect((await lan.askAs('keeper', '/criteria?saved=2')).text).toContain('Saved as revision 2.');
    // Seen under the old ones, it is not decided under the new ones.
    const old = await page('recorder', 'decision', { ...face, criteria: '1' });
    expect(old.status).toBe(409);
    const stale = await json('recorder', 'decision', { decision: { ...face, criteriaRevision: 1 } });
    expect(stale.status).toBe(409);
    expect(stale.body).toMatchObject({
      of: 'criteria',
      currentRevision: 2,
      theirs: { revision: 2, who: keeper.initials, why, body: { minimumWallMm: 4 } },
      yours: { criteriaRevision: 1, criteria: { minimumWallMm: 4.3 } },
    });
    expect((await page('recorder', 'decision', face)).status).toBe(303);
    expect((await job()).sections.decision?.body).toMatchObject({
      criteriaRevision: 2,
      criteria: { minimumWallMm: 4 },
    });
  });
});
