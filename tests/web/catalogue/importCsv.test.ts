import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { entryHistory, listEntries, reviseEntry } from '../../../src/records/catalogue.ts';
import { as } from '../../records/samples.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeEach(async () => {
  program = await serve({ demo: false });
});
afterEach(() => program.close());

const PATIENT = { timeout: 120_000 };

/** Sends a file as the page does, and opens the page it leads to when it has been read. */
async function send(kind: string, file: string | Buffer) {
  const form = new FormData();
  form.set('file', new Blob([new Uint8Array(Buffer.from(file))]), 'list.csv');
  const answer = await fetch(`${program.url}/import/${kind}`, {
    method: 'POST',
    body: form,
    redirect: 'manual',
    headers: { origin: program.url },
  });
  const path = answer.headers.get('location') ?? '';
  if (path === '') return { path, ...said(await answer.text()), status: answer.status };
  return { path, ...(await seen(path)), status: answer.status };
}

async function seen(path: string) {
  let page = await program.get(path);
  await vi.waitUntil(async () => {
    page = await program.get(path);
    return !page.html.includes('hx-trigger="every 1s"');
  }, PATIENT);
  return said(page.html);
}

const said = (html: string) => ({
  html,
  text: html
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/\s+/g, ' ')
    .replaceAll('&quot;', '"'),
  mark: /name="seen" value="(\w+)"/.exec(html)?.[1] ?? '',
});

const keep = (path: string, mark: string, more: Record<string, string> = {}) =>
  program.post(path, { seen: mark, who: 'AK', why: 'from the list', ...more });

const HEADS =
  'name,number of studs,bolt circle diameter (in),friction surface inner diameter (in),friction surface outer diameter (in),new wall (in),stiffening ring may be welded on';
const TYPE = 'Plover,4,11 1/4,8.425,10.394,0.197,no';
const families = () => listEntries(program.shop.db, 'family', { retired: true });

