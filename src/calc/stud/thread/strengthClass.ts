export interface StrengthClass {
  readonly tensileMPa: number;
  readonly yieldMPa: number;
  readonly proofMPa: number;
  readonly source: string;
}

const KSI = 6.894757;
const UP_TO_16 = 16;

/** Tensile, yield and proof stress by class, MPa. */
const ISO: Readonly<Record<string, readonly [number, number, number]>> = {
  '4.6': [400, 240, 225],
  '4.8': [420, 340, 310],
  '5.6': [500, 300, 280],
  '5.8': [520, 420, 380],
  '6.8': [600, 480, 440],
  '8.8': [800, 640, 580],
  '9.8': [900, 720, 650],
  '10.9': [1040, 940, 830],
  '12.9': [1220, 1100, 970],
};
const ISO_8_8_OVER_16 = [830, 660, 600] as const;

/** By grade: up to a diameter [in], tensile, yield and proof stress, ksi. */
const SAE: Readonly<Record<string, readonly (readonly [number, number, number, number])[]>> = {
  'grade 1': [[1.5, 60, 36, 33]],
  'grade 2': [
    [0.75, 74, 57, 55],
    [1.5, 60, 36, 33],
  ],
  'grade 5': [
    [1, 120, 92, 85],
    [1.5, 105, 81, 74],
  ],
  'grade 8': [[1.5, 150, 130, 120]],
};

/**
 * Least tensile, yield and proof stress of a stud's strength class or grade; null when it has none for that diameter.
 *   name '8.8' or 'grade 5' · diameterMm basic major diameter [mm]
 *   Valid: ISO 898-1 up to M39; SAE J429 from 1/4 to 1 1/2 in. A marked stud of known make only; never a guess by looks.
 *   Source: ISO 898-1:2013, table 3 (4.8, 5.x, 6.8, 9.8 from memory); SAE J429
 *   Example: grade 5, 3/8 in → 827, 634, 586 MPa (published/strengthClasses.test.ts)
 */
export function strengthClass({
  name,
  diameterMm,
}: {
  name: string;
  diameterMm: number;
}): StrengthClass | null {
  const iso = name === '8.8' && diameterMm > UP_TO_16 ? ISO_8_8_OVER_16 : ISO[name];
  if (iso) {
    const [tensileMPa, yieldMPa, proofMPa] = iso;
    return { tensileMPa, yieldMPa, proofMPa, source: `ISO 898-1, class ${name}` };
  }
  const row = SAE[name]?.find(([upTo]) => diameterMm >= 6.3 && diameterMm <= upTo * 25.4 + 1e-9);
  if (!row) return null;
  const mPa = (ksi: number) => Math.round(ksi * KSI);
  return {
    tensileMPa: mPa(row[1]),
    yieldMPa: mPa(row[2]),
    proofMPa: mPa(row[3]),
    source: `SAE J429, ${name}`,
  };
}
