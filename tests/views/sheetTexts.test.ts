import { expect, test } from 'vitest';
import { withTextsInFull } from '../../views/pages/job/paper/longTexts.ts';
import type { SheetProps } from '../../views/pages/job/paper/sheetProps.ts';

const WORDS = 'The face was read twice, before and after the shims were taken out. ';

function sheetWith(reason: string, statement: string): SheetProps {
  const kept = <T>(body: T) => ({ body, who: 'CC', at: '2026-10-08T14:30:00.000Z', revision: 5 });
  const sections = { decision: kept({ reason }), signature: kept({ statement }), cuts: null, studs: null };
  const overruled = { who: 'CC', at: '2026-10-08T14:30:00.000Z', why: reason };
  return {
    job: { number: '1001', stage: 'signed', readings: [], sections },
    findings: { notOk: [{ when: 'before', finding: { sentence: '' }, overruled }], ok: {} },
    photos: [],
  } as unknown as SheetProps;
}

test('a few words stay on the first sheet, whole', () => {
  const { props, inFull } = withTextsInFull(sheetWith('It will do.', WORDS), 2);
  expect(inFull).toEqual([]);
  expect(props.job.sections.signature?.body.statement).toBe(WORDS);
});

test('more are shortened there, wherever they stand, and are whole on sheets of their own', () => {
  const [reason, statement] = [
    WORDS.repeat(29).trim(),
    `${WORDS.repeat(20)}\n\nSecond part. ${WORDS}`.trim(),
  ];
  const { props, inFull } = withTextsInFull(sheetWith(reason, statement), 2);
  const short = 'The face was read twice, before and after the … (in full from sheet 2)';
  expect(props.job.sections.decision?.body.reason).toBe(short);
  expect(props.job.sections.signature?.body.statement).toBe(short);
  expect(props.findings.notOk[0]?.overruled?.why).toBe(short);
  const whole = (title: string) =>
    inFull
      .flat()
      .flatMap((one) => (one.title === title ? [one.text] : []))
      .join(' ')
      .replaceAll(/\s+/g, ' ');
  expect(whole('Reason for the decision')).toBe(reason);
  expect(whole('Statement of the signer')).toBe(statement.replaceAll(/\s+/g, ' '));
});

test('no sheet of words has more lines than it has room for, whatever was typed', () => {
  for (const typed of ['x'.repeat(2000), `${'\n'.repeat(1999)}x`, WORDS.repeat(29), 'é '.repeat(1000)]) {
    const { inFull } = withTextsInFull(sheetWith(typed, typed), 2);
    const letters = inFull
      .flat()
      .map(({ text }) => text)
      .join('')
      .replaceAll(/\s/g, '').length;
    expect(letters).toBe(2 * typed.replaceAll(/\s/g, '').length);
    for (const sheet of inFull) {
      expect(sheet.reduce((lines, { text }) => lines + 2 + text.split('\n').length, 0)).toBeLessThanOrEqual(
        40,
      );
      for (const { text } of sheet)
        expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(96);
    }
  }
});

test('a list that has no room on the first sheet is whole on sheets of its own, however few the words are', () => {
  const text = Array.from({ length: 100 }, (_, i) => `${i + 1}: 0.010 mm`).join('\n');
  const { inFull } = withTextsInFull(sheetWith('It will do.', ''), 2, [{ title: 'Passes made', text }]);
  expect(inFull.length).toBe(3);
  expect(
    inFull
      .flat()
      .map((one) => one.text)
      .join('\n'),
  ).toBe(text);
});
