import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CHECKED } from '../../../data/examples/bentCover.ts';
import { readFormulas } from '../../../src/web/how/formulas.ts';
import { SUBJECTS } from '../../../src/web/how/how.ts';
import { DRAWN_CALCULATIONS } from '../../../views/drawings/symbols/symbolsDrawn.tsx';
import { formulaPieces } from '../../../views/parts/how/formulaText.tsx';
import { expectSound } from '../../views/markup.ts';
import { type Served, serve } from '../program.ts';

/** The calculations of a folder, each once. */
const calculationsIn = (folder: string) => [
  ...new Set(
    readFormulas()
      .filter(({ name }) => name.startsWith(`${folder}/`))
      .map(({ name }) => name.slice(folder.length + 1)),
  ),
];

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: false });
});
afterAll(() => program.close());

describe('how it is worked out', () => {
  it('is a step from every page, and names every subject', async () => {
    expect((await program.get('/')).html).toContain('href="/how"');
    const index = await program.get('/how');
    expectSound(index.html);
    for (const { id, title } of SUBJECTS) {
      expect(index.html).toContain(`href="/how/${id}"`);
      expect(index.text).toContain(title);
    }
    expect((await program.get('/how/nothing')).status).toBe(404);
  });

  it.each(SUBJECTS.map(({ id, folder }) => [id, folder] as const))(
    'lists on its page of %s every calculation in its source, each a press away, with cautions below',
    async (id, folder) => {
      const page = await program.get(`/how/${id}`);
      expect(page.status).toBe(200);
      expectSound(page.html);
      const files = calculationsIn(folder);
      expect(files.length).toBeGreaterThan(2);
      expect(page.text).not.toMatch(/\w\.tsx?\b|tests\//);
      for (const name of files) expect(page.html).toContain(`href="/how/${id}/${name}"`);
      expect(page.text).toContain('Rotating parts under pressure can injure.');
      expect((await program.get(`/how/${id}/nothing`)).status).toBe(404);
    },
  );

  it.each(SUBJECTS.map((subject) => [subject.id, subject] as const))(
    'has for every calculation of %s a page with its words, its formulas in MathML, and its example',
    async (id, { folder }) => {
      const formulas = readFormulas();
      for (const name of calculationsIn(folder)) {
        const page = await program.get(`/how/${id}/${name}`);
        expect(page.status, name).toBe(200);
        expectSound(page.html);
        expect(page.text).not.toMatch(/\w\.tsx?\b|tests\//);
        expect(page.html.match(/Worked out here: /g)).toHaveLength(1);
        const pieces = formulas
          .filter((one) => one.name === `${folder}/${name}`)
          .flatMap(({ text }) => formulaPieces(text));
        const set = page.html.match(/<p class="formula-line">(?:(?!<\/p>).)*<\/math>/g) ?? [];
        expect(set, name).toHaveLength(pieces.filter(({ formula }) => formula).length);
        expect(page.html.includes('class="symbol-names"')).toBe(DRAWN_CALCULATIONS.includes(`${id}/${name}`));
        expect(page.text).toContain('Rotating parts under pressure can injure.');
      }
    },
  );

  it('draws symbols beside calculations that are there, and names each symbol it draws', async () => {
    const there = SUBJECTS.flatMap(({ id, folder }) => calculationsIn(folder).map((name) => `${id}/${name}`));
    expect(DRAWN_CALCULATIONS.filter((name) => !there.includes(name))).toEqual([]);
    for (const name of DRAWN_CALCULATIONS) {
      const { html } = await program.get(`/how/${name}`);
      const drawn = [...html.matchAll(/class="symbol halo[^"]*">([^<]*)(?:<tspan[^>]*>([^<]*))?/g)].map(
        ([, base, below]) => `${base}${below ?? ''}`,
      );
      const named = [...html.matchAll(/<dt><i>([^<]*)(?:<sub>([^<]*)<\/sub>)?<\/i>/g)].map(
        ([, base, below]) => `${base}${below ?? ''}`,
      );
      expect([...new Set(drawn.filter(Boolean))].sort(), name).toEqual([...new Set(named)].sort());
    }
  });

  it('works out on its bending page an example beside the independent values, with limits and drawings', async () => {
    const { html, text } = await program.get('/how/bending');
    const cells = [...html.matchAll(/<td>([\d.]+)<small>([\d.]+)<\/small><\/td>/g)].map((found) => [
      Number(found[1]),
      Number(found[2]),
    ]);
    expect(cells).toHaveLength(3 * CHECKED.length);
    for (const [found, checked] of cells) expect(Math.abs(found! / checked! - 1)).toBeLessThan(0.005);
    expect(cells.filter(([found, checked]) => found !== checked).length).toBeGreaterThan(3);
    for (const said of [
      'For the machinist',
      'For an engineer',
      'Its limits',
      'Compared with an independent second implementation, not published',
    ])
      expect(text).toContain(said);
    expect(html).toContain('id="how-map-sector"');
    expect(html).toContain('id="how-section-title"');
  });

  it.each([
    ['cover', 10],
    ['measuring', 4],
  ])('agrees on its %s page with %i independent values', async (id, count) => {
    const { html } = await program.get(`/how/${id}`);
    const rows = [...html.matchAll(/<td>(−?[\d.]+)<\/td><td>(−?[\d.]+)<\/td>/g)].map((found) =>
      found.slice(1).map((text) => Number(text.replace('−', '-'))),
    );
    expect(rows).toHaveLength(count);
    for (const [found, checked] of rows) expect(Math.abs(found! / checked! - 1)).toBeLessThan(0.001);
  });

  it('works out on its heat page an example beside the independent values', async () => {
    const { text } = await program.get('/how/heat');
    for (const said of ['58.51', '42.46', '59.63', '49.29']) expect(text).toContain(said);
  });
});
