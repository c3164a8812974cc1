import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const depcruise = join(root, 'node_modules', 'dependency-cruiser', 'bin', 'dependency-cruise.mjs');

interface Cruise {
  readonly summary: {
    readonly totalCruised: number;
    readonly violations: readonly {
      readonly rule: { readonly name: string };
      readonly from: string;
      readonly to: string;
    }[];
  };
  readonly modules: readonly { readonly source: string }[];
}

function cruise(folders: readonly string[]): Cruise {
  const run = spawnSync(
    process.execPath,
    [depcruise, '--config', '.dependency-cruiser.cjs', '--output-type', 'json', ...folders],
    { cwd: root, encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 },
  );
  return JSON.parse(run.stdout) as Cruise;
}

describe('the rooms', () => {
  it('imports one way, web to records, views and calc, and these to shared, without a circle even of types', () => {
    const { summary, modules } = cruise(['src', 'shared', 'views', 'data']);
    const of = (folder: string) => modules.filter((module) => module.source.startsWith(`${folder}/`)).length;
    for (const folder of ['src/calc', 'src/records', 'src/shop', 'src/web', 'shared', 'views']) {
      expect(of(folder), `modules seen in ${folder}`).toBeGreaterThan(5);
    }
    expect(summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} → ${to}`)).toEqual([]);
  });

  it('hold no two files of one name, and no folder more than thirty', () => {
    const filesIn = (...folders: string[]) =>
      folders.flatMap((folder) =>
        readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
          .filter((name) => /\.tsx?$/.test(name))
          .map((name) => join(folder, name)),
      );
    const files = filesIn('src', 'views');
    const below = filesIn('shared', 'data');
    expect(files.length).toBeGreaterThan(400);
    const held = (by: (file: string) => string, of = files) => {
      const groups = new Map<string, string[]>();
      for (const file of of) groups.set(by(file), [...(groups.get(by(file)) ?? []), file]);
      return [...groups.values()];
    };
    const name = (file: string) => basename(file).replace(/\.tsx?$/, '');
    expect(held(name).filter((same) => same.length > 1)).toEqual([]);
    // A style sheet neither has the name of a file of src.
    const sheets = readdirSync(join(root, 'views', 'assets')).filter((one) => one.endsWith('.css'));
    const inSrc = new Set(files.filter((file) => file.startsWith('src')).map(name));
    expect(sheets.filter((sheet) => inSrc.has(sheet.replace('.css', '')))).toEqual([]);
    expect(held(dirname, [...files, ...below]).filter((folder) => folder.length > 30)).toEqual([]);
  });
});
