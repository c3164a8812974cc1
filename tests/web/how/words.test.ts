import { afterAll, beforeAll, expect, test } from 'vitest';
import { TERMS } from '../../../shared/words/terms.ts';
import { expectSound } from '../../views/markup.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

test('the page of words tells what each thing is, and each box of a form with its unit', async () => {
  expect((await program.get('/how')).html).toContain('href="/how/words"');
  const { html, text } = await program.get('/how/words');
  expectSound(html);
  for (const { word, is } of Object.values(TERMS)) expect(text).toContain(`${word} ${is}`);
  expect(text).toContain('Pull-forward gap');
});

test('a term says what it is in one sentence of at most 25 words, and no word stands for two things', () => {
  const terms = Object.values(TERMS);
  expect(new Set(terms.map(({ word }) => word)).size).toBe(terms.length);
  for (const { is } of terms) {
    expect(is).toMatch(/^[A-Z].*\.$/);
    expect(is.split(' ').length, is).toBeLessThanOrEqual(25);
  }
});
