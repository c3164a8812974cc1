/** How numbers are printed: rounded once, here, in the unit the person has chosen. */
export type LengthUnit = 'mm' | 'in';

const MM_PER_INCH = 25.4;
export const MM_PER_UNIT: Readonly<Record<LengthUnit, number>> = { mm: 1, in: MM_PER_INCH };
/** As in "lengths in inches". */
export const UNIT_WORD: Readonly<Record<LengthUnit, string>> = { mm: 'mm', in: 'inches' };
export const MINUS = '−';

/** A plain number with a fixed count of decimals and a true minus sign; never "−0.000". */
export function printNumber(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `${MINUS}${text}` : text;
}

/** Decimals used for readings of a micrometer or indicator (fine) and of a caliper or scale (coarse). */
export type Fineness = 'fine' | 'coarse';
const DECIMALS = { mm: { fine: 3, coarse: 2 }, in: { fine: 4, coarse: 3 } } as const;

/** `4.529` or `0.1783`: the figure alone, for tables and dimension lines. */
export function lengthFigure(mm: number, unit: LengthUnit, fineness: Fineness = 'fine'): string {
  return printNumber(mm / MM_PER_UNIT[unit], DECIMALS[unit][fineness]);
}

/** `4.529 mm` or `0.1783 in`. */
export function printLength(mm: number, unit: LengthUnit, fineness: Fineness = 'fine'): string {
  return `${lengthFigure(mm, unit, fineness)} ${unit}`;
}

/**
 * `286 mm`, `4.3 mm`, `11.25 in`: no more figures than it has, for sizes that are given and not measured. The step of
 * a micrometer keeps two figures: 0.001 mm is `0.000039 in`, not none.
 */
export function briefLength(mm: number, unit: LengthUnit): string {
  const value = mm / MM_PER_UNIT[unit];
  const { fine } = DECIMALS[unit];
  const forTwo = value === 0 ? fine : 1 - Math.floor(Math.log10(Math.abs(value)));
  const figure = Number(Math.abs(value).toFixed(Math.min(fine + 2, Math.max(fine, forTwo))));
  return `${value < 0 && figure !== 0 ? MINUS : ''}${figure} ${unit}`;
}

/**
 * A length beside the limit it is compared with: gets decimals until the two print differently, so that
 * 4.2996 mm against 4.300 mm never reads "4.300 mm is below 4.300 mm".
 */
export function printAgainst(
  mm: number,
  limitMm: number,
  unit: LengthUnit,
  fineness: Fineness = 'fine',
): string {
  const scale = MM_PER_UNIT[unit];
  const start = DECIMALS[unit][fineness];
  if (Math.abs(mm - limitMm) <= 1e-9) return printLength(limitMm, unit, fineness);
  for (let decimals = start; decimals < start + 4; decimals++) {
    if (printNumber(mm / scale, decimals) !== printNumber(limitMm / scale, decimals)) {
      return `${printNumber(mm / scale, decimals)} ${unit}`;
    }
  }
  return `${printNumber(mm / scale, start + 4)} ${unit}`;
}

const NM_PER_LB_FT = 1.3558179483314;

/** `37.0 N·m`, or `27.3 lb·ft` where lengths are in inches. */
export function printTorque(Nm: number, unit: LengthUnit, decimals = 0): string {
  return unit === 'in'
    ? `${printNumber(Nm / NM_PER_LB_FT, decimals)} lb·ft`
    : `${printNumber(Nm, decimals)} N·m`;
}

/** A unit that goes with lengths in mm or in inches, and how many of it one N, MPa, K, m/min or µm is. */
export interface Beside {
  readonly unit: string;
  readonly per: number;
  readonly decimals: number;
}
// NIST SP 811, exact.
const N_PER_LBF = 4.4482216152605;
const PSI_PER_MPA = MM_PER_INCH ** 2 / N_PER_LBF;

/** Force in a stud: kN, or lbf. */
export const FORCE: Readonly<Record<LengthUnit, Beside>> = {
  mm: { unit: 'kN', per: 0.001, decimals: 1 },
  in: { unit: 'lbf', per: 1 / N_PER_LBF, decimals: 0 },
};

/** Pressure of oil or lining: MPa, or psi. */
export const PRESSURE: Readonly<Record<LengthUnit, Beside>> = {
  mm: { unit: 'MPa', per: 1, decimals: 2 },
  in: { unit: 'psi', per: PSI_PER_MPA, decimals: 0 },
};

/** Stress in steel: MPa, or ksi. */
export const STRESS: Readonly<Record<LengthUnit, Beside>> = {
  mm: { unit: 'MPa', per: 1, decimals: 0 },
  in: { unit: 'ksi', per: PSI_PER_MPA / 1000, decimals: 1 },
};

/** A rise of temperature: °C, or °F. */
export const HOTTER: Readonly<Record<LengthUnit, Beside>> = {
  mm: { unit: '°C', per: 1, decimals: 0 },
  in: { unit: '°F', per: 1.8, decimals: 0 },
};

/** Cutting speed: m/min, or ft/min. */
export const SURFACE_SPEED: Readonly<Record<LengthUnit, Beside>> = {
  mm: { unit: 'm/min', per: 1, decimals: 0 },
  in: { unit: 'ft/min', per: 1 / 0.3048, decimals: 0 },
};

