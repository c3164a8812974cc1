import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

/**
 * `npm run build`: the program into `dist`, every script with what it imports in a few large files, which start in two
 * thirds of the time of a thousand small ones; and, one by one, the modules a browser is sent. `node src/build.mjs
 * FOLDER SCRIPTS` builds into another folder, with more scripts.
 */
const ROOT = fileURLToPath(new URL('..', import.meta.url));
const [outdir = join(ROOT, 'dist'), ...more] = process.argv.slice(2);

const SCRIPTS = [
  'src/main.ts',
  'src/demo.ts',
  'src/setup.ts',
  'src/service.ts',
  'src/records/backup/backup.ts',
  'src/records/backup/restore.ts',
  'src/records/carry/export.ts',
  'src/records/carry/import.ts',
  'src/records/carry/move.ts',
  'src/records/people/peopleCommand.ts',
  'src/records/photos/decoder.ts',
  'src/shop/work/worker.ts',
];
const FOR_BROWSERS = [
  'views/browser/**/*.ts',
  'shared/measuring/*.ts',
  'shared/quantity/*.ts',
  'shared/words/*.ts',
];

/** These stay where they are installed: built for one machine, or loaded only where they are used. */
const LEFT_OUT = ['@node-rs/argon2', 'better-sqlite3', 'esbuild', 'mathjs', 'pg', 'sharp'];
/** Modules of the older kind ask for one another by this name. */
const REQUIRE =
  "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);";

const shared = {
  absWorkingDir: ROOT,
  bundle: true,
  format: 'esm',
  target: 'es2023',
  outbase: ROOT,
  outdir,
  minifyWhitespace: true,
  minifySyntax: true,
  logLevel: 'warning',
};

await Promise.all([
  build({
    ...shared,
    entryPoints: [...SCRIPTS, ...more],
    splitting: true,
    platform: 'node',
    chunkNames: 'chunks/[hash]',
    jsx: 'automatic',
    jsxImportSource: 'preact',
    external: LEFT_OUT,
    banner: { js: REQUIRE },
  }),
  build({
    ...shared,
    entryPoints: FOR_BROWSERS,
    plugins: [
      {
        name: 'each-module-by-itself',
        setup({ onResolve }) {
          onResolve({ filter: /^\.\.?\// }, ({ path, kind }) =>
            kind === 'entry-point' ? null : { path: path.replace(/\.ts$/, '.js'), external: true },
          );
        },
      },
    ],
  }),
]);
