import { MINUS, printNumber } from '../print.ts';
import type { PistonRange } from './bending.ts';

/** `12 % more than new`, `3 % less than new`, `the same as new`: so many times what it was. */
export function thanNew(ratio: number, decimals = 0): string {
  return rangeThanNew({ rigid: ratio, conforming: ratio }, decimals);
}

/** `1 to 3 % more than new`, `1 % less to 3 % more than new`: from the stiffest piston to the most flexible one. */
export function rangeThanNew({ rigid, conforming }: PistonRange, decimals = 0): string {
  const [least, most] = [Math.min(rigid, conforming), Math.max(rigid, conforming)].map((ratio) =>
    printNumber(100 * (ratio - 1), decimals),
  ) as [string, string];
  const figure = (text: string) => text.replace(MINUS, '');
  const less = (text: string) => text.startsWith(MINUS);
  if (least === most) {
    if (Number(figure(least)) === 0) return 'the same as new';
    return `${figure(least)} % ${less(least) ? 'less' : 'more'} than new`;
  }
  if (!less(least)) return `${least} to ${most} % more than new`;
  if (less(most)) return `${figure(most)} to ${figure(least)} % less than new`;
  return `${figure(least)} % less to ${most} % more than new`;
}

/** So many times new: of both pistons, as times what it was. */
export function timesNew(one: PistonRange, fresh: PistonRange, widened = 1): PistonRange {
  return {
    rigid: (widened * one.rigid) / fresh.rigid,
    conforming: (widened * one.conforming) / fresh.conforming,
  };
}