/** Roughness of the face: µm, or µin. */
export const ROUGHNESS: Readonly<Record<LengthUnit, Beside>> = {
  mm: { unit: 'µm', per: 1, decimals: 1 },
  in: { unit: 'µin', per: 1000 / MM_PER_INCH, decimals: 0 },
};

const KG_PER_LB = 0.45359237;
const G_PER_OZ = 28.349523125;

/** Mass: kg, or lb. */
export const MASS: Readonly<Record<LengthUnit, Beside>> = {
  mm: { unit: 'kg', per: 1, decimals: 2 },
  in: { unit: 'lb', per: 1 / KG_PER_LB, decimals: 2 },
};

/** Density: kg/m³, or lb/in³. */
export const DENSITY: Readonly<Record<LengthUnit, Beside>> = {
  mm: { unit: 'kg/m³', per: 1, decimals: 0 },
  in: { unit: 'lb/in³', per: (MM_PER_INCH / 1000) ** 3 / KG_PER_LB, decimals: 3 },
};

/** Unbalance: g·mm, or oz·in. */
export const UNBALANCE: Readonly<Record<LengthUnit, Beside>> = {
  mm: { unit: 'g·mm', per: 1, decimals: 1 },
  in: { unit: 'oz·in', per: 1 / (G_PER_OZ * MM_PER_INCH), decimals: 3 },
};

/** A small mass, as for balancing: g, or oz. */
export const SMALL_MASS: Readonly<Record<LengthUnit, Beside>> = {
  mm: { unit: 'g', per: 1, decimals: 1 },
  in: { unit: 'oz', per: 1 / G_PER_OZ, decimals: 2 },
};

/** `90 °C` or `194 °F`. */
export function printTemperature(celsius: number, unit: LengthUnit, decimals = 0): string {
  return unit === 'in'
    ? `${printNumber(celsius * 1.8 + 32, decimals)} °F`
    : `${printNumber(celsius, decimals)} °C`;
}

/** How far a face waves or bends, much less than a reading: µm, or in. */
export const WAVINESS: Readonly<Record<LengthUnit, Beside>> = {
  mm: { unit: 'µm', per: 1000, decimals: 1 },
  in: { unit: 'in', per: 1 / MM_PER_INCH, decimals: 5 },
};

/** Young’s modulus, from MPa: GPa, or ksi. */
export const MODULUS: Readonly<Record<LengthUnit, Beside>> = {
  mm: { unit: 'GPa', per: 0.001, decimals: 0 },
  in: { unit: 'ksi', per: PSI_PER_MPA / 1000, decimals: 0 },
};

/** Pressure for each length a lining is squeezed: MPa/mm, or psi/in. */
export const LINING_MODULUS: Readonly<Record<LengthUnit, Beside>> = {
  mm: { unit: 'MPa/mm', per: 1, decimals: 0 },
  in: { unit: 'psi/in', per: PSI_PER_MPA * MM_PER_INCH, decimals: 0 },
};

// NIST SP 811, the International Table Btu.
const J_PER_BTU = 1055.05585262;

/** Heat into a face, from W/m²: MW/m², or Btu/(s·ft²). */
export const HEAT_FLUX: Readonly<Record<LengthUnit, Beside>> = {
  mm: { unit: 'MW/m²', per: 1e-6, decimals: 2 },
  in: { unit: 'Btu/(s·ft²)', per: 0.3048 ** 2 / J_PER_BTU, decimals: 0 },
};

/** From W/(m·K). */
export const CONDUCTIVITY: Readonly<Record<LengthUnit, Beside>> = {
  mm: { unit: 'W/(m·K)', per: 1, decimals: 1 },
  in: { unit: 'Btu/(h·ft·°F)', per: (3600 * 0.3048) / (1.8 * J_PER_BTU), decimals: 1 },
};

/** From J/(kg·K). */
export const SPECIFIC_HEAT: Readonly<Record<LengthUnit, Beside>> = {
  mm: { unit: 'J/(kg·K)', per: 1, decimals: 0 },
  in: { unit: 'Btu/(lb·°F)', per: 1 / 4186.8, decimals: 3 },
};

/** `1.85 MPa` or `269 psi`; `214 MPa` or `31.0 ksi`. */
export function printAs(value: number, { unit, per, decimals }: Beside): string {
  return `${printNumber(value * per, decimals)} ${unit}`;
}

/** `92.3 %`; never rounds up to 100 % or down across the limit it is compared with. */
export function printShare(share: number, decimals = 1): string {
  const factor = 10 ** (decimals + 2);
  const cut = share < 1 ? Math.floor(share * factor + 1e-9) / factor : share;
  return `${(cut * 100).toFixed(decimals)} %`;
}

/** "a", "a and b", "a, b and c". */
export function listInWords(parts: readonly string[]): string {
  if (parts.length < 2) return parts.join('');
  return `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

/** The finest step a depth of cut is set in: 0.001 mm, or 0.0001 in. */
export const MM_PER_STEP: Readonly<Record<LengthUnit, number>> = { mm: 0.001, in: 0.0001 * MM_PER_INCH };
const FLOAT_DUST = 1e-6;

/** Whole steps of the dial, rounded down or up; the last digits of floating arithmetic are ignored. */
export function wholeSteps(mm: number, unit: LengthUnit, way: 'down' | 'up'): number {
  const steps = mm / MM_PER_STEP[unit];
  return way === 'down' ? Math.floor(steps + FLOAT_DUST) : Math.ceil(steps - FLOAT_DUST);
}
