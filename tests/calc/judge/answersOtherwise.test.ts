import { describe, expect, test } from 'vitest';
import { coverCheckSchema } from '../../../shared/schemas/coverCheck.ts';
import { studCheckSchema } from '../../../shared/schemas/studCheck.ts';
import type { CoverCheck } from '../../../shared/words/cover.ts';
import { VERDICT_WORD } from '../../../shared/words/verdicts.ts';
import { checkCover } from '../../../src/calc/cover/checkCover.ts';
import { coverAnswersOtherwise, studAnswersOtherwise } from '../../../src/calc/judge/answersOtherwise.ts';
import { checkStud } from '../../../src/calc/stud/checkStud.ts';
import { apiExamples } from '../../../src/web/api/examples.ts';

const cover = checkCover(coverCheckSchema.parse(apiExamples['/cover/check']?.request));
const stud = checkStud(studCheckSchema.parse(apiExamples['/stud/check']?.request));
const otherwise = (kept: CoverCheck) => coverAnswersOtherwise(kept, cover, VERDICT_WORD, 'mm');

describe('an older kept check, faked', () => {
  test('an older decision worked out the same has no differences, float dust included', () => {
    expect(otherwise(cover)).toEqual([]);
    const dust = { ...cover, leastWall: { ...cover.leastWall, afterMm: cover.leastWall.afterMm + 9e-7 } };
    expect(otherwise(dust)).toEqual([]);
  });

  test('an older decision worked out otherwise shows verdict, cut, least wall and sureness with both values', () => {
    const { dialledMm } = cover.cut;
    const old: CoverCheck = {
      ...cover,
      verdict: 'replace',
      cut: { ...cover.cut, dialledMm: dialledMm + 0.1 },
      leastWall: { ...cover.leastWall, afterMm: cover.leastWall.afterMm - 0.1 },
      conformanceProbability: 0.5,
    };
    expect(otherwise(old)).toEqual([
      { what: 'verdict', kept: 'Replace it', now: 'Face it' },
      {
        what: 'depth of cut',
        kept: `${(dialledMm + 0.1).toFixed(3)} mm`,
        now: `${dialledMm.toFixed(3)} mm`,
      },
      expect.objectContaining({ what: 'least wall left' }),
      expect.objectContaining({ what: 'how sure it is above the minimum', kept: '50.0 %' }),
    ]);
  });

  test('two walls that print alike get decimals until they differ', () => {
    const old = { ...cover, leastWall: { ...cover.leastWall, afterMm: cover.leastWall.afterMm + 2e-6 } };
    const [told] = otherwise(old);
    expect(told?.kept).not.toBe(told?.now);
  });

  test('a probability that an older decision lacks is shown as not worked out', () => {
    expect(otherwise({ ...cover, conformanceProbability: null })).toEqual([
      expect.objectContaining({ kept: 'not worked out' }),
    ]);
  });

  test('an older choice of studs worked out otherwise shows fit and engagement with both values', () => {
    const words = {
      fits: { yes: 'fits', 'with-care': 'with care', no: 'does not fit' },
      holds: { yes: 'holds', no: 'does not hold', 'not-checked': 'not checked' },
    };
    expect(studAnswersOtherwise(stud, stud, words, 'mm')).toEqual([]);
    const old = { ...stud, fits: 'no' as const, engagement: { ...stud.engagement!, leastMm: 1 } };
    expect(studAnswersOtherwise(old, stud, words, 'mm')).toEqual([
      { what: 'whether it fits', kept: 'does not fit', now: 'fits' },
      expect.objectContaining({ what: 'least engagement', kept: '1.000 mm' }),
    ]);
  });
});