describe('a list of cover types from a CSV file', () => {
  it('is shown first and saves nothing; pressed, it is kept in one write', async () => {
    const { path, text, mark } = await send(
      'family',
      `${HEADS}\r\n${TYPE}\r\nSnipe,6,11.5,8.425,10.394,0.2,yes\r\n`,
    );
    expect(text).toContain('Added 2 Changed 0 Unchanged 0 Refused 0');
    expect(text).toContain('lengths in inches');
    expect(await families()).toHaveLength(0);
    expect((await keep(path, mark)).status).toBe(303);
    expect((await seen(path)).text).toContain('Saved: 2 added, 0 changed.');
    const [plover, snipe] = await families();
    expect(plover).toMatchObject({ name: 'Plover', who: 'AK', revision: 1, retired: false });
    expect(plover!.body).toMatchObject({ studCircleDiameterMm: 285.75, ringAllowed: false });
    expect(snipe!.body).toMatchObject({ studCount: 6, nominalWallMm: 5.08, ringAllowed: true });
    // Pressed twice, it is kept once.
    expect((await keep(path, mark)).status).toBe(303);
    expect(await families()).toHaveLength(2);
  });

  it('tells what it changes field by field, old beside new, and makes a revision with the reason', async () => {
    const first = await send('family', `${HEADS}\n${TYPE}\n`);
    await keep(first.path, first.mark);
    const { path, html, text, mark } = await send(
      'family',
      'name,new wall (mm),note\nplover,5.1,"thick, new"\n',
    );
    expect(text).toContain('Added 0 Changed 1 Unchanged 0');
    expect(html).toMatch(/New wall<\/th><td>5\.0038 mm<\/td><td>5\.1 mm/);
    expect(html).not.toContain('Bolt circle diameter</th>');
    const without = await keep(path, mark, { why: '' });
    expect([without.status, without.text]).toEqual([
      422,
      expect.stringContaining('Enter why these entries change'),
    ]);
    await keep(path, mark);
    const [plover] = await families();
    expect(plover).toMatchObject({ revision: 2, why: 'from the list' });
    expect(plover!.body).toMatchObject({
      nominalWallMm: 5.1,
      note: 'thick, new',
      studCircleDiameterMm: 285.75,
    });
    expect(await entryHistory(program.shop.db, 'family', plover!.id)).toHaveLength(2);
  });

  it('refuses rows by row and column, with the sentence of the form, and then keeps none', async () => {
    const { path, html, text, mark } = await send(
      'family',
      `${HEADS}\n${TYPE}\nWrong,four,11.25,8.425,10.394,thick,perhaps\nInside out,4,11.25,10.394,8.425,0.197,no\n`,
    );
    expect(text).toContain('Added 1 Changed 0 Unchanged 0 Refused 2');
    expect(text).toContain('"perhaps" is neither yes nor no.');
    expect(text).toMatch(/4 Inside out .*friction surface/);
    expect(html).not.toContain('id="keep-these"');
    expect((await keep(path, mark)).status).toBe(422);
    expect(await families()).toHaveLength(0);
  });

  it('reads figures wrong in a word by their column', async () => {
    const { text } = await send('family', `${HEADS}\nWrong,four,11.25,8.425,10.394,thick,no\n`);
    expect(text).toContain('B, number of studs');
    expect(text).toMatch(/F, new wall \(in\) .*"thick" is not a plain number/);
  });

  it('asks about what looks like a slip, as the form does', async () => {
    const slipped = TYPE.replace('0.197', '5.0');
    const { path, text, html, mark } = await send('family', `${HEADS}\n${slipped}\n`);
    expect(text).toContain('Did you mean 5 mm?');
    expect(text).toContain('Row 2: “5.0” is right');
    expect(html).toContain('name="ok.2.nominal"');
    const unanswered = await keep(path, mark);
    expect([unanswered.status, (await families()).length]).toEqual([422, 0]);
  });

  it('keeps what was confirmed, and says so in the history', async () => {
    const odd = `name,number of studs,bolt circle diameter (in),friction surface inner diameter (in),friction surface outer diameter (in),new wall (in),shop’s minimum wall (in),who set the shop’s minimum,day the shop’s minimum was set\nOdd,4,11.25,8.425,10.394,0.197,0.05,AK,2026-11-01\n`;
    const { path, text, html, mark } = await send('family', odd);
    expect(text).toContain('Asked about 1');
    const name = /name="(ok\.2\.\w+)"/.exec(html)?.[1] ?? '';
    expect((await keep(path, mark, { [name]: '0.05' })).status).toBe(303);
    expect((await families())[0]?.body.shopMinimumWallMm).toBeCloseTo(1.27, 9);
    const page = await program.get(`/catalogue/family/odd`);
    expect(page.text).toContain('asked about and confirmed');
  });

  it('is shown anew, 409, when an entry was changed while somebody looked', async () => {
    const first = await send('family', `${HEADS}\n${TYPE}\n`);
    await keep(first.path, first.mark);
    const { path, mark } = await send('family', 'name,new wall (in)\nPlover,0.2\n');
    const [plover] = await families();
    await reviseEntry(program.shop.db, as('BL', 'measured'), {
      ...{ kind: 'family', id: plover!.id, fromRevision: 1, body: { ...plover!.body, nominalWallMm: 4.9 } },
    });
    const stale = await keep(path, mark);
    expect(stale.status).toBe(409);
    expect(stale.html).toMatch(/New wall<\/th><td>4\.9 mm<\/td><td>5\.08 mm/);
    expect((await families())[0]?.body.nominalWallMm).toBe(4.9);
    expect((await keep(path, said(stale.html).mark)).status).toBe(303);
    expect((await families())[0]).toMatchObject({ revision: 3 });
  });

  it('refuses a row written before somebody changed its entry', async () => {
    const first = await send('family', `${HEADS}\n${TYPE}\n`);
    await keep(first.path, first.mark);
    const csv = (await program.get('/catalogue/family.csv')).html;
    const [plover] = await families();
    await reviseEntry(program.shop.db, as('BL', 'measured'), {
      ...{ kind: 'family', id: plover!.id, fromRevision: 1, body: { ...plover!.body, note: 'measured' } },
    });
    const { text } = await send('family', csv.replace('Plover', 'Plover wide'));
    expect(text).toContain(
      'The file has revision 1 of "Plover"; BL has changed it, and it is now revision 2.',
    );
  });

  it('lets two entries change names, and refuses two of one name', async () => {
    const first = await send(
      'washer',
      'name,inner diameter (mm),outer diameter (mm),thickness (mm)\nA,10.5,20,2\nB,10.5,21,2\n',
    );
    await keep(first.path, first.mark);
    const swap = await send('washer', 'id,name\na,B\nb,A\n');
    expect(swap.text).toContain('Changed 2');
    expect((await keep(swap.path, swap.mark)).status).toBe(303);
    const names = (await listEntries(program.shop.db, 'washer')).map(({ id, name }) => [id, name]);
    expect(names).toEqual([
      ['b', 'A'],
      ['a', 'B'],
    ]);
    const same = await send('washer', 'id,name\na,A\n');
    expect(same.text).toContain('The catalog already has a washer or shim named "A".');
    const twice = await send('washer', 'id,note\na,one\na,two\n');
    expect(twice.text).toContain('Row 2 is of the same washer or shim.');
  });

  it('retires and puts back in use by its column', async () => {
    const first = await send('family', `${HEADS}\n${TYPE}\n`);
    await keep(first.path, first.mark);
    const out = await send(
      'family',
      'id,retired\nplover,TRUE\n'.replace('id,retired', 'id,retired,name').replace('TRUE', 'TRUE,Plover'),
    );
    expect(out.text).toContain('In use');
    await keep(out.path, out.mark);
    expect((await families())[0]?.retired).toBe(true);
  });
});

