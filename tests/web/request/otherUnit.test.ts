import { describe, expect, it } from 'vitest';
import { inOtherUnit } from '../../../src/web/request/otherUnit.ts';

describe('the same page in the other unit', () => {
  it('leaves bare numbers meaning what they meant', () => {
    const there = new URLSearchParams(
      inOtherUnit('/cover?unit=mm&w.0=4.92%3B+4.93&f.0=-0.02&a.12=45&studs=4', 'in').split('?')[1],
    );
    expect(Object.fromEntries(there)).toEqual({
      unit: 'in',
      'w.0': '4.92 mm; 4.93 mm',
      'f.0': '-0.02 mm',
      'a.12': '45',
      studs: '4',
    });
  });
  it('adds no second unit', () => {
    expect(inOtherUnit('/stud?unit=in&lt.0=1%2F8+in&pull=4+mm', 'mm')).toBe(
      '/stud?unit=mm&lt.0=1%2F8+in&pull=4+mm',
    );
  });
  it('leaves an address without a unit alone', () => {
    expect(inOtherUnit('/jobs/1001', 'in')).toBe('/jobs/1001');
    expect(inOtherUnit('/cover?w.0=4.92', 'in')).toBe('/cover?w.0=4.92');
  });
});
