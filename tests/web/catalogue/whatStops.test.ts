import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { USUAL_WEIGHT } from '../../../shared/words/whatStops.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { currentCriteria, saveCriteria } from '../../../src/records/shopCriteria.ts';
import type { Served } from '../program.ts';
import { PLACES, readingsForm, revisionNow, saveLimits, shopWith, step } from '../steps.ts';

let program: Served;
beforeEach(async () => {
  // One more cut of 2 mm is never left, so that "cuts left" is a caution of every job here.
  program = await shopWith({ minimumWallMm: 4, typicalCutMm: 2 });
});
afterEach(() => program.close());

/** The limits page as it stands, sent back with other choices. */
async function choose(choices: Readonly<Record<string, string>>, why: string) {
  const { html } = await program.get('/criteria');
  const boxes = [...html.matchAll(/<(?:input|select)[^>]*>/g)].map(([tag]) => tag);
  const fields: Record<string, string> = {};
  for (const tag of boxes) {
    const name = / name="([^"]+)"/.exec(tag)?.[1];
    if (name === undefined || tag.includes('type="checkbox"')) continue;
    const chosen = new RegExp(`name="${name.replaceAll('.', '\\.')}"[\\s\\S]*?value="([^"]*)" selected`).exec(
      html,
    );
    fields[name] = tag.startsWith('<select')
      ? (chosen?.[1] ?? '')
      : (/ value="([^"]*)"/.exec(tag)?.[1] ?? '');
  }
  return saveLimits(program, { ...fields, ...choices, who: 'BL', why });
}

interface Checked {
  readonly verdict: string;
  readonly because: string;
  readonly findings: readonly { readonly id: string; readonly status: string; readonly weight?: string }[];
}
const check = async (): Promise<Checked> =>
  (await (await fetch(`${program.url}/api/jobs/1001`)).json()).answer.check;

async function measured(): Promise<void> {
  await program.post('/jobs', { family: 'alder', receivedOn: '2026-11-24', who: 'AK' });
  await step(program, 'looked', { crackTest: 'none-found', crackMethod: 'dye', who: 'AK' });
  await step(
    program,
    'readings',
    readingsForm(
      'before',
      PLACES.map(() => '4.90'),
    ),
  );
}
const decide = async (reason: string) =>
  step(program, 'decision', {
    decision: 'face',
    reason,
    criteria: String((await currentCriteria(program.shop.db)).revision),
    who: 'AK',
  });

describe('what stops and what warns', () => {
  it('is chosen on the limits page, is in the history, and holds for page, job, JSON and decision', async () => {
    await measured();
    const page = await program.get('/criteria');
    expect(page.text).toContain('A crack and a wall below the minimum always stop.');
    expect(page.text).toContain('It is advice: nothing here makes a cover safe.');
    const { because } = await check();
    expect(because).not.toContain('The shop stops here');
    expect((await choose({ 'stops.cuts-left': 'stop' }, 'covers here come back twice')).status).toBe(303);
    expect((await currentCriteria(program.shop.db)).body.whatStops).toEqual({
      ...USUAL_WEIGHT,
      'cuts-left': 'stop',
    });
    const saved = await program.get('/criteria');
    expect(saved.text).toContain('covers here come back twice');
    expect(saved.text).toMatch(/No wall is left for another cut\s*:?\s*Caution\s*(?:→|is now|Stop)/);
    const now = await check();
    expect(now.verdict).toBe('measure-again');
    expect(now.findings.find(({ id }) => id === 'cuts-left')).toMatchObject({
      status: 'fail',
      weight: 'stop',
    });
    const job = await program.get('/jobs/1001');
    expect(job.text).toContain('The shop stops here until this is fixed.');
    const refused = await decide('the customer waits');
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('The shop limits let no reason overrule it.');
    expect((await getJob(program.shop.db, '1001'))?.sections.decision).toBeNull();
  });

  it('a job decided under an older choice stays as it was judged, on its page, sheet and JSON', async () => {
    await measured();
    expect((await choose({ 'stops.coverage': 'caution' }, 'house rule')).status).toBe(303);
    expect((await decide('as agreed')).status).toBe(303);
    const before = (await getJob(program.shop.db, '1001'))!;
    const sheet = await program.get('/jobs/1001/sheet');
    expect((await choose({ 'stops.cuts-left': 'stop' }, 'stricter')).status).toBe(303);
    const after = (await getJob(program.shop.db, '1001'))!;
    expect(after).toEqual(before);
    expect(after.stage).toBe('to-cut');
    expect((await program.get('/jobs/1001/sheet')).text).toBe(sheet.text);
    const { body } = await currentCriteria(program.shop.db);
    expect(body.whatStops).toMatchObject({ coverage: 'caution', 'cuts-left': 'stop' });
    expect(await revisionNow(program)).toBe(before.revision);
    expect((await program.get('/jobs/1001')).text).toContain('No wall is left for another cut');
  });

  it('a cover type nobody measured behind every stud is faced where the shop only warns of it', async () => {
    const asked = {
      cover: {
        studCount: 4,
        studCircleDiameterMm: 286,
        trackInnerDiameterMm: 214,
        trackOuterDiameterMm: 264,
        nominalWallMm: 5,
      },
      stations: [{ angleDeg: 0, radiusMm: 110, wallMm: [4.9], faceMm: 0 }],
      crackTest: 'none-found',
    };
    const send = async (whatStops: object | undefined) => {
      const criteria = { minimumWallMm: 4, minimumWallSource: 'shop', ...(whatStops && { whatStops }) };
      const reply = await fetch(`${program.url}/api/cover/check`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ ...asked, criteria }),
      });
      return { status: reply.status, body: await reply.json() };
    };
    expect((await send(undefined)).body.verdict).toBe('measure-again');
    expect((await send({ coverage: 'caution' })).body.verdict).toBe('face');
    expect((await send({ coverage: 'stop' })).body.verdict).toBe('measure-again');
    const wrong = await send({ crack: 'caution' });
    expect(wrong.status).toBe(422);
    expect(JSON.stringify(wrong.body)).toContain('criteria.whatStops.crack');
    expect((await send({ coverage: 'never' })).status).toBe(422);
  });

  it('limits saved before there was a choice judge as they did', async () => {
    const { body, revision } = await currentCriteria(program.shop.db);
    expect(body.whatStops).toBeUndefined();
    await saveCriteria(
      program.shop.db,
      { who: 'BL', why: 'same', now: () => new Date('2026-11-25T08:00:00Z') },
      { fromRevision: revision, body: { ...body, whatStops: USUAL_WEIGHT } },
    );
    expect((await program.get('/criteria')).text).not.toMatch(/A station is not measured\s*:?\s*not given/);
  });
});
