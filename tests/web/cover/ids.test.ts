import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Served, serve } from '../program.ts';
import { readingsForm } from '../steps.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

function idsOf(html: string): string[] {
  return [...html.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id!);
}

describe('every id on a page', () => {
  test.each(['/jobs/1001', '/jobs/1004', '/jobs/1016', '/jobs/1019', '/jobs/1019/measure', '/criteria'])(
    'is there once on %s, and every label leads to its field',
    async (path) => {
      const { html } = await program.get(path);
      const ids = idsOf(html);
      expect(ids.length).toBeGreaterThan(20);
      expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
      const labelled = [...html.matchAll(/\sfor="([^"]+)"/g)].map(([, id]) => id!);
      expect(labelled.filter((id) => !ids.includes(id))).toEqual([]);
    },
  );

  test.each([
    ['a wall in words', 'about five', 'AK', 'after-form-w-1'],
    ['nobody’s initials', '4.81', '', 'after-form-who'],
  ])('leads from a refusal on the job to its own field: %s', async (_, wall, who, id) => {
    const typed = readingsForm('after', ['4.82', wall], { token: `token-${id}`, who });
    const refused = await program.post('/jobs/1018/readings', typed);
    expect(refused.status).toBe(422);
    const faults = refused.html.slice(refused.html.indexOf('id="faults"'));
    const links = [...faults.slice(0, faults.indexOf('</section>')).matchAll(/href="#([^"]+)"/g)];
    expect(links.map(([, to]) => to)).toEqual([id]);
    expect(idsOf(refused.html)).toContain(id);
  });
});
