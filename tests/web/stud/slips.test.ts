import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { getEntry, reviseEntry } from '../../../src/records/catalogue.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { findSlips } from '../../../src/records/slips/slips.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true, unit: 'in' });
});
afterAll(() => program.close());

const QUESTION = { stack: 'two-piece-four-3-8-24', stud: 'long-3-8-24', pull: '0.16', unit: 'in' };
const hidden = (html: string, name: string) =>
  new RegExp(`name="${name}" value="([^"]*)"`).exec(html)?.[1] ?? '';
/** The form of the slip, as it is shown for a question. */
async function slipForm(question: Record<string, string> = QUESTION) {
  const { html } = await program.get(`/stud/slip?${new URLSearchParams(question)}`);
  return { ...question, sentId: hidden(html, 'sentId'), seen: hidden(html, 'seen') };
}
const save = async (more: Record<string, string> = {}, question?: Record<string, string>) =>
  program.post('/slips', { ...(await slipForm(question)), who: 'BB', customer: 'Demo 12', ...more });
const howMany = async () => (await findSlips(program.shop.db, { limit: 200 })).slips.length;
const stock = async (kind: 'stud' | 'nut', id: string) =>
  (await getEntry(program.shop.db, kind, id))!.body.stock;

/** Gives the stack a torque of the vehicle's maker. */
async function makersTorque(torque: { makerTorqueNm: number | null; makerTorqueSource: string | null }) {
  const entry = (await getEntry(program.shop.db, 'stack', QUESTION.stack))!;
  const ctx = { who: 'AA', now: () => new Date('2026-11-24T12:00:00Z') };
  await reviseEntry(program.shop.db, ctx, {
    kind: 'stack',
    id: entry.id,
    fromRevision: entry.revision,
    body: { ...entry.body, ...torque },
    why: 'looked up',
  });
}

describe('a counter slip', () => {
  it('is saved in one press, shown as answered, and printed again byte for byte', async () => {
    const sent = await save();
    expect([sent.status, sent.location]).toEqual([303, '/slips/S-1']);
    const page = await program.get('/slips/S-1');
    expect(page.text).toContain('Counter slip S-1');
    expect(page.text).toContain('Saved by BB, Nov 24, 2026');
    expect(page.text).toContain('4 × Long stud 3/8-24 UNF , shelf L-3: 48 in stock');
    expect(page.text).toContain('4 × Hex nut 3/8-24 , shelf N-3: 96 in stock');
    const paper = await program.get('/slips/S-1/printed');
    expect(paper.text).toContain('Pull-forward gap 0.160 in, measured');
    expect(paper.text).toContain('Demo 12');
    const style = /href="(\/printed\/[0-9a-f]{64}\.css)"/.exec(paper.html)![1]!;
    expect((await program.get(style)).html).toContain('.slip-kit');

    // The catalog goes on; the slip stays.
    await makersTorque({ makerTorqueNm: 34, makerTorqueSource: 'the shop manual, page 7' });
    expect((await program.get('/slips/S-1/printed')).html).toBe(paper.html);
    expect((await program.get('/slips/s1')).text).not.toContain('page 7');
    await makersTorque({ makerTorqueNm: null, makerTorqueSource: null });
  });

  it('is half a sheet where it is short, else a whole one: with torque, washer or shims, or with care', async () => {
    const sheet = async (question: Record<string, string>) => {
      const { html } = await program.get(`/stud/slip?${new URLSearchParams(question)}`);
      return /<article class="([^"]*)"/.exec(html)?.[1];
    };
    expect(await sheet(QUESTION)).toBe('slip');
    expect(await sheet({ ...QUESTION, pull: '0' })).toBe('slip slip-long');
    expect(await sheet({ ...QUESTION, torque: '37 lb-ft', engine: '250 lb-ft', kFrom: 'zinc' })).toBe(
      'slip slip-long',
    );
    const nut = { nutThread: '3/8-24', nutHeight: '.328', washer: '.065' };
    const layers = { 'ln.0': 'shim', 'lt.0': '.06', 'ln.1': 'plate', 'lt.1': '.125' };
    expect(await sheet({ stack: 'own', unit: 'in', pull: '.16', ...nut, ...layers })).toBe('slip slip-long');
    expect((await program.get('/assets/slip.css')).html).toMatch(/@page slip-long ?\{\s*size: 8.5in 11in/);
  });

  it('sent twice is one slip', async () => {
    const form = { ...(await slipForm()), who: 'BB', customer: 'Twice' };
    const before = await howMany();
    const [one, two] = [await program.post('/slips', form), await program.post('/slips', form)];
    expect(two.location).toBe(one.location);
    expect(await howMany()).toBe(before + 1);
  });

  it.each([
    ['no initials', { who: ' ' }, 422, 'Enter your initials'],
    ['a gap that cannot be read', { pull: 'abc' }, 422, 'Pull-forward gap'],
    ['a gap in doubt', { pull: '4' }, 422, '4'],
    ['a stack that is not there', { stack: 'gone' }, 422, 'That flexplate is no longer in the catalog'],
    ['a customer reference that is too long', { customer: 'x'.repeat(81) }, 422, 'shorten it'],
  ])('is not saved with %s', async (_what, change, status, sentence) => {
    const before = await howMany();
    const sent = await save(change);
    expect(sent.status).toBe(status);
    expect(sent.text).toContain(sentence);
    expect(sent.location ?? '/stud').toBe('/stud');
    expect(await howMany()).toBe(before);
  });

  it('is shown anew where the catalog changed while it was open', async () => {
    const form = { ...(await slipForm()), who: 'BB' };
    await makersTorque({ makerTorqueNm: 34, makerTorqueSource: 'the shop manual, page 7' });
    const before = await howMany();
    const sent = await program.post('/slips', form);
    expect(sent.status).toBe(409);
    expect(sent.text).toContain('changed since you opened this slip. Nothing was saved.');
    expect(sent.text).toContain('The vehicle maker’s torque is 25 pound-feet, by the shop manual, page 7.');
    expect(await howMany()).toBe(before);
    const again = await program.post('/slips', { ...form, seen: hidden(sent.html, 'seen') });
    expect(again.status).toBe(303);
    await makersTorque({ makerTorqueNm: null, makerTorqueSource: null });
  });

  it('reads out no torque that the shop has no source for', async () => {
    const joint = { ...QUESTION, torque: '25', engine: '100', kFrom: 'zinc' };
    const read = async (question: Record<string, string>) => {
      const { text } = await program.get(`/stud/slip?${new URLSearchParams(question)}`);
      return /Read to the caller “([^”]*)”/.exec(text)![1]!;
    };
    expect(await read(joint)).toMatch(/nuts\. Look up the vehicle maker’s torque\.$/);
    expect(await read({ ...joint, engine: '900' })).toMatch(
      /Look up the vehicle maker’s torque; 25 pound-feet does not hold by our calculation\.$/,
    );
    expect(await read({ ...joint, torqueFrom: 'maker' })).toMatch(
      /given as the vehicle maker’s, but we have no source/,
    );
  });
});

