import all from '../vitest.config.ts';
import { NearestFirst, Watch } from './nearest.ts';

/** Tests that read the program's text find the changes in it, whichever is tried. */
const READ_THE_TEXT = [
  'tests/calc/docstrings.test.ts',
  'tests/views/formulaText.test.ts',
  'tests/web/how/*.test.ts',
  'tests/rooms.test.ts',
  'tests/words/sentences.test.ts',
];

/** Those alone, where they are named: folders or files with a comma between. */
const asked = (process.env.MUTANTS_TESTS ?? '').split(',').filter(Boolean);
const within = asked.map((place) => (/\.tsx?$/.test(place) ? place : `${place}/**/*.test.{ts,tsx}`));

const [fast, kept] = all.test!.projects as {
  test: { include: string[]; exclude?: string[]; setupFiles?: string[] };
}[];

/** Tests in one process: calculations, words, views, records, and what answers over HTTP. */
export default {
  ...all,
  test: {
    ...all.test,
    reporters: [new Watch()],
    sequence: { sequencer: NearestFirst },
    projects: [
      only(fast!, (place) => !/^tests\/(records|web|browser|slow|faults)\b/.test(place)),
      only(kept!, (place) => /^tests\/(records|web)\b/.test(place)),
    ],
  },
};

function only(project: typeof kept & object, holds: (place: string) => boolean) {
  const { test } = project;
  return {
    ...project,
    test: {
      ...test,
      // One change at a time; two threads would load everything twice.
      maxWorkers: 1,
      testTimeout: 90_000,
      hookTimeout: 120_000,
      setupFiles: ['tests/mutants/setup.ts', 'tests/patient.ts', ...(test.setupFiles ?? [])],
      include: asked.length > 0 ? within.filter(holds) : test.include,
      exclude: [...(test.exclude ?? []), ...READ_THE_TEXT],
    },
  };
}
