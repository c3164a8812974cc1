import { describe, expect, test } from 'vitest';
import type { TypedLength } from '../../../shared/quantity/slip.ts';
import { limitDoubt, limitDoubts } from '../../../src/shop/doubts/limitDoubt.ts';
import { passDoubt } from '../../../src/shop/doubts/passDoubt.ts';

const mm = (typed: string): TypedLength => ({
  valueMm: Number(typed),
  typed,
  unit: 'mm',
  decimalSign: 'point',
});
const inches = (typed: string): TypedLength => ({
  ...mm(typed),
  valueMm: Number(typed) * 25.4,
  unit: 'in',
});
const FIVE = [{ name: 'Alder', nominalWallMm: 5 }];

describe('a minimum wall', () => {
  test('of 0.43 on a new wall of 5 is asked about: 4.3 is meant', () => {
    expect(limitDoubt('minimumWallMm', mm('0.43'), FIVE)).toMatchObject({
      question: '0.43 mm? The new wall of Alder is 5 mm. Did you mean 4.3 mm?',
      meantMm: 4.3,
    });
  });
  test('of 43 for every cover type is asked about too', () => {
    expect(limitDoubt('minimumWallMm', mm('43'), FIVE)).toMatchObject({ meantMm: 4.3 });
  });
  test('from half to the whole of every new wall is not', () => {
    for (const typed of ['2.5', '4.3', '5']) expect(limitDoubt('minimumWallMm', mm(typed), FIVE)).toBeNull();
    const also = [...FIVE, { name: 'Curlew', nominalWallMm: 4 }];
    expect(limitDoubt('minimumWallMm', mm('4.3'), also)?.question).toBe(
      '4.3 mm? The new wall of Curlew is 4 mm. Check it, or confirm it.',
    );
  });
  test('typed in inches as if in millimeters is told in inches', () => {
    const asked = limitDoubt('minimumWallMm', inches('1.7'), [{ name: '', nominalWallMm: 0.19 * 25.4 }]);
    expect(asked?.question).toBe('1.7 in? The new wall is 0.19 in. Did you mean 0.17 in?');
  });
});

describe('a limit of the shop', () => {
  test('on runout above 0.5 mm is asked about: 0.13 is meant by 1.3', () => {
    expect(limitDoubt('faceRunoutLimitMm', mm('1.3'), [])).toMatchObject({
      question: '1.3 mm? A face runout limit is at most about 0.5 mm. Did you mean 0.13 mm?',
      meantMm: 0.13,
    });
    expect(limitDoubt('faceRunoutLimitMm', mm('0.5'), [])).toBeNull();
    expect(limitDoubt('faceRunoutLimitMm', inches('0.04'), [])?.question).toBe(
      '0.04 in? A face runout limit is at most about 0.02 in. Did you mean 0.004 in?',
    );
  });
  test('that stands as it was saved is not asked about again', () => {
    const standing = {
      minimumWallMm: 0.43,
      faceRunoutLimitMm: null,
      cleanUpAllowanceMm: 0.05,
      typicalCutMm: null,
    };
    const typed = { minimumWallMm: mm('0.43'), cleanUpAllowanceMm: mm('5') };
    expect(limitDoubts(typed, standing, FIVE).map(({ limit }) => limit)).toEqual(['cleanUpAllowanceMm']);
  });
});

describe('a pass', () => {
  test('of 3.1 where 0.31 of the decided cut is left is asked about: 0.31 is meant', () => {
    expect(passDoubt(mm('3.1'), 0.31)).toMatchObject({
      question: '3.1 mm? 0.31 mm of the decided cut is left. Did you mean 0.31 mm?',
      meantMm: 0.31,
    });
  });
  test('is asked about once it is more than 0.02 mm deeper than what is left', () => {
    expect(passDoubt(mm('0.33'), 0.31)).toBeNull();
    expect(passDoubt(mm('0.331'), 0.31)).not.toBeNull();
    expect(passDoubt(mm('0.1'), 0)?.question).toBe(
      '0.1 mm? The whole decided cut is made already. Check it, or confirm it.',
    );
  });
  test('is not asked about where nothing is decided', () => {
    expect(passDoubt(mm('3.1'), null)).toBeNull();
  });
});
