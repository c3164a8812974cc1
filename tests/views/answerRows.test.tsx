import { describe, expect, it } from 'vitest';
import { coverCheckSchema } from '../../shared/schemas/coverCheck.ts';
import { COVER_ROWS, coverRowOf, findingsOfRow, rowTold } from '../../shared/words/answerRows.ts';
import type { Finding, Status } from '../../shared/words/finding.ts';
import { checkCover } from '../../src/calc/cover/checkCover.ts';
import { apiExamples } from '../../src/web/api/examples.ts';
import { AnswerRow } from '../../views/parts/answerRows.tsx';
import { renderPart } from '../../views/render.ts';

const found = (id: string, status: Status): Finding => ({
  id,
  title: id,
  status,
  value: null,
  limit: null,
  unit: '',
  sentence: `${id} is ${status}.`,
  source: '',
  answer: null,
});

describe('a row of an answer', () => {
  it.each([
    ['all OK', [found('a', 'pass'), found('b', 'pass')], [], 'pass', 'a', false],
    ['something failed', [found('a', 'pass'), found('b', 'fail')], [], 'fail', 'b', true],
    ['a caution that decided', [found('a', 'pass'), found('b', 'caution')], ['b'], 'caution', 'b', true],
    [
      'a caution that decided nothing',
      [found('a', 'pass'), found('b', 'caution')],
      ['a'],
      'caution',
      'b',
      false,
    ],
    ['not checked', [found('a', 'pass'), found('b', 'not-checked')], ['b'], 'not-checked', 'b', false],
    [
      'the one that decided is told before another caution',
      [found('a', 'caution'), found('b', 'caution')],
      ['b'],
      'caution',
      'b',
      true,
    ],
  ] as const)('%s', (_, findings, decides, status, says, open) => {
    const told = rowTold(findings, decides);
    expect([told.status, told.says?.id, told.open]).toEqual([status, says, open]);
  });

  it('says so where nothing was looked at, and stays closed', () => {
    expect(rowTold([], [])).toEqual({ status: 'not-checked', says: null, open: false });
  });

  it('loses no finding of a cover: each is in one row', () => {
    const { findings } = checkCover(coverCheckSchema.parse(apiExamples['/cover/check']?.request));
    const rows = Object.keys(COVER_ROWS) as (keyof typeof COVER_ROWS)[];
    const told = rows.flatMap((row) => findingsOfRow(row, findings).map(({ id }) => id));
    expect([...told].sort()).toEqual(findings.map(({ id }) => id).sort());
    expect(coverRowOf('of no row yet')).toBe('wall');
    expect(findingsOfRow('wall', [found('minimum-wall', 'pass'), found('wall-left', 'pass')])[0]?.id).toBe(
      'wall-left',
    );
  });

  it('has sign, word, subject and sentence in its summary, and opens by itself only when told', () => {
    const row = (open: boolean) =>
      renderPart(
        <AnswerRow id="r" status="caution" title="Balance" says="Heavy at 202°." figure="0.16" open={open}>
          <p>more</p>
        </AnswerRow>,
      );
    expect(row(false)).toMatch(
      /<details [^>]*id="r"[^>]*><summary>.*Caution.*Balance.*Heavy at 202°\..*0\.16/s,
    );
    expect(row(false)).not.toMatch(/<details[^>]* open/);
    expect(row(true)).toMatch(/<details[^>]* open/);
  });
});
