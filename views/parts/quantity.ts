import { type LengthUnit, printLength, printNumber, printTorque } from '../../shared/words/print.ts';

/** A value with its unit: lengths and torques in the person's units, the rest to four figures. */
export function printQuantity(value: number, unit: string, lengthUnit: LengthUnit): string {
  if (unit === 'mm') return printLength(value, lengthUnit);
  if (unit === 'N·m' && lengthUnit === 'in') return printTorque(value, lengthUnit, 1);
  const whole = Math.abs(value) < 1 ? 1 : Math.floor(Math.log10(Math.abs(value))) + 1;
  const figure = Number.isInteger(value) ? printNumber(value, 0) : printNumber(value, Math.max(0, 4 - whole));
  return unit === '' ? figure : `${figure} ${unit}`;
}
