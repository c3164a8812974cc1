import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CoverCheck } from '../../../shared/words/cover.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import type { Served } from '../program.ts';
import { revisionNow, shopWith, step } from '../steps.ts';

let program: Served;
beforeAll(async () => {
  program = await shopWith({ minimumWallMm: 4.3 });
  await program.post('/jobs', { family: 'alder', receivedOn: '2026-11-24', who: 'MH' });
});
afterAll(() => program.close());

const job = async () => (await getJob(program.shop.db, '1001'))!;

describe('a cracked cover of which no wall was measured', () => {
  it('is answered on the job’s page at once, with no figure of its thickness', async () => {
    expect((await program.get('/jobs/1001')).html).not.toContain('id="decision-form"');
    await step(program, 'looked', { crackTest: 'found', crackMethod: 'dye', crackNote: 'at stud 2' });
    expect((await job()).stage).toBe('to-decide');
    const { text, html } = await program.get('/jobs/1001');
    expect(text).toContain('A crack was found.');
    expect(text).toContain('No wall was measured, so its thickness is not checked.');
    expect(html).toContain('id="decision-form"');
    expect(html).toMatch(/name="decision" value="replace" checked|value="replace"[^>]*checked/);
    expect(html.split('id="decide"')[1]!.split('id="cut"')[0]).not.toMatch(/Depth of cut|Thinnest/);
  });

  it('is decided to be replaced, never to be faced', async () => {
    expect((await step(program, 'decision', { decision: 'face', reason: 'it is small' })).status).toBe(422);
    expect((await step(program, 'decision', { decision: 'replace', reason: '' })).status).toBe(303);
    const { stage, sections } = await job();
    expect(stage).toBe('to-sign');
    expect(sections.decision?.body.check).toMatchObject({ verdict: 'replace', cut: null, leastWall: null });
    expect((await program.get(`/jobs/1001/history/${await revisionNow(program)}`)).text).toContain(
      'no wall was measured',
    );
  });

  it('is signed, and sheet and tag print without walls or cut', async () => {
    expect((await step(program, 'signature', { statement: '' })).status).toBe(303);
    expect((await job()).stage).toBe('signed');
    for (const paper of ['/jobs/1001/sheet', '/jobs/1001/sheet/signed']) {
      const sheet = await program.get(paper);
      expect(sheet.status, paper).toBe(200);
      expect(sheet.text).toContain('Not measured');
      expect(sheet.text).toContain('None: the cover is not used again.');
      expect(sheet.text).not.toMatch(/Thinnest wall/);
    }
    expect((await program.get('/jobs/1001/tag')).status).toBe(200);
    const answer = await fetch(`${program.url}/api/jobs/1001`);
    expect(answer.status).toBe(200);
  });

  it('is answered on the quick page, and saved as one job however often the press is sent', async () => {
    const asked = { family: 'alder', unit: 'mm', crack: 'found' };
    const page = await program.get(`/cover?${new URLSearchParams(asked)}`);
    expect(page.text).toContain('No wall was measured, so its thickness is not checked.');
    const sent = { ...asked, initials: 'AK', customer: 'Demo customer 3' };
    const [first, again] = [await program.post('/cover/keep', sent), await program.post('/cover/keep', sent)];
    expect([first.status, again.location]).toEqual([303, first.location]);
    const kept = await getJob(program.shop.db, first.location!.split('/').at(-1)!);
    expect(kept?.sections.looked?.body.crackTest).toBe('found');
    expect(kept?.stage).toBe('to-decide');
  });
});

describe('by JSON', () => {
  const cover = {
    studCount: 4,
    studCircleDiameterMm: 286,
    trackInnerDiameterMm: 214,
    trackOuterDiameterMm: 264,
    nominalWallMm: 5,
  };
  interface Answered extends CoverCheck {
    readonly error: { readonly fields: readonly { readonly path: string }[] };
  }
  const check = async (more: object) => {
    const answer = await fetch(`${program.url}/api/cover/check`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ cover, stations: [], ...more }),
    });
    return { status: answer.status, body: (await answer.json()) as Answered };
  };

  it('a crack or a final fault needs no station; the figures are null', async () => {
    const cracked = await check({ crackTest: 'found' });
    expect([cracked.status, cracked.body.verdict, cracked.body.leastWall, cracked.body.cut]).toEqual([
      200,
      'replace',
      null,
      null,
    ]);
    expect((await check({ inspectionFailures: [{ item: 'pads', final: true }] })).body.verdict).toBe(
      'replace',
    );
  });

  it('any other cover does, and a mark needs a wall beside it', async () => {
    const sound = await check({ crackTest: 'none-found' });
    expect([sound.status, sound.body.error.fields[0]?.path]).toEqual([422, 'stations']);
    const marked = await check({
      crackTest: 'found',
      marks: [{ angleDeg: 10, radiusMm: 120, depthMm: 0.1 }],
    });
    expect([marked.status, marked.body.error.fields[0]?.path]).toEqual([422, 'marks']);
  });
});
