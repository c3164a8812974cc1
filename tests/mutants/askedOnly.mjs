import { readFileSync } from 'node:fs';
import { declareFactoryPlugin, PluginKind } from '@stryker-mutator/api/plugin';

/**
 * Stryker chooses changes by where they stand, which takes in those within; this lets through only those drawn. It is
 * loaded by Stryker's own processes, which read no TypeScript.
 */
function askedOnly() {
  const root = process.env.MUTANTS_ROOT;
  const asked = new Set(JSON.parse(readFileSync(process.env.MUTANTS_ASKED, 'utf8')));
  const keyOf = ({ fileName, location: { start, end }, mutatorName, replacement }) =>
    [
      fileName.slice(root.length).replace(/^\//, ''),
      start.line,
      start.column,
      end.line,
      end.column,
      mutatorName,
      replacement,
    ].join('|');
  return {
    init: async () => {},
    group: async (mutants) => [mutants.map(({ id }) => id)],
    check: async (mutants) =>
      Object.fromEntries(
        mutants.map((mutant) => [
          mutant.id,
          asked.has(keyOf(mutant)) ? { status: 'passed' } : { status: 'compileError', reason: 'not drawn' },
        ]),
      ),
  };
}

/** Says at once what no test noticed, since the table comes only at the end. */
function atOnce() {
  let tried = 0;
  return {
    onMutantTested: ({ fileName, location, replacement, status }) => {
      if (status === 'CompileError') return;
      tried += 1;
      if (status !== 'Survived' && status !== 'NoCoverage') return;
      const to = replacement.replace(/\s+/g, ' ').slice(0, 80);
      console.log(`${tried}. ${fileName}:${location.start.line} → ${to}: not noticed`);
    },
  };
}

export const strykerPlugins = [
  declareFactoryPlugin(PluginKind.Checker, 'asked-only', askedOnly),
  declareFactoryPlugin(PluginKind.Reporter, 'at-once', atOnce),
];
