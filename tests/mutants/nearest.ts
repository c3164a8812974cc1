import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join, relative } from 'node:path';
import { BaseSequencer, type Reporter, type TestModule, type TestSpecification } from 'vitest/node';

/** How long each test of a file took, and what comes before and after them, in ms. */
type Times = Record<
  string,
  { readonly tests: readonly (readonly [string, number])[]; readonly rest: number }
>;

/** Tests asked for one change, in ms as they take unbroken; what is far off and slow is left out beyond it. */
const PATIENCE_MS = 60_000;
/** Those are asked whatever they take. */
const ALWAYS = 4;

const place = process.env.MUTANTS_TIMES!;
const root = process.cwd();

/** Notes how long the tests take, in the first run, in which nothing is broken. */
export class Watch implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    if (existsSync(place)) return;
    const times: Times = {};
    for (const module of modules) {
      const tests = [...module.children.allTests()].map(
        (test) => [test.fullName.replaceAll(' > ', ' '), test.diagnostic()?.duration ?? 0] as const,
      );
      const rest = module.diagnostic().duration - tests.reduce((sum, [, ms]) => sum + ms, 0);
      times[relative(root, module.moduleId)] = { tests, rest: Math.max(0, rest) };
    }
    writeFileSync(place, JSON.stringify(times));
  }
}

/** Asks first the tests nearest to the change, of its own name, its own folder, and by as few imports as may be. */
export class NearestFirst extends BaseSequencer {
  override async sort(specs: TestSpecification[]): Promise<TestSpecification[]> {
    const changed = this.ctx.config.related;
    const fastFirst = specs.toSorted((a, b) => (a.project.name < b.project.name ? -1 : 1));
    if (changed?.length !== 1 || !existsSync(place)) return fastFirst;
    const times = JSON.parse(readFileSync(place, 'utf8')) as Times;
    const ranked = await Promise.all(
      specs.map(async (spec) => ({ spec, rank: await rankOf(spec, changed[0]!) })),
    );
    ranked.sort((a, b) => a.rank - b.rank);
    let sum = 0;
    const asked = ranked
      .filter(({ spec }, i) => {
        const ms = msOf(spec, times);
        if (i >= ALWAYS && sum + ms > PATIENCE_MS) return false;
        sum += ms;
        return true;
      })
      .map(({ spec }) => spec);
    // One project after the other: a new one costs a start.
    return asked.toSorted(
      (a, b) =>
        Number(a.project.name !== asked[0]!.project.name) - Number(b.project.name !== asked[0]!.project.name),
    );
  }
}

function msOf({ moduleId, project }: TestSpecification, times: Times): number {
  const of = times[relative(root, moduleId)];
  if (of === undefined) return 0;
  const asked = project.config.testNamePattern;
  return of.rest + of.tests.reduce((sum, [name, ms]) => sum + (asked?.test(name) === false ? 0 : ms), 0);
}

async function rankOf(spec: TestSpecification, changed: string): Promise<number> {
  const test = relative(root, spec.moduleId).split('/').slice(1);
  const source = relative(root, changed).split('/').slice(1);
  const plain = (path: readonly string[]) => basename(path.at(-1)!).replace(/\..*$/, '');
  let same = 0;
  while (same < test.length - 1 && same < source.length - 1 && test[same] === source[same]) same += 1;
  const imports = await importsBetween(spec, changed);
  return (plain(test) === plain(source) ? 0 : 100) + imports - 2 * same;
}

/** How many imports lead from a test to the change; 50 where none does. */
async function importsBetween({ moduleId, project }: TestSpecification, changed: string): Promise<number> {
  const { moduleGraph } = project.vite.environments.ssr!;
  const seen = new Set([moduleId]);
  let rim = [moduleId];
  for (let steps = 0; rim.length > 0; steps += 1) {
    if (rim.includes(changed)) return steps;
    rim = rim.flatMap((id) => {
      const { transformResult } = moduleGraph.getModuleById(id) ?? {};
      return [...(transformResult?.deps ?? []), ...(transformResult?.dynamicDeps ?? [])]
        .map((dep) => (dep.startsWith('/@fs/') ? dep.slice(4) : join(root, dep)))
        .filter((dep) => !dep.includes('node_modules') && !seen.has(dep) && seen.add(dep));
    });
  }
  return 50;
}
