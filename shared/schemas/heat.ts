import type * as z from 'zod';
import type { HeatInput } from '../words/bending/heat.ts';
import { orNull, quantity, size, strict } from './fields.ts';
import { confirmedPlaces } from './studParts.ts';

const above = (name: string, unit: string, most: number) =>
  quantity(name, unit, { least: 0, open: true, most });

/** One engagement and the slab it heats. null and left out are the same. */
const heatSchema = strict('The request', {
  fluxWPerM2: above('The flux', 'W/m²', 1e10),
  slipTimeS: above('The slip time', 's', 3600),
  thicknessMm: size('The thickness'),
  conductivityWPerMK: above('The conductivity', 'W/(m·K)', 10_000),
  densityKgPerM3: above('The density', 'kg/m³', 30_000),
  specificHeatJPerKgK: above('The specific heat', 'J/(kg·K)', 20_000),
  pressurePeak: orNull(quantity('The pressure peak', '', { least: 1, most: 1000 })),
  startTemperatureC: orNull(quantity('The start temperature', '°C', { least: -100, most: 2000 })),
}) satisfies z.ZodType<HeatInput>;

/** What `POST /api/cover/heat` takes. */
export const heatRequestSchema = strict('The request', { ...heatSchema.shape, confirmed: confirmedPlaces });
