import { expect, test } from 'vitest';
import { SEED } from '../seed.ts';
import { crawl, type Found } from './kit/crawl.ts';
import { faultsIn, submit, type Tried } from './kit/forms.ts';
import { ask } from './kit/http.ts';
import { MARK, MARKUP, madeOfMarkup, SHORT_MARKUP } from './kit/markup.ts';
import { readPage } from './kit/page.ts';
import { newFolder, type Program, start } from './kit/program.ts';
import { random } from './kit/random.ts';
import { jobForm, look } from './kit/shop.ts';
import { tell } from './kit/tell.ts';

/** Without a control character or a word that some field refuses, so that it is kept. */
const PLAIN_MARKUP = MARKUP[1]!;
/** Of the measuring table and its like, whose fields are all alike. */
const MOST_FIELDS = 10;
const shuffled = <T>(all: readonly T[]): T[] =>
  all
    .map((one) => ({ one, at: random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ one }) => one);
const any = <T>(all: readonly T[]): T => all[Math.floor(random() * all.length)]!;

test('what looks for markup finds each of these where it was not made harmless, and nothing in text', () => {
  const at = 'http://127.0.0.1/';
  const PLACES = [
    (words: string) => `<p>${words}</p>`,
    (words: string) => `<p title="${words}">x</p>`,
    (words: string) => `<p title='${words}'>x</p>`,
    (words: string) => `<textarea>${words}</textarea>`,
    (words: string) => `<!-- ${words} -->`,
    (words: string) => `<a href="${words}">x</a>`,
    (words: string) => `<script>x = 1; //${words}</script>`,
  ];
  for (const words of [...MARKUP, SHORT_MARKUP]) {
    const found = PLACES.map((place) => madeOfMarkup(readPage(place(words), at)).length);
    expect(Math.max(...found.slice(0, 6)), words).toBeGreaterThan(0);
    const safe = words.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
    expect(madeOfMarkup(readPage(`<p title="${safe}">${safe}</p><textarea>${safe}</textarea>`, at))).toEqual(
      [],
    );
  }
});

const valid = (name: string, words: string) => (name === 'who' || name === 'initials' ? SHORT_MARKUP : words);

/** Each form once with markup in every field of words, and then in one field after another. */
async function fillForms(program: Program, pages: readonly Found[]): Promise<Tried[]> {
  const tried: Tried[] = [];
  const seen = new Set<string>();
  for (const form of pages.flatMap(({ page }) => page.forms)) {
    const kind = `${form.method} ${form.action.replace(/\?.*/, '').replace(/\/(jobs|photos)\/[^/]+/, '/$1/*')} ${form.fields.map(({ name }) => name.replace(/\d+/g, '#')).join(' ')}`;
    // Once the demo is put away its entries take no words: that form comes last.
    if (seen.has(kind) || /sign-out|begin/.test(form.action)) continue;
    seen.add(kind);
    const words = form.fields.filter((field) => field.kind !== 'choice');
    // Bookkeeping of the form and figures stay as they are here, so that the rest is kept.
    const told = words.filter(
      ({ name, value }) =>
        !/^(from|unit|pass|token|back|at\.|was\.)/.test(name) &&
        !/^[\d.]+$/.test(value) &&
        !/^[wfda]\.|^[rl][a-z]?\.|Mm$|Minimum$/.test(name),
    );
    for (const markup of [any(MARKUP)]) {
      const over = Object.fromEntries(told.map(({ name }) => [name, valid(name, markup)]));
      tried.push({ what: `${form.action} all`, answer: await submit(program.url, form, over) });
    }
    const free = told.filter(({ name }) =>
      /name|note|reason|why|customer|source|gauge|statement|shop|who|caption|number|thread/i.test(name),
    );
    // A source of a figure that is not there is refused.
    const noFigure = (name: string) =>
      /source$/i.test(name) && form.fields.find((one) => one.name === name)!.value === '';
    const over = () =>
      Object.fromEntries(
        free.map(({ name }) => [
          name,
          /thread/i.test(name) || noFigure(name)
            ? form.fields.find((one) => one.name === name)!.value
            : valid(name, PLAIN_MARKUP),
        ]),
      );
    tried.push({ what: `${form.action} free words`, answer: await submit(program.url, form, over()) });
    for (const { name } of shuffled(form.fields).slice(0, MOST_FIELDS)) {
      const markup = any(MARKUP);
      tried.push({
        what: `${form.action} ${name}=${markup}`,
        answer: await submit(program.url, form, { who: 'AK', why: 'as asked', [name]: markup }),
      });
    }
  }
  return tried;
}

