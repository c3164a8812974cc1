import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { SIGN } from './plain.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Words of the source that somebody may read: a whole string, a line of markup, a template with its gaps as signs. */
export interface SourceWords {
  /** From the folder of the program. */
  readonly file: string;
  readonly line: number;
  readonly text: string;
}

/** Where nothing is shown: statements of the database, and demo covers drawn as code. */
const SILENT = /^src\/records\/database\/migrations\/|\.d\.ts$/;
const SILENT_ATTRIBUTES =
  /^(class|id|for|href|src|type|name|rel|d|points|transform|viewBox|style|method|action|value|key|role|hx-(?!confirm).*|aria-(?!label$).*|data-.*|autocomplete|inputmode|pattern|form|fill|stroke.*|text-anchor|at|kind|box|path)$/;
const SILENT_TAGS = new Set(['sql', 'String.raw']);

/** Names of styles, which stand among the words of a view. */
const CLASSES = new Set(
  readdirSync(join(root, 'views/assets'))
    .filter((name) => name.endsWith('.css'))
    .flatMap(
      (name) => readFileSync(join(root, 'views/assets', name), 'utf8').match(/(?<=\.)[a-z][\w-]*/g) ?? [],
    ),
);

/** Every text of the program's source that looks like words, room by room. */
export function sourceWords(): SourceWords[] {
  return ['shared', 'src', 'views', 'data/demo', 'data/examples']
    .flatMap(filesIn)
    .filter((file) => !SILENT.test(file))
    .flatMap(wordsOf);
}

function filesIn(folder: string): string[] {
  const found = readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' });
  return found
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => `${folder}/${name}`)
    .sort();
}

function wordsOf(file: string): SourceWords[] {
  const source = ts.createSourceFile(
    file,
    readFileSync(join(root, file), 'utf8'),
    ts.ScriptTarget.ES2023,
    true,
    file.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS,
  );
  const found: SourceWords[] = [];
  const add = (node: ts.Node, text: string) => {
    const words = text.replace(/\s+/g, ' ').trim();
    if (looksLikeWords(words)) {
      found.push({ file, line: source.getLineAndCharacterOfPosition(node.getStart()).line + 1, text: words });
    }
  };
  const walk = (node: ts.Node): void => {
    if (isSilent(node)) return;
    if (ts.isCallExpression(node) && node.expression.getText() === 'named') {
      // The name of a schema is no word of a screen.
      node.arguments.slice(1).forEach(walk);
      return;
    }
    if (ts.isJsxElement(node) || ts.isJsxFragment(node)) {
      add(node, lineOf(node.children));
      if (ts.isJsxElement(node)) walk(node.openingElement.attributes);
      node.children.forEach(walk);
      return;
    }
    if (ts.isJsxText(node)) return;
    const joined = textOf(node);
    if (joined !== null) {
      add(node, joined);
      // What stands in a gap has words of its own: a plural, an "at most".
      ts.forEachChild(node, (child) =>
        textOf(child) === null || !ts.isBinaryExpression(node) ? walk(child) : walkGaps(child),
      );
      return;
    }
    ts.forEachChild(node, walk);
  };
  const walkGaps = (node: ts.Node): void => {
    if (ts.isTemplateExpression(node)) for (const span of node.templateSpans) walk(span.expression);
    else if (ts.isBinaryExpression(node)) ts.forEachChild(node, walkGaps);
  };
  walk(source);
  return found;
}

/** Children of an element as one line: words, and a sign for what is put in. */
function lineOf(children: readonly ts.JsxChild[]): string {
  const parts = children.map((child) => {
    if (ts.isJsxText(child))
      return child.containsOnlyTriviaWhiteSpaces ? '' : ` ${child.text}`.replace(/^ (?=\S)/, '');
    if (ts.isJsxExpression(child)) return child.expression ? (textOf(child.expression) ?? SIGN) : '';
    return ts.isJsxElement(child) &&
      /^(b|strong|em|span|a|code|i|time)$/.test(child.openingElement.tagName.getText())
      ? ` ${SIGN} `
      : ' ';
  });
  const line = parts.join('');
  return /\p{L}/u.test(line.replaceAll(SIGN, '')) ? line : '';
}

/** A string, a template or several added up, with a sign where something is put in; null for anything else. */
function textOf(node: ts.Node): string | null {
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) return node.text;
  if (ts.isTemplateExpression(node)) {
    return node.head.text + node.templateSpans.map((span) => SIGN + span.literal.text).join('');
  }
  if (ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.PlusToken) {
    const [left, right] = [textOf(node.left), textOf(node.right)];
    return left === null && right === null ? null : (left ?? SIGN) + (right ?? SIGN);
  }
  return null;
}

function isSilent(node: ts.Node): boolean {
  if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isTypeNode(node)) return true;
  if (ts.isTaggedTemplateExpression(node))
    return SILENT_TAGS.has(node.tag.getText()) || /sql/i.test(node.tag.getText());
  if (ts.isJsxAttribute(node)) return SILENT_ATTRIBUTES.test(node.name.getText());
  // A key is no word of the screen; what it leads to may be.
  if (ts.isPropertyAssignment(node.parent ?? node) && (node.parent as ts.PropertyAssignment).name === node)
    return true;
  if (ts.isNewExpression(node)) return node.expression.getText() === 'Error';
  if (ts.isPropertyAssignment(node)) return /^(class|className|id)$/.test(node.name.getText());
  return (
    ts.isCallExpression(node) &&
    /(^|\.)(pragma|prepare|exec|where|orderBy|select|selectFrom|replaceAll|split|includes|startsWith)$/.test(
      node.expression.getText(),
    ) &&
    node.arguments.every((one) => ts.isStringLiteral(one))
  );
}

/** More than a key, a path, a class, a statement or a mark: words with a blank between, or one that begins as a label does. */
function looksLikeWords(text: string): boolean {
  const bare = text.replaceAll(SIGN, ' ').trim();
  if (/^(GET|POST|PUT) \//.test(bare) || bare.split(' ').every((one) => CLASSES.has(one))) return false;
  if (
    /^(SELECT|declare |INSERT|UPDATE|DELETE|CREATE|PRAGMA|DROP|ALTER|WITH|BEGIN|COMMIT|VACUUM|LISTEN|set |create |select |alter |drop |do )/.test(
      bare,
    )
  )
    return false;
  if (/^[\w.-]+\/[\w./-]+$|^[#.]?[\w-]+$|^\W*$|^(M|m)[\d\s.]+[A-Za-z]?/.test(bare))
    return /^\p{Lu}\p{Ll}+$/u.test(bare);
  if (/[{}]|=>|:\/\/|;\s*(path|max-age)/i.test(bare)) return / [a-z]+ [a-z]+ /.test(bare);
  return /\p{L}{2,}.* .*\p{L}|\p{L}+ \p{L}/u.test(bare) || /^\p{Lu}\p{Ll}+[\s\p{L}]*$/u.test(bare);
}
