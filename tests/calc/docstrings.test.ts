import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const calc = fileURLToPath(new URL('../../src/calc/', import.meta.url));
const tests = fileURLToPath(new URL('../', import.meta.url));

/** Files of `src/calc` without a formula of their own, and why. */
const NO_FORMULA: Readonly<Record<string, string>> = {
  'cover/checkCover.ts': 'gathers numbers, findings and verdict into one answer',
  'cover/coverNumbers.ts': 'gathers the numbers; each formula has its own file',
  'cover/refuseImpossible.ts': 'refuses',
  'heat/heatOfSteel.ts': 'chooses whose figures count',
  'heat/refuseHeat.ts': 'refuses',
  'job/jobStage.ts': 'says what is done and what is missing',
  'job/ringCredit.ts': 'says what a decision counted on',
  'judge/coverReason.ts': 'puts a verdict into words',
  'judge/coverWords.ts': 'puts numbers into words',
  'judge/cutFindings.ts': 'sets numbers beside their limits, in words',
  'judge/dialledInFinding.ts': 'sets numbers beside their limits, in words',
  'judge/faceFindings.ts': 'sets numbers beside their limits, in words',
  'judge/lostUnmeasured.ts': 'gathers the answer of a cover that has no numbers',
  'judge/readingFindings.ts': 'sets what was read beside what is wanted, in words',
  'judge/soundnessFindings.ts': 'puts what the inspection found into words',
  'judge/sureFinding.ts': 'sets numbers beside their limits, in words',
  'judge/wallFindings.ts': 'sets numbers beside their limits, in words',
  'plate/coverAnswers.ts': 'gathers the answers and what they are worth',
  'plate/lining/lining.ts': 'holds the points of the lining',
  'plate/lining/pressed.ts': 'holds a shape',
  'plate/model/refuseCover.ts': 'refuses',
  'plate/refuseNoNumber.ts': 'refuses',
  'stud/checkStud.ts': 'gathers the checks of a stud',
  'stud/engaged/engagementFinding.ts': 'sets numbers beside their limits, in words',
  'stud/joint/jointChecks.ts': 'gathers the checks of the joint',
  'stud/match/matchStacks.ts': 'checks every stack in turn',
  'stud/match/matchStuds.ts': 'checks every stud in turn',
  'stud/match/replacedInStack.ts': 'gathers the findings on a replaced stud',
  'stud/numbers/checked.ts': 'holds a shape',
  'stud/numbers/inWords.ts': 'puts lengths and threads into words',
  'stud/numbers/studNumbers.ts': 'gathers sums and threads; each formula has its own file',
  'stud/reach/reachFinding.ts': 'sets numbers beside their limits, in words',
  'stud/refuseStud.ts': 'refuses',
  'stud/thread/threadGeometry.ts':
    'chooses between the systems, and refuses; the formulas are in its neighbors',
};

const files = readdirSync(calc, { recursive: true, encoding: 'utf8' })
  .map((name) => name.replaceAll('\\', '/'))
  .filter((name) => name.endsWith('.ts'))
  .sort();
const formulas = files.filter((name) => !(name in NO_FORMULA));

/** The comment of a file that states a formula: the one that names a worked example. */
function formulaIn(name: string): string | undefined {
  return [...readFileSync(join(calc, name), 'utf8').matchAll(/\/\*\*[\s\S]*?\*\//g)]
    .map(([comment]) => comment)
    .find((comment) => comment.includes('Example:'));
}

describe('a file of src/calc that holds a formula', () => {
  it('is one of more than ninety', () => expect(formulas.length).toBeGreaterThan(90));

  it.each(formulas)('%s states validity, source and an example worked in a test that exists', (name) => {
    const comment = formulaIn(name);
    expect(comment, 'a comment with "Example:"').toBeDefined();
    expect(comment).toMatch(/\bValid: /);
    expect(comment).toMatch(/\bSource( of the formula)?: /);
    const test = /([\w/]+\.test\.ts)/.exec(comment!.slice(comment!.indexOf('Example:')))?.[1];
    expect(existsSync(tests + test?.replace(/^tests\//, '')), `the test ${test} exists`).toBe(true);
  });
});

describe('the list of files without a formula', () => {
  it.each(Object.keys(NO_FORMULA))('%s is there and states no formula', (name) => {
    expect(files).toContain(name);
    expect(formulaIn(name)).toBeUndefined();
  });
});

interface Written {
  readonly name: string;
  readonly exported: boolean;
  readonly comment: string;
  /** Throws a Refusal in its own body. */
  readonly throwsItself: boolean;
  /** What it names outside `try`, as `file#function`. */
  readonly names: readonly string[];
}

/** The functions of a file, with what they name; an imported function by the file it comes from. */
function functionsOf(file: string): Written[] {
  const text = readFileSync(join(calc, file), 'utf8');
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const imported = new Map<string, string>();
  for (const statement of source.statements) {
    if (!ts.isImportDeclaration(statement)) continue;
    const from = join(dirname(file), (statement.moduleSpecifier as ts.StringLiteral).text);
    const bindings = statement.importClause?.namedBindings;
    if (bindings && ts.isNamedImports(bindings)) {
      for (const { name, propertyName } of bindings.elements) {
        imported.set(name.text, `${from}#${(propertyName ?? name).text}`);
      }
    }
  }
  return source.statements.filter(ts.isFunctionDeclaration).map((written) => {
    const names: string[] = [];
    let throwsItself = false;
    const look = (node: ts.Node): void => {
      if (ts.isTryStatement(node) && node.catchClause) {
        look(node.catchClause);
        return;
      }
      if (ts.isNewExpression(node) && node.expression.getText() === 'Refusal') throwsItself = true;
      // Its name alone counts too: a function may be chosen first and called afterwards.
      if (ts.isIdentifier(node)) names.push(imported.get(node.text) ?? `${file}#${node.text}`);
      ts.forEachChild(node, look);
    };
    look(written.body!);
    return {
      name: `${file}#${written.name!.text}`,
      exported: written.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) ?? false,
      comment: text.slice(written.getFullStart(), written.getStart()),
      throwsItself,
      names,
    };
  });
}

describe('a function of src/calc that can refuse', () => {
  const all = files.flatMap(functionsOf);
  const refusing = new Set(all.filter((one) => one.throwsItself).map(({ name }) => name));
  for (let before = -1; before !== refusing.size; ) {
    before = refusing.size;
    for (const one of all) if (one.names.some((named) => refusing.has(named))) refusing.add(one.name);
  }
  const exported = all.filter((one) => one.exported);

  it('is one of more than twenty', () =>
    expect(exported.filter(({ name }) => refusing.has(name)).length).toBeGreaterThan(20));

  it.each(exported.filter(({ name }) => refusing.has(name)))('$name says so under "Throws:"', ({ comment }) =>
    expect(comment).toMatch(/\bThrows: /),
  );

  it('is the only kind whose comment says "Throws:"', () => {
    const saying = exported.filter(({ comment }) => /\bThrows: /.test(comment)).map(({ name }) => name);
    expect(saying.filter((name) => !refusing.has(name))).toEqual([]);
  });
});