/** Markup in the query, the path and the cookies of every page. */
async function askPages(program: Program, pages: readonly Found[]): Promise<Tried[]> {
  const tried: Tried[] = [];
  const names = [
    ...new Set(
      pages
        .flatMap(({ page }) => page.forms)
        .filter(({ method }) => method === 'get')
        .flatMap(({ fields }) => fields.map(({ name }) => name)),
    ),
  ];
  const paths = [...new Set(pages.map(({ path }) => path.replace(/\?.*/, '')))];
  for (const path of paths) {
    const some = shuffled([
      ...names,
      'revision',
      'after',
      'text',
      'stage',
      'family',
      'stud',
      'stack',
      MARK,
    ]).slice(0, 14);
    const query = new URLSearchParams(some.map((name) => [name, any(MARKUP)]));
    query.set(any(MARKUP), any(MARKUP));
    const cookie = `unit=${encodeURIComponent(any(MARKUP))}; initials=${encodeURIComponent(SHORT_MARKUP)}; session=${encodeURIComponent(any(MARKUP))}`;
    tried.push({
      what: `${path}?${query}`,
      answer: await ask(`${program.url}${path}?${query}`, {
        headers: { Cookie: cookie, 'HX-Request': 'true', 'HX-Current-URL': any(MARKUP).replace(/\t/, '') },
      }),
    });
    const one = any(names);
    const single = new URLSearchParams({ [one]: any(MARKUP) });
    tried.push({ what: `${path}?${single}`, answer: await ask(`${program.url}${path}?${single}`) });
  }
  for (const markup of MARKUP) {
    for (const path of [
      '/',
      '/jobs/',
      '/catalogue/',
      '/catalogue/family/',
      '/catalogue/stud/',
      '/cover/example/',
      '/photos/',
      '/people/',
      '/api/',
      '/api/jobs/',
      '/assets/',
    ]) {
      const to = path + encodeURIComponent(markup);
      tried.push({ what: to, answer: await ask(program.url + to) });
    }
  }
  return tried;
}

test('no words that are sent ever become markup, script or an address, at once or when they are shown later', async () => {
  console.log(`seed ${SEED}`);
  const dataDir = newFolder();
  const program = await start({ dataDir });
  const before = await crawl(program.url);
  const forms = await fillForms(program, before);
  // What was kept has made new pages, and forms that stand on them.
  const jobs = look(dataDir, (raw) =>
    raw.prepare<[], string>(`SELECT number FROM job WHERE number LIKE '%${MARK}%'`).pluck().all(),
  );
  const own = jobs
    .slice(0, 3)
    .flatMap((number) =>
      ['', '/sheet', '/tag', '/history', '/measure'].map(
        (end) => `/jobs/${encodeURIComponent(number)}${end}`,
      ),
    );
  const between = await crawl(program.url, ['/', ...own]);
  forms.push(...(await fillForms(program, between)));
  const asked = await askPages(program, before);
  const after = await crawl(program.url, ['/', ...own]);
  const begin = between.flatMap(({ page }) => page.forms).find(({ action }) => action === '/begin')!;
  for (const who of [...MARKUP, SHORT_MARKUP])
    forms.push({ what: `/begin who=${who}`, answer: await submit(program.url, begin, { who }) });
  const begun = await crawl(program.url, ['/', '/begin', '/criteria']);
  expect(begun.flatMap(({ page }) => page.forms).map(({ action }) => action)).not.toContain('/begin');
  const shown = [...between, ...after, ...begun].map(
    ({ path, status, html }): Tried => ({
      what: path,
      answer: { status, headers: { 'content-type': 'text/html' }, text: html },
    }),
  );
  expect(faultsIn(program.url, [...forms, ...asked, ...shown])).toEqual([]);

  const kept = look(dataDir, (raw) => [
    ...raw
      .prepare<[], string>(
        `SELECT DISTINCT what FROM job_revision WHERE body LIKE '%${MARK}%' OR why LIKE '%${MARK}%'`,
      )
      .pluck()
      .all(),
    ...raw
      .prepare<[], string>(`SELECT DISTINCT kind FROM entry_revision WHERE body LIKE '%${MARK}%'`)
      .pluck()
      .all(),
  ]);
  console.log(
    `markup was kept in: ${kept.sort().join(', ')}; ${forms.length} forms sent, ${asked.length} pages asked, ${shown.length} shown`,
  );
  for (const one of ['received', 'looked', 'setup', 'criteria', 'family', 'stud', 'stack'])
    expect(kept).toContain(one);
  const withMark = shown.filter(({ answer }) => answer.text.includes(MARK)).length;
  expect(withMark).toBeGreaterThan(20);
  expect(forms.length).toBeGreaterThan(200);
  expect(program.said().err).toBe('');
  tell(
    'Markup in every field and every page',
    `${MARKUP.length} kinds, 200 forms or more`,
    'all of it stays text; no address of it can be followed',
  );
});

