import { afterAll, afterEach, beforeAll, expect, test, vi } from 'vitest';
import { openShopInMemory } from '../../../src/records/database/database.ts';
import { type Served, serve } from '../program.ts';

/** As a fault of the program or its database looks like: what went wrong stands in the cause. */
const unforeseen = new Error('query failed', { cause: new Error('what the disk said') });
let broken = false;
let program: Served;

beforeAll(async () => {
  program = await serve({
    demo: false,
    open: async ({ now }) => {
      const shop = openShopInMemory({ now });
      const db = shop.db.withPlugin({
        transformQuery: ({ node }) => {
          if (broken) throw unforeseen;
          return node;
        },
        transformResult: async ({ result }) => result,
      });
      return { ...shop, db };
    },
  });
});
afterAll(() => program.close());
afterEach(() => {
  broken = false;
  vi.restoreAllMocks();
});

test.each([
  ['a page', '/jobs', 'made a mistake'],
  ['the interface', '/api/jobs', 'The program made a mistake. Nothing was changed; its log has the details.'],
])(
  '%s that fails unforeseen says so, and the whole error is in the log, its cause with it',
  async (_, path, said) => {
    const log = vi.spyOn(console, 'error').mockImplementation(() => {});
    broken = true;
    const { status, text } = await program.get(path);
    expect([status, text]).toEqual([500, expect.stringContaining(said)]);
    expect(text).not.toContain('what the disk said');
    expect(log.mock.calls.map(([error]) => error)).toContain(unforeseen);
  },
);
