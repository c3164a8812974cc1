import { describe, expect, it } from 'vitest';
import { retorque } from '../../../../src/calc/stud/joint/retorque.ts';

const ASKED = { on: '2026-11-24', torqueNm: 37, makerAllows: 'yes', threadLocker: false, note: '' } as const;
const status = (change: Partial<Parameters<typeof retorque>[0]>, firstNm: number | null = 37) =>
  Object.fromEntries(
    retorque({ ...ASKED, ...change }, firstNm, 'mm').map((one) => [
      one.id.replace('retightening-', ''),
      one.status,
    ]),
  );

describe('nuts tightened again (common practice, no source)', () => {
  it('a re-torque that is allowed, without thread-locker and to the same torque, is OK', () => {
    expect(status({})).toEqual({ allowed: 'pass', locker: 'pass', torque: 'pass' });
  });
  it.each([
    [{ makerAllows: 'no' }, 'allowed', 'fail'],
    [{ makerAllows: 'not-said' }, 'allowed', 'not-checked'],
    [{ threadLocker: true }, 'locker', 'fail'],
    [{ torqueNm: 37.7 }, 'torque', 'pass'],
    [{ torqueNm: 37.8 }, 'torque', 'caution'],
    [{ torqueNm: 30 }, 'torque', 'caution'],
  ] as const)('a re-torque with %j: %s is %s', (change, id, expected) => {
    expect(status(change)[id]).toBe(expected);
  });
  it('a re-torque without a first torque is not compared', () => {
    expect(status({}, null).torque).toBe('not-checked');
  });
});
