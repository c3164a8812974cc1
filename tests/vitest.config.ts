import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));
const jsx = { jsx: { runtime: 'automatic', importSource: 'preact' } } as const;

/**
 * `fast` holds everything that needs no browser and no second process; `whole` the rest of what `npm test` runs;
 * `faults` is the longer run of `npm run test:faults`.
 */
export default defineConfig({
  root,
  oxc: jsx,
  test: {
    globalSetup: ['tests/records/postgresSetup.ts'],
    projects: [
      {
        root,
        oxc: jsx,
        test: {
          name: 'fast',
          // Nothing here changes what a neighbour could see, and one start for all is twice as fast.
          isolate: false,
          pool: 'threads',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**', 'tests/faults/**'],
        },
      },
      {
        root,
        oxc: jsx,
        test: {
          name: 'whole',
          include: [
            'tests/browser/**/*.test.ts',
            'tests/faults/records/*.test.ts',
            'tests/faults/smoke.test.ts',
          ],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
      {
        root,
        oxc: jsx,
        test: {
          name: 'faults',
          include: ['tests/faults/*.test.ts'],
          exclude: ['tests/faults/smoke.test.ts'],
          globalSetup: ['tests/faults/kit/build.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
