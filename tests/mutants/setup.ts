import { afterAll, beforeAll, inject, type RunnerTask } from 'vitest';

/**
 * Stryker counts what runs before and after the tests of a file as run by nobody in particular, and tries every test for
 * it; here it counts for each test of that file. A thread or a program a test starts has the change too.
 */
interface Counted {
  activeMutant?: string;
  currentTestId?: string | undefined;
  mutantCoverage?: { static: Hits; perTest: Record<string, Hits> };
}
type Hits = Record<string, number>;

const given = inject as unknown as (name: string) => string | undefined;
const scope = globalThis as unknown as Record<string, Counted | undefined>;
const name = given('globalNamespace')!;
scope[name] ??= {};
const counted = scope[name];

if (given('mode') === 'mutant') {
  process.env.__STRYKER_ACTIVE_MUTANT__ = given('activeMutant');
} else {
  const outside = 'before and after the tests of a file';
  let test: string | undefined;
  let collected = false;
  // In place: each module keeps hold of it from its first line on.
  counted.mutantCoverage ??= { static: {}, perTest: {} };
  const coverage = counted.mutantCoverage;
  coverage.static = {};
  coverage.perTest = {};
  Object.defineProperty(counted, 'currentTestId', {
    configurable: true,
    get: () => test ?? (collected ? outside : undefined),
    set: (id: string | undefined) => {
      test = id;
    },
  });
  beforeAll(() => {
    collected = true;
  });
  // biome-ignore lint/correctness/noEmptyPattern: vitest asks for it.
  afterAll(({}, file) => {
    collected = false;
    const { perTest } = coverage;
    const hits = perTest[outside];
    if (hits === undefined) return;
    delete perTest[outside];
    for (const id of idsOf(file.tasks, file.file.filepath, '')) {
      perTest[id] ??= {};
      const own = perTest[id];
      for (const [mutant, times] of Object.entries(hits)) own[mutant] = (own[mutant] ?? 0) + times;
    }
  });
}

/** As Stryker calls its tests. */
function idsOf(tasks: readonly RunnerTask[], file: string, within: string): string[] {
  return tasks.flatMap((task) => {
    const called = `${within} ${task.name}`.trim();
    return task.type === 'suite' ? idsOf(task.tasks, file, called) : [`${file}#${called}`];
  });
}
