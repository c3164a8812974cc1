import { accessSync, constants, statfsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));
const jsx = { jsx: { runtime: 'automatic', importSource: 'preact' } } as const;

/** Those that keep records on disk or in PostgreSQL, or answer over HTTP. */
const KEPT = ['tests/records/**/*.test.ts', 'tests/web/**/*.test.ts', 'tests/rooms.test.ts'];

/** Laws are tried on the same random covers and studs in every run. */
const SEED = ['tests/seed.ts'];

/** vitest alone would leave one of two cores idle. */
const WORKERS = Math.max(2, availableParallelism() - 1);

/** Limits of time, here and below, are against hanging only: a loaded machine may take long for anything. */
const PATIENT = { poll: { timeout: 200_000 } };

/** Hundreds of small shops are kept in memory where there is room: their tests are not about the disk. */
const IN_MEMORY = roomFor('/dev/shm', 1e9) ? { TMPDIR: '/dev/shm' } : {};

/** What is worked out beside the requests may take long. */
const TIME = ['tests/patient.ts'];

/** Every answer of the JSON interface is held to its schema, whichever test asks. */
const ANSWERS = ['tests/web/api/fetchHeld.ts'];

/**
 * `fast` holds calculations, words, schemas and views; `kept` what keeps records or answers over HTTP; `browser` what
 * needs one, on a phone; `whole` what needs a second process or takes long: the four are `npm test`.
 * `npm run test:screens` tries every screen in the browser, on phone and desk, and every page in mm;
 * `npm run test:faults` the built program.
 */
export default defineConfig({
  root,
  oxc: jsx,
  test: {
    projects: [
      {
        root,
        oxc: jsx,
        test: {
          name: 'fast',
          // Nothing here changes what a neighbor could see, and one start for all is twice as fast.
          isolate: false,
          pool: 'threads',
          maxWorkers: WORKERS,
          include: ['tests/**/*.test.{ts,tsx}'],
          setupFiles: SEED,
          testTimeout: 300_000,
          exclude: [...KEPT, 'tests/browser/**', 'tests/slow/**', 'tests/faults/**'],
        },
      },
      {
        root,
        oxc: jsx,
        test: {
          name: 'kept',
          expect: PATIENT,
          isolate: false,
          pool: 'threads',
          maxWorkers: WORKERS,
          include: KEPT,
          setupFiles: [...SEED, ...TIME, ...ANSWERS],
          globalSetup: ['tests/records/postgresSetup.ts'],
          env: IN_MEMORY,
          testTimeout: 600_000,
          hookTimeout: 600_000,
        },
      },
      {
        root,
        oxc: jsx,
        test: {
          name: 'browser',
          expect: PATIENT,
          setupFiles: TIME,
          include: ['tests/browser/*.test.ts'],
          testTimeout: 900_000,
          hookTimeout: 900_000,
          // A browser waits more than it works.
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
      {
        root,
        oxc: jsx,
        test: {
          name: 'screens',
          expect: PATIENT,
          setupFiles: [...SEED, ...TIME, ...ANSWERS],
          include: ['tests/browser/**/*.test.ts', 'tests/slow/longer/*.test.ts'],
          env: { EVERY_SCREEN: 'yes' },
          testTimeout: 900_000,
          hookTimeout: 900_000,
          maxWorkers: 2,
        },
      },
      {
        root,
        oxc: jsx,
        test: {
          name: 'whole',
          expect: PATIENT,
          include: ['tests/slow/*.test.ts', 'tests/faults/records/*.test.ts', 'tests/faults/smoke.test.ts'],
          setupFiles: [...SEED, ...TIME, ...ANSWERS],
          testTimeout: 1_800_000,
          hookTimeout: 1_800_000,
          maxWorkers: 2,
          sequence: { groupOrder: 2 },
        },
      },
      {
        root,
        oxc: jsx,
        test: {
          name: 'faults',
          expect: PATIENT,
          include: ['tests/faults/*.test.ts'],
          exclude: ['tests/faults/smoke.test.ts'],
          globalSetup: ['tests/faults/kit/build.ts'],
          setupFiles: ANSWERS,
          testTimeout: 900_000,
          hookTimeout: 900_000,
          fileParallelism: false,
        },
      },
    ],
  },
});

function roomFor(folder: string, bytes: number): boolean {
  try {
    accessSync(folder, constants.W_OK | constants.X_OK);
    const { bavail, bsize } = statfsSync(folder);
    return bavail * bsize > bytes;
  } catch {
    return false;
  }
}
