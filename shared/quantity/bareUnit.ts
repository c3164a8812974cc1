import type { Kind, UnitName } from './units.ts';

/** What a box is labeled in, and a number typed without a unit is read in, by the unit of lengths. */
export const BARE_UNIT = {
  length: { mm: 'mm', in: 'in' },
  torque: { mm: 'N·m', in: 'lb·ft' },
  pressure: { mm: 'MPa', in: 'psi' },
  stress: { mm: 'MPa', in: 'ksi' },
  speed: { mm: 'rpm', in: 'rpm' },
  'cutting-speed': { mm: 'm/min', in: 'ft/min' },
  angle: { mm: 'deg', in: 'deg' },
  mass: { mm: 'kg', in: 'lb' },
  density: { mm: 'kg/m³', in: 'lb/in³' },
  temperature: { mm: '°C', in: '°F' },
  'lining-modulus': { mm: 'MPa/mm', in: 'psi/in' },
  conductivity: { mm: 'W/(m·K)', in: 'Btu/(h·ft·°F)' },
  'specific-heat': { mm: 'J/(kg·K)', in: 'Btu/(lb·°F)' },
  time: { mm: 's', in: 's' },
  ratio: { mm: '', in: '' },
  share: { mm: '%', in: '%' },
  number: { mm: '', in: '' },
  count: { mm: '', in: '' },
} as const satisfies Record<string, Readonly<Record<'mm' | 'in', UnitName>>>;

/** What a number is typed as; some are one kind of quantity typed in other units. */
export type TypedKind = keyof typeof BARE_UNIT;

/** The kind of quantity that each is read as. */
export function kindOf(typed: TypedKind): Kind {
  return typed === 'stress' ? 'pressure' : typed === 'share' ? 'ratio' : typed;
}
