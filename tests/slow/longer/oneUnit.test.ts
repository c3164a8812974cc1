import { afterAll, beforeAll, describe } from 'vitest';
import { type Served, serve } from '../../web/program.ts';
import { ASKED, FROM } from '../../words/asked.ts';
import { figuresIn } from '../../words/figures.ts';
import { crawl, fillWrong, sender } from '../../words/visit.ts';

/** In inches the walk for the list of words is held to the same: tests/slow/words.test.ts. */
describe('with lengths in mm', () => {
  let program: Served;
  const figures = figuresIn('mm');
  beforeAll(async () => {
    program = await serve({ demo: true, unit: 'in', publicUrl: 'http://shop.example' });
    const ask = (path: string, init: RequestInit) => fetch(program.url + path, init);
    const send = sender(ask, program.url, 'mm');
    const pages = await crawl((path) => send(path), [...FROM, ...ASKED.mm], figures.take);
    await fillWrong(send, pages, figures.take);
  });
  afterAll(() => program.close());
  figures.tests();
});
