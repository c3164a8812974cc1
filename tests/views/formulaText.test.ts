import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readFormulas } from '../../src/web/how/formulas.ts';
import { SUBJECTS } from '../../src/web/how/how.ts';
import { formulaPieces, withoutFiles } from '../../views/parts/how/formulaText.tsx';

const formulas = readFormulas();
const words = (text: string) => text.split(/\s+/).filter(Boolean).join(' ');

describe('what a calculation says of itself, on a page', () => {
  it('is there for every calculation', () => expect(formulas.length).toBeGreaterThan(100));

  it.each(formulas.map((formula) => [`${formula.name} ${formula.function}`, formula] as const))(
    'has the very words of the comment, without paths of the source, and an example that is worked out: %s',
    (_, { name, text }) => {
      const shown = formulaPieces(text).map((piece) =>
        piece.label ? `${piece.label}: ${piece.text}` : piece.text,
      );
      const left = words(withoutFiles(text)).split(' ');
      for (const word of words(shown.join(' ')).split(' ')) {
        while (left.length > 0 && left[0] !== word) left.shift();
        expect(left.shift(), `“${word}” stands in the comment`).toBe(word);
      }
      expect(shown.join(' ')).not.toMatch(/\w\.tsx?\b|Throws:/);
      expect(words(shown[0]!)).toBe(words(withoutFiles(text)).slice(0, words(shown[0]!).length));
      const subject = SUBJECTS.find(({ folder }) => name.startsWith(`${folder}/`))!;
      const example = subject.examples[name.slice(name.indexOf('/') + 1)];
      expect(example, `add one for ${name} to data/examples`).toBeDefined();
      // Those that solve the whole cover are worked out with their page.
      if (subject.id === 'bending') return;
      const { given, answers, says } = example!();
      expect(given).not.toBe('');
      expect(answers.length + says.length).toBeGreaterThan(0);
      const all = [
        given,
        ...says,
        ...answers.flatMap(({ how, value }) => [String(value), ...how.map((step) => step.numbers)]),
      ];
      for (const one of all) expect(one).not.toMatch(/NaN|undefined|\[object/);
    },
  );

  it('is what stands in the source, from the first word of the comment to the last', () => {
    for (const { name, file, text } of formulas) {
      const source = readFileSync(new URL(`../../src/calc/${file}.ts`, import.meta.url), 'utf8');
      expect(words(source.replace(/^ \*(?!\/)/gm, ' ')), name).toContain(`/** ${words(text)} */`);
    }
  });

  it('has no example of a calculation that is not there', () => {
    const names = new Set(formulas.map(({ name }) => name));
    for (const { folder, examples } of SUBJECTS)
      for (const key of Object.keys(examples)) expect(names, key).toContain(`${folder}/${key}`);
  });

  it('puts a formula set apart on its own line, and goes on with a line that ran out of room', () => {
    const long = `A sentence that is as long as a line of a comment may be, so that it has to be broken in two ${'x'.repeat(12)}`;
    expect(
      formulaPieces(`What it finds.   a = b + c\n\n${long}\ngoes on here.\nValid: always.   Source: none`),
    ).toEqual([
      { label: '', text: 'What it finds.', formula: false },
      { label: '', text: 'a = b + c', formula: true },
      { label: '', text: `${long} goes on here.`, formula: false },
      { label: 'Valid', text: 'always.', formula: false },
      { label: 'Source', text: 'none', formula: false },
    ]);
  });

  it('leaves out what a function throws and where it is tested, and names another calculation in words', () => {
    const text =
      'What it finds.\nThrows: a Refusal (refuseHeat.ts).\nSource: as slipRise.ts\nExample: 5 mm (tests/a/b.test.ts)';
    expect(formulaPieces(text).map((piece) => `${piece.label}|${piece.text}`)).toEqual([
      '|What it finds.',
      'Source|as “slip rise”',
      'Example|5 mm',
    ]);
  });

  it('is nothing where there is no source', () => {
    expect(readFormulas('/no/such/folder')).toEqual([]);
  });
});