/** CSV after RFC 4180 into rows of cells. */
function cellsOf(csv: string): string[][] {
  const rows: string[][] = [[]];
  const cell = /("(?:[^"]|"")*"|[^,\r\n]*)(,|\r?\n|$)/y;
  for (;;) {
    const found = cell.exec(csv);
    if (!found) return rows;
    const [all, words = '', end] = found;
    rows.at(-1)!.push(words.startsWith('"') ? words.slice(1, -1).replaceAll('""', '"') : words);
    if (all === '' || end === '') return rows;
    if (end !== ',') rows.push([]);
  }
}

test('no cell of a CSV can be run as a formula', async () => {
  const program = await start({ dataDir: newFolder() });
  const FORMULAS = [
    '=1+1',
    '+SUM(1)',
    '-2+3',
    '@SUM(1)',
    '\t=1+1',
    '=HYPERLINK("http://shop.example","x")',
    '＝1+1',
  ];
  for (const [i, formula] of FORMULAS.entries()) {
    const fields = {
      ...jobForm(`${formula.trim().slice(0, 12)} ${i}`),
      customer: formula,
      note: formula,
      who: formula.trim().slice(0, 4),
    };
    const made = await submit(
      program.url,
      { action: '/jobs', method: 'post', multipart: false, fields: [] },
      fields,
    );
    expect(made.status, formula).toBe(303);
  }
  const FILES = [
    '/jobs.csv',
    '/catalogue/family.csv',
    '/catalogue/stud.csv',
    '/catalogue/stack.csv',
    '/catalogue/gauge.csv',
    '/catalogue/steel.csv',
    '/catalogue/lining.csv',
    '/catalogue/lathe.csv',
    '/jobs/1001/readings.csv',
  ];
  let dangerous = 0;
  for (const file of FILES) {
    const { status, headers, text } = await ask(program.url + file);
    expect(status, file).toBe(200);
    expect(headers['content-type']).toMatch(/^text\/csv/);
    expect(headers['content-disposition']).toMatch(/^attachment;/);
    expect(headers['x-content-type-options']).toBe('nosniff');
    for (const cell of cellsOf(text.replace(/^\ufeff/, '')).flat()) {
      if (/^'[=+\-@\t＝]/.test(cell)) dangerous++;
      if (/^-?[\d.]+(e-?\d+)?$/.test(cell)) continue;
      expect(cell, file).not.toMatch(/^[\s\ufeff]*[=+\-@\t\r＝＋－＠]/);
    }
  }
  expect(dangerous).toBeGreaterThanOrEqual(2 * FORMULAS.length - 2);
  tell(
    'Formulas in cells of a CSV',
    `${FORMULAS.length} kinds, ${FILES.length} files`,
    'an apostrophe goes before them; numbers stay numbers',
  );
});
