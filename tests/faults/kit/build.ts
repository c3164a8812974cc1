import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** The folder of the built program. Without it the program is run from its source. */
    built: string;
  }
}

/** Builds the program as `npm run build` does, with what the tests put inside it, into a folder of this run alone. */
export default function build(project: TestProject): () => void {
  const root = fileURLToPath(new URL('../../..', import.meta.url));
  mkdirSync(join(root, 'dist'), { recursive: true });
  const built = mkdtempSync(join(root, 'dist', 'faults-'));
  const inside = join('tests', 'faults', 'inside');
  const scripts = readdirSync(join(root, inside)).map((name) => join(inside, name));
  const made = spawnSync(process.execPath, [join(root, 'src/build.mjs'), built, ...scripts], {
    encoding: 'utf8',
  });
  const clean = () => rmSync(built, { recursive: true, force: true });
  if (made.status !== 0) {
    clean();
    throw new Error(`The program could not be built for the tests of faults:\n${made.stdout}${made.stderr}`);
  }
  project.provide('built', built);
  return clean;
}