describe('a saved slip', () => {
  it('is found in the one search box, in its list, and as CSV', async () => {
    const found = await program.get('/jobs?text=s-1');
    expect(found.html).toContain('href="/slips/S-1"');
    expect((await program.get('/slips?text=demo+12')).html).toContain('id="slip-1"');
    expect((await program.get('/slips?fits=no')).text).toContain('No slips found');
    expect((await program.get('/slips?from=gestern')).status).toBe(422);
    const csv = await program.get('/slips.csv?text=S-1');
    expect(csv.html.split('\r\n')[1]).toMatch(/^S-1,2026-11-24,2026-11-24T12:00:00.000Z,BB,Demo 12,/);
    expect((await program.get('/slips/S-999')).status).toBe(404);
    expect((await program.get('/slips/1001')).status).toBe(404);
  });

  it('is counted out of stock in one press, and back with a reason', async () => {
    const { location } = await save();
    expect((await program.post(`${location}/count`, { who: 'BB' })).status).toBe(303);
    expect([await stock('stud', 'long-3-8-24'), await stock('nut', 'hex-nut-3-8-24')]).toEqual([44, 92]);
    expect((await program.post(`${location}/count`, { who: 'CC' })).status).toBe(409);
    expect((await program.post(`${location}/back`, { who: 'CC', why: '' })).status).toBe(422);
    expect((await program.post(`${location}/back`, { who: 'CC', why: 'not fetched' })).status).toBe(303);
    expect([await stock('stud', 'long-3-8-24'), await stock('nut', 'hex-nut-3-8-24')]).toEqual([48, 96]);
    expect((await program.get(location!)).text).toContain('Put back by CC');
    expect((await program.get('/catalogue/nut/hex-nut-3-8-24')).text).toContain('Taken out with slip S-');
  });

  it('asks before a shelf goes below zero', async () => {
    const question = { stack: 'two-piece-six-m10-fine', pull: '0.15', unit: 'in' };
    const ctx = { who: 'AA', now: () => new Date('2026-11-24T12:00:00Z') };
    const nut = (await getEntry(program.shop.db, 'nut', 'hex-nut-m10-1-25'))!;
    const body = { ...nut.body, stock: 2 };
    await reviseEntry(program.shop.db, ctx, {
      kind: 'nut',
      id: nut.id,
      fromRevision: 1,
      body,
      why: 'counted',
    });
    const { location } = await save({}, question);
    const asked = await program.post(`${location}/count`, { who: 'BB' });
    expect(asked.status).toBe(422);
    expect(asked.text).toContain('The catalog has only 2 of the 6 Hex nut M10×1.25');
    expect(asked.html).toContain('id="count-to-zero"');
    expect(await stock('nut', nut.id)).toBe(2);
    expect((await program.post(`${location}/count`, { who: 'BB', toZero: '1' })).status).toBe(303);
    expect(await stock('nut', nut.id)).toBe(0);
  });

  it('begins a job with its customer, its stack and its stud', async () => {
    const { html } = await program.get('/jobs/new?slip=S-1');
    expect(html).toMatch(/name="customer"[^>]*value="Demo 12"/);
    const begun = await program.post('/jobs', {
      slip: hidden(html, 'slip'),
      sentId: hidden(html, 'sentId'),
      family: '1125-4-billet',
      receivedOn: '2026-11-24',
      customer: 'Demo 12',
      who: 'BB',
    });
    expect(begun.status).toBe(303);
    const page = await program.get(begun.location!);
    expect(page.text).toContain('Counter slip S-1 : Long stud 3/8-24 UNF in Two-piece, four 3/8-24');
    expect(page.html).toMatch(/<option value="two-piece-four-3-8-24" selected/);
    expect(page.html).toMatch(/name="pull"[^>]*value="0\.16/);
    const job = await getJob(program.shop.db, begun.location!.split('/').at(-1)!);
    expect(job?.sections.received?.body.customerReference).toBe('Demo 12');
    expect((await program.get('/slips/S-1')).html).toContain(`href="${begun.location}"`);
  });
});
