import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CHECKED } from '../../../data/examples/bentCover.ts';
import { readFormulas } from '../../../src/web/how/formulas.ts';
import { SUBJECTS } from '../../../src/web/how/how.ts';
import { expectSound } from '../../views/markup.ts';
import { type Served, serve } from '../program.ts';

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
    'has on its page of %s a place, words and an example for every calculation in its source, and cautions below',
    async (id, folder) => {
      const page = await program.get(`/how/${id}`);
      expect(page.status).toBe(200);
      expectSound(page.html);
      const files = new Set(
        readFormulas()
          .map(({ name }) => name)
          .filter((name) => name.startsWith(`${folder}/`)),
      );
      expect(files.size).toBeGreaterThan(2);
      expect(page.text).not.toMatch(/\w\.tsx?\b|tests\//);
      for (const name of files) {
        expect(page.html).toContain(`id="${name.replace('/', '-')}"`);
      }
      expect(page.html.match(/Worked out here: /g)?.length).toBe(files.size);
      expect(page.text).toContain('Rotating parts under pressure can injure.');
    },
  );

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