describe('what spreadsheets do to a list', () => {
  const comma = HEADS.replaceAll(',', ';');
  it.each([
    ['a byte order mark and line ends of Windows', `\ufeff${HEADS}\r\n${TYPE}\r\n`],
    ['semicolons and decimals with a comma', `${comma}\r\nPlover;4;11,25;8,425;10,394;0,197;no\r\n`],
    ['a line that names the separator', `sep=;\r\n${comma}\r\nPlover;4;11,25;8,425;10,394;0,197;FALSE\r\n`],
    ['tabs', `${HEADS}\n${TYPE}\n`.replaceAll(',', '\t')],
    ['every cell in quotes', `${HEADS}\n${TYPE}\n`.replaceAll(/[^,\n]+/g, '"$&"')],
    ['cells kept as text by ="…"', `${HEADS}\n"=""Plover""",4,"=""11 1/4""",8.425,10.394,0.197,no\n`],
    ['empty rows and blanks around', `${HEADS}\n\n Plover , 4 ,11.25,8.425, 10.394 ,0.197, No \n,,,,,,\n`],
  ])('is read all the same: %s', async (_what, file) => {
    const { path, text, mark } = await send('family', file);
    expect(text).toContain('Added 1 Changed 0 Unchanged 0 Refused 0');
    expect((await keep(path, mark)).status).toBe(303);
    expect((await families())[0]?.body).toMatchObject({
      ...{ name: 'Plover', studCount: 4, studCircleDiameterMm: 285.75, ringAllowed: false },
    });
  });

  it.each([
    ['a formula', `${HEADS}\n${TYPE.replace('0.197', '=F1*2')}\n`, 'This is a formula of a spreadsheet.'],
    [
      'an error of the spreadsheet',
      `${HEADS}\n${TYPE.replace('Plover', '#REF!')}\n`,
      'shows the error #REF! here',
    ],
    ['a thousands separator', `${HEADS}\n${TYPE.replace('11 1/4', '"1,125.5"')}\n`, 'thousands separator'],
    ['a spreadsheet file', Buffer.from('PK\u0003\u0004 and so on'), 'This is a spreadsheet or a packed file'],
    [
      'letters of another coding',
      Buffer.from([...Buffer.from(`${HEADS}\n`), 0xe9, 0x2c]),
      'not coded as UTF-8',
    ],
    ['a quotation mark that never closes', `${HEADS}\n"Plover,4\n`, 'never closed'],
    ['a heading twice', `name,name\na,b\n`, 'The heading "name" stands twice.'],
    [
      'headings of something else',
      `a,b\n1,2\n`,
      'No heading in the first row names a figure of a cover type',
    ],
    ['no headings', `\n\n`, 'The first row is empty.'],
  ])('is refused by a sentence: %s', async (_what, file, sentence) => {
    const { text } = await send('family', file);
    expect(text).toContain(sentence);
    expect(await families()).toHaveLength(0);
  });

  it('says which columns it does not read', async () => {
    const { text } = await send('family', `${HEADS},minium wall\n${TYPE},0.165\n`);
    expect(text).toContain('This column is not read: minium wall. The download has no such heading.');
  });

  it.each([
    ['11/24/2026', 'Added 1'],
    ['24.11.2026', 'Added 1'],
    ['1/2/2026', '"1/2/2026" can be 2026-01-02 or 2026-02-01.'],
    ['2026-13-01', 'must be a day of the calendar'],
    ['31/31/2026', 'is no day of the calendar'],
  ])('reads the day %s, or asks for it with the year first', async (day, sentence) => {
    const heads = `${HEADS},shop’s minimum wall (in),who set the shop’s minimum,day the shop’s minimum was set`;
    const { text } = await send('family', `${heads}\n${TYPE},0.165,AK,${day}\n`);
    expect(text).toContain(sentence);
  });

  it('takes no file of more than 8 MB, and none at all', async () => {
    const large = await send('family', `${HEADS}\n${'x'.repeat(8 * 1024 * 1024)}`);
    expect([large.status, large.text]).toEqual([
      422,
      expect.stringContaining('The file has more than 8 MB.'),
    ]);
    const none = await send('family', '');
    expect([none.status, none.text]).toEqual([422, expect.stringContaining('No file was chosen')]);
  });
});

