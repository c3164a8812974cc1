import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Formula } from '../../../shared/words/formula.ts';
import { ROOT } from '../../root.ts';

/** The folders of `src/calc`, in the order a job meets them. */
const FOLDERS = ['cover', 'measure', 'stud', 'plate', 'heat', 'judge'] as const;

const COMMENT = /\/\*\*((?:[^*]|\*(?!\/))*)\*\/\s*export (?:async )?(?:function|const|interface|type) (\w+)/g;

/**
 * Every comment in the source of the calculations that says what its formula is, read from the very files: one that
 * names a worked example. Empty where the source is not there, and a page then says so.
 */
export function readFormulas(folder = join(ROOT, 'src', 'calc')): Formula[] {
  if (!existsSync(folder)) return [];
  return FOLDERS.flatMap((part) =>
    readdirSync(join(folder, part), { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts'))
      .sort((a, b) => (basename(a) < basename(b) ? -1 : 1))
      .flatMap((file) =>
        formulasIn(readFileSync(join(folder, part, file), 'utf8'), part, join(part, file).slice(0, -3)),
      ),
  );
}

function formulasIn(source: string, part: string, file: string): Formula[] {
  return [...source.matchAll(COMMENT)]
    .map(([, comment, exported]) => ({
      name: `${part}/${basename(file)}`,
      file,
      function: exported!,
      text: comment!
        .split('\n')
        .map((line) => line.replace(/^\s*\*? ?/, '').trimEnd())
        .join('\n')
        .trim(),
    }))
    .filter(({ text }) => /\bExample:/.test(text));
}
