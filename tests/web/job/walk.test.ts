import { afterAll, beforeAll, expect, test } from 'vitest';
import { onEachDatabase } from '../../records/shops.ts';
import { type Served, serve } from '../program.ts';

type Fields = Record<string, string>;

/** What a browser would send of a form, if nobody changed anything. */
function formOf(html: string, id: string): Fields {
  const form = new RegExp(`<form[^>]* id="${id}"[\\s\\S]*?</form>`).exec(html)?.[0];
  if (form === undefined) return expect.fail(`There is no form ${id} on this page.`);
  const fields: Fields = {};
  for (const [tag] of form.matchAll(/<input [^>]*>/g)) {
    const attribute = (name: string) => new RegExp(` ${name}="([^"]*)"`).exec(tag)?.[1];
    const name = attribute('name');
    const chosen = !/ type="(radio|checkbox)"/.test(tag) || / checked/.test(tag);
    if (name !== undefined && chosen) fields[name] = attribute('value') ?? '';
  }
  return fields;
}

onEachDatabase((engine) => {
  let program: Served;
  beforeAll(async () => {
    program = await serve({ demo: true, open: engine.openEmpty });
  });
  afterAll(() => program.close());

  test('a job goes over HTTP from receipt to signature, and every page of it opens', async () => {
    const made = await program.post('/jobs', {
      family: '1125-4-plain',
      customer: 'counter 7, Ärger & Söhne',
      receivedOn: '2026-11-24',
      note: '',
      number: '',
      who: 'AK',
    });
    expect([made.status, made.location]).toEqual([303, expect.stringMatching(/^\/jobs\/\d+$/)]);
    const address = made.location!;
    const send = async (section: string, form: string, typed: (shown: Fields) => Fields) => {
      const { html } = await program.get(address);
      const shown = formOf(html, form);
      const sent = await program.post(`${address}/${section}`, { ...shown, who: 'AK', ...typed(shown) });
      expect([section, sent.status, sent.status === 303 ? '' : sent.text]).toEqual([section, 303, '']);
      return (await program.get(address)).text;
    };
    const column = (letter: string, typed: string) => (shown: Fields) => {
      const cells = Object.keys(shown).filter((name) => new RegExp(`^${letter}\\.?\\d+$`).test(name));
      return Object.fromEntries(cells.slice(0, 12).map((name) => [name, typed]));
    };

    expect((await program.get(address)).text).toContain('To inspect');
    const looked = await send('looked', 'looked-form', () => ({
      crackTest: 'none-found',
      crackMethod: 'dye',
    }));
    expect(looked).toContain('To measure');
    const measured = await send('readings', 'before-form', (shown) => ({
      ...column('w', '4.92')(shown),
      ...column('d', '0.2')(shown),
    }));
    expect(measured).toContain('To decide');
    const decided = await send('decision', 'decision-form', () => ({ decision: 'face', reason: 'walked' }));
    expect(decided).toContain('To cut');
    expect(await send('cuts', 'cuts-form', () => ({ depth: '0.25' }))).toContain('To re-measure');
    expect(await send('readings', 'after-form', column('w', '4.67'))).toContain('To sign');
    expect(
      await send('signature', 'signature-form', () => ({ statement: 'Face runout not read.' })),
    ).toContain('Signed');

    const stale = await program.post(`${address}/plan`, { fromRevision: '0', who: 'AK', cut: '0.3' });
    expect(stale.status).toBeLessThan(500);
    const pages = ['', '/sheet', '/tag', '?revision=2', '/history'].map((end) => address + end);
    const lists = [
      '/',
      '/jobs?text=S%C3%B6hne',
      '/jobs?text=%25_',
      '/catalogue',
      '/criteria',
      '/cover',
      '/stud',
    ];
    for (const page of [...pages, ...lists]) {
      expect([page, (await program.get(page)).status]).toEqual([page, 200]);
    }
    expect((await program.get('/jobs?text=S%C3%B6hne')).text).toContain('counter 7, Ärger & Söhne');
  });

  test.each([
    '/jobs/%00',
    '/jobs/a%00b',
    '/jobs?text=%00',
    '/jobs?after=2026-01-01_999999999999999',
    '/jobs/1001?revision=999999999',
    '/jobs/1001?revision=99999999999999999999',
    '/jobs/1001/history/99999999999999999999',
    '/jobs/1001/history/1.5',
    '/jobs/99999999999999999999',
    '/catalogue/stud/%00',
    '/photos/%00',
    '/photos/a',
    '/cover/example/%00',
  ])('%s is answered without a fault of the program', async (address) => {
    expect((await program.get(address)).status).toBeLessThan(500);
  });
});