it('brings in the shelves of a whole shop as their lists went out', async () => {
  const shop = await serve({ demo: true, unit: 'in' });
  const lists: [string, string][] = [];
  for (const kind of ['steel', 'lining', 'lathe', 'family', 'stud', 'stack', 'nut', 'washer', 'gauge'])
    lists.push([kind, await (await fetch(`${shop.url}/catalogue/${kind}.csv`)).text()]);
  const bodies = async (from: Served, kind: string) =>
    (await listEntries(from.shop.db, kind as 'stack')).map(({ id, body }) => [id, body.name]);
  for (const [kind, csv] of lists) {
    const { path, text, mark } = await send(kind, csv);
    expect(text).toContain('Changed 0 Unchanged 0');
    expect(text).toMatch(/Refused 0/);
    const confirmed = Object.fromEntries(
      [...(await program.get(path)).html.matchAll(/name="(ok\.[^"]+)" value="([^"]*)"/g)].map(
        ([, name, value]) => [name, value],
      ),
    );
    expect((await keep(path, mark, confirmed)).status).toBe(303);
    await seen(path);
    expect(await bodies(program, kind)).toEqual(await bodies(shop, kind));
  }
  await shop.close();
});

it('three hundred cover types come in at once, and stand in the catalog', async () => {
  const rows = Array.from({ length: 300 }, (_, i) => TYPE.replace('Plover', `Type ${i + 1}`));
  const { path, text, mark } = await send('family', `${HEADS}\n${rows.join('\n')}\n`);
  expect(text).toContain('Added 300 Changed 0 Unchanged 0 Refused 0');
  expect((await keep(path, mark)).status).toBe(303);
  expect((await seen(path)).text).toContain('Saved: 300 added');
  expect(await families()).toHaveLength(300);
  expect((await program.get('/catalogue?shelf=family')).html).toContain('Type 300');
});
