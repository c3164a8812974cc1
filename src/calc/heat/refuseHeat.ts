import type { HeatInput } from '../../../shared/words/bending/heat.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';

const SIZES = [
  ['fluxWPerM2', 'The flux', 'W/m²', 1e10],
  ['slipTimeS', 'The slip time', 's', 3600],
  ['thicknessMm', 'The thickness', 'mm', 10_000],
  ['conductivityWPerMK', 'The conductivity', 'W/(m·K)', 10_000],
  ['densityKgPerM3', 'The density', 'kg/m³', 30_000],
  ['specificHeatJPerKgK', 'The specific heat', 'J/(kg·K)', 20_000],
] as const;

/** Throws: a Refusal that names every field that no heat can be worked out from. */
export function refuseHeat(input: HeatInput): void {
  const faults: Fault[] = [];
  for (const [path, name, unit, most] of SIZES) {
    const value = input[path];
    if (Number.isFinite(value) && value > 0 && value <= most) continue;
    const message = `${name} is ${value} ${unit}; it must be more than 0 and at most ${most} ${unit}.`;
    faults.push({ path, message });
  }
  const { pressurePeak, startTemperatureC } = input;
  if (pressurePeak !== null && !(pressurePeak >= 1 && pressurePeak <= 1000)) {
    const message = `The pressure peak is ${pressurePeak} times the mean; it must be at least 1 and at most 1000.`;
    faults.push({ path: 'pressurePeak', message });
  }
  if (startTemperatureC !== null && !(startTemperatureC >= -100 && startTemperatureC <= 2000)) {
    const message = `The start temperature is ${startTemperatureC} °C; it must be at least -100 and at most 2000 °C.`;
    faults.push({ path: 'startTemperatureC', message });
  }
  if (faults.length > 0) throw new Refusal('heat-input', faults);
}
