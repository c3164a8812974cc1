export interface NutClass {
  readonly proofMPa: number;
  readonly source: string;
}

const KSI = 6.894757;
/** Upper ends of the diameter ranges [mm], the first from above 4. */
const UP_TO = [7, 10, 16] as const;
/** Proof stress by class, MPa, for those ranges. */
const ISO: Readonly<Record<string, readonly [number, number, number]>> = {
  '5': [580, 590, 610],
  '6': [670, 680, 700],
  '8': [855, 870, 880],
  '10': [1040, 1040, 1050],
  '12': [1150, 1160, 1190],
};
/** Proof stress by grade for coarse and fine threads, ksi. */
const SAE: Readonly<Record<string, readonly [coarse: number, fine: number]>> = {
  'grade 2': [90, 80],
  'grade 5': [120, 109],
  'grade 8': [150, 150],
};
const SAE_MOST_IN = 1;

/**
 * Proof stress of a nut of full height by its class or grade; null where none is known for that diameter.
 *   name '8' or 'grade 5' · diameterMm basic major diameter [mm] · fine: a UNF thread, which the grades tell from UNC
 *   Valid: ISO 898-2 above 4 to 16 mm, style 1; SAE J995 from 1/4 to 1 in. A marked nut only; never a guess by looks.
 *   Source: ISO 898-2 (DIN EN 20898-2), proof loads on the stress area (5 and 6 up to 7 mm from memory); SAE J995 (from
 *   memory)
 *   Example: class 8, M10 → 870 MPa, 50.5 kN (published/studStrength.test.ts)
 */
export function nutClass({
  name,
  diameterMm,
  fine = false,
}: {
  name: string;
  diameterMm: number;
  fine?: boolean;
}): NutClass | null {
  const row = diameterMm > 4 ? UP_TO.findIndex((most) => diameterMm <= most + 1e-9) : -1;
  const iso = ISO[name]?.[row];
  if (iso !== undefined) {
    const remembered = row === 0 && (name === '5' || name === '6');
    return { proofMPa: iso, source: `ISO 898-2, class ${name}${remembered ? ', from memory' : ''}` };
  }
  const sae = SAE[name];
  if (sae === undefined || diameterMm < 6.3 || diameterMm > SAE_MOST_IN * 25.4 + 1e-9) return null;
  return { proofMPa: Math.round(sae[fine ? 1 : 0] * KSI), source: `SAE J995, ${name}, from memory` };
}
