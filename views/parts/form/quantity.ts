import {
  FORCE,
  type LengthUnit,
  MASS,
  PRESSURE,
  printAs,
  printLength,
  printNumber,
  printTorque,
  ROUGHNESS,
  STRESS,
  UNBALANCE,
} from '../../../shared/words/print.ts';

/** Units that are counted: 1 thread, 2 threads. */
const COUNTED: ReadonlySet<string> = new Set(['threads', 'diameters', 'cuts']);

/** A value with its unit: lengths, torques, loads and stresses in the person's units, the rest to four figures. */
export function printQuantity(value: number, unit: string, lengthUnit: LengthUnit): string {
  if (unit === 'mm') return printLength(value, lengthUnit);
  if (lengthUnit === 'in') {
    if (unit === 'N·m') return printTorque(value, lengthUnit, 1);
    if (unit === 'kg') return printAs(value, MASS.in);
    if (unit === 'g·mm') return printAs(value, UNBALANCE.in);
    if (unit === 'µm') return printAs(value, ROUGHNESS.in);
    if (unit === 'N') return printAs(value, FORCE.in);
    if (unit === 'MPa') return printAs(value, Math.abs(value * STRESS.in.per) < 1 ? PRESSURE.in : STRESS.in);
  }
  const whole = Math.abs(value) < 1 ? 1 : Math.floor(Math.log10(Math.abs(value))) + 1;
  const figure = Number.isInteger(value) ? printNumber(value, 0) : printNumber(value, Math.max(0, 4 - whole));
  if (unit === '') return figure;
  // Findings keep this unit as they always did.
  if (unit === '× new') return `${figure} times new`;
  return `${figure} ${value === 1 && COUNTED.has(unit) ? unit.slice(0, -1) : unit}`;
}
